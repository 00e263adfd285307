#pragma once

#include <span>

#include "stats/redraw/total.h"

namespace stats {

/// Trials that are guessed with the same chance of being right.
struct TrialGroup {
  int trials;     ///< 0 or more; at most 20,000 in all groups together
  double chance;  ///< between 0 and 1
};

/// Distribution of the number right of independent trials whose chances differ (Poisson-binomial): for a
/// study that mixes protocols, or for trials with a chance each (groups of 1). Tails, two-sided p and
/// the minimum at a level: see stats/redraw/total.h. No trials: {1}.
///
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// Example: 10 trials at 1/2 and 12 at 1/3, 14 of 22 right: `total_at_least` gives 0.0247, and
/// `total_minimum` at 0.05 gives 14.
/// Accuracy: with T trials each probability has a relative error below 3 T * 2^-53 (only non-negative numbers
/// are multiplied and added); probabilities below 1e-300 may come out as 0.
/// Source: trial-by-trial convolution, e.g. R. E. Barlow and K. D. Heidtmann, IEEE Trans. Reliab. 33 (1984)
/// 322.
TotalDistribution poisson_binomial(std::span<const TrialGroup> groups);

}  // namespace stats
