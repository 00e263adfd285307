#pragma once

#include <optional>
#include <span>
#include <vector>

namespace stats {

/// Spread within groups of repeats.
struct RepeatSpread {
  std::optional<double> standard_deviation;  ///< of one value; nothing where no group has two
  int degrees_of_freedom;
};

/// The standard deviation of values about their own group's mean, pooled over the groups.
/// @param groups  each of at least one finite value.
/// @throws std::domain_error  naming the argument, its value and its range; so does the function below.
RepeatSpread spread_within(std::span<const std::vector<double>> groups);

/// How far two means of `first` and `second` values lie apart at most in a share `confidence` of cases, where they differ by
/// their repeats alone: t s sqrt(1/first + 1/second). Exact for normal values of equal spread.
/// @param spread  with a standard deviation.
/// Example: s = 0.02 with 7 degrees of freedom, 2 against 2, 0.95: 0.0473.
/// Source: the two-sample t test; the repeatability limit of ISO 5725-6 (from memory) takes 1.96 for t.
double repeatability_limit(const RepeatSpread& spread, int first, int second, double confidence);

}  // namespace stats
