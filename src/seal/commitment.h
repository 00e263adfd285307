#pragma once

#include <span>
#include <string>
#include <string_view>

#include "seal/digest.h"

namespace seal {

/// What is shown when a plan is sealed: SHA-256(canonical plan text, then the 32 bytes of the seed).
/// Whoever holds it can check after unsealing that plan and seed are those of before the first trial.
Digest commitment(std::string_view canonical_plan, const Digest& seed);

/// The seed of one sitting's order: SHA-256(the 32 bytes of the plan's seed, then the canonical JSON array of
/// the listeners' characters in the plan's order of the listeners attending, then the sitting's number in
/// ASCII digits). Listeners who added nothing stand as "".
///
/// @param sitting  1 for the plan's first sitting.
/// @throws std::domain_error for a sitting below 1 or characters that are not UTF-8.
Digest order_seed(const Digest& seed, std::span<const std::string> contributions, int sitting);

}  // namespace seal
