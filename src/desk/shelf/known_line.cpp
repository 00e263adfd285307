#include "desk/shelf/known_line.h"

#include <algorithm>
#include <cmath>

#include "desk/shelf/built.h"
#include "desk/shelf/measurement.h"
#include "desk/shelf/one_state.h"
#include "electrical/construction/round_wire.h"
#include "findings/bench/coverage.h"
#include "findings/words/numbers.h"
#include "text/utf8.h"

namespace desk {
namespace {

using LcrReadings = std::vector<store::NumberedReading>;

store::Cable cable_named(const store::Campaign& campaign, const std::string& name) {
  for (store::Cable& cable : campaign.cables())
    if (cable.name == name) return std::move(cable);
  return {name, {}, ""};
}

/// The mean of a one-row column over the readings that have it.
std::optional<double> mean_if_read(const LcrReadings& readings, std::string_view name) {
  double sum = 0;
  int count = 0;
  for (const store::NumberedReading& each : readings)
    if (const auto* values = column(each.reading, name)) {
      sum += values->front();
      ++count;
    }
  return count == 0 ? std::nullopt : std::optional(sum / count);
}

/// How far an inductance read at some frequency lies below that of direct current. Cable wants both resistance and
/// inductance at direct current and takes from the inductance what the skin effect takes; a meter at 1 kHz or 100 kHz has
/// seen part of that gone already, which would else be taken twice. A resistance counts as one of direct current, as from an
/// ohm-meter: what an LCR meter at 1 kHz reads of 4 mm2 is 0.2 % more. Without a frequency the inductance counts so too.
double skin_correction_henry(const LcrReadings& readings, const electrical::RoundConductors& round,
                             double length_m) {
  double sum = 0;
  int count = 0;
  for (const store::NumberedReading& each : readings) {
    if (column(each.reading, "inductance_henry") == nullptr) continue;
    ++count;
    const auto* hz = column(each.reading, "frequency_hz");
    if (hz == nullptr || round.count == 0) continue;
    const double share = electrical::internal_inductance_share(
        electrical::skin_argument(round.resistance_ohm_per_m, hz->front()));
    sum += round.count * electrical::kInternalInductanceHenryPerM * (1 - share) * length_m;
  }
  return count == 0 ? 0 : sum / count;
}

/// A value as read, else as calculated.
struct Found {
  std::optional<double> value;
  Origin origin = Origin::unknown;
};

Found found(const std::optional<double>& total_read, double length_m,
            const std::optional<double>& calculated) {
  if (total_read) return {*total_read / length_m, Origin::reading};
  return {calculated, calculated ? Origin::construction : Origin::unknown};
}

/// Gives the line the skin effect that its shape allows: none where its inductance is below that within round conductors.
/// @return  whether its inductance as read was carried to direct current.
bool add_skin_effect(KnownLine& line, const Built& built_as, const LcrReadings& readings) {
  electrical::Cable& cable = line.cable;
  const electrical::RoundConductors round = round_conductors(built_as, cable.resistance_ohm_per_m);
  const double within = round.count * electrical::kInternalInductanceHenryPerM;
  if (line.inductance == Origin::unknown) cable.inductance_henry_per_m = within;
  const double correction = skin_correction_henry(readings, round, cable.length_m) / cable.length_m;
  if (cable.inductance_henry_per_m + correction < within) return false;
  cable.round_conductors = round;
  cable.inductance_henry_per_m += correction;
  return correction > 0;
}

std::string constants_words(const KnownLine& line, bool carried) {
  std::vector<std::string> by_origin[3];
  const auto sort = [&](const char* name, Origin origin) {
    by_origin[static_cast<int>(origin)].emplace_back(name);
  };
  sort("resistance", line.resistance);
  sort("inductance", line.inductance);
  sort("capacitance", line.capacitance);
  std::string words;
  const auto add = [&](Origin origin, const std::string& what) {
    const auto& names = by_origin[static_cast<int>(origin)];
    if (!names.empty()) words += (words.empty() ? "" : "; ") + findings::listed(names) + what;
  };
  add(Origin::reading, " as read");
  if (carried) words += " (the inductance carried to direct current)";
  add(Origin::construction, " calculated from the construction");
  if (line.resistance == Origin::construction)
    words += " (metal at 20 C; a standard cable may have 4 to 16 % more resistance, IEC 60228)";
  add(Origin::unknown, " unknown");
  if (line.inductance == Origin::unknown && line.cable.round_conductors.count > 0)
    words += " (counted: the 50 nH/m within each round conductor)";
  return words;
}

std::string skin_words(const Built& built_as, const electrical::Cable& cable) {
  if (cable.round_conductors.count == 2)
    return "skin effect of two round conductors included, proximity effect left out";
  if (cable.round_conductors.count == 1)
    return "skin effect of the inner conductor included, that of the shield left out";
  const std::string constant = "no skin effect, the same resistance at all frequencies: ";
  if (built_as.geometry.empty()) return constant + "geometry not stated";
  if (built_as.shape == CableShape::other)
    return constant + "none is calculated for geometry " + text::quoted(built_as.geometry);
  if (cable.resistance_ohm_per_m == 0) return constant + "its resistance is 0";
  if (round_conductors(built_as, cable.resistance_ohm_per_m).count > 0)
    return constant + "its inductance is less than round conductors have within them";
  if (!built_as.metal_area_m2 || built_as.material == nullptr)
    return constant + "cross-section or metal of its inner conductor not known";
  return constant + "its inner conductor would by construction alone have more than the loop";
}

/// What the mean of the readings hides.
void add_cautions_of_mean(KnownLine& line, const LcrReadings& readings) {
  const auto both = [](int one, int other) {
    return "readings " + std::to_string(one) + " and " + std::to_string(other);
  };
  const auto length_m = [](const store::NumberedReading& each) {
    return column(each.reading, "length_m")->front();
  };
  const auto other_length = std::ranges::find_if(
      readings, [&](const auto& each) { return length_m(each) != length_m(readings.front()); });
  if (other_length != readings.end())
    line.cautions.push_back(both(readings.front().number, other_length->number) +
                            " are of different lengths, and the mean of all is predicted; another length is "
                            "another cable: give it its own name and supersede the reading here");
  std::vector<findings::Measurement> measurements;
  for (const store::NumberedReading& each : readings) measurements.push_back(measurement_of(each));
  for (const auto& [older, newer] : findings::same_names(measurements))
    line.cautions.push_back(both(older->number, newer->number) +
                            " have the same names, and the mean of all is predicted; give one its own "
                            "repeat, or let one supersede the other");
}

void add_cautions(KnownLine& line, const LcrReadings& readings) {
  constexpr double one_percent = 1.01;
  const auto& [count, each_ohm_per_m] = line.cable.round_conductors;
  const auto hz = mean_if_read(readings, "frequency_hz");
  if (count == 0 || !hz || line.resistance != Origin::reading) return;
  const double argument = electrical::skin_argument(each_ohm_per_m, *hz);
  if (electrical::internal_impedance_ratio(argument).real() > one_percent)
    line.cautions.emplace_back(
        "its resistance counts as that of direct current; if it too was read at the frequency stated, it "
        "holds skin effect already and is counted too high");
}

}  // namespace

std::string name_of(Origin origin) {
  return origin == Origin::reading ? "reading" : origin == Origin::construction ? "construction" : "unknown";
}

std::optional<KnownLine> known_line(const store::Campaign& campaign, const std::string& name) {
  const auto lcr = of_one_state(campaign.readings({.cable = name, .kind = "cable-lcr", .rig = {}}));
  const Built built_as = built(cable_named(campaign, name));
  const Calculated own = calculated(built_as);
  const auto length_m = lcr.empty() ? built_as.length_m : mean_if_read(lcr, "length_m");
  if (!length_m) return std::nullopt;
  const Found resistance = found(mean_if_read(lcr, "resistance_ohm"), *length_m, own.resistance_ohm_per_m);
  if (!resistance.value) return std::nullopt;
  const Found inductance =
      found(mean_if_read(lcr, "inductance_henry"), *length_m, own.inductance_henry_per_m);
  const Found capacitance =
      found(mean_if_read(lcr, "capacitance_farad"), *length_m, own.capacitance_farad_per_m);
  KnownLine line;
  line.resistance = resistance.origin;
  line.inductance = inductance.origin;
  line.capacitance = capacitance.origin;
  line.cable = {.resistance_ohm_per_m = *resistance.value,
                .inductance_henry_per_m = inductance.value.value_or(0),
                .capacitance_farad_per_m = capacitance.value.value_or(0),
                .conductance_siemens_per_m = mean_if_read(lcr, "conductance_siemens").value_or(0) / *length_m,
                .length_m = *length_m};
  const bool carried = add_skin_effect(line, built_as, lcr);
  line.words = constants_words(line, carried) + "; " + skin_words(built_as, line.cable);
  add_cautions(line, lcr);
  add_cautions_of_mean(line, lcr);
  return line;
}

std::string wanting_for_resistance(const store::Campaign& campaign, const std::string& name) {
  const Built built_as = built(cable_named(campaign, name));
  std::vector<std::string> wanting;
  if (built_as.shape != CableShape::round_pair) wanting.emplace_back("geometry=pair");
  if (!built_as.metal_area_m2) wanting.emplace_back("cross-section=2.5mm2 (or awg=12)");
  if (built_as.material == nullptr) wanting.emplace_back("material=copper");
  if (!built_as.length_m) wanting.emplace_back("length=3m");
  return findings::listed(wanting);
}

std::vector<electrical::Cable> possible_lines(const KnownLine& line) {
  std::vector<electrical::Cable> lines;
  for (const double henry : {kLeastInductanceHenryPerM, kMostInductanceHenryPerM})
    for (const double farad : {kLeastCapacitanceFaradPerM, kMostCapacitanceFaradPerM}) {
      if (line.inductance != Origin::unknown && henry != kLeastInductanceHenryPerM) continue;
      if (line.capacitance != Origin::unknown && farad != kLeastCapacitanceFaradPerM) continue;
      lines.push_back(line.cable);
      if (line.inductance == Origin::unknown) lines.back().inductance_henry_per_m = henry;
      if (line.capacitance == Origin::unknown) lines.back().capacitance_farad_per_m = farad;
    }
  return lines;
}

}  // namespace desk
