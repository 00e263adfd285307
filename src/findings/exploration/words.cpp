#include "findings/exploration/words.h"

#include <algorithm>

#include "findings/words/numbers.h"
#include "stats/level.h"

namespace findings {
namespace {

using Remarks = std::vector<std::string>;
using Listeners = std::vector<ListenerExploration>;

/// So few listeners that no difference between them is likely to show.
constexpr std::size_t kFewListeners = 3;

template <typename Condition>
std::vector<std::string> names_of(const plan::Plan& plan, const Listeners& listeners, Condition condition) {
  std::vector<std::string> names;
  for (const ListenerExploration& one : listeners)
    if (condition(one)) names.push_back(plan.listeners.at(static_cast<std::size_t>(one.listener)));
  return names;
}

void add_sureness_remarks(const plan::Plan& plan, const Listeners& listeners, Remarks& remarks) {
  const auto is_rated = [](const ListenerExploration& one) { return one.rated > 0; };
  if (std::none_of(listeners.begin(), listeners.end(), is_rated)) {
    remarks.push_back("How sure listeners were was not recorded.");
    return;
  }
  int left_out = 0;
  for (const ListenerExploration& one : listeners) left_out += one.bias.answers - one.rated;
  if (left_out > 0)
    remarks.push_back("Sureness: " + counted(left_out, "answer") + " without a level left out.");
  const auto without = names_of(plan, listeners, [](const ListenerExploration& one) {
    return one.rated > 0 && (!one.roc || !one.surer_when_right);
  });
  if (!without.empty())
    remarks.push_back("Sureness of " + listed(without) +
                      ": an area takes answers with a level where X was A and where it was B, or right and "
                      "wrong ones.");
}

void add_swap_remarks(const plan::Plan& plan, const Listeners& listeners, Remarks& remarks) {
  const auto is_timed = [](const ListenerExploration& one) { return one.timed > 0; };
  if (std::none_of(listeners.begin(), listeners.end(), is_timed)) {
    remarks.push_back("When presentations started was not recorded: answers are not held against times.");
    return;
  }
  const auto alike = names_of(plan, listeners, [](const ListenerExploration& one) { return !one.swap_time; });
  if (!alike.empty())
    remarks.push_back("Times before X, " + listed(alike) + ": no answers A and B with known times.");
}

}  // namespace

std::string sentence_of(const Spread& spread, std::size_t listeners, double level) {
  if (!spread.test) return "Not computed: every answer was right, or every answer wrong.";
  if (stats::reaches(spread.test->p, level)) return "The listeners differ in their share right.";
  return std::string("That the listeners differ is not shown") +
         (listeners <= kFewListeners ? "; with so few of them that is no licence to pool." : ".");
}

std::string sentence_of(const Drift& drift, double level) {
  if (!stats::reaches(drift.test.p, level)) return "Fatigue or learning not shown.";
  return static_cast<double>(drift.sum) > drift.expected ? "Right answers come later."
                                                         : "Right answers come earlier.";
}

std::vector<std::string> remarks_on(const plan::Plan& plan, const Exploration& exploration) {
  if (exploration.listeners.empty()) return {"Nobody answered."};
  Remarks remarks;
  if (!exploration.drift && exploration.listeners.size() > 1)
    remarks.push_back(
        "The listeners shared their trials, so their answers are not independent: differing listeners "
        "and drift are not computed.");
  add_sureness_remarks(plan, exploration.listeners, remarks);
  add_swap_remarks(plan, exploration.listeners, remarks);
  return remarks;
}

}  // namespace findings
