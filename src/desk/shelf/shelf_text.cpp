#include "desk/shelf/shelf_text.h"

#include <map>
#include <nlohmann/json.hpp>

#include "desk/reports/evidence.h"
#include "desk/shelf/circuit.h"
#include "text/columns.h"
#include "text/number.h"
#include "text/quantity.h"

namespace desk {
namespace {

using text::Align;
using text::Unit;

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string construction_of(const store::Cable& cable) {
  std::string words;
  for (const auto& [attribute, value] : cable.construction)
    words += (words.empty() ? "" : ", ") + attribute + " " + value;
  return words;
}

std::string facts_text(const CablePrediction& cable) {
  return "  " + cable.name + ": loop resistance " + text::with_unit(cable.loop_resistance_ohm, Unit::ohm) +
         ", inductance " + text::with_unit(cable.inductance_henry, Unit::henry) + ", capacitance " +
         text::with_unit(cable.capacitance_farad, Unit::farad) +
         (cable.damping_factor ? ", damping factor " + text::significant(*cable.damping_factor, 3) : "") +
         "\n";
}

nlohmann::json facts_json(const CablePrediction& cable) {
  nlohmann::json facts = {{"name", cable.name},
                          {"loop_resistance_ohm", cable.loop_resistance_ohm},
                          {"inductance_henry", cable.inductance_henry},
                          {"capacitance_farad", cable.capacitance_farad},
                          {"cautions", cable.cautions}};
  facts["damping_factor"] = cable.damping_factor ? nlohmann::json(*cable.damping_factor) : nlohmann::json();
  return facts;
}

}  // namespace

std::string import_text(const Imported& imported) {
  std::map<std::string, int> by_kind;
  for (const imported::Reading& reading : imported.readings) ++by_kind[reading.kind];
  std::string words = "imported " + counted(imported.readings.size(), "reading", "readings");
  for (const auto& [kind, count] : by_kind) words += ", " + std::to_string(count) + " " + kind;
  words += "\n";
  if (imported.there_already > 0)
    words += counted(static_cast<std::size_t>(imported.there_already), "reading is", "readings are") +
             " there already from the same files, left as they were\n";
  for (const std::string& cable : imported.new_cables)
    words += "cable \"" + cable + "\" is new and was added\n";
  return words;
}

std::string inventory_text(const Path& file) {
  const Inventory shelf = inventory(file);
  std::map<std::string, int> readings;
  for (const store::NumberedReading& each : shelf.readings) ++readings[each.reading.cable];
  std::string words = shelf.title + "\n\n";
  text::Columns cables({"cable", "readings", "construction", "note"}, {Align::left, Align::right});
  for (const store::Cable& cable : shelf.cables)
    cables.add({cable.name + (cable.name == shelf.baseline ? " (baseline)" : ""),
                std::to_string(readings[cable.name]), construction_of(cable), cable.note});
  words += cables.text() + "\n";
  const store::Campaign campaign = store::Campaign::open(file);
  text::Columns rigs({"rig", "what it is"});
  for (const store::Rig& rig : shelf.rigs) rigs.add({rig.name, rig_evidence(campaign, rig.name).description});
  words += rigs.text() + "\n";
  text::Columns plans({"plan", "protocol", "sealed at", "state"});
  for (const findings::PlanLine& plan : plan_lines(campaign))
    plans.add({plan.name, plan.protocol, plan.sealed_at, plan.state});
  return words + plans.text();
}

std::string prediction_text(const Prediction& prediction) {
  std::string words = prediction.second.name + " in place of " + prediction.first.name + ", rig " +
                      prediction.rig + " (" + prediction.rig_description + ")\n" +
                      facts_text(prediction.first) + facts_text(prediction.second);
  words += "  load: least impedance " + text::with_unit(prediction.least_impedance_ohm.value, Unit::ohm) +
           " at " + text::with_unit(prediction.least_impedance_ohm.frequency_hz, Unit::hertz) + "\n";
  words += "level at the load, " + prediction.second.name + " less " + prediction.first.name + ":\n";
  text::Columns levels({"weighting", "dB", ""}, {Align::left, Align::right});
  for (const WeightedDifference& level : prediction.level_differences)
    levels.add({level.weighting, text::fixed(level.difference_db, 3), level.title});
  words += levels.text(2);
  const hearing::Residual& residual = prediction.residual;
  words += "after a trim by the " + prediction.trim_weighting + " difference the response still differs by " +
           text::fixed(residual.minimum_db, 3) + " to " + text::fixed(residual.maximum_db, 3) +
           " dB (r.m.s. " + text::fixed(residual.rms_db, 3) + " dB), most at " +
           text::with_unit(residual.frequency_of_largest_hz, Unit::hertz) + "\n";
  for (const auto* cable : {&prediction.first, &prediction.second})
    for (const std::string& caution : cable->cautions) words += "caution: " + caution + "\n";
  return words;
}

std::string prediction_json(const Prediction& prediction) {
  nlohmann::json levels = nlohmann::json::object();
  for (const WeightedDifference& level : prediction.level_differences)
    levels[level.weighting] = level.difference_db;
  const nlohmann::json value = {
      {"schema", 1},
      {"rig", prediction.rig},
      {"first", facts_json(prediction.first)},
      {"second", facts_json(prediction.second)},
      {"level_difference_dB", levels},
      {"trim_weighting", prediction.trim_weighting},
      {"residual",
       {{"minimum_dB", prediction.residual.minimum_db},
        {"maximum_dB", prediction.residual.maximum_db},
        {"rms_dB", prediction.residual.rms_db},
        {"frequency_of_largest_Hz", prediction.residual.frequency_of_largest_hz}}},
      {"least_impedance_ohm", prediction.least_impedance_ohm.value},
      {"frequency_of_least_impedance_Hz", prediction.least_impedance_ohm.frequency_hz},
      {"curve", {{"frequency_Hz", prediction.frequency_hz}, {"difference_dB", prediction.difference_db}}}};
  return value.dump(2) + "\n";
}

}  // namespace desk
