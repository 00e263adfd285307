#pragma once

#include <string>
#include <utility>
#include <vector>

/// Text files read into values. The folder is `import`; as a namespace that word would clash with modules.
namespace imported {

/// One imported measurement. Its columns by kind, in SI base units, dB and degrees:
///
///     cable-lcr  length_m, resistance_ohm and, where given, inductance_henry, capacitance_farad,
///                conductance_siemens, temperature_celsius, frequency_hz: totals of the whole cable, one row
///     response   frequency_hz, level_db and, where given, phase_deg
///     impedance  frequency_hz, magnitude_ohm, phase_deg
///     noise      frequency_hz and level_dbv or density_volt_per_sqrt_hz; with levels, where known, the
///                bandwidth_hz that each was measured in
///     phase      frequency_hz, phase_deg: one row
///
/// In the kinds of many rows there are at least two, and the frequency is positive and rises from row to row.
struct Reading {
  std::string kind;
  std::string cable;         ///< empty for an impedance, unless one was named
  std::string rig;           ///< empty unless one was named; always named for an impedance
  std::string piece;         ///< the specimen measured, "left" or "right"; may be empty
  std::string condition;     ///< free words; may be empty
  std::string instrument{};  ///< that it was read from; may be empty
  /// A feature of the cable that can be on and off, "shield connected", and its state: the same cable in two states. Both
  /// or neither is empty.
  std::string feature{}, state{};
  int repeat = 1;
  std::string file;        ///< name of the file it was read from
  std::string sha256_hex;  ///< of that file's bytes; left empty here
  std::string note;        ///< of the row, for a kind of one row
  std::vector<std::string> columns;
  std::vector<std::vector<double>> values;  ///< one vector for each column, all equally long
  /// For a kind of one row: the header and the number exactly as typed, {"resistance_mohm", "48,2"}.
  std::vector<std::pair<std::string, std::string>> as_typed;
};

}  // namespace imported
