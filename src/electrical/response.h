#pragma once

#include <complex>
#include <span>
#include <vector>

#include "electrical/cable.h"
#include "electrical/load.h"
#include "electrical/two_port.h"

namespace electrical {

/// What drives the cable: an e.m.f. behind an output impedance. Both may be 0, neither negative.
struct Source {
  double resistance_ohm = 0;
  double inductance_henry = 0;
};

/// The source's output impedance at one frequency (0 or more).
/// @throws std::domain_error  naming the argument, its value and its range.
std::complex<double> impedance_ohm(const Source& source, double frequency_hz);

/// H = V(load) / V(source e.m.f.) = ZL / (A ZL + B + Zs (C ZL + D)), exact for a uniform lossy line.
std::complex<double> voltage_ratio(std::complex<double> source_ohm, const TwoPort& cable,
                                   std::complex<double> load_ohm);

/// H of source, cable and load at one frequency (0 or more).
/// @throws std::domain_error  naming the argument, its value and its range; outside an impedance table.
/// Accuracy: 1e-13 relative, 20 Hz to 500 kHz (tests/electrical, against binary128 values).
std::complex<double> response(const Source& source, const Cable& cable, const Load& load,
                              double frequency_hz);

/// H at each frequency.
std::vector<std::complex<double>> responses(const Source& source, const Cable& cable, const Load& load,
                                            std::span<const double> frequency_hz);

/// H at each frequency from a cable and a load already computed there (`two_ports`, `impedances_ohm`): for
/// many cables on many loads.
/// @throws std::domain_error  if the three do not have the same length.
std::vector<std::complex<double>> responses(const Source& source, std::span<const double> frequency_hz,
                                            std::span<const TwoPort> cable,
                                            std::span<const std::complex<double>> load_ohm);

/// 20 log10 |ratio|; minus infinity for 0.
double level_db(std::complex<double> ratio);

/// The argument of the ratio in degrees, above -180 up to 180. Never print it without source and load:
/// both change it.
double phase_deg(std::complex<double> ratio);

/// Level of the first cable less that of the second, same source and load.
///
/// Computed from the difference of the two circuits, not of the two levels: a tiny difference keeps its
/// relative accuracy.
/// @throws std::domain_error  as `response`.
double level_difference_db(const Source& source, const Cable& first, const Cable& second, const Load& load,
                           double frequency_hz);

/// What the source sees: (A ZL + B) / (C ZL + D).
/// @throws std::domain_error  as `response`.
std::complex<double> input_impedance_ohm(const Cable& cable, const Load& load, double frequency_hz);

/// What the load sees: (B + Zs D) / (A + Zs C).
/// @throws std::domain_error  as `response`.
std::complex<double> output_impedance_ohm(const Source& source, const Cable& cable, double frequency_hz);

}  // namespace electrical
