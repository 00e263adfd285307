#include "electrical/line_facts.h"

#include <cmath>

#include "electrical/argument.h"

namespace electrical {
namespace {

/// Readings of an air-spaced line are rounded to about three digits.
constexpr double kMostSpeed = 1.001;

void require_inductance_and_capacitance(const Cable& cable) {
  check(cable);
  require_positive("inductance_henry_per_m", cable.inductance_henry_per_m);
  require_positive("capacitance_farad_per_m", cable.capacitance_farad_per_m);
}

double delay_s_per_m(const Cable& cable) {
  return std::sqrt(cable.inductance_henry_per_m) * std::sqrt(cable.capacitance_farad_per_m);
}

}  // namespace

double characteristic_impedance_ohm(const Cable& cable) {
  require_inductance_and_capacitance(cable);
  return std::sqrt(cable.inductance_henry_per_m / cable.capacitance_farad_per_m);
}

double delay_s(const Cable& cable) {
  check(cable);
  return cable.length_m * delay_s_per_m(cable);
}

double speed_relative_to_light(const Cable& cable) {
  require_inductance_and_capacitance(cable);
  return 1 / (kSpeedOfLight * delay_s_per_m(cable));
}

bool faster_than_light(const Cable& cable) {
  check(cable);
  if (cable.inductance_henry_per_m == 0 || cable.capacitance_farad_per_m == 0) return false;
  return speed_relative_to_light(cable) > kMostSpeed;
}

bool capacitance_needs_caution(const Cable& cable) {
  return totals(cable).capacitance_farad > kCapacitanceCautionFarad;
}

}  // namespace electrical
