#include "findings/listening/verdict.h"

#include <algorithm>
#include <set>

#include "findings/listening/tally.h"
#include "findings/words/numbers.h"
#include "plan/requirement.h"
#include "stats/binomial.h"
#include "stats/level.h"
#include "stats/multiplicity.h"
#include "stats/power.h"

namespace findings {
namespace {

using plan::Kind;

std::string tally_words(const Tally& tally) {
  return std::to_string(tally.score) + " of " + std::to_string(tally.answers);
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
  if (caught.needed <= caught.trials) return;
  reasons.push_back("too few answers: with " + counted(caught.trials, "trial") +
                    " analysed, not even all answers alike would reach the level " + fixed(caught.level, 4));
}

void add_identical_pairs_heard(const Findings& findings, std::vector<std::string>& reasons) {
  for (const ComparisonFinding& control : findings.comparisons)
    if (control.kind == Kind::identical_pair && is_heard(control, findings.level))
      reasons.push_back("an identical pair was heard (" + control.title + ": " +
                        tally_words(control.primary.tally) + ", " + p_words(control.primary.p) +
                        "): something besides the cables told them apart");
}

std::vector<std::string> known_differences_not_heard(const Findings& findings) {
  std::vector<std::string> reasons;
  for (const ComparisonFinding& control : findings.comparisons)
    if (control.kind == Kind::known_difference && control.verdict != Verdict::supported)
      reasons.push_back("the known difference " + control.title + " was not heard (" +
                        tally_words(control.primary.tally) + ", " + p_words(control.primary.p) + ")");
  return reasons;
}

void judge_control(const Evidence& evidence, const Findings& findings, ComparisonFinding& control) {
  control.reasons = bars(evidence, findings, control);
  if (!control.reasons.empty()) {
    control.verdict = Verdict::cannot_be_judged;
  } else {
    control.verdict = is_heard(control, findings.level) ? Verdict::supported : Verdict::not_shown;
  }
}

void judge_claim(const Evidence& evidence, const Findings& findings, ComparisonFinding& claim) {
  if (!claim.reasons.empty()) {
    claim.verdict = Verdict::cannot_be_judged;
    return;
  }
  if (stats::reaches(*claim.p_adjusted, findings.level)) {
    claim.verdict = Verdict::supported;
    if (evidence.ender_had_seen)
      claim.reasons = {"the plan was ended early by " + evidence.plan_ended_by +
                       ", who had seen both answers and order: it supports no finding"};
  } else {
    claim.verdict = Verdict::not_shown;
    if (evidence.plan.judging.known_difference_not_heard)
      claim.reasons = known_differences_not_heard(findings);
  }
  if (!claim.reasons.empty()) claim.verdict = Verdict::cannot_be_judged;
}

}  // namespace

double first_step_level(const plan::Plan& plan, Kind kind) {
  return plan::level_of(plan) / (kind == Kind::claim ? plan::family_size(plan) : 1);
}

WouldHaveBeenCaught would_have_been_caught(const plan::Plan& plan, Kind kind, int analysed_trials) {
  WouldHaveBeenCaught caught;
  caught.trials = analysed_trials;
  caught.level = first_step_level(plan, kind);
  caught.needed = analysed_trials + 1;
  if (analysed_trials == 0) return caught;
  // A two-sided test at a level supports one direction as a one-sided test at half of it.
  const bool has_right_answer = plan::protocol_of(plan).has_right_answer();
  const double one_sided_level = has_right_answer ? caught.level : caught.level / 2;
  caught.needed = stats::minimum_correct(analysed_trials, one_sided_level, 0.5).value_or(caught.needed);
  caught.share = stats::smallest_share_caught(analysed_trials, one_sided_level, 0.5, caught.probability);
  if (caught.share && has_right_answer) caught.hearing_share = stats::share_heard(*caught.share, 0.5);
  if (const auto effect = typed_number("effect_share", plan.effect_share))
    caught.probability_at_effect =
        stats::power_of_trials(*effect, analysed_trials, one_sided_level, 0.5).power;
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
  std::vector<ComparisonFinding*> claims;
  std::vector<double> p;
  for (ComparisonFinding& finding : findings.comparisons) {
    if (finding.kind != Kind::claim) {
      judge_control(evidence, findings, finding);
      continue;
    }
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
