#pragma once

#include <optional>
#include <string>
#include <vector>

namespace findings {

struct Evidence;

/// Worths of the cables of a preference plan on one scale, from the answers to all its claims: explored, unadjusted but where
/// said, and no part of any verdict.
struct PreferenceScale {
  enum class State {
    estimated,
    corrected,  ///< nobody ever preferred some of them: finite only by a correction for bias
    apart       ///< cables fall into groups that were never compared with each other: there is no scale
  };

  struct Cable {
    std::string title;
    double worth = 0;                   ///< log odds of being preferred to the first of the list
    double standard_error = 0;          ///< of the worth; 0 for the first
    std::optional<double> quasi_error;  ///< of its own: for comparing any two; three cables or more
  };

  /// Two cables, by everything answered about all.
  struct Pair {
    int first = 0, second = 0;  ///< places in `cables`
    double difference = 0;      ///< worth of the first less that of the second
    double p_adjusted = 1;      ///< likelihood ratio, Holm over all pairs
  };

  State state = State::estimated;
  std::vector<std::vector<std::string>> groups;  ///< where apart
  int answers = 0;
  std::vector<Cable> cables;  ///< the plan's baseline first, else in the plan's order; empty where apart
  double order_effect =
      0;  ///< log odds of preferring the one that was played first, of two cables of the same worth
  double order_error = 0;   ///< its standard error
  std::vector<Pair> pairs;  ///< only where estimated
  /// Whether one scale is enough, by simulation; nothing where nothing is left to test, and where corrected.
  std::optional<double> fit_p, fit_p_standard_error;
  std::string sentence;
};

/// @return  nothing for a protocol in which an answer can be right, and without answers to two claims or more.
std::optional<PreferenceScale> preference_scale_of(const Evidence& evidence);

}  // namespace findings
