#include "findings/listening/agreement.h"

#include <algorithm>

#include "findings/listening/tally.h"
#include "stats/resampling/agreement_permutation.h"
#include "stats/agreement/kappa.h"

namespace findings {
namespace {

/// What `stats::permutation_agreement` takes.
constexpr std::size_t kMostTrials = 1000;
constexpr std::size_t kMostListeners = 100;

/// Where arrangements are drawn, this many: a p of .05 is then known to .002, which is printed beside it.
constexpr stats::MonteCarlo kDraws{.seed = 1, .draws = 9'999};

std::vector<const TrialEvidence*> shared_trials(const Evidence& evidence, int comparison) {
  auto trials = trials_of(evidence, comparison);
  std::erase_if(trials, [](const TrialEvidence* trial) { return trial->answers.size() < 2; });
  return trials;
}

std::vector<stats::Marks> marks_of(const std::vector<const TrialEvidence*>& trials) {
  std::map<int, stats::Marks> by_listener;
  for (std::size_t i = 0; i < trials.size(); ++i)
    for (const auto& [listener, answer] : trials[i]->answers) {
      by_listener[listener].resize(trials.size());
      by_listener[listener][i] = answer == trials[i]->coin;
    }
  std::vector<stats::Marks> marks;
  for (const auto& [listener, row] : by_listener) marks.push_back(row);
  return marks;
}

stats::CountTable counts_of(const std::vector<const TrialEvidence*>& trials) {
  stats::CountTable counts;
  for (const TrialEvidence* trial : trials) {
    const auto scored =
        static_cast<int>(std::count_if(trial->answers.begin(), trial->answers.end(),
                                       [&](const auto& entry) { return entry.second == trial->coin; }));
    counts.push_back({scored, static_cast<int>(trial->answers.size()) - scored});
  }
  return counts;
}

bool nearly_all_in_one(const stats::CountTable& counts) {
  int scored = 0;
  int answers = 0;
  for (const auto& row : counts) {
    scored += row[0];
    answers += row[0] + row[1];
  }
  return std::max(scored, answers - scored) >= kNearlyAll * answers;
}

void count_pairs(Agreement& agreement) {
  const auto pairs = [](int n) { return n * (n - 1) / 2; };
  for (const auto& row : agreement.counts) {
    agreement.pairs += pairs(row[0] + row[1]);
    agreement.agreeing_pairs += pairs(row[0]) + pairs(row[1]);
  }
  agreement.raw = 1.0 * agreement.agreeing_pairs / agreement.pairs;
}

}  // namespace

std::optional<Agreement> agreement_of(const Evidence& evidence, int comparison) {
  const auto trials = shared_trials(evidence, comparison);
  if (trials.empty()) return std::nullopt;
  Agreement agreement;
  agreement.trials = static_cast<int>(trials.size());
  agreement.counts = counts_of(trials);
  agreement.nearly_all_in_one = nearly_all_in_one(agreement.counts);
  agreement.together = evidence.plan.attendance == "together";
  count_pairs(agreement);

  const auto marks = marks_of(trials);
  if (trials.size() <= kMostTrials && marks.size() <= kMostListeners) {
    const auto test = stats::permutation_agreement(marks, kDraws).test;
    agreement.p = test.p;
    if (!test.exact) agreement.p_standard_error = test.standard_error;
  }
  const bool all_answered = std::all_of(trials.begin(), trials.end(), [&](const TrialEvidence* trial) {
    return trial->answers.size() == marks.size();
  });
  if (all_answered && !agreement.nearly_all_in_one)
    if (const auto kappa = stats::fleiss_kappa(agreement.counts)) agreement.fleiss_kappa = kappa->kappa;
  return agreement;
}

}  // namespace findings
