#include "import/header.h"

#include <algorithm>
#include <set>
#include <string>

#include "import/values.h"
#include "text/lines.h"
#include "text/nearest.h"
#include "text/utf8.h"

namespace imported {
namespace {

/// A header cell taken apart: the quantity in lower case and the unit as written.
struct Written {
  std::string quantity;
  std::string unit;
};

constexpr std::string_view marks_before_unit = "_ /([";

Written taken_apart(std::string_view cell) {
  const std::size_t end = std::min(cell.find_first_of(marks_before_unit), cell.size());
  Written written{text::lower_case(cell.substr(0, end)), ""};
  std::string_view unit = cell.substr(end);
  const std::size_t first = unit.find_first_not_of(marks_before_unit);
  if (first == std::string_view::npos) return written;
  const bool bracketed = unit.substr(0, first).find_first_of("([") != std::string_view::npos;
  unit.remove_prefix(first);
  if (bracketed && (unit.ends_with(')') || unit.ends_with(']'))) unit.remove_suffix(1);
  written.unit = text::trimmed(unit);
  return written;
}

const ColumnOfKind* column_of(const Kind& kind, std::string_view quantity) {
  const auto same = [&](const ColumnOfKind& column) { return column.quantity == quantity; };
  const auto found = std::find_if(kind.columns.begin(), kind.columns.end(), same);
  return found == kind.columns.end() ? nullptr : &*found;
}

bool accepts(const ColumnOfKind& column, text::Unit unit) {
  return std::find(column.units.begin(), column.units.end(), unit) != column.units.end();
}

std::optional<std::string> near_quantity(const Kind& kind, const std::string& quantity) {
  std::vector<std::string> quantities;
  for (const ColumnOfKind& column : kind.columns) quantities.push_back(column.quantity);
  return text::nearest(quantity, quantities);
}

/// A header cell of the column with its usual unit: "density_nV_per_sqrtHz".
std::string usual_name(const ColumnOfKind& column) {
  if (column.units.empty()) return column.quantity;
  std::string unit = text::usual_symbol(column.units.front());
  if (const std::size_t per = unit.find('/'); per != std::string::npos) unit.replace(per, 1, "_per_");
  return column.quantity + "_" + unit;
}

bool fits(const ColumnOfKind& column, const Written& written) {
  if (column.units.empty()) return written.unit.empty();
  const auto scale = text::unit_named(written.unit);
  return scale && accepts(column, scale->unit);
}

/// A frequency or a note stands in several kinds, so it speaks for none.
bool speaks_for_a_kind(const Written& written) {
  return written.quantity != "frequency" && written.quantity != "note" && written.quantity != "comment";
}

/// How well a header fits a kind: two points for a column that fits, one for a wrong unit or a misspelling.
struct Likeness {
  int points = 0;
  int against = 0;  ///< unknown and missing columns
};

Likeness likeness(const Kind& kind, const std::vector<text::Cell>& header) {
  Likeness result;
  std::set<std::string> seen;
  for (const text::Cell& cell : header) {
    const Written written = taken_apart(cell.text);
    const ColumnOfKind* column = column_of(kind, written.quantity);
    const bool near = column == nullptr && near_quantity(kind, written.quantity).has_value();
    seen.insert(near ? *near_quantity(kind, written.quantity) : written.quantity);
    if (column == nullptr && !near) ++result.against;
    if (!speaks_for_a_kind(written)) continue;
    if (column != nullptr) result.points += fits(*column, written) ? 2 : 1;
    if (near) ++result.points;
  }
  for (const ColumnOfKind& column : kind.columns)
    if (column.required && !seen.contains(column.quantity)) ++result.against;
  return result;
}

[[noreturn]] void refuse_unknown_kind(const text::Table& table) {
  std::string examples;
  for (const Kind& kind : kinds()) examples += (examples.empty() ? "" : " | ") + kind.example;
  text::refuse_file(table.problems, {table.header.front().place, "this header is of no known kind of reading",
                                     "expected one of: " + examples});
}

const Kind& likeliest_kind(const text::Table& table) {
  const Kind* best = nullptr;
  int most = 0;
  for (const Kind& kind : kinds()) {
    const Likeness found = likeness(kind, table.header);
    const int balance = found.points - found.against;
    if (found.points == 0 || (best != nullptr && balance <= most)) continue;
    most = balance;
    best = &kind;
  }
  if (best == nullptr) refuse_unknown_kind(table);
  return *best;
}

std::string symbols_accepted(const ColumnOfKind& column) {
  std::string symbols;
  for (const text::Unit unit : column.units)
    for (const std::string& symbol : text::symbols_of(unit))
      symbols += (symbols.empty() ? "" : ", ") + symbol;
  return symbols;
}

void add_unknown_column(text::Table& table, const text::Cell& cell, const Kind& kind,
                        const std::optional<std::string>& near) {
  const std::string question =
      near ? "; did you mean \"" + usual_name(*column_of(kind, *near)) + "\"?" : std::string();
  table.problems.add(cell.place, "unknown column \"" + cell.text + "\" in " + kind.title + question,
                     "such a header is " + kind.example + "; a column note may hold anything");
}

/// The scale of a column of numbers; nothing, with a problem added, when its unit does not do.
std::optional<text::Scale> scale_of(text::Table& table, const text::Cell& cell, const ColumnOfKind& column,
                                    const std::string& unit) {
  const std::string accepted = "accepted: " + symbols_accepted(column);
  const auto scale = text::unit_named(unit);
  if (unit.empty())
    table.problems.add(cell.place, "column \"" + cell.text + "\" names no unit: write " + usual_name(column),
                       accepted);
  else if (!scale)
    table.problems.add(cell.place, "unknown unit \"" + unit + "\" of " + column.quantity, accepted);
  else if (!accepts(column, scale->unit))
    table.problems.add(
        cell.place,
        "\"" + unit + "\" is the unit of " + text::kind_of(scale->unit) + ", not of " + column.quantity,
        accepted);
  else
    return scale;
  return std::nullopt;
}

void add_missing_columns(text::Table& table, const Kind& kind, const std::set<std::string>& seen) {
  for (const ColumnOfKind& column : kind.columns)
    if (column.required && !seen.contains(column.quantity))
      table.problems.add(table.header.back().place, kind.title + " needs a column " + usual_name(column),
                         "such a header is " + kind.example);
}

/// What is wrong in the header, and in the columns of it that are understood.
[[noreturn]] void refuse_with_values(text::Table& table, const KnownHeader& header) {
  for (const text::Row& row : table.rows)
    for (const KnownColumn& known : header.columns)
      if (known.scale) value_in(row.cells[known.index], known, !known.column->required, table.problems);
  table.problems.refuse();
}

}  // namespace

const KnownColumn* KnownHeader::find(std::string_view quantity) const {
  const auto found = std::find_if(columns.begin(), columns.end(), [&](const KnownColumn& known) {
    return known.column->quantity == quantity;
  });
  return found == columns.end() ? nullptr : &*found;
}

KnownHeader known_header(text::Table& table) {
  KnownHeader header{&likeliest_kind(table), {}};
  std::set<std::string> seen;
  for (std::size_t i = 0; i < table.header.size(); ++i) {
    const text::Cell& cell = table.header[i];
    const Written written = taken_apart(cell.text);
    const ColumnOfKind* column = column_of(*header.kind, written.quantity);
    const bool text_with_unit = column != nullptr && column->units.empty() && !written.unit.empty();
    if (column == nullptr || text_with_unit) {
      const auto near = text_with_unit ? written.quantity : near_quantity(*header.kind, written.quantity);
      add_unknown_column(table, cell, *header.kind, near);
      if (near) seen.insert(*near);
      continue;
    }
    if (!seen.insert(written.quantity).second)
      table.problems.add(cell.place, column->quantity + " is given twice", "keep one of the columns");
    const auto scale = column->units.empty() ? std::nullopt : scale_of(table, cell, *column, written.unit);
    header.columns.push_back({column, scale, i});
  }
  add_missing_columns(table, *header.kind, seen);
  if (table.header_is_wrong()) refuse_with_values(table, header);
  return header;
}

}  // namespace imported
