#pragma once

#include <complex>

namespace electrical {

/// Round conductors whose skin effect counts: how many, and the direct-current resistance of each.
struct RoundConductors {
  int count = 0;  ///< 0: resistance and inductance are the same at every frequency; 1: coaxial; 2: a pair
  double resistance_ohm_per_m = 0;
};

/// A uniform two-conductor cable between source and load.
///
/// Per-metre values are LOOP values: resistance and inductance of both conductors together (go and
/// return), capacitance and conductance between them. Any of them may be 0 ("left out"); none may be
/// negative, infinite or not a number. Functions that take a Cable check it (`check`).
struct Cable {
  double resistance_ohm_per_m = 0;
  double inductance_henry_per_m = 0;
  double capacitance_farad_per_m = 0;
  double conductance_siemens_per_m = 0;
  double length_m = 0;

  /// A lumped resistor in series with one conductor at the LOAD end, beyond the line: the stated
  /// resistor of a known-difference control, or a contact resistance. (A resistor at the source end
  /// acts exactly as the same resistance added to the source: add it to Source::resistance_ohm.)
  double load_end_resistance_ohm = 0;

  /// Part of the resistance above, and of the inductance 50 nH/m each, that depends on frequency. Both values above are
  /// then those of direct current.
  RoundConductors round_conductors = {};
};

/// What an instrument reads on the whole length.
struct CableTotals {
  double loop_resistance_ohm = 0;
  double inductance_henry = 0;
  double capacitance_farad = 0;
  double conductance_siemens = 0;
};

/// Refuses a cable with a negative or non-finite value, other than 0 to 2 round conductors, or round conductors of more
/// than its loop resistance.
/// @throws std::domain_error  naming the field, its value and its range.
void check(const Cable& cable);

/// The uniform cable of `length_m` metres (above 0) that has these totals.
///
/// Only a line's totals matter to its two-port, so the length is free where it is not known.
/// @throws std::domain_error  naming the argument, its value and its range.
Cable cable_from_totals(const CableTotals& totals, double length_m);

/// The values per metre times the length; the load-end resistor is not in them.
/// @throws std::domain_error  as `check`.
CableTotals totals(const Cable& cable);

/// Total series impedance of the line at one frequency (0 or more): R + j omega L, with the skin effect of its round
/// conductors.
/// @throws std::domain_error  as `check`; naming the frequency.
std::complex<double> series_ohm(const Cable& cable, double frequency_hz);

/// What an ohm-meter reads with the far end shorted: line and load-end resistor together.
/// @throws std::domain_error  as `check`.
double loop_resistance_ohm(const Cable& cable);

}  // namespace electrical
