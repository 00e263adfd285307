#pragma once

#include <span>
#include <string>
#include <vector>

#include "plan/plan.h"
#include "protocols/order.h"
#include "seal/digest.h"

namespace plan {

/// One sitting as the protocol sees it. `specimens[i]` and `comparisons[i]` say which of the plan's the shape's
/// own index i stands for: a sitting tags only what it uses.
struct SittingShape {
  protocols::Shape shape;
  std::vector<int> specimens;
  std::vector<int> comparisons;
};

/// @param sitting  1 for the plan's first.
/// @throws std::domain_error outside 1 .. number of sittings.
SittingShape shape_of(const Plan& plan, int sitting);

/// The order of a sitting, derived anew from the plan, its seed and the listeners' characters.
protocols::Order order_of(const Plan& plan, const seal::Digest& seed, int sitting,
                          std::span<const std::string> contributions);

/// Practice trials under the sitting's own tags, numbered 1 to the plan's number: coins of their own, which tell nothing of
/// the order's, drawn from the same seed and contributions and the word "practice". All are of one comparison.
protocols::Order practice_of(const Plan& plan, const seal::Digest& seed, int sitting,
                             std::span<const std::string> contributions);

/// The part of the plan that a sitting plays. @throws std::domain_error as above.
const Part& part_of(const Plan& plan, int sitting);

}  // namespace plan
