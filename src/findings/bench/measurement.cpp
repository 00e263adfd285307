#include "findings/bench/measurement.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "electrical/frequency_grid.h"
#include "hearing/level_curve.h"
#include "hearing/noise/spectrum.h"
#include "text/number.h"
#include "text/quantity.h"
#include "text/utf8.h"

namespace findings {
namespace {

auto circumstances(const Measurement& one) {
  return std::tie(one.kind, one.cable, one.rig, one.piece, one.condition, one.instrument, one.feature,
                  one.state);
}

void add_totals(const Measurement& measurement, std::vector<Quantity>& quantities) {
  for (const auto& [column, name] :
       {std::pair("resistance_ohm", "resistance"), std::pair("inductance_henry", "inductance"),
        std::pair("capacitance_farad", "capacitance")})
    if (const auto value = measurement.single(column); value && *value > 0)
      quantities.push_back({name, std::log(*value), true});
}

void add_levels(const Measurement& measurement, const std::vector<double>& level,
                std::vector<Quantity>& quantities) {
  const hearing::LevelCurve curve(*measurement.column("frequency_hz"), level);
  for (const double centre_hz : electrical::third_octave_centres_hz())
    if (centre_hz >= curve.band().low_hz && centre_hz <= curve.band().high_hz)
      quantities.push_back(
          {"level at " + text::with_unit(centre_hz, text::Unit::hertz), curve.level_db(centre_hz)});
}

/// The levels of a noise spectrum's third-octaves in dB re 1 V; none for levels whose bandwidth is not known.
void add_noise(const Measurement& measurement, std::vector<Quantity>& quantities) {
  const auto spectrum = hearing::spectrum_of_columns(
      *measurement.column("frequency_hz"), measurement.column("density_volt_per_sqrt_hz"),
      measurement.column("level_dbv"), measurement.column("bandwidth_hz"));
  if (!spectrum) return;
  for (const hearing::BandLevel& band : hearing::third_octave_levels(*spectrum))
    quantities.push_back({"level at " + text::with_unit(band.centre_hz, text::Unit::hertz), band.level_dbv});
}

}  // namespace

const std::vector<double>* Measurement::column(std::string_view name) const {
  const auto found = std::find(columns.begin(), columns.end(), name);
  return found == columns.end() ? nullptr : &values[static_cast<std::size_t>(found - columns.begin())];
}

std::optional<double> Measurement::single(std::string_view name) const {
  const auto* found = column(name);
  return found == nullptr || found->empty() ? std::nullopt : std::optional(found->front());
}

std::string described(const Measurement& measurement) {
  std::string words = "reading " + std::to_string(measurement.number) + " (" +
                      text::printable(measurement.file.substr(measurement.file.rfind('/') + 1));
  for (const std::string* part : {&measurement.piece, &measurement.condition, &measurement.state})
    if (!part->empty()) words += ", " + text::printable(*part);
  if (measurement.repeat != 1) words += ", repeat " + std::to_string(measurement.repeat);
  return words + ")";
}

bool are_at_one_frequency(const Measurement& first, const Measurement& second) {
  if (first.kind != "cable-lcr" && first.kind != "phase") return true;
  return first.single("frequency_hz") == second.single("frequency_hz");
}

bool are_repeats(const Measurement& first, const Measurement& second) {
  constexpr double kAlike_kelvin = 2;
  const auto warm = first.single("temperature_celsius"), cold = second.single("temperature_celsius");
  return circumstances(first) == circumstances(second) && are_at_one_frequency(first, second) &&
         first.single("length_m") == second.single("length_m") && warm.has_value() == cold.has_value() &&
         std::abs(warm.value_or(0) - cold.value_or(0)) <= kAlike_kelvin;
}

std::vector<std::vector<const Measurement*>> repeats_of(const std::vector<Measurement>& measurements) {
  std::vector<std::vector<const Measurement*>> groups;
  for (const Measurement& one : measurements) {
    if (one.superseded) continue;
    const auto group = std::find_if(groups.begin(), groups.end(),
                                    [&](const auto& each) { return are_repeats(*each.front(), one); });
    if (group == groups.end())
      groups.push_back({&one});
    else
      group->push_back(&one);
  }
  return groups;
}

std::vector<Quantity> quantities_of(const Measurement& measurement) {
  std::vector<Quantity> quantities;
  if (measurement.kind == "cable-lcr") add_totals(measurement, quantities);
  if (const auto phase = measurement.single("phase_deg"); phase && measurement.kind == "phase")
    quantities.push_back(
        {"phase at " + text::with_unit(measurement.single("frequency_hz").value_or(0), text::Unit::hertz),
         *phase});
  if (const auto* level = measurement.column("level_db")) add_levels(measurement, *level, quantities);
  if (measurement.kind == "noise") add_noise(measurement, quantities);
  return quantities;
}

}  // namespace findings
