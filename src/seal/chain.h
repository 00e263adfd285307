#pragma once

#include <string_view>

#include "seal/digest.h"

namespace seal {

/// Where the event chain of a sitting starts: SHA-256(the 64 hex digits of the plan's commitment, a slash, the
/// sitting's number in ASCII digits). Sitting 0 is the plan's own chain.
Digest chain_start(const Digest& commitment, int sitting);

/// The head after one more event: SHA-256(the 32 bytes of the head before, then the event's canonical text).
Digest chain_next(const Digest& head, std::string_view canonical_event);

}  // namespace seal
