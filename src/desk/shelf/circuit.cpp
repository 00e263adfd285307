#include "desk/shelf/circuit.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "desk/shelf/known_line.h"
#include "desk/shelf/one_state.h"
#include "import/load_text.h"
#include "text/error.h"
#include "text/nearest.h"
#include "text/number.h"
#include "text/quantity.h"

namespace desk {
namespace {

std::optional<double> spread_of(const std::vector<store::NumberedReading>& readings, std::string_view name) {
  std::vector<double> values;
  for (const store::NumberedReading& each : readings)
    if (const auto* found = column(each.reading, name)) values.push_back(found->front());
  if (values.size() < 2) return std::nullopt;
  const auto [least, most] = std::minmax_element(values.begin(), values.end());
  return *most - *least;
}

electrical::ImpedanceTable table_of(const imported::Reading& reading) {
  const auto& frequency_hz = *column(reading, "frequency_hz");
  const auto& magnitude_ohm = *column(reading, "magnitude_ohm");
  const auto& phase_deg = *column(reading, "phase_deg");
  std::vector<std::complex<double>> impedance_ohm;
  for (std::size_t i = 0; i < frequency_hz.size(); ++i)
    impedance_ohm.push_back(std::polar(magnitude_ohm[i], phase_deg[i] * std::numbers::pi / 180));
  return {frequency_hz, impedance_ohm};
}

std::optional<electrical::Load> load_of(const store::Campaign& campaign, const store::Rig& rig) {
  if (!rig.load.empty()) return imported::parse_load(rig.load);
  const auto readings = campaign.readings({.cable = {}, .kind = "impedance", .rig = rig.name});
  if (readings.empty()) return std::nullopt;
  return table_of(readings.back().reading);
}

std::string described(const store::Rig& rig, const std::optional<electrical::Load>& load) {
  std::string words = rig.kind;
  words += rig.source_resistance_ohm.empty() ? "; source not stated"
                                             : "; source " + rig.source_resistance_ohm + " ohm";
  if (!rig.load.empty()) {
    words += "; load " + rig.load;
  } else {
    words += load ? "; load by its imported impedance" : "; load not stated";
  }
  if (!rig.rated_impedance_ohm.empty()) words += ", rated " + rig.rated_impedance_ohm + " ohm";
  if (!rig.volume_step_db.empty()) words += "; volume in steps of " + rig.volume_step_db + " dB";
  if (!rig.level_note.empty()) words += "; " + rig.level_note;
  if (!rig.programme_note.empty()) words += "; " + rig.programme_note;
  return words;
}

}  // namespace

store::Rig rig_named(const store::Campaign& campaign, const std::string& name) {
  std::vector<std::string> names;
  for (const store::Rig& rig : campaign.rigs()) {
    if (rig.name == name) return rig;
    names.push_back(rig.name);
  }
  throw text::BadInput("no rig is called \"" + name + "\"" + text::did_you_mean(name, names));
}

void require_cable(const store::Campaign& campaign, const std::string& name) {
  std::vector<std::string> names;
  for (const store::Cable& cable : campaign.cables()) names.push_back(cable.name);
  if (std::find(names.begin(), names.end(), name) == names.end())
    throw text::BadInput("no cable is called \"" + name + "\"" + text::did_you_mean(name, names));
}

findings::CableEvidence cable_evidence(const store::Campaign& campaign, const std::string& cable,
                                       const std::string& rig) {
  findings::CableEvidence evidence;
  const auto lcr = of_one_state(campaign.readings({.cable = cable, .kind = "cable-lcr", .rig = {}}));
  evidence.lcr_readings = static_cast<int>(lcr.size());
  if (!lcr.empty()) {
    const auto known = known_line(campaign, cable);
    evidence.line = known->cable;
    evidence.line_words = known->words;
    evidence.loop_resistance_spread_ohm = spread_of(lcr, "resistance_ohm");
  }
  for (const auto& [number, reading, correction] :
       of_one_state(campaign.readings({.cable = cable, .kind = "response", .rig = rig}))) {
    evidence.response.repeats.emplace_back(*column(reading, "frequency_hz"), *column(reading, "level_db"));
    evidence.response.sources.push_back(reading.file + " (reading " + std::to_string(number) + ")");
  }
  return evidence;
}

findings::RigEvidence rig_evidence(const store::Campaign& campaign, const std::string& name) {
  const store::Rig rig = rig_named(campaign, name);
  findings::RigEvidence evidence;
  evidence.name = rig.name;
  if (!rig.source_resistance_ohm.empty())
    evidence.source = electrical::Source{text::number(rig.source_resistance_ohm).value(),
                                         text::number(rig.source_inductance_henry).value_or(0)};
  evidence.load = load_of(campaign, rig);
  evidence.description = described(rig, evidence.load);
  return evidence;
}

}  // namespace desk
