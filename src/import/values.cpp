#include "import/values.h"

#include <cmath>
#include <limits>

#include "text/number.h"
#include "text/utf8.h"

namespace imported {
namespace {

std::string quoted(const std::string& text) { return std::string("\"").append(text).append("\""); }

/// The unit as the header writes it is lost in the scale; the usual symbols tell it.
std::string symbol_of(const text::Scale& scale) {
  for (const std::string& symbol : text::symbols_of(scale.unit)) {
    const auto known = text::unit_named(symbol);
    if (known->power_of_ten == scale.power_of_ten && known->offset == scale.offset &&
        known->factor == scale.factor)
      return symbol;
  }
  return text::usual_symbol(scale.unit);
}

/// For "112 pF" under a header that gives the unit: what to write instead.
std::string hint_for(const std::string& found) {
  const std::size_t end = found.find_first_not_of("0123456789.,-+");
  const std::string digits = found.substr(0, end);
  const bool unit_follows = end != std::string::npos && text::number(digits) &&
                            text::unit_named(text::trimmed(std::string_view(found).substr(end)));
  return unit_follows ? "the header gives the unit: write " + digits : "";
}

std::string requirement(Content content) {
  return content == Content::positive ? " must be above 0, got " : " must not be negative, got ";
}

}  // namespace

const text::Cell* cell_of(const text::Row& row, const KnownColumn* column) {
  return column == nullptr ? nullptr : &row.cells[column->index];
}

std::string text_of(const text::Row& row, const KnownColumn* column) {
  const text::Cell* cell = cell_of(row, column);
  return cell == nullptr ? "" : cell->text;
}

std::optional<double> value_in(const text::Cell& cell, const KnownColumn& column, bool may_be_empty,
                               text::Problems& problems) {
  const std::string& quantity = column.column->quantity;
  const std::string unit = symbol_of(*column.scale);
  if (cell.text.empty()) {
    if (!may_be_empty) problems.add(cell.place, quantity + " is missing", "write a number in " + unit);
    return std::nullopt;
  }
  const auto value = text::scaled_number(cell.text, *column.scale);
  if (!value || !std::isfinite(*value)) {
    problems.add(cell.place, quantity + " must be a number in " + unit + ", got " + quoted(cell.text),
                 hint_for(cell.text));
    return std::nullopt;
  }
  const Content content = column.column->content;
  const bool wrong =
      (content == Content::positive && !(*value > 0)) || (content == Content::not_negative && *value < 0);
  if (wrong) {
    problems.add(cell.place, quantity + requirement(content) + cell.text);
    return std::nullopt;
  }
  return value;
}

std::optional<int> repeat_in(const text::Cell& cell, text::Problems& problems) {
  if (cell.text.empty()) return 1;
  const auto value = text::whole_number(cell.text);
  if (value && *value >= 1 && *value <= std::numeric_limits<int>::max()) return static_cast<int>(*value);
  problems.add(cell.place, "repeat must be a whole number from 1, got " + quoted(cell.text));
  return std::nullopt;
}

}  // namespace imported
