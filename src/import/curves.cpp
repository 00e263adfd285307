#include "import/curves.h"

#include <algorithm>
#include <cmath>

#include "import/values.h"
#include "text/number.h"

namespace imported {
namespace {

/// Limits of what is likely; common practice, no source. They only warn.
struct LikelyCurve {
  std::string column;
  double least;
  double most;
  std::string message;
  std::string hint;
};

const std::vector<LikelyCurve>& likely_values() {
  static const std::vector<LikelyCurve> all = {
      {"level_db", -200, 200, "a level beyond 200 dB is not likely", "is the column in dB?"},
      {"level_dbv", -250, 60, "a noise level of this size is not likely", "is the column in dBV?"},
      {"density_volt_per_sqrt_hz", 1e-12, 1e-3, "a noise density of this size is not likely",
       "was nV meant?"},
      {"magnitude_ohm", 0.1, 1e6, "an impedance of this size is not likely for a load",
       "was another unit meant?"},
  };
  return all;
}

void warn_of_frequencies(const std::vector<double>& frequency_hz, const std::vector<CurvePlaces>& places,
                         Warnings& warnings) {
  constexpr double lowest_end_hz = 200;
  constexpr double highest_end_hz = 1e8;
  const double last = frequency_hz.back();
  if (last < lowest_end_hz)
    warnings.add(places.back().frequency, "the highest frequency is " + text::shortest(last) + " Hz",
                 "was kHz meant?");
  if (last > highest_end_hz)
    warnings.add(places.back().frequency, "the highest frequency is " + text::shortest(last) + " Hz",
                 "was Hz meant?");
}

void warn_of_active_load(const Reading& reading, const std::vector<CurvePlaces>& places, Warnings& warnings) {
  const auto phase = std::find(reading.columns.begin(), reading.columns.end(), "phase_deg");
  if (reading.kind != "impedance" || phase == reading.columns.end()) return;
  const auto& degrees = reading.values[static_cast<std::size_t>(phase - reading.columns.begin())];
  for (std::size_t i = 0; i < degrees.size(); ++i)
    if (std::abs(degrees[i]) > 90)
      warnings.add(places[i].value,
                   "a phase of " + text::shortest(degrees[i]) + " deg is not that of a passive load",
                   "is the phase wrapped, or of the other sign?");
}

bool has_column(const Reading& reading, std::string_view name) {
  return std::find(reading.columns.begin(), reading.columns.end(), name) != reading.columns.end();
}

/// Whether the levels of the reading need a bandwidth that comes with the file.
bool wants_bandwidth(const Reading& reading) {
  return has_column(reading, "level_dbv") && !has_column(reading, "bandwidth_hz");
}

void check_bandwidth(const Reading& reading, const Assignment& assignment, text::Problems& problems) {
  if (!(assignment.bandwidth_hz > 0) || wants_bandwidth(reading)) return;
  const std::string why = has_column(reading, "level_dbv") ? "it has a column of them"
                                                           : "only levels of a noise spectrum have one";
  problems.add({}, "a bandwidth is given with the file, but " + why, "leave the bandwidth out");
}

/// The bandwidth that comes with the file: a column like any other.
void take_bandwidth(Reading& reading, const Assignment& assignment, const text::Place& place,
                    Warnings& warnings) {
  if (!wants_bandwidth(reading)) return;
  if (assignment.bandwidth_hz > 0) {
    reading.columns.push_back("bandwidth_hz");
    reading.values.emplace_back(reading.values.front().size(), assignment.bandwidth_hz);
  } else {
    warnings.add(
        place, "the bandwidth of the levels is not known: they say little of the noise",
        "give --bandwidth, for a Hann window 1.5 times the distance of the bins, or a column bandwidth_Hz");
  }
}

}  // namespace

void check_order(const std::vector<double>& frequency_hz, const std::vector<CurvePlaces>& places,
                 text::Problems& problems) {
  if (frequency_hz.size() == 1 && problems.empty())
    problems.add(places.front().frequency, "one row is not a curve", "give two frequencies or more");
  for (std::size_t i = 1; i < frequency_hz.size(); ++i) {
    if (frequency_hz[i] > frequency_hz[i - 1]) continue;
    const std::string before = text::shortest(frequency_hz[i - 1]) + " Hz";
    const std::string message = frequency_hz[i] < frequency_hz[i - 1]
                                    ? "frequency must rise from row to row, here it falls from " + before
                                    : "frequency must rise from row to row, here it repeats " + before;
    problems.add(places[i].frequency, message, "sort the rows by frequency, one row each");
    return;
  }
}

void warn_of_unlikely(const Reading& reading, const std::vector<CurvePlaces>& places, Warnings& warnings) {
  if (places.empty()) return;
  warn_of_frequencies(reading.values.front(), places, warnings);
  for (const LikelyCurve& likely : likely_values()) {
    const auto column = std::find(reading.columns.begin(), reading.columns.end(), likely.column);
    if (column == reading.columns.end()) continue;
    const auto& values = reading.values[static_cast<std::size_t>(column - reading.columns.begin())];
    for (std::size_t i = 0; i < values.size(); ++i)
      if (values[i] < likely.least || values[i] > likely.most)
        warnings.add(places[i].value, likely.message, likely.hint);
  }
  warn_of_active_load(reading, places, warnings);
}

Reading named_reading(const Kind& kind, const Assignment& assignment, text::Problems& problems) {
  if (kind.belongs_to == BelongsTo::cable && assignment.cable.empty())
    problems.add({}, kind.title + " belongs to a cable, and none is named",
                 "name it with the file, or in the column cable of a manifest");
  if (kind.belongs_to == BelongsTo::rig && assignment.rig.empty())
    problems.add({}, kind.title + " belongs to a rig, and none is named",
                 "name it with the file, or in the column rig of a manifest");
  Reading reading;
  reading.kind = kind.name;
  reading.cable = assignment.cable;
  reading.rig = assignment.rig;
  reading.piece = assignment.piece;
  reading.condition = assignment.condition;
  reading.instrument = assignment.instrument;
  reading.feature = assignment.feature;
  reading.state = assignment.state;
  reading.repeat = assignment.repeat;
  reading.file = problems.file();
  return reading;
}

Reading curve_reading(text::Table& table, const KnownHeader& header, const Assignment& assignment,
                      Warnings& warnings) {
  Reading reading = named_reading(*header.kind, assignment, table.problems);
  std::vector<KnownColumn> measured;
  for (const ColumnOfKind& column : header.kind->columns)
    if (const KnownColumn* known = header.find(column.quantity); known != nullptr && known->scale)
      measured.push_back(*known);
  for (const KnownColumn& column : measured)
    reading.columns.push_back(reading_column(column.column->quantity, column.scale->unit));
  reading.values.resize(measured.size());
  std::vector<CurvePlaces> places;
  for (const text::Row& row : table.rows) {
    std::vector<double> values;
    for (const KnownColumn& column : measured)
      if (const auto value = value_in(row.cells[column.index], column, false, table.problems))
        values.push_back(*value);
    if (values.size() != measured.size()) continue;
    for (std::size_t i = 0; i < values.size(); ++i) reading.values[i].push_back(values[i]);
    places.push_back({row.cells[measured[0].index].place, row.cells[measured[1].index].place});
  }
  check_order(reading.values.front(), places, table.problems);
  check_bandwidth(reading, assignment, table.problems);
  table.problems.refuse_if_any();
  warn_of_unlikely(reading, places, warnings);
  take_bandwidth(reading, assignment, places.front().value, warnings);
  return reading;
}

}  // namespace imported
