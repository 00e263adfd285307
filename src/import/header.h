#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "import/kinds.h"
#include "text/table.h"

namespace imported {

/// A column of a table that a kind of reading knows.
struct KnownColumn {
  const ColumnOfKind* column = nullptr;
  std::optional<text::Scale> scale;  ///< nothing for text and counts
  std::size_t index = 0;             ///< in the rows of the table
};

/// The kind of a table and its columns in the order of the table.
struct KnownHeader {
  const Kind* kind = nullptr;
  std::vector<KnownColumn> columns;

  /// The column of that quantity, or null.
  const KnownColumn* find(std::string_view quantity) const;
};

/// Chooses the kind of reading by the header row.
///
/// A header cell is the quantity in any case, then the unit: `frequency_Hz`, `resistance (mohm)`, `level
/// [dB]`, `frequency/kHz`.
///
/// @throws BadInput  when the header is wrong: no known kind, unknown column, missing column, no unit, a unit
///         that is not accepted, a quantity given twice; with what is wrong in the rows as far as the header
///         lets them be understood. Of a right header, what is wrong in the rows stays in `table.problems`.
KnownHeader known_header(text::Table& table);

}  // namespace imported
