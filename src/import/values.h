#pragma once

#include <optional>
#include <string>

#include "import/header.h"
#include "text/table.h"

namespace imported {

/// The cell of `row` in a column, or null when the table has no such column.
const text::Cell* cell_of(const text::Row& row, const KnownColumn* column);

/// The text of that cell; empty when there is none.
std::string text_of(const text::Row& row, const KnownColumn* column);

/// The number in a cell carried to the unit kept; nothing, with a problem added, when it is no number or has
/// a sign the column may not have. An empty cell is a problem unless `may_be_empty`.
std::optional<double> value_in(const text::Cell& cell, const KnownColumn& column, bool may_be_empty,
                               text::Problems& problems);

/// The repeat number in a cell, 1 when it is empty; nothing, with a problem added, unless it is a whole
/// number from 1.
std::optional<int> repeat_in(const text::Cell& cell, text::Problems& problems);

}  // namespace imported
