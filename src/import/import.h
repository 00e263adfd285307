#pragma once

#include <string>
#include <vector>

#include "import/reading.h"

namespace imported {

/// What a file of readings does not say itself: it comes with the command or from a manifest.
struct Assignment {
  std::string cable;
  std::string rig;
  std::string piece;
  std::string condition;
  int repeat = 1;
  std::string instrument{};
  std::string feature{}, state{};  ///< both or neither
  double bandwidth_hz = 0;         ///< of each level of a noise spectrum; 0 where not known
};

/// A file: its name as the person wrote it, and its bytes.
struct Source {
  std::string name;
  std::string content;
};

/// The readings of a file and what looks odd about them, each warning ready to be printed.
struct Parsed {
  std::vector<Reading> readings;
  std::vector<std::string> warnings;
};

/// Reads one file of readings.
///
/// A name that ends in `.s1p` is a Touchstone 1.1 file of one port: an impedance. Anything else is a text
/// table whose header row chooses the kind (kinds.h). Values per metre are multiplied by the cable's length.
///
/// Warned of, at most 20 times a file: values outside anything likely (a unit mistaken), a cable faster than
/// light, an impedance with a phase beyond 90 degrees.
///
/// @throws BadInput  with everything wrong in the file: text::parse_table, known_header, values that are no
///         numbers or of the wrong sign, a frequency that does not rise, a cable given twice under the same
///         conditions, and an assignment that lacks what the kind needs (a response and noise a cable, an
///         impedance a rig).
Parsed parse(const Source& source, const Assignment& assignment);

/// The cables that a refused file names, so that other files which name them are not refused for its sake.
struct CablesNamed {
  std::vector<std::string> names;
  bool all = false;  ///< the file is a table, and every row of it could be taken apart
};

/// Reads no more of the file than its column `cable`, where it has one. Refuses nothing.
CablesNamed cables_named(const Source& source);

}  // namespace imported
