#include "import/cable_table.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <tuple>

#include "import/curves.h"
#include "import/values.h"
#include "text/number.h"
#include "text/utf8.h"

namespace imported {
namespace {

// Speed of light in vacuum: exact by the definition of the metre (SI).
constexpr double speed_of_light_m_per_s = 299'792'458;

std::optional<double> value_of(const Reading& reading, const std::string& column) {
  const auto found = std::find(reading.columns.begin(), reading.columns.end(), column);
  if (found == reading.columns.end()) return std::nullopt;
  return reading.values[static_cast<std::size_t>(found - reading.columns.begin())].front();
}

/// Totals above these are not likely for one cable; common practice, no source. They only warn.
struct Likely {
  std::string quantity;
  text::Unit unit;
  double most;
  std::string hint;
};

const std::vector<Likely>& likely_totals() {
  static const std::vector<Likely> all = {
      {"length", text::Unit::metre, 100, "was cm meant?"},
      {"resistance", text::Unit::ohm, 10, "was mohm meant?"},
      {"inductance", text::Unit::henry, 1e-3, "was uH or nH meant?"},
      {"capacitance", text::Unit::farad, 100e-9, "was pF meant?"},
      {"conductance", text::Unit::siemens, 1e-3, "was nS meant?"},
  };
  return all;
}

void warn_of_large_totals(const Reading& reading, const text::Row& row, const KnownHeader& header,
                          Warnings& warnings) {
  for (const Likely& likely : likely_totals()) {
    const auto value = value_of(reading, reading_column(likely.quantity, likely.unit));
    if (!value || *value <= likely.most) continue;
    warnings.add(cell_of(row, header.find(likely.quantity))->place,
                 text::kind_of(likely.unit) + " of " + text::with_unit(*value, likely.unit) +
                     " in all is not likely for a cable",
                 likely.hint);
  }
}

/// A pair in vacuum carries a signal at the speed of light, any other one slower (L C = mu0 eps0 er per
/// metre).
void warn_of_light(const Reading& reading, const text::Row& row, const KnownHeader& header,
                   Warnings& warnings) {
  const auto inductance = value_of(reading, "inductance_henry");
  const auto capacitance = value_of(reading, "capacitance_farad");
  const double length_m = value_of(reading, "length_m").value_or(0);
  if (!inductance || !capacitance || *inductance == 0 || *capacitance == 0) return;
  const double speed = length_m / std::sqrt(*inductance * *capacitance);
  if (speed <= speed_of_light_m_per_s) return;
  warnings.add(cell_of(row, header.find("inductance"))->place,
               "with this inductance, capacitance and length a signal would travel at " +
                   text::significant(speed / speed_of_light_m_per_s, 3) + " times the speed of light",
               "check the three and their units");
}

/// Names of the reading from the row, where the table has the columns, else from the assignment.
void take_names(Reading& reading, text::Table& table, const text::Row& row, const KnownHeader& header) {
  reading.cable = text_of(row, header.find("cable"));
  if (reading.cable.empty())
    table.problems.add(cell_of(row, header.find("cable"))->place, "the name of the cable is missing");
  const auto replace = [&](std::string& name, std::string_view quantity) {
    const std::string own = text_of(row, header.find(quantity));
    if (!own.empty()) name = own;
  };
  replace(reading.rig, "rig");
  replace(reading.piece, "piece");
  replace(reading.condition, "condition");
  replace(reading.instrument, "instrument");
  replace(reading.feature, "feature");
  replace(reading.state, "state");
  if (reading.feature.empty() != reading.state.empty())
    table.problems.add(cell_of(row, header.find("cable"))->place,
                       "a feature needs its state, and a state its feature",
                       "write both, as feature shield and state on, or neither");
  const std::string comment = text_of(row, header.find("comment"));
  reading.note = text_of(row, header.find("note"));
  if (!comment.empty()) reading.note += (reading.note.empty() ? "" : "; ") + comment;
  if (const text::Cell* cell = cell_of(row, header.find("repeat")); cell != nullptr && !cell->text.empty())
    reading.repeat = repeat_in(*cell, table.problems).value_or(1);
}

/// The length stands before all values per metre in the list of columns.
void take_values(Reading& reading, text::Table& table, const text::Row& row, const KnownHeader& header) {
  for (const ColumnOfKind& column : header.kind->columns) {
    const KnownColumn* known = header.find(column.quantity);
    if (known == nullptr || !known->scale) continue;
    const text::Cell& cell = row.cells[known->index];
    auto value = value_in(cell, *known, !column.required, table.problems);
    if (!value) continue;
    if (is_per_metre(known->scale->unit)) *value *= value_of(reading, "length_m").value_or(0);
    if (!std::isfinite(*value))
      table.problems.add(cell.place, column.quantity + " times length is too large");
    reading.columns.push_back(reading_column(column.quantity, known->scale->unit));
    reading.values.push_back({*value});
    reading.as_typed.emplace_back(table.header[known->index].text, cell.text);
  }
}

using Identity = std::tuple<std::string, std::string, std::string, std::string, std::string, std::string, int,
                            double, double>;

/// What may stand in a table once: a cable under the same names at the same frequency and temperature.
Identity identity(const Reading& reading) {
  return {reading.cable,
          reading.rig,
          reading.piece,
          reading.condition,
          reading.feature,
          reading.state,
          reading.repeat,
          value_of(reading, "frequency_hz").value_or(0),
          value_of(reading, "temperature_celsius").value_or(-1e9)};
}

}  // namespace

std::vector<Reading> cable_readings(text::Table& table, const KnownHeader& header,
                                    const Assignment& assignment, Warnings& warnings) {
  if (!assignment.cable.empty())
    table.problems.add({},
                       header.kind->title + " names its cables itself, but it is given with cable " +
                           text::quoted(assignment.cable),
                       "leave the cable out");
  std::vector<Reading> readings;
  std::map<Identity, int> first_lines;
  for (const text::Row& row : table.rows) {
    Reading reading = named_reading(*header.kind, assignment, table.problems);
    take_names(reading, table, row, header);
    take_values(reading, table, row, header);
    const auto [first, added] = first_lines.emplace(identity(reading), row.line);
    if (!added && !reading.cable.empty())
      table.problems.add(cell_of(row, header.find("cable"))->place,
                         "cable \"" + reading.cable + "\" stands twice under the same conditions",
                         "first in line " + std::to_string(first->second) +
                             "; tell them apart by piece, condition, state, repeat or frequency");
    readings.push_back(std::move(reading));
  }
  table.problems.refuse_if_any();
  for (std::size_t i = 0; i < readings.size(); ++i) {
    warn_of_large_totals(readings[i], table.rows[i], header, warnings);
    warn_of_light(readings[i], table.rows[i], header, warnings);
  }
  return readings;
}

}  // namespace imported
