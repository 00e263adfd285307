#include "findings/findings.h"

#include <algorithm>

#include "findings/circuit/level.h"
#include "findings/circuit/measured.h"
#include "findings/consistency.h"
#include "findings/correlation/correlation.h"
#include "findings/exploration/exploration.h"
#include "findings/listening/agreement.h"
#include "findings/listening/listeners.h"
#include "findings/listening/pace.h"
#include "findings/listening/tally.h"
#include "findings/listening/verdict.h"
#include "findings/scale/scale.h"
#include "findings/words/cautions.h"
#include "findings/words/conditions.h"
#include "findings/words/sentence.h"
#include "plan/looks.h"
#include "plan/requirement.h"

namespace findings {
namespace {

bool was_corrected(const TrialEvidence& trial, const std::optional<int>& only) {
  return std::any_of(trial.first_answers.begin(), trial.first_answers.end(), [&](const auto& first) {
    return (!only || first.first == *only) && trial.was_corrected(first.first);
  });
}

void count_fates(const Evidence& evidence, ComparisonFinding& finding) {
  for (const TrialEvidence* trial : trials_of(evidence, finding.comparison, {.spoiled = true})) {
    finding.spoiled += trial->fate == Fate::spoiled;
    finding.late_spoiled += trial->fate == Fate::late_spoiled;
    if (trial->fate != Fate::spoiled) finding.missing += static_cast<int>(trial->missing.size());
  }
}

/// Answers of each trial analysed; where a look stopped the trials, those left out are added with as many answers as the
/// fullest trial has: how long it went on is a result, and no part of the design.
std::vector<int> designed_answers(const Evidence& evidence, const ComparisonFinding& finding,
                                  const Counting& counting) {
  std::vector<int> answers = answers_by_trial(evidence, finding.comparison, counting);
  if (finding.stopped_after)
    answers.resize(static_cast<std::size_t>(plan::looks_of(evidence.plan)->after.back()),
                   *std::max_element(answers.begin(), answers.end()));
  return answers;
}

/// The primary test, counted in every way that a reader may ask for.
void count_answers(const Evidence& evidence, ComparisonFinding& finding) {
  const Counting primary{.listener = primary_listener(evidence.plan)};
  const auto counted_with = [&](auto change) {
    Counting counting = primary;
    change(counting);
    return tested(evidence, finding.comparison, counting);
  };
  finding.primary = tested(evidence, finding.comparison, primary);
  finding.with_spoiled = counted_with([](Counting& counting) { counting.spoiled = true; });
  finding.without_spoiled = counted_with([](Counting& counting) { counting.late_spoiled = false; });
  const auto trials = trials_of(evidence, finding.comparison, primary);
  if (std::any_of(trials.begin(), trials.end(),
                  [&](const auto* trial) { return was_corrected(*trial, primary.listener); }))
    finding.first_answers = counted_with([](Counting& counting) { counting.first_answers = true; });
  finding.limits = limits_with_looks(evidence, finding.comparison, primary)
                       .value_or(limits_of(evidence.plan, finding.primary.tally,
                                           of_several_listeners(evidence, finding.comparison, primary)));
  finding.stopped_after = stopped_after(evidence.plan, finding.kind, finding.primary);
  finding.would_have_been_caught =
      would_have_been_caught(evidence.plan, finding.kind, designed_answers(evidence, finding, primary));
}

ComparisonFinding described(const Evidence& evidence, int index) {
  const plan::Plan& plan = evidence.plan;
  const plan::Comparison& comparison = plan.comparisons.at(static_cast<std::size_t>(index));
  ComparisonFinding finding;
  finding.comparison = index;
  finding.title = plan::title_of(plan, comparison);
  finding.first = plan::title_of(plan.specimens.at(static_cast<std::size_t>(comparison.first)));
  finding.second = plan::title_of(plan.specimens.at(static_cast<std::size_t>(comparison.second)));
  finding.kind = comparison.kind;
  count_fates(evidence, finding);
  count_answers(evidence, finding);
  finding.listeners = listener_results(evidence, index);
  if (!plan::protocol_of(plan).has_right_answer())
    finding.opposed = are_opposed(finding.listeners, plan::level_of(plan));
  if (listeners_of(plan, index).size() > 1) finding.agreement = agreement_of(evidence, index);
  finding.exploration = exploration_of(evidence, finding);
  describe_level(evidence, finding);
  describe_measured_response(evidence, finding);
  return finding;
}

}  // namespace

Findings findings_of(const Evidence& evidence) {
  check_consistency(evidence);
  Findings findings;
  findings.level = plan::level_of(evidence.plan);
  findings.family = plan::family_size(evidence.plan);
  for (int i = 0; i < static_cast<int>(evidence.plan.comparisons.size()); ++i)
    findings.comparisons.push_back(described(evidence, i));
  judge(evidence, findings);
  adjust_listeners(findings);
  findings.correlations = correlations_of(evidence, findings);
  findings.pace = pace_of(evidence);
  findings.answer_shares = answer_shares_of(evidence);
  findings.preference_scale = preference_scale_of(evidence);
  for (ComparisonFinding& finding : findings.comparisons) {
    finding.sentence = sentence_of(evidence, findings, finding);
    finding.level_sentence = level_sentence_of(finding);
    finding.response_sentence = response_sentence_of(finding);
    finding.cautions = cautions_of(evidence, finding);
  }
  findings.conditions = conditions_of(evidence);
  findings.cautions = plan_cautions(evidence, findings);
  findings.limits_of_the_method = limits_of_the_method(evidence);
  return findings;
}

}  // namespace findings
