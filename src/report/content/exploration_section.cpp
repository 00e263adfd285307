#include <algorithm>
#include <cmath>

#include "report/content/sections.h"
#include "report/content/words.h"
#include "text/number.h"

namespace report {
namespace {

constexpr const char* kNothing = "\u2013";

std::string two_decimals(double number) {
  return std::isfinite(number) ? number_words(number, 2) : "infinite";
}

std::string explored_p(const findings::ExploredP& test) {
  return "p " + p_words(test.p, test.standard_error);
}

std::string d_prime_words(const findings::ListenerExploration& one) {
  if (one.d_prime_upper == 0) return one.d_prime_remark;
  return (std::isfinite(one.d_prime) ? two_decimals(one.d_prime) : one.d_prime_remark) + " (" +
         two_decimals(one.d_prime_lower) + " to " + two_decimals(one.d_prime_upper) + ")";
}

std::string answer_words(const findings::AnswerShare& share) {
  return std::to_string(share.answers_a) + " of " + std::to_string(share.answers) + ", p " +
         text::p_value(share.p);
}

std::string area_words(const std::optional<findings::RocFinding>& roc) {
  return roc ? two_decimals(roc->area) + ", " + explored_p(roc->test) : kNothing;
}

std::string swap_words(const findings::ListenerExploration& one) {
  if (!one.swap_time) return kNothing;
  return "A " + text::fixed(one.swap_time->mean_a_s, 1) + " s, B " + text::fixed(one.swap_time->mean_b_s, 1) +
         " s, " + explored_p(one.swap_time->test);
}

/// Columns that nobody has anything for are left out; the remarks say why.
Table explored_listener_table(const plan::Plan& plan, const findings::Exploration& exploration) {
  const auto& all = exploration.listeners;
  const bool rated = std::any_of(all.begin(), all.end(), [](const auto& one) { return one.rated > 0; });
  const bool timed = std::any_of(all.begin(), all.end(), [](const auto& one) { return one.timed > 0; });
  Table table{
      "d' by differencing, 0 where no more was right than by chance, with its 95 % likelihood interval; "
      "exact two-sided p",
      {},
      {},
      {}};
  if (rated)
    table.caption +=
        "; areas under the ROC, 0.5 by chance: surest A to surest B, and sureness of right "
        "answers against wrong ones";
  table.columns = {{"Listener"}, {"d'"}, {"Answers A"}};
  if (rated) table.columns.insert(table.columns.end(), {{"Rated"}, {"A told from B"}, {"Surer when right"}});
  if (timed) table.columns.push_back({"Mean time before X, by answer"});
  for (const auto& one : all) {
    std::vector<std::string> row{listener_of(plan, one.listener), d_prime_words(one), answer_words(one.bias)};
    if (rated)
      row.insert(row.end(), {std::to_string(one.rated) + " of " + std::to_string(one.bias.answers),
                             area_words(one.roc), area_words(one.surer_when_right)});
    if (timed) row.push_back(swap_words(one));
    table.rows.push_back(std::move(row));
  }
  return table;
}

std::string spread_words(const findings::Spread& spread) {
  if (!spread.tarone_z || !spread.test) return spread.sentence;
  return spread.sentence + " Tarone's Z " + two_decimals(*spread.tarone_z) + ", exact one-sided " +
         explored_p(*spread.test);
}

std::string together_words(const findings::Exploration& exploration) {
  int answers = 0, answers_a = 0;
  for (const auto& one : exploration.listeners) {
    answers += one.bias.answers;
    answers_a += one.bias.answers_a;
  }
  return std::to_string(answers_a) + " of " + std::to_string(answers) + " (" +
         percent(1.0 * answers_a / answers) + "); not independent, so without a p";
}

std::string ac1_words(const findings::ComparisonFinding& finding) {
  const findings::Exploration& exploration = finding.exploration;
  std::string words = two_decimals(*exploration.ac1);
  if (exploration.ac1_error) words += ", standard error " + two_decimals(*exploration.ac1_error);
  return finding.agreement ? words + "; raw agreement " + percent(finding.agreement->raw) : words;
}

Facts comparison_facts(const plan::Plan& plan, const findings::ComparisonFinding& finding) {
  const findings::Exploration& exploration = finding.exploration;
  Facts facts;
  auto add = [&](std::string term, std::string value) {
    facts.facts.push_back({std::move(term), std::move(value)});
  };
  if (exploration.listeners.size() > 1) add("Answers A, all listeners", together_words(exploration));
  if (const auto& spread = exploration.spread)
    add("Do listeners differ in their share right?", spread_words(*spread));
  if (const auto& drift = exploration.drift)
    add("Do right answers come early or late?",
        drift->sentence + " Exact two-sided " + explored_p(drift->test));
  if (exploration.ac1)
    add(plan::protocol_of(plan).has_right_answer() ? "Gwet's AC1, on right and wrong"
                                                   : "Gwet's AC1, on the cable preferred",
        ac1_words(finding));
  return facts;
}

}  // namespace

std::optional<Section> exploration_section(const plan::Plan& plan,
                                           const findings::ComparisonFinding& finding) {
  const findings::Exploration& exploration = finding.exploration;
  Section section{4,
                  id_of(finding) + "-exploration",
                  "What else the answers show (exploratory, unadjusted)",
                  {Paragraph{"Explored, not planned: every p is exact, or simulated where it says so, is "
                             "adjusted for nothing, and is no part of the finding."}}};
  if (!exploration.listeners.empty()) section.blocks.push_back(explored_listener_table(plan, exploration));
  if (Facts facts = comparison_facts(plan, finding); !facts.facts.empty())
    section.blocks.push_back(std::move(facts));
  if (!exploration.remarks.empty()) section.blocks.push_back(Points{exploration.remarks});
  return section.blocks.size() > 1 ? std::optional(section) : std::nullopt;
}

std::optional<Section> answer_share_section(const plan::Plan& plan, const findings::Findings& findings) {
  if (findings.answer_shares.empty()) return std::nullopt;
  Table table{
      "Each listener's own answers A over all comparisons, controls among them; exact two-sided p "
      "against one half",
      {{"Listener"}, {"Answers A", true}, {"Share", true}, {"Exact p", true}},
      {},
      {}};
  for (const auto& one : findings.answer_shares)
    table.rows.push_back({listener_of(plan, one.listener),
                          std::to_string(one.answers_a) + " of " + std::to_string(one.answers),
                          percent(1.0 * one.answers_a / one.answers), text::p_value(one.p)});
  return Section{
      2,
      "answer-shares",
      "Does anybody prefer an answer?",
      {Paragraph{"Explored, not planned; adjusted for nothing, and no part of any finding."}, table}};
}

}  // namespace report
