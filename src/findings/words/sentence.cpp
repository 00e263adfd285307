#include "findings/words/sentence.h"

#include <cmath>

#include "findings/words/numbers.h"
#include "plan/looks.h"
#include "stats/share/power.h"
#include "text/number.h"

namespace findings {
namespace {

using plan::Kind;

/// How a finding begins: what was looked for, and how it ended.
std::string opening(const ComparisonFinding& finding, bool has_right_answer) {
  const bool supported = finding.verdict == Verdict::supported;
  if (finding.verdict == Verdict::cannot_be_judged)
    return "Cannot be judged: " + listed(finding.reasons) + ".";
  if (finding.kind == Kind::identical_pair)
    return supported
               ? "Identical pair heard, though nothing was changed but the tag: something besides the cables "
                 "told them apart:"
               : "Identical pair not heard, as it should be:";
  if (finding.kind == Kind::known_difference)
    return supported ? "Known difference heard:" : "Known difference not heard:";
  if (has_right_answer) return supported ? "Difference supported:" : "Difference not shown:";
  return supported ? "Preference supported:" : "Preference not shown:";
}

std::string count_words(const plan::Plan& plan, const ComparisonFinding& finding) {
  const Tally& tally = finding.primary.tally;
  const auto& protocol = plan::protocol_of(plan);
  std::string text = std::to_string(tally.score) + " of " + std::to_string(tally.answers);
  text += protocol.has_right_answer() ? " " + std::string(protocol.score_word())
                                      : " answers for " + finding.first;
  if (finding.limits.treats_answers_as_independent) text += " (over " + counted(tally.trials, "trial") + ")";
  return text;
}

std::string test_words(const Findings& findings, const ComparisonFinding& finding, bool has_right_answer) {
  std::string text =
      std::string(", exact ") + (has_right_answer ? "one-sided " : "two-sided ") + p_words(finding.primary.p);
  if (finding.verdict == Verdict::cannot_be_judged) return text + ".";
  if (finding.p_adjusted)
    text +=
        ", " + text::p_value(*finding.p_adjusted) + " after Holm over " + counted(findings.family, "claim");
  return text + " (level " + text::shortest(findings.level) + ").";
}

std::string limit_words(const Findings& findings, const ComparisonFinding& finding, bool has_right_answer) {
  const Limits& limits = finding.limits;
  const std::string confidence = percent(1 - findings.level);
  const std::string lower = text::fixed(rounded_down(limits.lower), 3);
  const std::string upper = text::fixed(rounded_up(limits.upper), 3);
  const std::string words =
      limits.treats_answers_as_independent ? " (treats all answers as independent)." : ".";
  if (!has_right_answer)
    return " Two-sided " + confidence + " interval of the share for " + finding.first + ": " + lower +
           " to " + upper + words;
  const bool supported = finding.verdict == Verdict::supported;
  return " One-sided " + confidence + (supported ? " lower" : " upper") +
         " limit of the share right: " + (supported ? lower : upper) + words;
}

std::string caught_words(const plan::Plan& plan, const ComparisonFinding& finding, bool has_right_answer) {
  const WouldHaveBeenCaught& caught = finding.would_have_been_caught;
  const bool as_it_should_be =
      (finding.kind == Kind::identical_pair && finding.verdict == Verdict::not_shown) ||
      (finding.kind == Kind::known_difference && finding.verdict == Verdict::supported);
  if (!caught.share || as_it_should_be) return "";
  const double share = rounded_up(*caught.share);
  const bool alike = caught.answers > caught.trials;
  std::string text = " Had the long-run share " + std::string(has_right_answer ? "right" : "for one cable") +
                     " been " + text::fixed(share, 3) + " or more, sittings like these (" +
                     counted(caught.trials, "trial") +
                     (alike ? " with " + counted(caught.answers, "answer") : "") + ", level " +
                     text::fixed(caught.level, 4) + (finding.kind == Kind::claim ? " after Holm" : "") +
                     (alike ? ", listeners answering alike" : "") + ") would have supported it at least " +
                     text::fixed(100 * caught.probability, 0) + " times in 100.";
  if (caught.hearing_share)
    text += " Right in " + text::fixed(share, 3) + " means hearing it in about " +
            text::fixed(stats::share_heard(share, 0.5), 3) + " of trials and guessing the rest.";
  if (caught.probability_at_effect)
    text += " At the share worth finding, " + plan.effect_share + ": " +
            text::fixed(std::floor(100 * *caught.probability_at_effect), 0) + " times in 100.";
  return text;
}

std::string pace_words(const plan::Plan& plan, bool not_shown) {
  const std::string text = " Presentations of " + std::to_string(plan.presentation_seconds) + " s with " +
                           std::to_string(plan.swap_seconds) + " s between them";
  return text + (not_shown ? "; quicker switching may show more." : ".") +
         " For these listeners, this rig and this pace.";
}

std::string not_shown_words(const ComparisonFinding& finding, bool has_right_answer) {
  if (finding.kind != Kind::claim) return "";
  if (!has_right_answer) return " This says nothing about whether a difference was heard.";
  return finding.limits.treats_answers_as_independent ? " Pooled answers make no claim of similarity." : "";
}

/// What the looks of the plan did to a claim's trials.
std::string looks_words(const plan::Plan& plan, const ComparisonFinding& finding) {
  const auto looks = plan::looks_of(plan);
  if (!looks || finding.kind != Kind::claim) return "";
  const std::string taken = " p and limit take the plan's looks into account.";
  if (!finding.stopped_after) return taken;
  return " A look stopped it after " + std::to_string(*finding.stopped_after) + " of " +
         counted(looks->after.back(), "trial") + ";" + taken;
}

}  // namespace

std::string sentence_of(const Evidence& evidence, const Findings& findings,
                        const ComparisonFinding& finding) {
  const bool has_right_answer = plan::protocol_of(evidence.plan).has_right_answer();
  std::string text = opening(finding, has_right_answer);
  if (finding.primary.tally.answers == 0) return text + " No answers.";
  text += " " + count_words(evidence.plan, finding) + test_words(findings, finding, has_right_answer);
  text += looks_words(evidence.plan, finding);
  if (finding.verdict == Verdict::cannot_be_judged) return text + pace_words(evidence.plan, false);
  const bool not_shown = finding.verdict == Verdict::not_shown;
  text += limit_words(findings, finding, has_right_answer);
  if (not_shown) text += not_shown_words(finding, has_right_answer);
  text += caught_words(evidence.plan, finding, has_right_answer);
  return text + pace_words(evidence.plan, not_shown && finding.kind != Kind::identical_pair);
}

std::string level_sentence_of(const ComparisonFinding& finding) {
  const LevelFinding& level = finding.level;
  const std::string tolerance = text::fixed(level.tolerance_db, 2) + " dB";
  const std::string predicted =
      level.predicted_as_set_db
          ? " Predicted with the trims as set: " + signed_db(*level.predicted_as_set_db) + " (" +
                level.weighting + "), second less first."
          : "";
  if (!level.measured_db)
    return level.predicted_as_set_db ? "Level predicted only, not measured." + predicted
                                     : "Level not verified: neither measured nor predicted.";
  const std::string numbers = "mean " + signed_db(*level.measured_db) + ", farthest " +
                              signed_db(*level.largest_measured_db) + ", second less first";
  if (level.state == "matched")
    return "Level matched within " + tolerance +
           " at the load's terminals with the trims as set: " + numbers + "." + predicted;
  return "Level measured, not matched: " + numbers + ", against a tolerance of " + tolerance +
         (level.measured_completely ? "." : "; not every channel was measured at start and end.") + predicted;
}

std::string response_sentence_of(const ComparisonFinding& finding) {
  std::string text;
  if (const auto& residual = finding.predicted_residual; residual && finding.kind != Kind::identical_pair)
    text = "The circuit predicts that, with the trims as set, the response still differs by up to " +
           signed_db(residual->largest_db) + " at " + frequency_words(residual->frequency_of_largest_hz) +
           " (" + signed_db(residual->minimum_db) + " to " + signed_db(residual->maximum_db) + ", r.m.s. " +
           text::fixed(residual->rms_db, 2) + " dB, " + frequency_words(residual->low_hz) + " to " +
           frequency_words(residual->high_hz) + ").";
  if (const auto& measured = finding.measured) {
    text += (text.empty() ? "" : " ");
    text += "Measured, nothing trimmed: up to " + signed_db(measured->largest_db) + " at " +
            frequency_words(measured->frequency_of_largest_hz) + ", r.m.s. " +
            text::fixed(measured->rms_db, 2) + " dB, " + frequency_words(measured->low_hz) + " to " +
            frequency_words(measured->high_hz);
    text += measured->repeatability_db ? "; repeats of one cable differ by up to " +
                                             text::fixed(*measured->repeatability_db, 2) + " dB."
                                       : "; measured once, repeatability unknown.";
  }
  return text;
}

}  // namespace findings
