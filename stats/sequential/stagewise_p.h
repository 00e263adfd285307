#pragma once

#include <span>

#include "stats/sequential/stopping_rule.h"

namespace stats {

/// One-sided p of a test that may stop early in support, by the stage-wise order: what counts against the null at least
/// as much as the end seen is stopping in support earlier, or coming as far and having a total this large or larger.
/// It is at most the level spent up to the last look just when that look supports. For a test that could not stop
/// early it is the ordinary p.
///
/// @param rule      with bounds for every trial up to the end, 1 or more; `give_up` and the last trial's own bound are
///                  not used.
/// @param gains     one for each trial up to the end.
/// @param observed  the total at the end, 0 to 1,000,000.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: as `operate`.
///
/// Example: looks after 8, 16 and 24 trials at chance 1/2 with 0.01, 0.02 and 0.05 spent, stopped after 16 with 13
/// right: 0.0131.
/// Source: A. A. Tsiatis, G. L. Rosner and C. R. Mehta, Biometrics 40 (1984) 797 (memory).
double stagewise_p(const StoppingRule& rule, std::span<const Gain> gains, int observed);

/// One-sided limits of the share right by the same order, for answers that are independent and right with one share: the
/// share at which an end like this or beyond (for the upper limit: like this or short of it) has probability
/// 1 - confidence. The lower limit is above chance just when the p is below 1 - confidence.
///
/// @param rule        with bounds for every answer up to the end.
/// @param observed    right answers, 0 to their number.
/// @param confidence  strictly between 0 and 1.
/// @return  the lower is 0 with nothing right, the upper 1 with everything right. Error below 1e-9.
/// Example: the same test at 0.95: 0.576 and 0.945; a fixed number of 16 trials: 0.583 and 0.945.
double stagewise_lower(const StoppingRule& rule, int observed, double confidence);
double stagewise_upper(const StoppingRule& rule, int observed, double confidence);

}  // namespace stats
