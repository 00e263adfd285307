#include "report/json/parts.h"

namespace report {
namespace {

using nlohmann::json;

std::string_view name_of(findings::PreferenceScale::State state) {
  using State = findings::PreferenceScale::State;
  return state == State::estimated ? "estimated" : state == State::corrected ? "corrected" : "apart";
}

}  // namespace

json scale_json(const std::optional<findings::PreferenceScale>& scale) {
  if (!scale) return nullptr;
  json all = {{"state", name_of(scale->state)},
              {"groups", scale->groups},
              {"answers", scale->answers},
              {"cables", json::array()},
              {"order_effect", scale->order_effect},
              {"order_effect_standard_error", scale->order_error},
              {"pairs", json::array()},
              {"fit_p", or_null(scale->fit_p)},
              {"fit_p_standard_error", or_null(scale->fit_p_standard_error)},
              {"sentence", scale->sentence}};
  for (const auto& cable : scale->cables)
    all["cables"].push_back({{"title", cable.title},
                             {"worth", cable.worth},
                             {"standard_error", cable.standard_error},
                             {"quasi_standard_error", or_null(cable.quasi_error)}});
  for (const auto& pair : scale->pairs)
    all["pairs"].push_back({{"first", scale->cables[std::size_t(pair.first)].title},
                            {"second", scale->cables[std::size_t(pair.second)].title},
                            {"difference", pair.difference},
                            {"p_adjusted", pair.p_adjusted}});
  return all;
}

}  // namespace report
