#pragma once

#include <cstdint>
#include <span>

namespace stats {

/// One subject's result.
struct SubjectCount {
  int correct;  ///< 0 to trials
  int trials;   ///< 1 or more
};

/// Sums over several subjects.
struct SubjectSums {
  std::int64_t correct;
  std::int64_t trials;
  /// Two subjects or more, one of them with two trials or more, something right and something wrong:
  /// otherwise nothing can be said about how subjects differ.
  bool can_vary;
};

/// @param subjects  1 to 10,000 with 1 to `most_trials` trials each, at most 100,000 trials in all.
/// @throws std::domain_error  naming the argument, its value and its range.
SubjectSums checked_sums(std::span<const SubjectCount> subjects, int most_trials);

}  // namespace stats
