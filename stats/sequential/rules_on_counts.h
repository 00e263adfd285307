#pragma once

#include <functional>
#include <span>

#include "stats/sequential/stopping_rule.h"

namespace stats {

/// Stopping rules on the number of right answers (stopping_rule.h): what they truly do, say
/// `operate(rule, share)`. All functions take
/// @param trials  N, 1 to 1,000,000.
/// @param level   strictly between 0 and 1.
/// @param chance  probability that one guess is right, strictly between 0 and 1.
/// @param looks   trial numbers at which the test may stop, each larger than the one before; N is the last.
/// @throws std::domain_error  naming the argument, its value and its range.

/// The ordinary exact test: one look, after trial N.
StoppingRule fixed_rule(int trials, double level, double chance);

/// What must not be done: the one-sided exact test at the full `level` at every look from `first_look` on,
/// stopping at the first success. Here to show its price: at chance 1/2 and level 0.05 it gives a false
/// alarm in 0.0876 of tests of 16 trials, and in 0.245 of tests of 200.
StoppingRule unadjusted_rule(int trials, double level, double chance, int first_look = 1);
StoppingRule unadjusted_rule(std::span<const int> looks, double level, double chance);

/// A group-sequential boundary for normal scores put to counts: support at look k when
/// (count - n chance)/sqrt(n chance (1 - chance)) >= boundary[k]. An approximation in that its rate of false
/// alarms is only near that of the boundary, above or below it: with the one-sided boundary of 0.05 it is
/// 0.0577 for one look after 20 trials, and 0.0437 for Pocock's after 16, 32, 48 and 64. `spending_rule` holds
/// the level exactly.
/// @param boundary  one number for each look; infinity closes the look. Not-a-number is refused.
StoppingRule score_rule(std::span<const int> looks, std::span<const double> boundary, double chance);

/// Logarithm of an e-process that depends on the count alone: log e for `correct` of `trials`.
using LogEProcess = std::function<double(int correct, int trials)>;

/// Support as soon as the e-process is 1/level or more. By Ville's inequality this is a false alarm in at
/// most `level` of tests, however long they go on.
/// @param log_e  must be quasi-convex in `correct`: falling, then rising (or only one of the two), as every
/// mixture in evidence/e_process.h is. Where it is large at the low counts also, that side is `give_up`: fewer right
/// than chance explains.
/// Example: the likelihood ratio against 0.75 at chance 1/2 and level 0.05 asks for 8 of 8, 12 of 14 or 13 of
/// 16; the fixed test of 16 trials asks for 12.
StoppingRule e_process_rule(int trials, double level, const LogEProcess& log_e);

}  // namespace stats
