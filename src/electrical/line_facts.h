#pragma once

#include "electrical/cable.h"

namespace electrical {

/// Speed of light in vacuum, m/s: exact by the definition of the metre (SI).
constexpr double kSpeedOfLight = 299792458;

/// Total capacitance above which some amplifiers may oscillate: 1 nF, common practice, no source.
constexpr double kCapacitanceCautionFarad = 1e-9;

/// sqrt(L/C) of the lossless line, ohm.
/// @throws std::domain_error  naming the argument, if inductance or capacitance is 0 ("left out").
double characteristic_impedance_ohm(const Cable& cable);

/// length * sqrt(LC): the time one end's signal takes to the other on the matched, lossless line, seconds.
/// Behind another source or load the phase is not 360 f delay.
/// @throws std::domain_error  as `check`.
double delay_s(const Cable& cable);

/// Speed of propagation over that of light: 1 / (c sqrt(LC)).
/// @throws std::domain_error  naming the argument, if inductance or capacitance is 0.
double speed_relative_to_light(const Cable& cable);

/// True if the readings cannot be right: LC below mu0 eps0 would carry signals faster than light.
///
/// An air-spaced line reaches the speed of light, and its readings are rounded: the speed must exceed it
/// by more than 0.1 %. False where inductance or capacitance is 0, since one was left out.
/// @throws std::domain_error  as `check`.
bool faster_than_light(const Cable& cable);

/// True if the total capacitance is above `kCapacitanceCautionFarad`: a caution, not a verdict. Which
/// capacitance is unsafe depends on the amplifier.
/// @throws std::domain_error  as `check`.
bool capacitance_needs_caution(const Cable& cable);

}  // namespace electrical
