#pragma once

#include <optional>

#include "stats/share/interval.h"

namespace stats {

/// The same question asked in two campaigns: right answers of each, and how far they differ. All answers are treated as
/// independent; of listeners who share trials see `stats/redraw`.
struct TwoShares {
  double difference;             ///< share of the second less that of the first
  Interval difference_interval;  ///< of Newcombe, from Wilson's intervals: an approximation
  double p;                      ///< of equal shares, exact: Fisher's, two-sided by small probabilities
  /// Of the second against the first, given both sums: the value at which the count seen is the mean. 0 or infinite at the ends;
  /// nothing where all answers are right or all wrong.
  std::optional<double> odds_ratio;
  std::optional<Interval> odds_ratio_interval;  ///< exact, at least the confidence
};

/// @param right_1, right_2    0 to the trials.
/// @param trials_1, trials_2  1 to 100,000.
/// @param confidence          strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: p and limits 1e-9 relative (tests/reference).
/// Example: 36 of 48 and 24 of 48: -0.25, interval -0.419 to -0.056, p 0.0198, odds ratio 0.337 (0.127 to 0.856).
/// Source: R. A. Fisher, Statistical Methods for Research Workers (1935); J. Cornfield, Proc. Third Berkeley Symp. 4 (1956)
/// 135; R. G. Newcombe, Statist. Med. 17 (1998) 873.
TwoShares compare_shares(int right_1, int trials_1, int right_2, int trials_2, double confidence);

}  // namespace stats
