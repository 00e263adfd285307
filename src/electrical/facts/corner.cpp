#include "electrical/facts/corner.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "electrical/argument.h"

namespace electrical {
namespace {

constexpr int kPointsPerDecade = 200;

/// Power over that at the reference, less one half: above 0 before the corner.
class Drop {
 public:
  Drop(const Source& source, const Cable& cable, const Load& load, double reference_hz)
      : source_(source),
        cable_(cable),
        load_(load),
        reference_(std::norm(response(source, cable, load, reference_hz))) {}

  double operator()(double frequency_hz) const {
    return std::norm(response(source_, cable_, load_, frequency_hz)) / reference_ - 0.5;
  }

 private:
  const Source& source_;
  const Cable& cable_;
  const Load& load_;
  double reference_;
};

}  // namespace

std::optional<double> corner_frequency_hz(const Source& source, const Cable& cable, const Load& load,
                                          double reference_hz, double highest_hz) {
  const double end_hz = std::min(highest_hz, known_band(load).high_hz);
  const int points =
      2 + static_cast<int>(kPointsPerDecade * std::log10(std::max(end_hz / reference_hz, 1.0)));
  const std::vector<double> grid = log_spaced({reference_hz, end_hz}, points);
  const Drop drop(source, cable, load, reference_hz);
  const auto beyond = std::find_if(grid.begin() + 1, grid.end(), [&](double f) { return drop(f) < 0; });
  if (beyond == grid.end()) return std::nullopt;
  double low_hz = *(beyond - 1), high_hz = *beyond;
  while (high_hz / low_hz - 1 > 1e-12) {
    const double middle_hz = std::sqrt(low_hz * high_hz);
    (drop(middle_hz) < 0 ? high_hz : low_hz) = middle_hz;
  }
  return std::sqrt(low_hz * high_hz);
}

std::optional<double> one_pole_corner_hz(const Source& source, const Cable& cable, const Resistor& load) {
  require_not_negative("source resistance_ohm", source.resistance_ohm);
  require_positive("resistance_ohm", load.resistance_ohm);
  require_not_negative("parallel_capacitance_farad", load.parallel_capacitance_farad);
  const double capacitance_farad = totals(cable).capacitance_farad + load.parallel_capacitance_farad;
  if (source.resistance_ohm == 0 || capacitance_farad == 0) return std::nullopt;
  const double both_ohm = 1 / (1 / source.resistance_ohm + 1 / load.resistance_ohm);
  return 1 / (2 * std::numbers::pi * both_ohm * capacitance_farad);
}

LevelShares level_shares(const Source& source, const Cable& cable, const Load& load, double frequency_hz) {
  const double level = level_db(response(source, cable, load, frequency_hz));
  Source no_source = source;
  no_source.resistance_ohm = 0;
  Cable no_resistance = cable, no_inductance = cable, no_capacitance = cable;
  no_resistance.resistance_ohm_per_m = no_resistance.load_end_resistance_ohm = 0;
  no_resistance.round_conductors = {};
  no_inductance.inductance_henry_per_m = 0;
  no_capacitance.capacitance_farad_per_m = no_capacitance.conductance_siemens_per_m = 0;
  return {level - level_db(response(no_source, cable, load, frequency_hz)),
          level_difference_db(source, cable, no_resistance, load, frequency_hz),
          level_difference_db(source, cable, no_inductance, load, frequency_hz),
          level_difference_db(source, cable, no_capacitance, load, frequency_hz)};
}

}  // namespace electrical
