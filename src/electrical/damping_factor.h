#pragma once

#include "electrical/response.h"

namespace electrical {

/// Damping factor from resistances: rated load impedance / (source resistance + the cable's loop
/// resistance, load-end resistor included).
///
/// @throws std::domain_error  naming the argument, its value and its range; if the resistances sum to 0.
///
/// Example: 8 ohm behind 0.1 ohm and a cable of 0.6 ohm gives 11.43; without the cable 80.
/// Source: IEC 60268-3, rated load impedance over source impedance (from memory), with the cable counted to
/// the source because the load sees both.
double damping_factor(double rated_impedance_ohm, const Source& source, const Cable& cable);

/// The same at one frequency (above 0): rated load impedance / |impedance that the load sees|.
double damping_factor(double rated_impedance_ohm, const Source& source, const Cable& cable,
                      double frequency_hz);

/// The output resistance of an amplifier from two voltages: unloaded, and across a known resistor.
///
/// @param unloaded_volt  above 0.
/// @param loaded_volt    above 0, at most `unloaded_volt`.
/// @param load_ohm       above 0.
/// @return  load * (unloaded / loaded - 1); 0 for equal voltages.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 2.830 V unloaded and 2.800 V on 8 ohm give 0.0857 ohm.
double source_resistance_by_loading_ohm(double unloaded_volt, double loaded_volt, double load_ohm);

}  // namespace electrical
