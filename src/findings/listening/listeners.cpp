#include "findings/listening/listeners.h"

#include <algorithm>

#include "findings/listening/tally.h"
#include "stats/level.h"
#include "stats/multiplicity.h"
#include "stats/share/binomial.h"

namespace findings {
namespace {

bool contains(const std::vector<int>& list, int value) {
  return std::find(list.begin(), list.end(), value) != list.end();
}

}  // namespace

std::vector<int> listeners_of(const plan::Plan& plan, int comparison) {
  std::vector<int> listeners;
  for (int listener = 0; listener < static_cast<int>(plan.listeners.size()); ++listener) {
    const auto attends = [&](const plan::Part& part) {
      return contains(part.comparisons, comparison) && contains(part.listeners, listener);
    };
    if (std::any_of(plan.sittings.begin(), plan.sittings.end(), attends)) listeners.push_back(listener);
  }
  return listeners;
}

std::vector<ListenerResult> listener_results(const Evidence& evidence, int comparison) {
  const bool has_right_answer = plan::protocol_of(evidence.plan).has_right_answer();
  std::vector<ListenerResult> results;
  for (const int listener : listeners_of(evidence.plan, comparison)) {
    ListenerResult result;
    result.listener = listener;
    const Counting counting{.listener = listener};
    result.tested = tested(evidence, comparison, counting);
    result.p_adjusted = result.tested.p;
    const Tally& tally = result.tested.tally;
    result.limits = limits_with_looks(evidence, comparison, counting).value_or(limits_of(evidence.plan, tally, false));
    if (!has_right_answer && tally.answers > 0)
      result.sign_test_p = stats::two_sided(tally.score, tally.answers, 0.5);
    results.push_back(result);
  }
  return results;
}

void adjust_listeners(Findings& findings) {
  std::vector<ListenerResult*> family;
  for (ComparisonFinding& finding : findings.comparisons)
    if (finding.kind == plan::Kind::claim)
      for (ListenerResult& result : finding.listeners) family.push_back(&result);
  std::vector<double> p;
  for (const ListenerResult* result : family) p.push_back(result->tested.p);
  const auto adjusted = stats::holm(p);
  for (std::size_t i = 0; i < family.size(); ++i) family[i]->p_adjusted = adjusted[i];
}

bool leans(const ListenerResult& listener, double level) {
  return listener.tested.tally.answers > 0 && stats::reaches(listener.tested.p, level);
}

bool are_opposed(const std::vector<ListenerResult>& listeners, double level) {
  const auto some_lean = [&](bool to_first) {
    return std::any_of(listeners.begin(), listeners.end(), [&](const ListenerResult& result) {
      const Tally& tally = result.tested.tally;
      return leans(result, level) && (2 * tally.score > tally.answers) == to_first;
    });
  };
  return some_lean(true) && some_lean(false);
}

}  // namespace findings
