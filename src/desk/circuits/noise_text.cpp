#include <functional>
#include <map>
#include <nlohmann/json.hpp>

#include "desk/circuits/noise.h"
#include "report/wrapped_text.h"
#include "text/columns.h"
#include "text/number.h"
#include "text/quantity.h"

namespace desk {
namespace {

using text::Align;
using text::Unit;
using NoiseGroup = std::vector<NoiseAtSeat>;

constexpr std::size_t kNoiseColumns = 100;

std::string volts(double volt) { return text::with_unit(volt, Unit::volt); }

std::string column_title(const NoiseAtSeat& noise) {
  return noise.state.empty() ? "reading " + std::to_string(noise.number) : noise.state;
}

std::string seat_words(const hearing::Seat& seat) {
  std::string words = std::to_string(seat.loudspeakers) +
                      (seat.loudspeakers == 1 ? " loudspeaker of " : " loudspeakers of ") +
                      text::shortest(seat.sensitivity_db) + " dB SPL at 1 m for 2.83 V, " +
                      text::shortest(seat.distance_m) + " m away";
  if (seat.loudspeakers > 1) words += ", their noise not correlated";
  return words +
         (seat.room_gain_db == 0
              ? "; the level falls as 1/r, no room gain stated: in a room it falls less, so that these "
                "levels are rather too low"
              : "; stated room gain: " + text::shortest(seat.room_gain_db) + " dB more than 1/r");
}

/// The figures of each reading of a group, one under the other.
std::string noise_figures_text(const NoiseGroup& group) {
  std::vector<std::string> header = {""};
  std::vector<Align> align = {Align::left};
  for (const NoiseAtSeat& noise : group) {
    header.push_back(column_title(noise));
    align.push_back(Align::right);
  }
  text::Columns rows(header, align);
  const auto row = [&](const std::string& title, const std::function<std::string(const NoiseAtSeat&)>& cell) {
    std::vector<std::string> cells = {title};
    for (const NoiseAtSeat& noise : group) cells.push_back(cell(noise));
    rows.add(cells);
  };
  row("spectrum used", [](const auto& noise) {
    return text::with_unit(noise.heard.low_hz, Unit::hertz) + " to " +
           text::with_unit(noise.heard.high_hz, Unit::hertz);
  });
  row("voltage, r.m.s.", [](const auto& noise) { return volts(noise.unweighted_volt); });
  row("A-weighted, r.m.s.", [](const auto& noise) { return volts(noise.a_weighted_volt); });
  row("ITU-R 468 weighted, r.m.s.", [](const auto& noise) {
    return noise.itu_468_weighted_volt ? volts(*noise.itu_468_weighted_volt) : "outside";
  });
  row("level at the seat, dB SPL", [](const auto& noise) { return text::fixed(noise.level_db, 1); });
  row("A-weighted, dB(A)", [](const auto& noise) { return text::fixed(noise.a_weighted_level_db, 1); });
  row("worst band, Hz", [](const auto& noise) { return text::fixed(worst_band(noise).centre_hz, 0); });
  row("its margin below the threshold, dB",
      [](const auto& noise) { return text::fixed(worst_band(noise).margin_db, 1); });
  row("least above the source's thermal noise, dB", [](const auto& noise) {
    return noise.thermal.least_above_db ? text::fixed(*noise.thermal.least_above_db, 1) : "source not known";
  });
  return rows.text(2);
}

/// The bands of a group: threshold, then level and margin of each reading.
std::string noise_bands_text(const NoiseGroup& group) {
  std::vector<std::string> header = {"band, Hz", "threshold, dB"};
  std::map<int, std::vector<std::string>> rows;
  for (std::size_t i = 0; i < group.size(); ++i) {
    const std::string of = group.size() == 1 ? "" : ", " + column_title(group[i]);
    header.insert(header.end(), {"level, dB" + of, "margin, dB" + of});
    for (const hearing::BandAtSeat& band : group[i].bands) {
      auto& row = rows[band.third_octave];
      if (row.empty()) row = {text::fixed(band.centre_hz, 0), text::fixed(band.threshold_db, 1)};
      row.resize(2 + 2 * i);
      row.insert(row.end(), {text::fixed(band.level_db, 1), text::fixed(band.margin_db, 1)});
    }
  }
  text::Columns bands(header, std::vector<Align>(header.size(), Align::right));
  for (const auto& [third_octave, row] : rows) bands.add(row);
  return bands.text(2);
}

std::string verdict_of(const NoiseAtSeat& noise) {
  const int above = bands_at_or_above(noise);
  const auto all = std::to_string(noise.bands.size());
  const std::string which = "reading " + std::to_string(noise.number) + ": ";
  if (above == 0)
    return which + "each band is below the published threshold of hearing for that band (" + all +
           (noise.bands.size() == 1 ? " band)" : " bands)");
  return which + std::to_string(above) + " of " + all +
         (above == 1 ? " bands is at or above the published threshold of hearing for that band"
                     : " bands are at or above the published thresholds of hearing for those bands");
}

std::string thermal_words(const NoiseAtSeat& noise) {
  return "Thermal noise at 293 K of " + text::with_unit(noise.thermal.resistance_ohm, Unit::ohm) +
         (noise.thermal.is_of_the_rig ? ", the rig's source" : ", for comparison") + ": " +
         text::with_unit(noise.thermal.density_volt_per_sqrt_hz, Unit::volt_per_sqrt_hertz) + ".";
}

nlohmann::json number_or_null(const std::optional<double>& value) {
  return value ? nlohmann::json(*value) : nlohmann::json();
}

nlohmann::json noise_reading_json(const NoiseAtSeat& noise) {
  nlohmann::json bands = nlohmann::json::array();
  for (const hearing::BandAtSeat& band : noise.bands)
    bands.push_back({{"centre_Hz", band.centre_hz},
                     {"level_dB", band.level_db},
                     {"threshold_dB", band.threshold_db},
                     {"margin_dB", band.margin_db}});
  return {{"reading", noise.number},
          {"words", noise.words},
          {"feature", noise.feature},
          {"state", noise.state},
          {"from_Hz", noise.heard.low_hz},
          {"to_Hz", noise.heard.high_hz},
          {"voltage_V", noise.unweighted_volt},
          {"a_weighted_V", noise.a_weighted_volt},
          {"itu_468_weighted_rms_V", number_or_null(noise.itu_468_weighted_volt)},
          {"level_dB", noise.level_db},
          {"a_weighted_level_dB", noise.a_weighted_level_db},
          {"worst_band_Hz", worst_band(noise).centre_hz},
          {"worst_margin_dB", worst_band(noise).margin_db},
          {"bands_at_or_above", bands_at_or_above(noise)},
          {"thermal_ohm", noise.thermal.resistance_ohm},
          {"thermal_is_of_the_rig", noise.thermal.is_of_the_rig},
          {"thermal_V_per_sqrtHz", noise.thermal.density_volt_per_sqrt_hz},
          {"least_above_thermal_dB", number_or_null(noise.thermal.least_above_db)},
          {"cautions", noise.cautions},
          {"bands", bands}};
}

}  // namespace

std::string noise_text(const NoiseOfCable& noise) {
  const auto lines = [](const std::string& words) { return report::wrapped(words, kNoiseColumns); };
  std::string all = lines("noise of " + noise.cable +
                          " at the seat, taken as the voltage at the terminals of each "
                          "loudspeaker: " +
                          seat_words(noise.seat));
  std::vector<std::string> thermal;
  for (const NoiseGroup& group : noise.groups) {
    all += "\n";
    for (const NoiseAtSeat& each : group) all += lines(each.words);
    all += noise_figures_text(group) + "\n" + noise_bands_text(group) + "\n";
    for (const NoiseAtSeat& each : group) {
      all += lines(verdict_of(each));
      for (const std::string& caution : each.cautions) all += lines("caution: " + caution);
      if (thermal.empty() || thermal.back() != thermal_words(each)) thermal.push_back(thermal_words(each));
    }
  }
  all += "\n";
  for (const std::string& words : noise.left_out) all += lines("left out: " + words);
  for (const std::string& words : thermal) all += lines(words);
  return all +
         lines(
             "Thresholds: ISO 389-7, the lower of free and diffuse field, young healthy listeners. Each band "
             "is "
             "compared alone; bands are not added up, and nothing is claimed beyond that. ITU-R 468: r.m.s. "
             "under the standard's curve, 31.5 Hz to 20 kHz, not what its quasi-peak meter reads.");
}

std::string noise_json(const NoiseOfCable& noise) {
  nlohmann::json readings = nlohmann::json::array();
  for (const NoiseGroup& group : noise.groups)
    for (const NoiseAtSeat& each : group) readings.push_back(noise_reading_json(each));
  const nlohmann::json value = {{"schema", 1},
                                {"cable", noise.cable},
                                {"seat",
                                 {{"sensitivity_dB", noise.seat.sensitivity_db},
                                  {"distance_m", noise.seat.distance_m},
                                  {"loudspeakers", noise.seat.loudspeakers},
                                  {"room_gain_dB", noise.seat.room_gain_db}}},
                                {"readings", readings},
                                {"left_out", noise.left_out}};
  return value.dump(2) + "\n";
}

}  // namespace desk
