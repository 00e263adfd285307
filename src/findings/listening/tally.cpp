#include "findings/listening/tally.h"

#include <algorithm>
#include <set>
#include <stdexcept>

#include "plan/looks.h"
#include "plan/requirement.h"
#include "stats/level.h"
#include "stats/redraw/redraw.h"
#include "stats/sequential/stagewise_p.h"
#include "stats/share/interval.h"

namespace findings {
namespace {

bool is_held(const Evidence& evidence, int sitting) {
  return std::any_of(evidence.sittings.begin(), evidence.sittings.end(),
                     [&](const SittingEvidence& one) { return one.number == sitting && one.held; });
}

bool is_counted(Fate fate, const Counting& counting) {
  switch (fate) {
    case Fate::counted:
      return true;
    case Fate::spoiled:
      return counting.spoiled;
    case Fate::late_spoiled:
      return counting.late_spoiled;
    case Fate::not_played:
      return false;
  }
  throw std::logic_error("a fate of trials that no tally knows");
}

/// The answers that count: by listener, the index of the answer.
std::map<int, int> answers_of(const TrialEvidence& trial, const Counting& counting) {
  std::map<int, int> answers = trial.answers;
  if (counting.first_answers)
    for (const auto& [listener, answer] : trial.first_answers) answers[listener] = answer;
  if (counting.listener)
    std::erase_if(answers, [&](const auto& entry) { return entry.first != *counting.listener; });
  return answers;
}

struct Counted {
  Tally tally;
  std::vector<stats::Split> splits;
};

Counted count(const Evidence& evidence, int comparison, const Counting& counting) {
  Counted result;
  for (const TrialEvidence* trial : trials_of(evidence, comparison, counting)) {
    const auto answers = answers_of(*trial, counting);
    if (answers.empty()) continue;
    stats::Split split{0, 0};
    for (const auto& [listener, answer] : answers) ++(answer == 0 ? split.one : split.other);
    result.tally.score += trial->coin == 0 ? split.one : split.other;
    result.tally.answers += split.one + split.other;
    ++result.tally.trials;
    result.splits.push_back(split);
  }
  return result;
}

/// The listener who alone attends a comparison; nothing for several.
std::optional<int> only_listener(const plan::Plan& plan, int comparison) {
  std::set<int> attending;
  for (const plan::Part& part : plan.sittings)
    if (std::find(part.comparisons.begin(), part.comparisons.end(), comparison) != part.comparisons.end())
      attending.insert(part.listeners.begin(), part.listeners.end());
  return attending.size() == 1 ? std::optional(*attending.begin()) : std::nullopt;
}

/// Whether these are the answers that the plan looks at.
bool is_looked_at(const plan::Plan& plan, int comparison, const Counting& counting) {
  if (plan.comparisons[static_cast<std::size_t>(comparison)].kind != plan::Kind::claim ||
      !plan::looks_of(plan))
    return false;
  const auto primary = primary_listener(plan);
  return counting.listener == primary || (!primary && counting.listener == only_listener(plan, comparison));
}

/// The stage-wise p of trials that could have been stopped at an earlier look.
double p_with_looks(const plan::Plan& plan, const std::vector<stats::Split>& splits, int score) {
  std::vector<stats::Gain> gains;
  for (const auto [one, other] : splits) gains.push_back({one, other, 0.5});
  return stats::stagewise_p(plan::bounds_of(plan, *plan::looks_of(plan), splits), gains, score);
}

}  // namespace

std::optional<int> primary_listener(const plan::Plan& plan) {
  if (plan.primary_test == "pooled") return std::nullopt;
  const auto found = std::find(plan.listeners.begin(), plan.listeners.end(), plan.primary_test);
  if (found == plan.listeners.end())
    throw std::domain_error("primary test must be \"pooled\" or a listener's name, got \"" +
                            plan.primary_test + "\"");
  return static_cast<int>(found - plan.listeners.begin());
}

std::vector<const TrialEvidence*> trials_of(const Evidence& evidence, int comparison,
                                            const Counting& counting) {
  std::vector<const TrialEvidence*> trials;
  for (const TrialEvidence& trial : evidence.trials.at(static_cast<std::size_t>(comparison)))
    if (is_counted(trial.fate, counting) && is_held(evidence, trial.sitting)) trials.push_back(&trial);
  return trials;
}

Tested tested(const Evidence& evidence, int comparison, const Counting& counting) {
  const auto [tally, splits] = count(evidence, comparison, counting);
  if (tally.answers == 0) return {tally, 1};
  if (is_looked_at(evidence.plan, comparison, counting))
    return {tally, p_with_looks(evidence.plan, splits, tally.score)};
  const bool one_sided = plan::protocol_of(evidence.plan).has_right_answer();
  return {tally, one_sided ? stats::redraw_at_least(splits, tally.score)
                           : stats::redraw_two_sided(splits, tally.score)};
}

double p_of_so_few(const Evidence& evidence, int comparison, const Counting& counting) {
  const auto [tally, splits] = count(evidence, comparison, counting);
  return stats::redraw_at_most(splits, tally.score);
}

std::vector<int> answers_by_trial(const Evidence& evidence, int comparison, const Counting& counting) {
  std::vector<int> answers;
  for (const auto [one, other] : count(evidence, comparison, counting).splits) answers.push_back(one + other);
  return answers;
}

std::optional<int> stopped_after(const plan::Plan& plan, plan::Kind kind, const Tested& primary) {
  const auto looks = plan::looks_of(plan);
  if (!looks || kind != plan::Kind::claim) return std::nullopt;
  const std::vector<double> spent = plan::spent_at(plan, *looks);
  for (std::size_t i = 0; i + 1 < spent.size(); ++i)
    if (looks->after[i] == primary.tally.trials && stats::reaches(primary.p, spent[i]))
      return primary.tally.trials;
  return std::nullopt;
}

std::optional<Limits> limits_with_looks(const Evidence& evidence, int comparison, const Counting& counting) {
  if (!is_looked_at(evidence.plan, comparison, counting)) return std::nullopt;
  const auto [tally, splits] = count(evidence, comparison, counting);
  Limits limits;
  limits.treats_answers_as_independent = of_several_listeners(evidence, comparison, counting);
  if (tally.answers == 0) return limits;
  const stats::StoppingRule trials = plan::bounds_of(evidence.plan, *plan::looks_of(evidence.plan), splits);
  stats::StoppingRule answers;  // a trial's bound stands after the last of its answers
  for (std::size_t i = 0; i < splits.size(); ++i) {
    answers.looks.resize(answers.looks.size() + static_cast<std::size_t>(splits[i].one + splits[i].other));
    answers.looks.back() = trials.looks[i];
  }
  const double confidence = 1 - plan::level_of(evidence.plan);
  limits.share = 1.0 * tally.score / tally.answers;
  limits.lower = stats::stagewise_lower(answers, tally.score, confidence);
  limits.upper = stats::stagewise_upper(answers, tally.score, confidence);
  return limits;
}

Limits limits_of(const plan::Plan& plan, const Tally& tally, bool several_listeners) {
  Limits limits;
  limits.treats_answers_as_independent = several_listeners;
  if (tally.answers == 0) return limits;
  const double level = plan::level_of(plan) / (plan::protocol_of(plan).has_right_answer() ? 1 : 2);
  limits.share = 1.0 * tally.score / tally.answers;
  limits.lower = stats::clopper_pearson_lower(tally.score, tally.answers, 1 - level);
  limits.upper = stats::clopper_pearson_upper(tally.score, tally.answers, 1 - level);
  return limits;
}

bool of_several_listeners(const Evidence& evidence, int comparison, const Counting& counting) {
  std::set<int> listeners;
  for (const TrialEvidence* trial : trials_of(evidence, comparison, counting))
    for (const auto& [listener, answer] : answers_of(*trial, counting)) listeners.insert(listener);
  return listeners.size() > 1;
}

}  // namespace findings
