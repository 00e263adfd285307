#include <nlohmann/json.hpp>
#include <stdexcept>

#include "plan/plan.h"
#include "text/error.h"

namespace plan {
namespace {

using nlohmann::json;

constexpr const char* format = "blindswap-plan-1";

template <typename Value>
void get(const json& object, const char* key, Value& value) {
  const auto found = object.find(key);
  if (found == object.end()) throw std::domain_error(std::string("sealed plan: \"") + key + "\" is missing");
  try {
    found->get_to(value);
  } catch (const json::exception&) {
    throw std::domain_error(std::string("sealed plan: \"") + key + "\" is of the wrong type");
  }
}

Kind kind_named(const std::string& name) {
  for (const Kind kind : {Kind::claim, Kind::identical_pair, Kind::known_difference})
    if (name_of(kind) == name) return kind;
  throw std::domain_error("sealed plan: unknown kind of comparison \"" + name + "\"");
}

json list_of(const std::vector<Specimen>& specimens) {
  json list = json::array();
  for (const Specimen& specimen : specimens)
    list.push_back({{"cable", specimen.cable},
                    {"series_resistance_ohm", specimen.series_resistance_ohm},
                    {"trim_steps", specimen.trim_steps}});
  return list;
}

json list_of(const std::vector<Comparison>& comparisons) {
  json list = json::array();
  for (const Comparison& comparison : comparisons)
    list.push_back({{"first", comparison.first},
                    {"second", comparison.second},
                    {"kind", name_of(comparison.kind)},
                    {"predicted_difference_dB", comparison.predicted_difference_db}});
  return list;
}

json list_of(const std::vector<Part>& parts) {
  json list = json::array();
  for (const Part& part : parts)
    list.push_back({{"comparisons", part.comparisons},
                    {"trials_each", part.trials_each},
                    {"listeners", part.listeners}});
  return list;
}

json list_of(const std::vector<Excerpt>& excerpts) {
  json list = json::array();
  for (const Excerpt& excerpt : excerpts)
    list.push_back({{"title", excerpt.title}, {"start", excerpt.start}, {"end", excerpt.end}});
  return list;
}

void read(const json& object, Specimen& specimen) {
  get(object, "cable", specimen.cable);
  get(object, "series_resistance_ohm", specimen.series_resistance_ohm);
  get(object, "trim_steps", specimen.trim_steps);
}

void read(const json& object, Comparison& comparison) {
  std::string kind;
  get(object, "first", comparison.first);
  get(object, "second", comparison.second);
  get(object, "kind", kind);
  get(object, "predicted_difference_dB", comparison.predicted_difference_db);
  comparison.kind = kind_named(kind);
}

void read(const json& object, Part& part) {
  get(object, "comparisons", part.comparisons);
  get(object, "trials_each", part.trials_each);
  get(object, "listeners", part.listeners);
}

void read(const json& object, Excerpt& excerpt) {
  get(object, "title", excerpt.title);
  get(object, "start", excerpt.start);
  get(object, "end", excerpt.end);
}

template <typename Item>
void read_list(const json& object, const char* key, std::vector<Item>& items) {
  std::vector<json> list;
  get(object, key, list);
  for (const json& entry : list) read(entry, items.emplace_back());
}

json to_json(const Judging& judging) {
  return {{"tags_or_trims_wrong", judging.tags_or_trims_wrong},
          {"separation_not_kept", judging.separation_not_kept},
          {"identical_pair_heard", judging.identical_pair_heard},
          {"known_difference_not_heard", judging.known_difference_not_heard}};
}

void read(const json& object, Judging& judging) {
  get(object, "tags_or_trims_wrong", judging.tags_or_trims_wrong);
  get(object, "separation_not_kept", judging.separation_not_kept);
  get(object, "identical_pair_heard", judging.identical_pair_heard);
  get(object, "known_difference_not_heard", judging.known_difference_not_heard);
}

/// Every plain field once, for both directions.
template <typename AnyPlan, typename Visit>
void visit_fields(AnyPlan& plan, Visit visit) {
  visit("name", plan.name);
  visit("sealed_at", plan.sealed_at);
  visit("seed_origin", plan.seed_origin);
  visit("protocol", plan.protocol);
  visit("order_rule", plan.order_rule);
  visit("rig", plan.rig);
  visit("baseline", plan.baseline);
  visit("listeners", plan.listeners);
  visit("attendance", plan.attendance);
  visit("spares_each", plan.spares_each);
  visit("primary_test", plan.primary_test);
  visit("level", plan.level);
  visit("family", plan.family);
  visit("effect_share", plan.effect_share);
  visit("stopping_rule", plan.stopping_rule);
  visit("level_tolerance_dB", plan.level_tolerance_db);
  visit("levels", plan.levels);
  visit("trim_weighting", plan.trim_weighting);
  visit("volume_step_dB", plan.volume_step_db);
  visit("practice_trials", plan.practice_trials);
  visit("block_trials", plan.block_trials);
  visit("break_minutes", plan.break_minutes);
  visit("swap_seconds", plan.swap_seconds);
  visit("presentation_seconds", plan.presentation_seconds);
}

}  // namespace

json to_json(const Plan& plan) {
  json value;
  value["format"] = format;
  visit_fields(plan, [&](const char* key, const auto& field) { value[key] = field; });
  value["specimens"] = list_of(plan.specimens);
  value["comparisons"] = list_of(plan.comparisons);
  value["sittings"] = list_of(plan.sittings);
  value["excerpts"] = list_of(plan.excerpts);
  value["judging"] = to_json(plan.judging);
  return value;
}

Plan from_json(const json& value) {
  std::string found;
  get(value, "format", found);
  if (found != format)
    throw std::domain_error("sealed plan: format \"" + found + "\" is not known; expected \"" + format +
                            "\"");
  Plan plan;
  visit_fields(plan, [&](const char* key, auto& field) { get(value, key, field); });
  read_list(value, "specimens", plan.specimens);
  read_list(value, "comparisons", plan.comparisons);
  read_list(value, "sittings", plan.sittings);
  read_list(value, "excerpts", plan.excerpts);
  json judging;
  get(value, "judging", judging);
  read(judging, plan.judging);
  if (to_json(plan) != value)
    throw std::domain_error("sealed plan: a field is not known, or holds a value of the wrong type");
  try {
    check(plan);
  } catch (const text::BadInput& error) {
    throw std::domain_error(std::string("sealed ") + error.what());
  }
  return plan;
}

}  // namespace plan
