#include "findings/exploration/exploration.h"

#include <algorithm>
#include <map>

#include "findings/evidence.h"
#include "findings/exploration/listener.h"
#include "findings/exploration/words.h"
#include "findings/finding.h"
#include "findings/listening/tally.h"
#include "plan/requirement.h"
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

std::optional<Spread> spread_of(const Marks& marks, double level) {
  std::vector<stats::SubjectCount> subjects;
  for (const auto& [listener, own] : marks)
    subjects.push_back(
        {static_cast<int>(std::count(own.begin(), own.end(), true)), static_cast<int>(own.size())});
  if (subjects.size() < 2) return std::nullopt;
  Spread spread;
  spread.tarone_z = stats::tarone_z(subjects);
  if (const auto test = stats::tarone_exact(subjects, kExplorationDraws)) spread.test = explored(*test);
  spread.sentence = sentence_of(spread, subjects.size(), level);
  return spread;
}

std::optional<Drift> drift_of(const Marks& marks, double level) {
  std::vector<std::vector<bool>> raters;
  for (const auto& [listener, own] : marks) raters.push_back(own);
  const bool too_many =
      std::any_of(raters.begin(), raters.end(), [](const auto& own) { return own.size() > kMostAnswers; });
  if (raters.empty() || raters.size() > kMostRaters || too_many) return std::nullopt;
  const auto trend = stats::trend_over_trials(raters, stats::Alternative::two_sided, kExplorationDraws);
  Drift drift{trend.sum, trend.expected, explored(trend.p), ""};
  drift.sentence = sentence_of(drift, level);
  return drift;
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
  const double level = plan::level_of(evidence.plan);
  for (const auto& [listener, own] : marks) found.listeners.push_back(listener_exploration(trials, listener));
  if (marks.size() < 2 || evidence.plan.attendance == "one at a time") {
    found.spread = spread_of(marks, level);
    found.drift = drift_of(marks, level);
  }
  found.remarks = remarks_on(evidence.plan, found);
  return found;
}

std::vector<AnswerShare> answer_shares_of(const Evidence& evidence) {
  if (!plan::protocol_of(evidence.plan).has_right_answer()) return {};
  std::vector<const TrialEvidence*> all;
  for (int i = 0; i < static_cast<int>(evidence.trials.size()); ++i)
    for (const TrialEvidence* trial : trials_of(evidence, i)) all.push_back(trial);
  std::vector<AnswerShare> shares;
  for (int listener = 0; listener < static_cast<int>(evidence.plan.listeners.size()); ++listener)
    if (const AnswerShare share = answer_share(all, listener); share.answers > 0) shares.push_back(share);
  return shares;
}

}  // namespace findings
