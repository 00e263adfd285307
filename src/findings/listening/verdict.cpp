#include "findings/listening/verdict.h"

#include <algorithm>
#include <numeric>
#include <set>

#include "findings/listening/tally.h"
#include "findings/words/numbers.h"
#include "plan/looks.h"
#include "plan/requirement.h"
#include "stats/level.h"
#include "stats/multiplicity.h"
#include "stats/redraw/redraw.h"
#include "stats/sequential/sequential_power.h"
#include "stats/share/power.h"
#include "text/number.h"

namespace findings {
namespace {

using plan::Kind;

std::string outcome_words(const ComparisonFinding& control) {
  return std::to_string(control.primary.tally.score) + " of " +
         std::to_string(control.primary.tally.answers) + ", " + p_words(control.primary.p);
}

/// Level at the family's first step: the plan's, divided by the number of claims; undivided for a control.
double first_step_level(const plan::Plan& plan, Kind kind) {
  return plan::level_of(plan) / (kind == Kind::claim ? plan::family_size(plan) : 1);
}

void add_wrong_tag(const SittingEvidence& sitting, std::vector<std::string>& reasons) {
  if (sitting.wrong_tag_reported)
    reasons.push_back("in sitting " + std::to_string(sitting.number) +
                      " a wrong tag was reported after its answers were in");
}

void add_broken_separation(const SittingEvidence& sitting, std::vector<std::string>& reasons) {
  for (const auto& declaration : sitting.declarations)
    if (!declaration.kept)
      reasons.push_back("in sitting " + std::to_string(sitting.number) + " " + declaration.who +
                        " declared at the " + declaration.moment + " that the separation was not kept" +
                        (declaration.words.empty() ? "" : ": \"" + declaration.words + "\""));
}

void add_too_few(const ComparisonFinding& finding, std::vector<std::string>& reasons) {
  const WouldHaveBeenCaught& caught = finding.would_have_been_caught;
  if (caught.needed <= caught.answers) return;
  reasons.push_back("too few answers: with " + counted(caught.trials, "trial") +
                    " analysed, not even all answers alike would reach the level " +
                    text::fixed(caught.level, 4));
}

void add_identical_pairs_heard(const Findings& findings, std::vector<std::string>& reasons) {
  for (const ComparisonFinding& control : findings.comparisons) {
    if (control.kind != Kind::identical_pair || !is_heard(control, findings.level)) continue;
    const std::string heard =
        "an identical pair was heard (" + control.title + ": " + outcome_words(control) + ")";
    reasons.push_back(control.verdict == Verdict::cannot_be_judged
                          ? heard + " and could not itself be judged (" + listed(control.reasons) + ")"
                          : heard + ": something besides the cables told them apart");
  }
}

std::vector<std::string> known_differences_not_heard(const Findings& findings) {
  std::vector<std::string> reasons;
  for (const ComparisonFinding& control : findings.comparisons) {
    if (control.kind != Kind::known_difference || control.verdict == Verdict::supported) continue;
    const std::string name = "the known difference " + control.title;
    reasons.push_back(control.verdict == Verdict::cannot_be_judged
                          ? name + " could not be judged (" + listed(control.reasons) + ")"
                          : name + " was not heard (" + outcome_words(control) + ")");
  }
  return reasons;
}

/// Why a result that reaches the level supports nothing all the same.
std::vector<std::string> reasons_against_support(const Evidence& evidence) {
  const auto ended_by = [](const std::string& what, const std::string& who) {
    return what + " was ended early by " + who +
           ", who had seen both answers and order: it supports no finding";
  };
  if (evidence.ender_had_seen) return {ended_by("the plan", evidence.plan_ended_by)};
  for (const SittingEvidence& sitting : evidence.sittings)
    if (sitting.ender_had_seen)
      return {ended_by("sitting " + std::to_string(sitting.number), sitting.ended_by)};
  return {};
}

void judge_control(const Evidence& evidence, const Findings& findings, ComparisonFinding& control) {
  control.reasons = bars(evidence, findings, control);
  const bool heard = is_heard(control, findings.level);
  if (control.reasons.empty() && heard) control.reasons = reasons_against_support(evidence);
  control.verdict = !control.reasons.empty() ? Verdict::cannot_be_judged
                    : heard                  ? Verdict::supported
                                             : Verdict::not_shown;
}

void judge_claim(const Evidence& evidence, const Findings& findings, ComparisonFinding& claim) {
  if (!claim.reasons.empty()) {
    claim.verdict = Verdict::cannot_be_judged;
    return;
  }
  if (stats::reaches(*claim.p_adjusted, findings.level)) {
    claim.verdict = Verdict::supported;
    claim.reasons = reasons_against_support(evidence);
  } else {
    claim.verdict = Verdict::not_shown;
    if (evidence.plan.judging.known_difference_not_heard)
      claim.reasons = known_differences_not_heard(findings);
  }
  if (!claim.reasons.empty()) claim.verdict = Verdict::cannot_be_judged;
}

/// The same where the trials could be stopped at earlier looks.
void catch_with_looks(const plan::Plan& plan, const plan::Looks& looks,
                      const std::vector<stats::Split>& alike, const std::vector<int>& answers_by_trial,
                      WouldHaveBeenCaught& caught) {
  const stats::StoppingRule rule = plan::bounds_of(plan, looks, alike, true);
  int answers = 0;
  for (std::size_t i = 0; i < rule.looks.size(); ++i) {
    const int trials = static_cast<int>(i) + 1;
    const auto& support = rule.looks[i].support;
    answers += answers_by_trial[i];
    if (support) caught.needed = *support;
    if (std::find(looks.after.begin(), looks.after.end(), trials) != looks.after.end() ||
        i + 1 == rule.looks.size())
      caught.at_looks.push_back({trials, answers, support});
  }
  caught.share = stats::sequential_share_caught(rule, answers_by_trial, caught.probability);
  if (caught.share && *caught.share >= 0.5) caught.hearing_share = stats::share_heard(*caught.share, 0.5);
  if (const auto effect = typed_number("effect_share", plan.effect_share))
    caught.probability_at_effect = stats::sequential_power(rule, answers_by_trial, *effect);
}

}  // namespace

WouldHaveBeenCaught would_have_been_caught(const plan::Plan& plan, Kind kind,
                                           const std::vector<int>& answers_by_trial) {
  WouldHaveBeenCaught caught;
  caught.trials = static_cast<int>(answers_by_trial.size());
  caught.answers = std::accumulate(answers_by_trial.begin(), answers_by_trial.end(), 0);
  caught.level = first_step_level(plan, kind);
  caught.needed = caught.answers + 1;
  if (caught.trials == 0) return caught;
  // A two-sided test at a level supports one direction as a one-sided test at half of it.
  const bool has_right_answer = plan::protocol_of(plan).has_right_answer();
  const double one_sided_level = has_right_answer ? caught.level : caught.level / 2;
  std::vector<stats::Split> alike;
  for (const int answers : answers_by_trial) alike.push_back({answers, 0});
  if (const auto looks = plan::looks_of(plan); looks && kind == Kind::claim) {
    catch_with_looks(plan, *looks, alike, answers_by_trial, caught);
    return caught;
  }
  caught.needed = stats::redraw_minimum(alike, one_sided_level).value_or(caught.needed);
  caught.share = stats::redraw_share_caught(answers_by_trial, one_sided_level, caught.probability);
  if (caught.share && *caught.share >= 0.5 && has_right_answer)
    caught.hearing_share = stats::share_heard(*caught.share, 0.5);
  if (const auto effect = typed_number("effect_share", plan.effect_share))
    caught.probability_at_effect = stats::redraw_power(answers_by_trial, one_sided_level, *effect);
  return caught;
}

bool is_heard(const ComparisonFinding& finding, double level) {
  return finding.primary.tally.answers > 0 && stats::reaches(finding.primary.p, level);
}

std::vector<std::string> bars(const Evidence& evidence, const Findings& findings,
                              const ComparisonFinding& finding) {
  const plan::Judging& judging = evidence.plan.judging;
  std::vector<std::string> reasons;
  add_too_few(finding, reasons);
  std::set<int> played;
  for (const TrialEvidence* trial : trials_of(evidence, finding.comparison)) played.insert(trial->sitting);
  for (const SittingEvidence& sitting : evidence.sittings) {
    if (!played.contains(sitting.number)) continue;
    if (judging.tags_or_trims_wrong) add_wrong_tag(sitting, reasons);
    if (judging.separation_not_kept) add_broken_separation(sitting, reasons);
  }
  if (judging.identical_pair_heard && finding.kind == Kind::claim)
    add_identical_pairs_heard(findings, reasons);
  return reasons;
}

void judge(const Evidence& evidence, Findings& findings) {
  for (ComparisonFinding& finding : findings.comparisons)
    if (finding.kind != Kind::claim) judge_control(evidence, findings, finding);
  std::vector<ComparisonFinding*> claims;
  std::vector<double> p;
  for (ComparisonFinding& finding : findings.comparisons) {
    if (finding.kind != Kind::claim) continue;
    finding.reasons = bars(evidence, findings, finding);
    claims.push_back(&finding);
    p.push_back(finding.reasons.empty() ? finding.primary.p : 1);
  }
  const auto adjusted = stats::holm(p);
  for (std::size_t i = 0; i < claims.size(); ++i) {
    claims[i]->p_adjusted = adjusted[i];
    judge_claim(evidence, findings, *claims[i]);
  }
}

}  // namespace findings
