#pragma once

#include <span>

#include "stats/permutation.h"

namespace stats {

/// Wilcoxon's signed-rank test of differences between two conditions of the same listeners.
struct SignedRank {
  int zeros;            ///< differences of 0, which are left out
  int used;             ///< the others
  double positive_sum;  ///< sum of the ranks of the positive ones by size, ties by mid-ranks
  PermutationP test;
};

/// Whether differences lie on one side of 0.
///
/// The null hypothesis: each difference has either sign with the same probability, independently, whatever its size. Ties
/// are in the null as they are in the data. Two-sided p: as far from the mean of the null or farther. Sizes alike to 1 part
/// in 10^12 of the largest are tied, and smaller ones are 0. Exact up to 500 differences other than 0; beyond, signs are
/// drawn. Without any p is 1.
///
/// @param differences  1 to 100,000, all finite.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 1.1 2.2 0.3 -0.1, against larger: positive sum 9 of 10, p 2/16.
/// Accuracy: relative error of an exact p below 1e-12, a sum of non-negative terms.
/// Source: F. Wilcoxon, Biometrics Bull. 1 (1945) 80.
SignedRank signed_rank(std::span<const double> differences, Alternative alternative,
                       const MonteCarlo& monte_carlo = {});

}  // namespace stats
