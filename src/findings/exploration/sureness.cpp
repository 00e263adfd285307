#include "findings/exploration/sureness.h"

#include <array>
#include <numeric>

#include "findings/exploration/listener.h"
#include "stats/discrimination/roc.h"

namespace findings {
namespace {

constexpr std::array kSurestFirst{"certain", "fairly sure", "guess"};
constexpr std::size_t kLevels = kSurestFirst.size();

std::optional<std::size_t> sureness_place(const std::string& sureness) {
  for (std::size_t i = 0; i < kLevels; ++i)
    if (sureness == kSurestFirst[i]) return i;
  return std::nullopt;
}

std::optional<RocFinding> roc_of(const stats::RatedAnswers& rated) {
  const auto none = [](const std::vector<int>& counts) {
    return std::accumulate(counts.begin(), counts.end(), 0) == 0;
  };
  if (none(rated.signal) || none(rated.noise)) return std::nullopt;
  return RocFinding{stats::roc_area(rated).area,
                    explored(stats::roc_test(rated, stats::Alternative::two_sided, kExplorationDraws))};
}

}  // namespace

void add_sureness(ListenerExploration& found, const std::vector<const TrialEvidence*>& trials) {
  stats::RatedAnswers by_truth{std::vector<int>(2 * kLevels), std::vector<int>(2 * kLevels)};
  stats::RatedAnswers by_right{std::vector<int>(kLevels), std::vector<int>(kLevels)};
  for (const TrialEvidence* trial : trials) {
    const auto answer = trial->answers.find(found.listener);
    const auto sureness = trial->sureness.find(found.listener);
    if (answer == trial->answers.end() || sureness == trial->sureness.end()) continue;
    const auto place = sureness_place(sureness->second);
    if (!place) continue;
    ++found.rated;
    ++(trial->coin == 0 ? by_truth.signal
                        : by_truth.noise)[answer->second == 0 ? *place : 2 * kLevels - 1 - *place];
    ++(answer->second == trial->coin ? by_right.signal : by_right.noise)[*place];
  }
  found.roc = roc_of(by_truth);
  found.surer_when_right = roc_of(by_right);
}

}  // namespace findings
