#include "findings/exploration/exploration.h"

#include <algorithm>
#include <map>

#include "findings/evidence.h"
#include "findings/exploration/listener.h"
#include "findings/finding.h"
#include "findings/listening/tally.h"
#include "stats/agreement/gwet.h"
#include "stats/pooled/overdispersion.h"
#include "stats/pooled/trend.h"

namespace findings {
namespace {

using Marks = std::map<int, std::vector<bool>>;  ///< by listener, in the order of trials: right or wrong

/// What `stats::trend_over_trials` takes.
constexpr std::size_t kMostRaters = 100, kMostAnswers = 1000;

Marks marks_by_listener(const std::vector<const TrialEvidence*>& trials) {
  Marks marks;
  for (const TrialEvidence* trial : trials)
    for (const auto& [listener, answer] : trial->answers) marks[listener].push_back(answer == trial->coin);
  return marks;
}

std::optional<Spread> spread_of(const Marks& marks) {
  std::vector<stats::SubjectCount> subjects;
  for (const auto& [listener, own] : marks)
    subjects.push_back(
        {static_cast<int>(std::count(own.begin(), own.end(), true)), static_cast<int>(own.size())});
  if (subjects.size() < 2) return std::nullopt;
  const auto z = stats::tarone_z(subjects);
  const auto test = stats::tarone_exact(subjects, kExplorationDraws);
  return z && test ? std::optional(Spread{*z, explored(*test)}) : std::nullopt;
}

std::optional<Drift> drift_of(const Marks& marks) {
  std::vector<std::vector<bool>> raters;
  for (const auto& [listener, own] : marks) raters.push_back(own);
  const bool too_many =
      std::any_of(raters.begin(), raters.end(), [](const auto& own) { return own.size() > kMostAnswers; });
  if (raters.empty() || raters.size() > kMostRaters || too_many) return std::nullopt;
  const auto trend = stats::trend_over_trials(raters, stats::Alternative::two_sided, kExplorationDraws);
  return Drift{double(trend.sum) > trend.expected, explored(trend.p)};
}

}  // namespace

Exploration exploration_of(const Evidence& evidence, const ComparisonFinding& finding) {
  Exploration found;
  if (finding.agreement)
    if (const auto gwet = stats::gwet_ac1(finding.agreement->counts)) {
      found.ac1 = gwet->coefficient;
      found.ac1_error = gwet->standard_error;
    }
  if (!plan::protocol_of(evidence.plan).has_right_answer()) return found;
  const auto trials = trials_of(evidence, finding.comparison);
  const Marks marks = marks_by_listener(trials);
  for (const auto& [listener, own] : marks) found.listeners.push_back(listener_exploration(trials, listener));
  if (marks.size() > 1 && evidence.plan.attendance != "one at a time") return found;
  found.spread = spread_of(marks);
  found.drift = drift_of(marks);
  return found;
}

}  // namespace findings
