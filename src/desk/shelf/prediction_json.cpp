#include "desk/shelf/prediction_parts.h"
#include "desk/shelf/prediction_text.h"

namespace desk {
namespace {

using nlohmann::json;

template <typename Value>
json or_null(const std::optional<Value>& value) {
  return value ? json(*value) : json();
}

json line_level_json(const LineLevel& level) {
  const auto& corners = level.possible_corner_hz;
  return {{"corner_Hz", or_null(level.corner_hz)},
          {"one_pole_Hz", or_null(level.one_pole_hz)},
          {"corner_least_Hz", corners ? json(corners->least) : json()},
          {"corner_greatest_Hz", corners ? json(corners->greatest) : json()},
          {"reference_Hz", level.reference_hz},
          {"top_Hz", level.top_hz},
          {"top_level_dB", level.top_level_db},
          {"share_at_top_dB",
           {{"source_resistance", level.shares.source_resistance_db},
            {"cable_resistance", level.shares.cable_resistance_db},
            {"cable_inductance", level.shares.cable_inductance_db},
            {"cable_capacitance", level.shares.cable_capacitance_db}}}};
}

json facts_json(const CablePrediction& cable) {
  const KnownLine& line = cable.line;
  const electrical::CableTotals totals = electrical::totals(line.cable);
  return {{"name", cable.name},
          {"loop_resistance_ohm", electrical::loop_resistance_ohm(line.cable)},
          {"inductance_henry", totals.inductance_henry},
          {"capacitance_farad", totals.capacitance_farad},
          {"damping_factor", or_null(cable.damping_factor)},
          {"cautions", cable.cautions},
          {"resistance_from", name_of(line.resistance)},
          {"inductance_from", name_of(line.inductance)},
          {"capacitance_from", name_of(line.capacitance)},
          {"basis", line.words},
          {"round_conductors", line.cable.round_conductors.count},
          {"line_level", cable.line_level ? line_level_json(*cable.line_level) : json()}};
}

json stepped_json(const SteppedTrim& trim) {
  return {{"step_dB", trim.step_db},
          {"first_steps", trim.first_steps},
          {"second_steps", trim.second_steps},
          {"level_left_dB", trim.level_left_db},
          {"residual", residual_json(trim.after.residual)},
          {"smoothed", smoothed_json(trim.after.smoothed)}};
}

}  // namespace

std::string prediction_json(const Prediction& prediction) {
  json levels = json::object();
  for (const WeightedDifference& level : prediction.level_differences)
    levels[level.weighting] = level.difference_db;
  const json value = {
      {"schema", 1},
      {"rig", prediction.rig},
      {"first", facts_json(prediction.first)},
      {"second", facts_json(prediction.second)},
      {"level_difference_dB", levels},
      {"trim_weighting", prediction.trim_weighting},
      {"residual", residual_json(prediction.after.residual)},
      {"smoothed", smoothed_json(prediction.after.smoothed)},
      {"stepped_trim", prediction.stepped ? stepped_json(*prediction.stepped) : json()},
      {"left_open", prediction.left_open ? open_json(*prediction.left_open) : json()},
      {"published_thresholds", thresholds_json()},
      {"least_impedance_ohm", prediction.least_impedance_ohm.value},
      {"frequency_of_least_impedance_Hz", prediction.least_impedance_ohm.frequency_hz},
      {"curve", {{"frequency_Hz", prediction.frequency_hz}, {"difference_dB", prediction.difference_db}}}};
  return value.dump(2) + "\n";
}

}  // namespace desk
