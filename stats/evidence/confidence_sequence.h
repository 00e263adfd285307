#pragma once

#include "stats/share/interval.h"

namespace stats {

/// Interval for a true share that may be looked at after every trial: with probability at least `confidence`
/// it covers the share after all trials at once, so that a test may be stopped at any time, for any reason.
/// It holds the shares p against which the Beta(a, b) mixture (`log_beta_mixture` at chance p) stays below
/// 1/(1 - confidence). The intersection of the intervals so far is valid too.
///
/// @param correct     right answers so far, 0 to `trials`.
/// @param trials      answers so far, 1 to 1,000,000.
/// @param confidence  strictly between 0 and 1.
/// @param a, b        0.001 to 10,000, fixed beforehand. 1 and 1 suits the first hundred trials; larger
///                    equal numbers narrow the interval for shares near 1/2.
/// @return  the lower end is exactly 0 with nothing right, the upper exactly 1 with everything right.
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// Accuracy: error below 1e-11 up to 10,000 trials. True coverage of a = b = 1 at 0.95, over the first 200
/// trials at once: 0.969 at share 0.5, 0.972 at 0.75, 0.971 at 0.9, 0.982 at 0.95.
/// Example: 12 of 16 at 0.95 gives 0.388 to 0.960; a fixed number of trials gives 0.476 to 0.927.
/// Source: H. Robbins, Ann. Math. Stat. 41 (1970) 1397; T. L. Lai, Ann. Stat. 4 (1976) 265.
Interval beta_confidence_sequence(int correct, int trials, double confidence, double a = 1, double b = 1);

}  // namespace stats
