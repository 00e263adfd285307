#pragma once

#include <span>

#include "stats/redraw/redraw.h"
#include "stats/sequential/stopping_rule.h"

namespace stats {

/// Stopping when several raters answer the same trials. Their answers may depend on each other in any way,
/// so the total of right answers is not binomial; but each trial's coin is fair, and given everybody's
/// answers the total is the re-draw of redraw/redraw.h, trial after trial.
///
/// These functions are exact given the answers if nobody learns how a coin fell before the test has ended:
/// with such feedback later answers may follow earlier coins, and the coins are no longer fair given all
/// answers. The e-process of evidence/shared_e_process.h holds its level with feedback too.
///
/// Arguments
/// @param splits  of trial 1, 2, ...: what each adds to the total by its coin; in all at most 1,000,000.
/// @throws std::domain_error  naming the argument, its value and its range.

/// Exact operation under the null of a rule on the total, given the splits, as many as the rule has looks;
/// `support` is its rate of false alarms. Example: three raters always alike, 16 trials {3, 0}, and the
/// unadjusted rule at 0.05: 0.0876, as for one rater.
Operation operate_shared(const StoppingRule& rule, std::span<const Split> splits);

/// What must not be done: after every trial the re-draw's own test at the full level. Here to show its price.
/// @param level  strictly between 0 and 1.
/// Time: the square of the number of trials times the sum of the counts.
StoppingRule unadjusted_shared_rule(std::span<const Split> splits, double level);

/// A valid rule: at each look the smallest total that keeps the probability of a false alarm so far within
/// what is spent so far, by the re-draw. The bounds up to a look follow from the splits up to it, so they can
/// be computed as the trials come in; the looks and what they spend must be fixed beforehand.
/// @param looks, spent  as in spending_rule.h; looks up to the number of splits.
/// Example: 24 trials {3, 0} with looks after 8, 16 and 24 and 0.01, 0.02 and 0.05 spent need 24, 39 and 51.
StoppingRule shared_spending_rule(std::span<const Split> splits, std::span<const int> looks,
                                  std::span<const double> spent);

}  // namespace stats
