#pragma once

#include <cstdint>
#include <optional>
#include <span>

#include "stats/permutation.h"

namespace stats {

/// Kendall's rank correlation with its permutation test.
struct KendallCorrelation {
  std::int64_t score;  ///< S: pairs of places that rise together less pairs that do not; ties count 0
  double tau_b;        ///< S by the geometric mean of the pairs untied in x and those untied in y
  PermutationP test;   ///< of S
};

/// Whether `x` and `y` rise together, by counting pairs of places.
///
/// The null hypothesis: every pairing of the x with the y is equally likely, ties as they are. Two-sided p is P(|S| >= |S
/// seen|). p is exact as long as counting takes less than 10^8 steps: without ties in x or in y to 160 pairs, with
/// ties in both to about 15, and to 50 where one has only two different values; beyond, pairings are drawn.
///
/// @param x, y  of equal length, 2 to 2,000, all finite.
/// @return  nothing when all x or all y are equal: tau-b is then 0/0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: x 44.4 45.9 41.9 53.3 44.7 44.1 50.7 45.2 60.1, y 2.6 3.1 2.5 5.0 3.6 4.0 5.2 2.8 3.8: tau 0.444, p 0.0597
/// against rising.
/// Accuracy: relative error of an exact p below 1e-12, a sum of non-negative terms.
/// Source: M. G. Kendall, Biometrika 30 (1938) 81; with ties Biometrika 33 (1945) 239.
std::optional<KendallCorrelation> kendall(std::span<const double> x, std::span<const double> y,
                                          Alternative alternative, const MonteCarlo& monte_carlo = {});

/// Smallest p that any pairing of these x with these y could give: when it is above the level, no outcome can be supported.
/// Exact for every length. One-sided it is Spearman's (`smallest_attainable_p`), since S too is largest just where no x and y
/// rise against each other.
///
/// @return  nothing when all x or all y are equal. Arguments and refusals as `kendall`.
/// Example: 4 untied pairs, two-sided: 2/24 = 0.083.
std::optional<double> smallest_attainable_kendall_p(std::span<const double> x, std::span<const double> y,
                                                    Alternative alternative);

}  // namespace stats
