#pragma once

#include <complex>

#include "electrical/construction/material.h"

namespace electrical {

/// Magnetic constant, H/m. Source: CODATA 2018.
constexpr double kMagneticConstant = 1.25663706212e-6;

/// Internal inductance of a round wire at low frequencies, whatever its diameter: mu0/(8 pi) = 50 nH/m.
constexpr double kInternalInductanceHenryPerM = kMagneticConstant / (8 * 3.14159265358979323846);

/// Depth at which the current in a thick conductor has fallen to 1/e: sqrt(2 rho/(omega mu0)).
/// @param frequency_hz  above 0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: copper at 20 kHz: 0.4673 mm.
double skin_depth_m(const Material& material, double frequency_hz, double temperature_celsius = 20);

/// The one argument on which a round wire's skin effect depends: x = radius * sqrt(omega mu0 sigma), which is
/// sqrt(omega mu0/(pi R')) with its direct-current resistance per metre R'.
///
/// So neither diameter nor metal need be known; and a bunch of fine strands in contact behaves about as a solid wire of
/// the same resistance, whatever its outline.
/// @param resistance_ohm_per_m  of one wire at direct current, above 0.
/// @param frequency_hz  0 or more.
/// @throws std::domain_error  naming the argument, its value and its range.
double skin_argument(double resistance_ohm_per_m, double frequency_hz);

/// Internal impedance of an isolated solid round wire over its direct-current resistance: exact, stable for every
/// argument.
///
/// Z/R0 = z I0(z)/(2 I1(z)), z = x exp(j pi/4). Real part: how many times the resistance grows. The imaginary part over
/// x^2/8 is how many times the internal inductance of 50 nH/m is left (`internal_inductance_share`).
/// Limits: one wire alone. The proximity effect, by which the neighbour in a close pair adds to the loss, is left out;
/// so are insulated strands and flat conductors.
/// @param argument  `skin_argument`, finite and 0 or more.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: 1e-14 relative (tests/electrical, against 50-digit arithmetic).
/// Source: Rosa & Grover, Bulletin of the Bureau of Standards, 1916 (from memory), in modified Bessel functions.
std::complex<double> internal_impedance_ratio(double argument);

/// Share of the low-frequency internal inductance that is left: 1 for slow currents, towards 0 for fast ones.
double internal_inductance_share(double argument);

/// What the skin effect adds to R0 (1 + j x^2/8), over R0: 0 for slow currents, kept to full relative accuracy there.
std::complex<double> skin_excess_ratio(double argument);

}  // namespace electrical
