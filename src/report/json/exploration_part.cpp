#include <cmath>

#include "report/content/words.h"
#include "report/json/parts.h"

namespace report {
namespace {

using nlohmann::json;

json explored_json(const findings::ExploredP& test) {
  return {{"p", test.p}, {"p_standard_error", or_null(test.standard_error)}};
}

json finite_or_null(double number) { return std::isfinite(number) ? json(number) : json(nullptr); }

json roc_json(const std::optional<findings::RocFinding>& roc) {
  if (!roc) return nullptr;
  json all = {{"area", roc->area}};
  all.update(explored_json(roc->test));
  return all;
}

json swap_time_json(const std::optional<findings::ListenerExploration::SwapTime>& swap_time) {
  if (!swap_time) return nullptr;
  json all = {{"mean_a_s", swap_time->mean_a_s},
              {"mean_b_s", swap_time->mean_b_s},
              {"difference_s", swap_time->difference_s}};
  all.update(explored_json(swap_time->test));
  return all;
}

json explored_listener_json(const plan::Plan& plan, const findings::ListenerExploration& one) {
  json all = answer_share_json(plan, one.bias);
  all.update({{"d_prime", finite_or_null(one.d_prime)},
              {"d_prime_lower", one.d_prime_lower},
              {"d_prime_upper", finite_or_null(one.d_prime_upper)},
              {"d_prime_remark", one.d_prime_remark},
              {"rated", one.rated},
              {"roc", roc_json(one.roc)},
              {"surer_when_right", roc_json(one.surer_when_right)},
              {"timed", one.timed},
              {"swap_time", swap_time_json(one.swap_time)}});
  return all;
}

json spread_json(const std::optional<findings::Spread>& spread) {
  if (!spread) return nullptr;
  const auto& test = spread->test;
  return {{"tarone_z", or_null(spread->tarone_z)},
          {"p", test ? json(test->p) : json(nullptr)},
          {"p_standard_error", test ? or_null(test->standard_error) : json(nullptr)},
          {"sentence", spread->sentence}};
}

json drift_json(const std::optional<findings::Drift>& drift) {
  if (!drift) return nullptr;
  json all = {{"sum", drift->sum}, {"expected", drift->expected}, {"sentence", drift->sentence}};
  all.update(explored_json(drift->test));
  return all;
}

}  // namespace

json answer_share_json(const plan::Plan& plan, const findings::AnswerShare& share) {
  return {{"listener", listener_of(plan, share.listener)},
          {"answers", share.answers},
          {"answers_a", share.answers_a},
          {"bias_p", share.p}};
}

json exploration_json(const plan::Plan& plan, const findings::Exploration& exploration) {
  json listeners = json::array();
  for (const auto& one : exploration.listeners) listeners.push_back(explored_listener_json(plan, one));
  return {{"listeners", listeners},
          {"spread", spread_json(exploration.spread)},
          {"drift", drift_json(exploration.drift)},
          {"ac1", or_null(exploration.ac1)},
          {"ac1_standard_error", or_null(exploration.ac1_error)},
          {"remarks", exploration.remarks}};
}

}  // namespace report
