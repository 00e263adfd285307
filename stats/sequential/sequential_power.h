#pragma once

#include <optional>
#include <span>

#include "stats/sequential/stopping_rule.h"

namespace stats {

/// What a stopping rule can do with shared trials in which all answers of a trial are alike: trial n adds `answers[n - 1]`
/// to the total with probability `share`, else nothing. The like of `redraw_power` for a test with looks.
///
/// @param rule     bounds on the total; as many looks as trials.
/// @param answers  0 or more for each trial.
/// @param share    between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.
double sequential_power(const StoppingRule& rule, std::span<const int> answers, double share);

/// Smallest share at which the probability of support is at least `probability`, to an error below 1e-9; nothing where
/// nothing would be supported. Computed from the design alone, never from a result.
/// @param probability  strictly between 0 and 1.
/// Example: looks after 8, 16 and 24 trials of one answer with 0.01, 0.02 and 0.05 spent, 0.8: 0.757.
std::optional<double> sequential_share_caught(const StoppingRule& rule, std::span<const int> answers,
                                              double probability);

}  // namespace stats
