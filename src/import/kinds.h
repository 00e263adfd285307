#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "text/quantity.h"

namespace imported {

/// What the numbers of a column must be; Content::words and below hold text.
enum class Content { any_number, not_negative, positive, count, name, words };

/// A column that a kind of reading may have.
struct ColumnOfKind {
  std::string quantity;           ///< as it stands in the header before the unit: "frequency"
  std::vector<text::Unit> units;  ///< kinds of unit accepted; empty for text and counts
  bool required = false;
  Content content = Content::any_number;
};

enum class RowsMean { one_reading_each, one_reading_together };

/// What a reading must be named for besides its table; a table of cables names them itself.
enum class BelongsTo { cables_of_the_table, cable, rig };

/// A kind of reading: one row in the list of kinds.
struct Kind {
  std::string name;     ///< "cable-lcr"
  std::string title;    ///< with its article: "a table of cables"
  std::string example;  ///< a header row
  RowsMean rows_mean;
  BelongsTo belongs_to;
  std::vector<ColumnOfKind> columns;
};

/// Every kind of reading that can be imported.
const std::vector<Kind>& kinds();

/// @throws std::domain_error  when no kind has that name.
const Kind& kind_named(std::string_view name);

/// Name of a column of a reading: reading_column("resistance", Unit::ohm_per_metre) is "resistance_ohm",
/// since values per metre are kept as totals.
std::string reading_column(std::string_view quantity, text::Unit unit);

/// Whether values in this unit are multiplied by the cable's length.
bool is_per_metre(text::Unit unit);

}  // namespace imported
