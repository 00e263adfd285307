#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace findings {

struct Evidence;
struct ComparisonFinding;

/// A p with its standard error where it was drawn at random.
struct ExploredP {
  double p = 1;
  std::optional<double> standard_error;
};

/// The area under a receiver operating characteristic, 1/2 by chance, with its two-sided p.
struct RocFinding {
  double area = 0.5;
  ExploredP test;
};

/// One listener's answers "A" over answers to ABX; p against 1/2, exact and two-sided.
struct AnswerShare {
  int listener = 0;
  int answers = 0;
  int answers_a = 0;
  double p = 1;
};

/// What else one listener's answers to one ABX comparison show.
struct ListenerExploration {
  int listener = 0;
  double d_prime = 0;                           ///< by differencing; infinity where every answer was right
  double d_prime_lower = 0, d_prime_upper = 0;  ///< 95 % likelihood interval, the upper may be infinity
  std::string d_prime_remark;                   ///< where d' is no ordinary number, else ""
  AnswerShare bias;
  int rated = 0;                  ///< answers with a level of sureness
  std::optional<RocFinding> roc;  ///< surest "A" to surest "B", where X was A against where it was B
  std::optional<RocFinding> surer_when_right;  ///< surest to least sure, right answers against wrong ones
  int timed = 0;  ///< answers whose time from the presentation before to X is known
  /// That time, answers "A" against answers "B".
  struct SwapTime {
    double mean_a_s = 0, mean_b_s = 0, difference_s = 0;  ///< the difference: A less B
    ExploredP test;                                       ///< two-sided
  };
  std::optional<SwapTime> swap_time;  ///< nothing unless both answers have known times
};

/// Whether the listeners of a comparison differ in their share right.
struct Spread {
  std::optional<double> tarone_z;  ///< nothing where everything was right or everything wrong
  std::optional<ExploredP> test;   ///< one-sided, given the total right
  std::string sentence;
};

/// Whether right answers come early or late over a comparison's trials.
struct Drift {
  std::int64_t sum = 0;  ///< of the places of right answers among a listener's own, over all listeners
  double expected = 0;   ///< its mean without a drift
  ExploredP test;        ///< two-sided
  std::string sentence;
};

/// What else the answers of a comparison show: explored, not planned; unadjusted, and no part of any verdict. All but the
/// agreement are for ABX.
struct Exploration {
  std::vector<ListenerExploration> listeners;  ///< those who answered
  /// Both take listeners as independent, so neither is there where several share their trials.
  std::optional<Spread> spread;  ///< of several listeners
  std::optional<Drift> drift;
  std::optional<double> ac1;         ///< Gwet's, on right and wrong or on the cable preferred
  std::optional<double> ac1_error;   ///< its standard error
  std::vector<std::string> remarks;  ///< what was left out or not computed, and why
};

/// @param finding  of the comparison; its agreement is used.
Exploration exploration_of(const Evidence& evidence, const ComparisonFinding& finding);

/// Each listener's own answers "A" over all comparisons of an ABX plan, controls among them; those who answered.
std::vector<AnswerShare> answer_shares_of(const Evidence& evidence);

}  // namespace findings
