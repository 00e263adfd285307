#include "electrical/cable.h"

#include <numbers>
#include <stdexcept>
#include <string>

#include "electrical/argument.h"
#include "electrical/construction/round_wire.h"

namespace electrical {
namespace {

/// Rounding of the sum of the conductors.
constexpr double kOfLoop = 1 + 1e-9;

void check(const RoundConductors& round, double loop_ohm_per_m) {
  if (round.count < 0 || round.count > 2)
    throw std::domain_error("round_conductors count must be from 0 to 2, got " + std::to_string(round.count));
  if (round.count == 0) return;
  require_positive("round_conductors resistance_ohm_per_m", round.resistance_ohm_per_m);
  if (round.count * round.resistance_ohm_per_m > loop_ohm_per_m * kOfLoop)
    throw std::domain_error("round_conductors must have no more resistance than the loop, " +
                            number_text(loop_ohm_per_m) + " ohm/m, got " +
                            number_text(round.count * round.resistance_ohm_per_m));
}

}  // namespace

void check(const Cable& cable) {
  require_not_negative("resistance_ohm_per_m", cable.resistance_ohm_per_m);
  require_not_negative("inductance_henry_per_m", cable.inductance_henry_per_m);
  require_not_negative("capacitance_farad_per_m", cable.capacitance_farad_per_m);
  require_not_negative("conductance_siemens_per_m", cable.conductance_siemens_per_m);
  require_not_negative("length_m", cable.length_m);
  require_not_negative("load_end_resistance_ohm", cable.load_end_resistance_ohm);
  check(cable.round_conductors, cable.resistance_ohm_per_m);
}

Cable cable_from_totals(const CableTotals& totals, double length_m) {
  require_not_negative("loop_resistance_ohm", totals.loop_resistance_ohm);
  require_not_negative("inductance_henry", totals.inductance_henry);
  require_not_negative("capacitance_farad", totals.capacitance_farad);
  require_not_negative("conductance_siemens", totals.conductance_siemens);
  require_positive("length_m", length_m);
  return {.resistance_ohm_per_m = totals.loop_resistance_ohm / length_m,
          .inductance_henry_per_m = totals.inductance_henry / length_m,
          .capacitance_farad_per_m = totals.capacitance_farad / length_m,
          .conductance_siemens_per_m = totals.conductance_siemens / length_m,
          .length_m = length_m};
}

CableTotals totals(const Cable& cable) {
  check(cable);
  return {.loop_resistance_ohm = cable.resistance_ohm_per_m * cable.length_m,
          .inductance_henry = cable.inductance_henry_per_m * cable.length_m,
          .capacitance_farad = cable.capacitance_farad_per_m * cable.length_m,
          .conductance_siemens = cable.conductance_siemens_per_m * cable.length_m};
}

std::complex<double> series_ohm(const Cable& cable, double frequency_hz) {
  const CableTotals total = totals(cable);
  require_not_negative("frequency_hz", frequency_hz);
  std::complex<double> ohm(total.loop_resistance_ohm,
                           2 * std::numbers::pi * frequency_hz * total.inductance_henry);
  if (const auto& [count, each] = cable.round_conductors; count > 0)
    ohm += cable.length_m * count * each * skin_excess_ratio(skin_argument(each, frequency_hz));
  return ohm;
}

double loop_resistance_ohm(const Cable& cable) {
  return totals(cable).loop_resistance_ohm + cable.load_end_resistance_ohm;
}

}  // namespace electrical
