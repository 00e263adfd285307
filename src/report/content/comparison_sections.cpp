#include <cmath>
#include <map>

#include "findings/words/numbers.h"
#include "report/content/sections.h"
#include "report/content/words.h"
#include "text/number.h"

namespace report {
namespace {

using findings::ComparisonFinding;
using findings::Findings;
using plan::Plan;

std::string score_title(const Plan& plan) { return capitalised(plan::protocol_of(plan).score_word()); }

Facts counts(const Plan& plan, const Findings& findings, const ComparisonFinding& finding) {
  const bool one_sided = plan::protocol_of(plan).has_right_answer();
  const std::string confidence = confidence_of(findings.level);
  const std::string sides = one_sided ? "one-sided " : "two-sided ";
  const std::string note =
      finding.limits.treats_answers_as_independent ? " (treats all answers as independent)" : "";
  Facts facts;
  auto add = [&](std::string term, std::string value) {
    facts.facts.push_back({std::move(term), std::move(value)});
  };
  for (const std::string& reason : finding.reasons) add("Cannot be judged", reason);
  if (finding.kind != plan::Kind::claim) add("Control", std::string(plan::name_of(finding.kind)));
  const auto& tally = finding.primary.tally;
  add(score_title(plan),
      tally.answers == 0 ? "no answer" : score_of(tally) + " (" + percent(finding.limits.share) + ")");
  add(one_sided ? "Exact p, one-sided" : "Exact p, two-sided", text::p_value(finding.primary.p));
  if (finding.p_adjusted)
    add("Adjusted p",
        text::p_value(*finding.p_adjusted) + " (Holm, family of " + std::to_string(findings.family) + ")");
  if (tally.answers > 0) {
    add("Lower limit, " + sides + confidence, lower_percent(finding.limits) + note);
    add("Upper limit, " + sides + confidence, upper_percent(finding.limits) + note);
  }
  add("Trials analysed", std::to_string(tally.trials));
  add("Missing answers", std::to_string(finding.missing));
  add("Spoiled trials", std::to_string(finding.spoiled) +
                            (finding.late_spoiled > 0 ? ", and " + std::to_string(finding.late_spoiled) +
                                                            " late (counted as answered)"
                                                      : ""));
  if (finding.spoiled > 0) add("With spoiled trials", score_and_p(finding.with_spoiled));
  if (finding.late_spoiled > 0) add("Without any spoiled trial", score_and_p(finding.without_spoiled));
  if (finding.first_answers) add("From first answers", score_and_p(*finding.first_answers));
  return facts;
}

/// Rounded up, so that the share printed is not smaller than the one that would have been caught.
std::string share_words(double share) { return text::fixed(findings::rounded_up(share), 3); }

std::string needed_words(const findings::WouldHaveBeenCaught& caught) {
  if (caught.needed > caught.answers) return "more than there were";
  if (caught.at_looks.empty()) return std::to_string(caught.needed) + " of " + std::to_string(caught.answers);
  std::string words;
  for (const auto& look : caught.at_looks)
    words += (words.empty() ? "" : "; ") +
             (look.needed ? std::to_string(*look.needed) + " of " + std::to_string(look.answers)
                          : "none would do") +
             " after " + counted(look.trials, "trial");
  return words;
}

Facts caught_facts(const Plan& plan, const findings::WouldHaveBeenCaught& caught) {
  const std::string often = text::fixed(100 * caught.probability, 0) + " times in 100";
  Facts facts;
  auto add = [&](std::string term, std::string value) {
    facts.facts.push_back({std::move(term), std::move(value)});
  };
  add(caught.at_looks.empty() ? "Trials, level of the first step" : "Trials planned, level of the first step",
      std::to_string(caught.trials) + ", " + text::significant(caught.level, 3));
  add(caught.answers > caught.trials ? "Answers needed, all of a trial alike" : "Answers needed",
      needed_words(caught));
  add("Long-run share caught " + often,
      caught.share ? share_words(*caught.share) + " or more" : "none, however high");
  if (caught.hearing_share) add("that is, heard in this part of trials", share_words(*caught.hearing_share));
  if (caught.probability_at_effect)
    add("At the share worth finding, " + plan.effect_share,
        "supported " + text::fixed(std::floor(100 * *caught.probability_at_effect), 0) + " times in 100");
  return facts;
}

Table listener_table(const Plan& plan, const Findings& findings, const ComparisonFinding& finding) {
  const bool right = plan::protocol_of(plan).has_right_answer();
  const std::string confidence = confidence_of(findings.level);
  Table table{"Each listener: exact p, adjusted in the family of tests per listener, " +
                  std::string(right ? "one-sided limits at " : "two-sided interval at ") + confidence,
              {{"Listener"},
               {score_title(plan), true},
               {"Share", true},
               {"Exact p", true},
               {"Adjusted p", true},
               {"At least", true},
               {"At most", true}},
              {},
              {}};
  if (!right) table.columns.push_back({"Sign test p", true});
  for (const auto& one : finding.listeners) {
    const bool any = one.tested.tally.answers > 0;
    table.rows.push_back({listener_of(plan, one.listener), score_of(one.tested.tally),
                          any ? percent(one.limits.share) : "\u2013", text::p_value(one.tested.p),
                          text::p_value(one.p_adjusted), any ? lower_percent(one.limits) : "\u2013",
                          any ? upper_percent(one.limits) : "\u2013"});
    if (!right) table.rows.back().push_back(one.sign_test_p ? text::p_value(*one.sign_test_p) : "\u2013");
  }
  return table;
}

Table agreement_table(const Plan& plan, const findings::Agreement& agreement) {
  const bool right = plan::protocol_of(plan).has_right_answer();
  std::map<std::vector<int>, int> trials;
  for (const std::vector<int>& count : agreement.counts) ++trials[count];
  Table table{"Trials by how their listeners answered",
              {{right ? "Right" : "For the first-named", true},
               {right ? "Wrong" : "For the other", true},
               {"Trials", true}},
              {},
              {}};
  for (auto row = trials.rbegin(); row != trials.rend(); ++row)
    if (row->first.size() == 2)
      table.rows.push_back(
          {std::to_string(row->first[0]), std::to_string(row->first[1]), std::to_string(row->second)});
  return table;
}

std::vector<Block> agreement_blocks(const Plan& plan, const findings::Agreement& agreement) {
  Facts facts;
  facts.facts.push_back({"Agreeing pairs of answers",
                         std::to_string(agreement.agreeing_pairs) + " of " + std::to_string(agreement.pairs) +
                             " (" + percent(agreement.raw) + "), in " + counted(agreement.trials, "trial")});
  if (agreement.p) {
    facts.facts.push_back({plan::protocol_of(plan).has_right_answer()
                               ? "p, right on the same trials beyond their own shares"
                               : "p, the same preference beyond their own shares",
                           p_words(*agreement.p, agreement.p_standard_error)});
  }
  if (agreement.nearly_all_in_one)
    facts.facts.push_back({"Kappa", "not printed: nearly all answers fall in one category"});
  else if (agreement.fleiss_kappa)
    facts.facts.push_back({"Fleiss kappa, on the counts below", text::fixed(*agreement.fleiss_kappa, 3)});
  std::vector<Block> blocks{facts};
  if (!agreement.counts.empty()) blocks.push_back(agreement_table(plan, agreement));
  if (agreement.together)
    blocks.push_back(Paragraph{"The listeners sat together: their answers are not independent."});
  return blocks;
}

Facts level_facts(const findings::LevelFinding& level) {
  Facts facts;
  auto add = [&](std::string term, std::string value) {
    facts.facts.push_back({std::move(term), std::move(value)});
  };
  const std::string weighting = level.weighting.empty() ? "" : " (" + level.weighting + ")";
  add("Level", level.state + ", tolerance " + text::shortest(level.tolerance_db) + " dB");
  add("Attenuation as set, second less first", signed_db(level.trim_db));
  if (level.measured_db) add("Measured at the load, trims as set", signed_db(*level.measured_db));
  if (level.largest_measured_db)
    add("Farthest from zero, one channel at one moment", signed_db(*level.largest_measured_db));
  if (level.drift_db) add("Largest drift, end less start", signed_db(*level.drift_db));
  if (level.predicted_db) add("Predicted" + weighting + ", no trim", signed_db(*level.predicted_db));
  if (level.predicted_as_set_db)
    add("Predicted" + weighting + ", trims as set", signed_db(*level.predicted_as_set_db));
  return facts;
}

Facts response_facts(const ComparisonFinding& finding) {
  Facts facts;
  auto add = [&](std::string term, std::string value) {
    facts.facts.push_back({std::move(term), std::move(value)});
  };
  const auto band = [](double low_hz, double high_hz) { return hertz(low_hz) + " to " + hertz(high_hz); };
  if (finding.loop_resistance_first_ohm || finding.loop_resistance_second_ohm) {
    std::string spread;
    if (finding.loop_resistance_spread_ohm) spread = ohm_or_unknown(finding.loop_resistance_spread_ohm);
    add("Loop resistance, " + finding.first, ohm_or_unknown(finding.loop_resistance_first_ohm));
    add("Loop resistance, " + finding.second, ohm_or_unknown(finding.loop_resistance_second_ohm));
    if (!spread.empty()) add("Repeated readings of one cable lie within", spread);
  }
  if (const auto& rest = finding.predicted_residual)
    add("Predicted response, trims as set",
        signed_db(rest->minimum_db) + " to " + signed_db(rest->maximum_db) + ", r.m.s. " +
            text::fixed(rest->rms_db, 2) + " dB, " + band(rest->low_hz, rest->high_hz));
  const auto &first_words = finding.first_line_words, &second_words = finding.second_line_words;
  const bool same = first_words == second_words;
  if (!first_words.empty()) add("Predicted from, " + (same ? "both" : finding.first), first_words);
  if (!second_words.empty() && !same) add("Predicted from, " + finding.second, second_words);
  if (const auto& measured = finding.measured) {
    add("Measured response, no trim", "up to " + signed_db(measured->largest_db) + ", r.m.s. " +
                                          text::fixed(measured->rms_db, 2) + " dB, " +
                                          band(measured->low_hz, measured->high_hz));
    add("Measured level, weighted, no trim", signed_db(measured->weighted_level_db));
    add("Repeats of one cable", measured->repeatability_db
                                    ? "within " + text::fixed(*measured->repeatability_db, 2) + " dB"
                                    : "none: repeatability not known");
  }
  return facts;
}

Section level_section(const ComparisonFinding& finding, const std::string& id) {
  Section section{4, id + "-level", "Level and response", {}};
  for (const std::string& sentence : {finding.level_sentence, finding.response_sentence})
    if (!sentence.empty()) section.blocks.push_back(Paragraph{sentence});
  Facts facts = level_facts(finding.level);
  for (auto& fact : response_facts(finding).facts) facts.facts.push_back(std::move(fact));
  section.blocks.push_back(std::move(facts));
  if (auto figure = difference_figure(finding, id + "-chart")) section.blocks.push_back(std::move(*figure));
  return section;
}

}  // namespace

std::string id_of(const ComparisonFinding& finding) {
  return "comparison-" + std::to_string(finding.comparison + 1);
}

std::vector<Section> comparison_sections(const findings::Evidence& evidence, const Findings& findings,
                                         const ComparisonFinding& finding) {
  const Plan& plan = evidence.plan;
  const std::string id = id_of(finding);
  Section head{3, id, finding.title, {Paragraph{marked_verdict(plan, finding.verdict), true}}};
  head.blocks.push_back(Paragraph{finding.sentence});
  head.blocks.push_back(counts(plan, findings, finding));
  if (!finding.cautions.empty()) head.blocks.push_back(Points{finding.cautions, true});
  std::vector<Section> sections{head};
  sections.push_back({4,
                      id + "-caught",
                      "What would have been caught",
                      {caught_facts(plan, finding.would_have_been_caught)}});
  if (!finding.listeners.empty()) {
    Section listeners{4, id + "-listeners", "Listeners", {listener_table(plan, findings, finding)}};
    if (finding.opposed)
      listeners.blocks.push_back(Paragraph{std::string("Listeners steadily prefer opposite cables") +
                                           (plan.primary_test == "pooled" ? "; pooled, they cancel." : ".")});
    sections.push_back(std::move(listeners));
  }
  if (finding.agreement)
    sections.push_back({4, id + "-agreement", "Agreement", agreement_blocks(plan, *finding.agreement)});
  sections.push_back(level_section(finding, id));
  if (auto exploration = exploration_section(plan, finding)) sections.push_back(std::move(*exploration));
  return sections;
}

}  // namespace report
