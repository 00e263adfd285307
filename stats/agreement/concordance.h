#pragma once

#include <optional>
#include <span>
#include <vector>

#include "stats/permutation.h"

namespace stats {

/// Agreement of several raters' rankings of the same items.
struct Concordance {
  double w;                       ///< Kendall's W, corrected for ties: 0 none to 1 the same ranking
  double sum_of_squares;          ///< S, of the items' rank sums about their mean
  double chi_square;              ///< Friedman's, raters (items - 1) W
  int freedom;                    ///< items - 1
  double chi_square_p;            ///< an approximation for many raters, see below
  PermutationP permutation;       ///< P(S as large or larger)
  std::vector<double> rank_sums;  ///< of the items, by mid-ranks
};

/// Up to this number of steps, each of which adds one ranking to the rank sums so far, the arrangements are
/// counted: 0.3 s or so. That takes two raters to 10 items, 4 to 6, 20 to 4 and 100 to 3. Beyond,
/// arrangements are drawn.
inline constexpr double kMostRankingSteps = 3e7;

/// Kendall's W, which is also Friedman's test (raters are its blocks, items its treatments) and, with answers
/// 0 and 1, Cochran's Q, with the permutation test of all three. The null hypothesis: each rater's ranks,
/// tied ones too, fall on the items in any order, each equally likely, independently of the other raters.
///
/// @param raters       2 to 1,000, each with a value for each of the same 2 to 1,000 items, all finite; only
///                     their order within a rater counts. In all at most 100,000 values.
/// @param monte_carlo  for the permutation test where there is too much to count.
/// @return  nothing when no rater tells any two items apart: W is then 0/0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: W, S and the permutation p are exact (p to 12 digits where counted). The chi-square p is rough
/// with few raters: at 0.05 its true size is 0.017 with three raters of four items and 0.069, above the
/// level, with four raters of three (tests/stats).
/// Example: {1,6,3,2,5,4}, {1,5,6,4,2,3}, {6,3,2,5,4,1}: W = 0.162.
/// Source: M. G. Kendall and B. Babington Smith, Ann. Math. Stat. 10 (1939) 275; M. Friedman, J. Am. Stat.
/// Assoc. 32 (1937) 675.
std::optional<Concordance> concordance(std::span<const std::vector<double>> raters,
                                       const MonteCarlo& monte_carlo = {});

}  // namespace stats
