#pragma once

#include <span>

#include "stats/redraw/redraw.h"
#include "stats/redraw/total.h"

namespace stats {

/// The exact re-draw for designs with fixed numbers: of all trials exactly `ones` have their truth one way
/// and the rest the other way, and every such arrangement is equally likely (A-not-A or same-different with
/// fixed numbers, the lady tasting tea). Everybody's answers are given and stay as they are. A trial adds
/// `one` to the total if its truth is the one, else `other` (`Split` of stats/redraw/redraw.h).
///
/// Distribution of the total, with a place for each total up to the sum of max(one, other). Tails, two-sided
/// p (by distance or by probability) and the minimum at a level: see stats/redraw/total.h. For one rater it
/// is hypergeometric and the tails are Fisher's exact test; for several raters on shared trials it is exact
/// however their answers depend on each other.
///
/// @param splits  up to 1,000,000 trials; each count 0 or more, their sum at most 1,000,000.
/// @param ones    0 to the number of trials.
/// @throws std::domain_error  naming the argument, its value and its range; also where the work (trials times
/// (ones + 1) times (sum of |one - other| + 1)) passes 2 * 10^9.
///
/// Example: 8 cups, 4 of each, 4 called the one ({1, 0}) and 4 the other ({0, 1}): P(all 8 right) = 1/70,
/// P(6 or more right) = 17/70.
/// Accuracy: with T trials each probability has a relative error below 4 T * 2^-53 (only non-negative numbers
/// are multiplied and added).
/// Source: R. A. Fisher, The Design of Experiments (1935), chapter 2.
TotalDistribution redraw_fixed(std::span<const Split> splits, int ones);

}  // namespace stats
