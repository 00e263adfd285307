#pragma once

#include "import/import.h"

namespace imported {

/// Reads a Touchstone 1.1 file of one port as an impedance.
///
/// The option line `# [Hz|kHz|MHz|GHz] [S|Z|Y] [RI|MA|DB] [R ohm]` may leave parts out (GHz, S, MA, R 50) and
/// have them in any order and case; `!` begins a comment; each row is a frequency and two numbers. S
/// parameters become Z = R (1 + S) / (1 - S). Z and Y parameters are normalised to R, as version 1.1 has
/// them; a warning says so unless R is 1.
///
/// @throws BadInput  with everything wrong in the file.
/// Source: Touchstone File Format Specification, Rev 1.1, EIA/IBIS Open Forum 2002 (memory).
Parsed parse_touchstone(const Source& source, const Assignment& assignment);

}  // namespace imported
