#include <cmath>

#include "report/json/dictionary.h"
#include "report/json/parts.h"

namespace report {
namespace {

using nlohmann::json;

json explored_json(const findings::ExploredP& test) {
  return {{"p", test.p}, {"p_standard_error", or_null(test.standard_error)}};
}

json finite_or_null(double number) { return std::isfinite(number) ? json(number) : json(nullptr); }

json sureness_json(const std::optional<findings::ListenerExploration::Sureness>& sureness) {
  if (!sureness) return nullptr;
  json all = {{"rated", sureness->rated}, {"area", sureness->area}};
  all.update(explored_json(sureness->test));
  return all;
}

json swap_time_json(const std::optional<findings::ListenerExploration::SwapTime>& swap_time) {
  if (!swap_time) return nullptr;
  json all = {{"difference_s", swap_time->difference_s}};
  all.update(explored_json(swap_time->test));
  return all;
}

json explored_listener_json(const plan::Plan& plan, const findings::ListenerExploration& one) {
  return {{"listener", plan.listeners.at(static_cast<std::size_t>(one.listener))},
          {"answers", one.answers},
          {"d_prime", finite_or_null(one.d_prime)},
          {"d_prime_lower", one.d_prime_lower},
          {"d_prime_upper", finite_or_null(one.d_prime_upper)},
          {"answers_a", one.answers_a},
          {"bias_p", one.bias_p},
          {"sureness", sureness_json(one.sureness)},
          {"swap_time", swap_time_json(one.swap_time)}};
}

void add_explored(Dictionary& rows, const std::string& path) {
  rows.push_back(
      {path + ".p", "number", "", "0 to 1", "unadjusted p by permutation; drawn where too many to count"});
  rows.push_back({path + ".p_standard_error", "number or null", "", "0 or more", "of `p`, when drawn"});
}

}  // namespace

json exploration_json(const plan::Plan& plan, const findings::Exploration& exploration) {
  json listeners = json::array();
  for (const auto& one : exploration.listeners) listeners.push_back(explored_listener_json(plan, one));
  json spread, drift;
  if (exploration.spread) {
    spread = {{"tarone_z", exploration.spread->tarone_z}};
    spread.update(explored_json(exploration.spread->test));
  }
  if (exploration.drift) {
    drift = {{"late", exploration.drift->late}};
    drift.update(explored_json(exploration.drift->test));
  }
  return {{"listeners", listeners},
          {"spread", spread},
          {"drift", drift},
          {"ac1", or_null(exploration.ac1)},
          {"ac1_standard_error", or_null(exploration.ac1_error)}};
}

Dictionary exploration_dictionary() {
  const std::string path = "comparisons[].exploration", one = path + ".listeners[]";
  Dictionary rows = {
      {path, "object", "", "",
       "what else the answers show: explored, unadjusted, no part of the verdict; ABX unless said"},
      {path + ".listeners", "list of object", "", "", "those who answered"},
      {one + ".listener", "string", "", "", "the listener"},
      {one + ".answers", "integer", "", "1 or more", "answers that count"},
      {one + ".d_prime", "number or null", "", "0 or more",
       "d' by differencing; null: infinite, every answer was right"},
      {one + ".d_prime_lower", "number", "", "0 or more", "95 % likelihood interval"},
      {one + ".d_prime_upper", "number or null", "", "0 or more", "likewise; null: infinite"},
      {one + ".answers_a", "integer", "", "0 or more", "answers \"A\""},
      {one + ".bias_p", "number", "", "0 to 1", "exact two-sided p of these against one half"},
      {one + ".sureness", "object or null", "", "",
       "whether A and B were told apart, answers rated by sureness; null without levels of sureness"},
      {one + ".sureness.rated", "integer", "", "2 or more", "answers with a level of sureness"},
      {one + ".sureness.area", "number", "", "0 to 1",
       "area under the ROC, from surest A to surest B; one half by chance"},
      {one + ".swap_time", "object or null", "", "",
       "whether answers follow the time before X; null without times"},
      {one + ".swap_time.difference_s", "number", "s", "", "mean time, answers A less answers B"},
      {path + ".spread", "object or null", "", "",
       "whether listeners differ in their share right; null for one listener and where several share trials"},
      {path + ".spread.tarone_z", "number", "", "", "Tarone's Z"},
      {path + ".drift", "object or null", "", "",
       "whether right answers come early or late; null where several listeners share trials"},
      {path + ".drift.late", "boolean", "", "", "later than without a drift"},
      {path + ".ac1", "number or null", "", "at most 1",
       "Gwet's AC1 on right and wrong, or on the cable preferred"},
      {path + ".ac1_standard_error", "number or null", "", "0 or more", "its standard error"},
  };
  for (const std::string& tested : {one + ".sureness", one + ".swap_time", path + ".spread", path + ".drift"})
    add_explored(rows, tested);
  return rows;
}

}  // namespace report
