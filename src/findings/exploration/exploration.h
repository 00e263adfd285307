#pragma once

#include <optional>
#include <vector>

namespace findings {

struct Evidence;
struct ComparisonFinding;

/// A p with its standard error where it was drawn at random.
struct ExploredP {
  double p = 1;
  std::optional<double> standard_error;
};

/// What else one listener's answers to one ABX comparison show.
struct ListenerExploration {
  int listener = 0;
  int answers = 0;
  double d_prime = 0;                           ///< by differencing; infinity where every answer was right
  double d_prime_lower = 0, d_prime_upper = 0;  ///< 95 % likelihood interval, the upper may be infinity
  int answers_a = 0;
  double bias_p = 1;  ///< answers "A" against 1/2, exact and two-sided
  /// Rated answers: from surest "A" to surest "B", where X was A against where it was B.
  struct Sureness {
    int rated = 0;
    double area = 0;  ///< under the ROC: 1/2 is chance
    ExploredP test;   ///< two-sided
  };
  std::optional<Sureness> sureness;  ///< nothing unless both kinds of trial have rated answers
  /// Time from the presentation before to X, answers "A" less answers "B".
  struct SwapTime {
    double difference_s = 0;
    ExploredP test;  ///< two-sided
  };
  std::optional<SwapTime> swap_time;  ///< nothing unless both answers have known times
};

/// Whether the listeners of a comparison differ in their share right.
struct Spread {
  double tarone_z = 0;
  ExploredP test;  ///< one-sided, given the total right
};

/// Whether right answers come early or late over a comparison's trials.
struct Drift {
  bool late = false;  ///< later than without a drift
  ExploredP test;     ///< two-sided
};

/// What else the answers of a comparison show: explored, not planned; unadjusted, and no part of any verdict. All but the
/// agreement are for ABX.
struct Exploration {
  std::vector<ListenerExploration> listeners;  ///< those who answered
  /// Both take listeners as independent, so neither is there where several share their trials.
  std::optional<Spread> spread;  ///< of several listeners
  std::optional<Drift> drift;
  std::optional<double> ac1;        ///< Gwet's, on right and wrong or on the cable preferred
  std::optional<double> ac1_error;  ///< its standard error
};

/// @param finding  of the comparison; its agreement is used.
Exploration exploration_of(const Evidence& evidence, const ComparisonFinding& finding);

}  // namespace findings
