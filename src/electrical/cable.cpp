#include "electrical/cable.h"

#include "electrical/argument.h"

namespace electrical {

void check(const Cable& cable) {
  require_not_negative("resistance_ohm_per_m", cable.resistance_ohm_per_m);
  require_not_negative("inductance_henry_per_m", cable.inductance_henry_per_m);
  require_not_negative("capacitance_farad_per_m", cable.capacitance_farad_per_m);
  require_not_negative("conductance_siemens_per_m", cable.conductance_siemens_per_m);
  require_not_negative("length_m", cable.length_m);
  require_not_negative("load_end_resistance_ohm", cable.load_end_resistance_ohm);
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

double loop_resistance_ohm(const Cable& cable) {
  return totals(cable).loop_resistance_ohm + cable.load_end_resistance_ohm;
}

}  // namespace electrical
