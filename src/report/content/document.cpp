#include "report/content/document.h"

#include <algorithm>
#include <stdexcept>

#include "report/content/sections.h"
#include "report/content/words.h"
#include "text/number.h"

namespace report {
namespace {

using findings::ComparisonFinding;
using findings::Evidence;
using findings::Findings;
using findings::Verdict;

using Some = std::vector<const ComparisonFinding*>;

void check(const Evidence& evidence, const Findings& findings) {
  for (const ComparisonFinding& finding : findings.comparisons)
    if (finding.comparison < 0 || finding.comparison >= static_cast<int>(evidence.plan.comparisons.size()))
      throw std::domain_error("comparison must be an index of the plan's " +
                              std::to_string(evidence.plan.comparisons.size()) + " comparisons, got " +
                              std::to_string(finding.comparison));
}

template <typename Condition>
Some those(const Findings& findings, Condition condition) {
  Some some;
  for (const ComparisonFinding& finding : findings.comparisons)
    if (condition(finding)) some.push_back(&finding);
  return some;
}

Some with_verdict(const Some& all, Verdict verdict) {
  Some some;
  std::copy_if(all.begin(), all.end(), std::back_inserter(some),
               [&](const ComparisonFinding* finding) { return finding->verdict == verdict; });
  return some;
}

std::string titles_of(const Some& some) {
  std::vector<std::string> titles;
  for (const ComparisonFinding* finding : some) titles.push_back("\u201C" + finding->title + "\u201D");
  return listed(titles);
}

std::string in_words(std::size_t count) { return count == 1 ? "one" : std::to_string(count); }

std::string claims_answer(const plan::Plan& plan, const Some& claims) {
  const std::string thing = plan::protocol_of(plan).has_right_answer() ? "difference" : "preference";
  const Some supported = with_verdict(claims, Verdict::supported);
  const Some not_shown = with_verdict(claims, Verdict::not_shown);
  const Some unjudged = with_verdict(claims, Verdict::cannot_be_judged);
  std::string words = "Of " + counted(static_cast<int>(claims.size()), "comparison") + ", ";
  words += supported.empty() ? "none ended with a supported " + thing + "."
                             : in_words(supported.size()) + " ended with a supported " + thing + ": " +
                                   titles_of(supported) + ".";
  if (!not_shown.empty())
    words += " For " + in_words(not_shown.size()) + " a " + thing +
             " was not shown: " + titles_of(not_shown) +
             ". Not shown does not mean absent; each section below says what would have been caught.";
  if (!unjudged.empty())
    words += " " + capitalised(in_words(unjudged.size())) + " cannot be judged: " + titles_of(unjudged) + ".";
  return words;
}

std::string control_words(const ComparisonFinding& control, bool has_right_answer) {
  const bool supported = control.verdict == Verdict::supported;
  if (control.verdict == Verdict::cannot_be_judged) return "cannot be judged";
  if (!has_right_answer) {
    if (control.kind == plan::Kind::identical_pair)
      return supported ? "drew a preference, which points to a leak" : "drew no preference, as it should be";
    return supported ? "drew a preference" : "drew no preference";
  }
  if (control.kind == plan::Kind::identical_pair)
    return supported ? "was told apart, which points to a leak" : "was not told apart, as it should be";
  return supported ? "was heard" : "was not heard, so smaller differences may have been missed";
}

std::string controls_answer(const plan::Plan& plan, const Some& controls) {
  std::string words;
  for (const ComparisonFinding* control : controls)
    words += (words.empty() ? "The " : " The ") + std::string(plan::name_of(control->kind)) + " \u201C" +
             control->title + "\u201D " +
             control_words(*control, plan::protocol_of(plan).has_right_answer()) + ".";
  return words;
}

Section answer_section(const Evidence& evidence, const Findings& findings, const Some& claims,
                       const Some& controls) {
  Section section{2, "answer", "The answer", {Paragraph{claims_answer(evidence.plan, claims), true}}};
  if (!controls.empty()) section.blocks.push_back(Paragraph{controls_answer(evidence.plan, controls)});
  if (!findings.cautions.empty()) section.blocks.push_back(Points{findings.cautions, true});
  return section;
}

std::string level_cell(const findings::LevelFinding& level) {
  if (level.measured_db) return level.state + ", " + signed_db(*level.measured_db);
  if (level.predicted_as_set_db) return level.state + ", " + signed_db(*level.predicted_as_set_db);
  return level.state;
}

Table overview(const Evidence& evidence, const Findings& findings, const Some& some, bool in_family) {
  const bool right = plan::protocol_of(evidence.plan).has_right_answer();
  Table table;
  table.caption = std::string(in_family ? "Claims" : "Controls, in no family") + ". p: exact, " +
                  (right ? "one-sided; limit: one-sided, " : "two-sided; interval: two-sided, ") +
                  confidence_of(findings.level) + "; level: second less first";
  table.columns = {{"Comparison"},
                   {"Finding"},
                   {capitalised(plan::protocol_of(evidence.plan).score_word()), true},
                   {"Exact p", true}};
  if (in_family) table.columns.push_back({"Adjusted p", true});
  table.columns.push_back({right ? "Share right" : "Share, interval", true});
  table.columns.push_back({"Level"});
  for (const ComparisonFinding* finding : some) {
    std::vector<std::string> row = {finding->title, marked_verdict(evidence.plan, finding->verdict),
                                    score_of(finding->primary.tally), text::p_value(finding->primary.p)};
    if (in_family) row.push_back(finding->p_adjusted ? text::p_value(*finding->p_adjusted) : "\u2013");
    row.push_back(limit_words(evidence.plan, *finding));
    row.push_back(level_cell(finding->level));
    table.rows.push_back(std::move(row));
    table.row_links.push_back(id_of(*finding));
  }
  return table;
}

}  // namespace

Document document_of(const Evidence& evidence, const Findings& findings) {
  check(evidence, findings);
  const Some claims = those(findings, [](const auto& finding) { return finding.kind == plan::Kind::claim; });
  const Some controls =
      those(findings, [](const auto& finding) { return finding.kind != plan::Kind::claim; });
  Document document;
  document.title = evidence.campaign_title;
  document.subtitle = "Plan \u201C" + evidence.plan.name + "\u201D, " +
                      std::string(plan::protocol_of(evidence.plan).title()) + ", sealed " +
                      evidence.sealed_at;
  auto append = [&](std::vector<Section> sections) {
    for (Section& section : sections) document.sections.push_back(std::move(section));
  };
  append({answer_section(evidence, findings, claims, controls)});
  if (!claims.empty()) {
    append({{2,
             "comparisons",
             "The comparisons",
             {overview(evidence, findings, claims, true),
              shares_figure(evidence, findings, claims, "shares")}}});
    append({{2, "each", "Each comparison", {}}});
    for (const ComparisonFinding* claim : claims) append(comparison_sections(evidence, findings, *claim));
  }
  if (!controls.empty()) {
    append({{2,
             "controls",
             "Controls",
             {Paragraph{"Analysed apart; they belong to no family."},
              overview(evidence, findings, controls, false),
              shares_figure(evidence, findings, controls, "control-shares")}}});
    for (const ComparisonFinding* control : controls)
      append(comparison_sections(evidence, findings, *control));
  }
  if (auto shares = answer_share_section(evidence.plan, findings)) append({std::move(*shares)});
  if (auto scale = scale_section(findings)) append({std::move(*scale)});
  append({correlation_section(findings)});
  append(sitting_sections(evidence, findings));
  append({plan_section(evidence.plan)});
  append(seal_sections(evidence, findings));
  return document;
}

}  // namespace report
