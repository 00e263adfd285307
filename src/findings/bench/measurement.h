#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace findings {

/// One reading with what tells it from others. Columns and values as kept: `resistance_ohm` and other totals of a cable
/// for "cable-lcr", `frequency_hz` and `level_db` for "response", and so on.
struct Measurement {
  int number = 0;
  std::string kind, cable, rig, piece, condition, instrument, feature, state, file;
  int repeat = 1;
  std::vector<std::string> columns;
  std::vector<std::vector<double>> values;
  bool superseded = false;

  /// The column of that name, or null.
  const std::vector<double>* column(std::string_view name) const;

  /// The first value of a column, for readings of one row; nothing where there is no such column.
  std::optional<double> single(std::string_view name) const;
};

/// "reading 12 (cables.csv, left, repeat 2)".
std::string described(const Measurement& measurement);

/// Whether both are the same thing measured under the same circumstances, so that they differ by repeatability alone:
/// kind, cable, rig, piece, condition, instrument, feature, state; and of readings of one row frequency, length and, within
/// 2 K, temperature (common practice, no source: copper changes by 0.8 %).
bool are_repeats(const Measurement& first, const Measurement& second);

/// Whether two readings of one row belong to the same frequency, or to none; curves always do.
bool are_at_one_frequency(const Measurement& first, const Measurement& second);

/// The measurements in groups of repeats, in the order in which each group began. Superseded ones are left out.
std::vector<std::vector<const Measurement*>> repeats_of(const std::vector<Measurement>& measurements);

/// What is measured of it, in one number for each of the places that all readings of its kind have: the totals of a cable in
/// their logarithm (differences are then relative), levels in dB at the third-octave centres, those of the third-octaves of a
/// noise spectrum (none where the bandwidth of its levels is not known), a phase in degrees.
struct Quantity {
  std::string name;  ///< "resistance", "level at 1 kHz"
  double value;
  bool is_logarithm = false;  ///< of ohm, henry, farad
};

/// @throws std::domain_error  for values that are no curve.
std::vector<Quantity> quantities_of(const Measurement& measurement);

}  // namespace findings
