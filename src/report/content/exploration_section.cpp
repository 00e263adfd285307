#include <cmath>

#include "report/content/sections.h"
#include "report/content/words.h"
#include "text/number.h"

namespace report {
namespace {

constexpr const char* kNothing = "\u2013";

std::string two_decimals(double number) {
  return std::isfinite(number) ? text::fixed(number, 2) : "infinite";
}

std::string explored_p(const findings::ExploredP& test) {
  return "p " + p_words(test.p, test.standard_error);
}

std::string d_prime_words(const findings::ListenerExploration& one) {
  return two_decimals(one.d_prime) + " (" + two_decimals(one.d_prime_lower) + " to " +
         two_decimals(one.d_prime_upper) + ")" +
         (std::isfinite(one.d_prime) ? "" : ": every answer was right");
}

std::string sureness_words(const findings::ListenerExploration& one) {
  if (!one.sureness) return kNothing;
  return text::fixed(one.sureness->area, 2) + " of " + counted(one.sureness->rated, "answer") + ", " +
         explored_p(one.sureness->test);
}

std::string swap_words(const findings::ListenerExploration& one) {
  if (!one.swap_time) return kNothing;
  const double seconds = one.swap_time->difference_s;
  return (seconds < 0 ? "\u2212" : "+") + text::fixed(std::abs(seconds), 1) + " s, " +
         explored_p(one.swap_time->test);
}

Table explored_listener_table(const plan::Plan& plan, const findings::Exploration& exploration) {
  Table table{
      "d' by differencing with its 95 % likelihood interval; ROC area of answers rated by sureness, one half "
      "by chance; time "
      "before "
      "X, answers A less answers B",
      {{"Listener"}, {"d'"}, {"Answers A"}, {"Told apart, as rated"}, {"Time before X"}},
      {},
      {}};
  for (const auto& one : exploration.listeners)
    table.rows.push_back({listener_of(plan, one.listener), d_prime_words(one),
                          std::to_string(one.answers_a) + " of " + std::to_string(one.answers) + ", p " +
                              text::p_value(one.bias_p),
                          sureness_words(one), swap_words(one)});
  return table;
}

Facts comparison_facts(const findings::Exploration& exploration) {
  Facts facts;
  if (const auto& spread = exploration.spread)
    facts.facts.push_back({"Do listeners differ in their share right?",
                           "Tarone's Z " + two_decimals(spread->tarone_z) + ", " + explored_p(spread->test) +
                               (exploration.listeners.size() < 4
                                    ? "; so few listeners: no difference shown is no licence to pool"
                                    : "")});
  if (const auto& drift = exploration.drift)
    facts.facts.push_back(
        {"Do right answers come early or late?",
         std::string(drift->late ? "rather late" : "rather early") + ", " + explored_p(drift->test)});
  if (exploration.ac1)
    facts.facts.push_back(
        {"Agreement, Gwet's AC1",
         two_decimals(*exploration.ac1) +
             (exploration.ac1_error ? ", standard error " + two_decimals(*exploration.ac1_error) : "")});
  return facts;
}

}  // namespace

std::optional<Section> exploration_section(const plan::Plan& plan,
                                           const findings::ComparisonFinding& finding) {
  const findings::Exploration& exploration = finding.exploration;
  Section section{4,
                  id_of(finding) + "-exploration",
                  "What else the answers show",
                  {Paragraph{"Explored, not planned: no p is adjusted for anything, and none is "
                             "part of the finding."}}};
  if (!exploration.listeners.empty()) section.blocks.push_back(explored_listener_table(plan, exploration));
  if (Facts facts = comparison_facts(exploration); !facts.facts.empty())
    section.blocks.push_back(std::move(facts));
  return section.blocks.size() > 1 ? std::optional(section) : std::nullopt;
}

}  // namespace report
