#include "stats/pooled/subject_count.h"

#include <algorithm>

#include "stats/arguments.h"

namespace stats {

SubjectSums checked_sums(std::span<const SubjectCount> subjects, int most_trials) {
  require_count("number of subjects", std::ssize(subjects), 1, 10'000);
  SubjectSums sums{};
  bool pairs = false;
  for (const auto [correct, trials] : subjects) {
    require_count("trials", trials, 1, most_trials);
    require_count("correct", correct, 0, trials);
    sums.correct += correct;
    sums.trials += trials;
    pairs = pairs || trials > 1;
  }
  require_count("trials of all subjects", sums.trials, 1, 100'000);
  sums.can_vary = pairs && subjects.size() > 1 && sums.correct > 0 && sums.correct < sums.trials;
  return sums;
}

}  // namespace stats
