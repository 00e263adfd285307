#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "stats/permutation.h"

namespace stats {

/// Are the right answers drifting with the number of the trial: by learning or by fatigue?
struct Trend {
  std::int64_t sum;  ///< of the trial numbers (1, 2, ...) of all right answers, over all raters
  double expected;   ///< its mean if no placement of the right answers is preferred
  PermutationP p;
};

/// Test of a trend in right and wrong. The null hypothesis: given how many answers of a rater are right, all
/// placements of these over the rater's trials are equally likely, independently between raters. The sum of
/// their numbers then has the distribution of Wilcoxon's rank sum; several raters are strata, whose sums
/// are added.
///
/// Raters who answer the same trials are not independent where a trial is hard for all; then a small p can
/// also mean that the hard trials came late or early.
///
/// @param raters  1 to 100, each with 1 to 1,000 answers in their order: true for right.
/// @param alternative  greater: right answers come late (learning); less: early (fatigue); two_sided: the sum
///                     is as far from its mean as the one seen.
/// @return  p is exact up to about 5 * 10^8 steps (one rater: 200 trials; 20 raters: 60 trials each), beyond
///          drawn at random. With nothing or everything right p is 1.
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// Example: wrong, wrong, right, wrong, right, right: sum 14, expected 10.5, p greater 2/20 = 0.1.
/// Source: F. Wilcoxon, Biometrics Bull. 1 (1945) 80; for right and wrong it is the exact Cochran-Armitage
/// test with the trial numbers as scores.
Trend trend_over_trials(std::span<const std::vector<bool>> raters, Alternative alternative,
                        const MonteCarlo& monte_carlo = {});

}  // namespace stats
