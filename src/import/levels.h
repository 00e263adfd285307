#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "text/problem.h"
#include "text/quantity.h"

namespace imported {

/// A level measured at the terminals with one cable connected.
struct TerminalLevel {
  std::string tag;       ///< three digits
  std::string channel;   ///< "left", "right" or "mono"
  std::string moment;    ///< "start" or "end"
  double level_db = 0;   ///< dB in the unit of the table
  text::Place tag_place;
};

struct TerminalLevels {
  std::vector<TerminalLevel> levels;
  text::Unit unit = text::Unit::decibel;  ///< decibel (relative to anything) or decibel_volt
  text::Problems problems;                ///< none yet: for what the sitting finds about a tag
};

/// Reads levels at the loudspeaker terminals: columns `tag`, `channel` (left, right, mono), `when` (start,
/// end), one of `level_dB`, `level_dBV`, `level_dBu`, `level_V` (or mV; kept as 20 log10 of the volts, in
/// dBV). A row whose level is empty was not measured yet and is left out.
/// @throws BadInput  with everything wrong, a tag that is not three digits and a level given twice
///         included.
TerminalLevels parse_levels(std::string_view content, const std::string& name);

}  // namespace imported
