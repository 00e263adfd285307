#pragma once

#include <span>
#include <vector>

#include "stats/share/interval.h"

namespace stats {

/// Which of the candidates, counted from 0, have never been excluded: `first` to `last`, both included.
/// None any more: first = last + 1.
struct Survivors {
  int first;
  int last;
  bool none() const { return first > last; }
};

/// Hedged-capital confidence sequence for the mean of observations in [0, 1], over a grid of candidates:
/// after each observation, the candidates whose capital (`log_hedged_capital`) has never reached 1/level. With
/// probability at least 1 - level the true mean, if it is a candidate, survives all observations at once.
///
/// The survivors have no gaps: the half that bets upwards only falls from candidate to candidate, and the
/// other only rises, so the one excludes from below and the other from above, for good. When none is left,
/// the mean lies between two candidates (`interval_around` gives them), or the observations do not share one
/// mean, or this is one of the mistakes that `level` allows.
///
/// @param observations  1 to 1,000,000, each between 0 and 1.
/// @param candidates    1 to 1,000,000, each between 0 and 1 and larger than the one before.
/// @param level         strictly between 0 and 1.
/// @param cap           strictly between 0 and 1, as in betting.h.
/// @return  one for each observation.
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// Accuracy: the capitals are products with a relative error below t * 1e-15. A half that falls below 1e-280
/// is lifted to it, so that it cannot get stuck at 0; that raises the chance of a mistake by less than 1e-270.
/// Time: the number of observations times that of the surviving candidates.
/// Source: I. Waudby-Smith and A. Ramdas, J. R. Stat. Soc. B 86 (2024) 1.
std::vector<Survivors> hedged_survivors(std::span<const double> observations,
                                        std::span<const double> candidates, double level, double cap = 0.5);

/// The interval that covers every mean, candidate or not, with that confidence: from the largest candidate
/// excluded from below to the smallest excluded from above (0 and 1 where there is none). After the last
/// survivor has gone it is the gap between the two candidates where it vanished.
/// Example: candidates 0, 0.1, ..., 1 with survivors 4 to 9: 0.3 to 1.
Interval interval_around(const Survivors& survivors, std::span<const double> candidates);

/// The midpoints of `count` equal cells of 0 to 1: (i + 1/2)/count.
/// @param count  1 to 1,000,000.
std::vector<double> candidate_midpoints(int count);

}  // namespace stats
