#pragma once

#include <optional>
#include <span>

#include "stats/permutation.h"
#include "stats/share/interval.h"

namespace stats {

/// Up to this number of ways to divide the values into the two samples every one is counted; beyond, whole
/// numbers are still counted by their sums (`share_of_divisions`), others are drawn.
inline constexpr int kExactDivisions = 1'000'000;

/// @param values  1 to 200,000.
/// @throws std::domain_error  for any other number of them.
double mean(std::span<const double> values);

/// Mean of x less mean of y.
/// @param x, y  1 to 100,000 finite values each.
/// @throws std::domain_error  naming the argument, its value and its range; so do the functions below.
double mean_difference(std::span<const double> x, std::span<const double> y);

/// Permutation test of the difference of means. The null hypothesis: every division of all values into
/// samples of these sizes is equally likely. Two-sided p is P(|difference| >= |difference seen|). Means
/// alike to 1 part in 10^12 of the largest value count as equal.
///
/// Example: {12, 15, 18, 20} against {21, 25, 28}, two-sided: 2/35 = 0.0571.
PermutationP mean_difference_test(std::span<const double> x, std::span<const double> y,
                                  Alternative alternative, const MonteCarlo& monte_carlo = {});

/// Welch's interval for the difference of means: an approximation by Student's t with Satterthwaite's degrees
/// of freedom, good for values that are roughly normal or many.
///
/// @param confidence  strictly between 0 and 1.
/// @return  nothing when a sample has fewer than two values, when neither varies, or when the squares of
///          their spread leave the range of a double.
/// Source: B. L. Welch, Biometrika 34 (1947) 28.
std::optional<Interval> welch_interval(std::span<const double> x, std::span<const double> y,
                                       double confidence);

}  // namespace stats
