#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "plan/plan.h"

namespace plan {

/// What one comparison will need at the family's first step.
struct Requirement {
  int comparison = 0;
  int trials = 0;    ///< planned over all sittings
  int answers = 0;   ///< trials times the listeners that attend them
  double level = 0;  ///< the plan's level divided by the number of claims (controls: undivided)
  int needed_trials =
      0;  ///< trials that must score where all listeners answer alike; trials + 1 if impossible
  /// Where the plan looks: trials so far, and how many of them must score; nothing where the look cannot support.
  std::vector<std::pair<int, std::optional<int>>> at_looks = {};
};

/// One requirement a comparison, in the plan's order.
/// The first step of Holm's procedure tests the smallest p of m claims at level / m (Holm 1979).
std::vector<Requirement> requirements(const Plan& plan);

/// Refuses a plan that could not be supported with every answer right.
/// @throws text::BadInput naming the comparison, its trials, the level and the fewest trials that could do.
void refuse_hopeless(const Plan& plan);

/// Number of comparisons in the family: the claims.
int family_size(const Plan& plan);

/// Minutes that a sitting takes at the plan's pace, breaks included, spares and practice not.
double minutes_of(const Plan& plan, int sitting);

/// The level as a number. @throws std::domain_error when it is no number in (0, 1).
double level_of(const Plan& plan);

}  // namespace plan
