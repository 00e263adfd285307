#pragma once

#include <span>

#include "stats/permutation.h"

namespace stats {

/// Wilcoxon's rank-sum test of two samples, the same as that of Mann and Whitney.
struct RankSum {
  double pairs_won;  ///< W of R, U of Mann and Whitney: pairs in which the x is larger, ties half
  PermutationP
      test;  ///< every division into samples of these sizes equally likely, ties by mid-ranks as they are
};

/// Whether values of one sample are larger. Two-sided p: as far from the mean of the null or farther.
///
/// @param x, y  1 to 100,000 finite values each.
/// @throws std::domain_error  naming the argument, its value and its range.
/// p is exact as `mean_difference_test` of the doubled ranks is: to 1,000 values where it takes less than 10^8 steps (two
/// samples of 60), beyond where there are up to a million divisions; else divisions are drawn.
/// Example: {12, 15, 18, 20} against {21, 25, 28}: W 0, p 2/35.
/// Source: F. Wilcoxon, Biometrics Bull. 1 (1945) 80; H. B. Mann and D. R. Whitney, Ann. Math. Statist. 18 (1947) 50.
RankSum rank_sum(std::span<const double> x, std::span<const double> y, Alternative alternative,
                 const MonteCarlo& monte_carlo = {});

}  // namespace stats
