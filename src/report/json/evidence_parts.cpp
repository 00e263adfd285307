#include "report/json/parts.h"

namespace report {
namespace {

using nlohmann::json;

json declarations_json(const findings::SittingEvidence& sitting) {
  json list = json::array();
  for (const auto& declared : sitting.declarations)
    list.push_back({{"who", declared.who},
                    {"moment", declared.moment},
                    {"words", declared.words},
                    {"kept", declared.kept}});
  return list;
}

json remarks_json(const std::vector<findings::SittingEvidence::Remark>& remarks) {
  json list = json::array();
  for (const auto& remark : remarks) list.push_back({{"who", remark.who}, {"text", remark.text}});
  return list;
}

json levels_json(const findings::Evidence& evidence, int sitting) {
  json list = json::array();
  for (const auto& level : evidence.levels)
    if (level.sitting == sitting)
      list.push_back({{"specimen", level.specimen},
                      {"channel", level.channel},
                      {"moment", level.moment},
                      {"level_dB", level.level_db}});
  return list;
}

}  // namespace

json sitting_json(const findings::Evidence& evidence, const findings::SittingEvidence& sitting) {
  json facts = json::array();
  for (const auto& [title, value] : sitting.facts) facts.push_back({{"title", title}, {"value", value}});
  json heads = json::array();
  for (const auto& [who, how] : sitting.head_shown_to) heads.push_back({{"who", who}, {"how", how}});
  json characters = json::array();
  for (const auto& [listener, added] : sitting.characters)
    characters.push_back({{"listener", listener}, {"added", added}});
  return {{"number", sitting.number},
          {"held", sitting.held},
          {"ended_early", sitting.ended_early},
          {"way", sitting.way},
          {"opened_at", sitting.opened_at},
          {"began_at", sitting.began_at},
          {"ended_at", sitting.ended_at},
          {"ended_by", sitting.ended_by},
          {"end_reason", sitting.end_reason},
          {"ender_had_seen", sitting.ender_had_seen},
          {"head_hex", sitting.head_hex},
          {"head_shown_to", heads},
          {"tagged_by", sitting.tagged_by},
          {"characters", characters},
          {"facts", facts},
          {"declarations", declarations_json(sitting)},
          {"notes", remarks_json(sitting.notes)},
          {"cues", remarks_json(sitting.cues)},
          {"keyed_by", sitting.keyed_by},
          {"keyed_with_helpers_sheet", sitting.keyed_with_helpers_sheet},
          {"compared_answers", sitting.compared_answers},
          {"differing_answers", sitting.differing_answers},
          {"planned_trials", sitting.planned_trials},
          {"stopped_trials", sitting.stopped_trials},
          {"settled_trials", sitting.settled_trials},
          {"wrong_tag_reported", sitting.wrong_tag_reported},
          {"terminal_levels", levels_json(evidence, sitting.number)}};
}

json cable_json(const std::string& name, const findings::CableEvidence& cable) {
  json line = nullptr;
  if (cable.line)
    line = {{"length_m", cable.line->length_m},
            {"resistance_ohm_per_m", cable.line->resistance_ohm_per_m},
            {"inductance_H_per_m", cable.line->inductance_henry_per_m},
            {"capacitance_F_per_m", cable.line->capacitance_farad_per_m},
            {"conductance_S_per_m", cable.line->conductance_siemens_per_m},
            {"load_end_resistance_ohm", cable.line->load_end_resistance_ohm},
            {"round_conductors", cable.line->round_conductors.count},
            {"round_conductor_ohm_per_m", cable.line->round_conductors.resistance_ohm_per_m}};
  return {{"name", name},
          {"line", line},
          {"line_basis", cable.line_words},
          {"lcr_readings", cable.lcr_readings},
          {"loop_resistance_spread_ohm", or_null(cable.loop_resistance_spread_ohm)},
          {"response_sources", cable.response.sources}};
}

json rig_json(const findings::RigEvidence& rig) {
  json source = nullptr;
  if (rig.source)
    source = {{"resistance_ohm", rig.source->resistance_ohm}, {"inductance_H", rig.source->inductance_henry}};
  return {{"name", rig.name},
          {"description", rig.description},
          {"source", source},
          {"load_known", rig.load.has_value()}};
}

json pace_json(const findings::Pace& pace) {
  return {{"recorded", pace.recorded},
          {"same", pace.same},
          {"changed", pace.changed},
          {"mean_same_s", pace.mean_same_s},
          {"mean_changed_s", pace.mean_changed_s},
          {"difference_s", or_null(pace.difference_s)},
          {"lower_s", or_null(pace.lower_s)},
          {"upper_s", or_null(pace.upper_s)},
          {"p", or_null(pace.p)},
          {"p_standard_error", or_null(pace.p_standard_error)},
          {"overruns", pace.overruns}};
}

json correlation_json(const findings::Correlation& correlation) {
  return {{"measure", correlation.measure},
          {"outcome", correlation.outcome},
          {"against", correlation.against},
          {"comparisons", correlation.comparisons},
          {"x", correlation.x},
          {"y", correlation.y},
          {"rho", or_null(correlation.rho)},
          {"p", correlation.p},
          {"p_adjusted", correlation.p_adjusted},
          {"p_standard_error", or_null(correlation.p_standard_error)},
          {"smallest_attainable_p", or_null(correlation.smallest_attainable_p)},
          {"rho_needed", or_null(correlation.rho_needed)},
          {"rho_needed_is_exact", correlation.rho_needed_is_exact},
          {"permuted_by_cable", correlation.permuted_by_cable},
          {"unequal_trials", correlation.unequal_trials},
          {"sentence", correlation.sentence}};
}

}  // namespace report
