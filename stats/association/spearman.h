#pragma once

#include <optional>
#include <span>

#include "stats/association/pairing_sums.h"
#include "stats/permutation.h"

namespace stats {

/// Spearman's rank correlation, ties by mid-ranks, with its permutation test.
struct RankCorrelation {
  double rho;
  PermutationP test;
};

/// Whether `x` and `y` rise together.
///
/// The null hypothesis: every pairing of the x with the y is equally likely. Two-sided p is P(|rho| >= |rho
/// seen|). Ties are in the null as they are in the data, and correlations are compared in whole numbers, so
/// that equal ones count as equal. Up to `kExactRanks` pairs every pairing is counted; beyond, pairings are
/// drawn.
///
/// @param x, y     of equal length, 2 to 10,000, all finite.
/// @param threads  1 to 256, for pairings drawn; the result is the same for every number.
/// @return  nothing when all x or all y are equal: rho is then 0/0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 7 untied pairs with rho 11/14 = 0.786 have a two-sided p of 0.0480.
std::optional<RankCorrelation> spearman(std::span<const double> x, std::span<const double> y,
                                        Alternative alternative, const MonteCarlo& monte_carlo = {},
                                        int threads = 1);

/// Smallest p that any pairing of these x with these y could give: when it is above the level, no outcome can
/// be supported. Exact for every length.
///
/// @return  nothing when all x or all y are equal. Arguments and refusals as `spearman`.
/// Example: 4 untied pairs, two-sided: 2/24 = 0.083.
std::optional<double> smallest_attainable_p(std::span<const double> x, std::span<const double> y,
                                            Alternative alternative);

/// Smallest correlation that reaches a two-sided level.
struct SmallestRho {
  double rho;
  bool exact;  ///< false: by the t approximation with n - 2 degrees of freedom
};

/// Smallest |rho| of `n` untied pairs with a two-sided p of `level` or less; nothing when no pairing reaches
/// it. Exact up to `kExactRanks` pairs.
///
/// @param n      2 to 10,000.
/// @param level  two-sided, strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 7 pairs: 0.786 at 0.05, 0.964 at 0.005; 4 pairs: none at 0.05.
/// Source of the approximation: t = rho sqrt((n - 2)/(1 - rho^2)), M. G. Kendall, Rank Correlation Methods,
/// 1948 (from memory).
std::optional<SmallestRho> smallest_significant_rho(int n, double level);

/// The same of these very values, ties as they are; nothing also when all x or all y are equal. Beyond
/// `kExactRanks` pairs the approximation is that for untied values.
///
/// Example: x 1, 0, 2, 3, 4, 6, 5 and y 9, 12, 12, 12, 12, 14, 15 at 0.05: 0.768; untied 0.786.
std::optional<SmallestRho> smallest_significant_rho(std::span<const double> x, std::span<const double> y,
                                                    double level);

}  // namespace stats
