#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/problem.h"

namespace text {

/// One cell of a text table, without its quotes and surrounding spaces; `place` covers the text as written.
struct Cell {
  std::string text;
  Place place;
};

/// One row; as many cells as the header.
struct Row {
  int line = 0;
  std::vector<Cell> cells;
};

/// A text table read into cells.
///
/// Rows that could not be read are left out of `rows` and stand in `problems`: the reader of the table adds
/// its own findings there and calls `problems.refuse_if_any()` before it uses anything.
struct Table {
  std::vector<Cell> header;
  std::vector<Row> rows;
  char separator = ',';
  Problems problems;

  /// Whether a problem stands in the header, so that not all of a row can be understood.
  bool header_is_wrong() const { return problems.any_up_to(header.front().place.line); }

  /// The column whose header is `name`, ASCII case ignored.
  std::optional<std::size_t> column(std::string_view name) const;
};

/// The most cells of a table.
inline constexpr std::size_t most_cells = 4'000'000;

/// Reads a text table: the first line that is neither blank nor a comment (#) is the header.
///
/// Cells are separated by tab, semicolon or comma: the first of these that stands in the header outside
/// quotes. Blank lines, lines of separators only and comment lines are passed over; "..." keeps separators,
/// with "" for a quote; a cell ends on its line. Empty cells beyond the last name of the header are dropped,
/// in rows too.
///
/// Problems found: no header, no rows, an empty or double header cell, too few or too many cells (with a word
/// on decimal commas), a quote that is not closed.
///
/// @throws BadInput  as `refuse_unless_plain_text`, and for more than `most_cells`.
Table parse_table(std::string_view content, const std::string& file);

}  // namespace text
