#pragma once

#include "stats/share/interval.h"

namespace stats {

/// The two-sided intervals for a true share, of interval.h and approximate_interval.h.
enum class IntervalMethod { clopper_pearson, mid_p, wilson, jeffreys, likelihood };

/// The interval by any of the methods; arguments and refusals as there.
Interval share_interval(IntervalMethod method, int correct, int trials, double confidence);

/// Arguments of the functions below
/// @param trials      1 to 10,000.
/// @param confidence  strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.

/// Probability that the interval holds the true share: the exact sum over all numbers right, to an absolute
/// error below 1e-12. A share equal to a limit is held.
///
/// @param share  true share, between 0 and 1.
/// Example: Wilson's interval at 0.95 with 50 trials holds a share of 0.2 with probability 0.9507.
double coverage(IntervalMethod method, int trials, double share, double confidence);

/// The lowest coverage, and the share at or beside which it lies.
struct LeastCoverage {
  double coverage;
  double share;
};

/// Greatest lower bound of the coverage over the true shares from `lowest` to `highest`, those equal to a
/// limit left out. No grid is needed: between two neighbouring limits the coverage is the probability of a
/// run of counts, which has no minimum inside, so that only the coverage just above and just below each limit
/// counts.
///
/// At 0.95, over all shares from 0 to 1, rounded down:
///
///     trials            10      16      20      50     100
///     Clopper-Pearson  0.9610  0.9578  0.9579  0.9507  0.9502
///     mid-p            0.9265  0.9231  0.9293  0.9248  0.9206
///     Wilson           0.8349  0.8361  0.8365  0.8375  0.8378
///     Jeffreys         0.8680  0.8961  0.8933  0.8838  0.8800
///     likelihood       0.8346  0.8257  0.8224  0.8425  0.8411
///
/// Wilson's low values lie near 0 and 1: with 50 trials and shares from 0.6 to 0.9 it has 0.9308.
///
/// @param lowest, highest  between 0 and 1, lowest <= highest; where they are equal, the coverage there.
LeastCoverage least_coverage(IntervalMethod method, int trials, double confidence, double lowest = 0,
                             double highest = 1);

}  // namespace stats
