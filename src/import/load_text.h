#pragma once

#include <string>
#include <string_view>

#include "electrical/load.h"

namespace imported {

/// Reads a load as typed:
///
///     8ohm                                             a resistor
///     47kohm||100pF                                    a line input
///     3.0ohm + 0.1mH + [27ohm||475uF||21.3mH] + ...    a loudspeaker: voice coil, parallel resonances
///
/// A voice coil's inductance may be left out; a resonance has one resistance, one capacitance and one inductance.
/// @throws BadInput  saying which part was found and what was expected.
electrical::Load parse_load(std::string_view typed);

}  // namespace imported
