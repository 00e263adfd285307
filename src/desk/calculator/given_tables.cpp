#include "desk/calculator/given.h"

#include "desk/calculator/typed_words.h"
#include "stats/arguments.h"
#include "text/error.h"
#include "text/number.h"

namespace desk {
namespace {

using text::BadInput;

/// Words into rows at semicolons and ends of words.
std::vector<std::string> rows_of(const std::vector<std::string>& words) {
  std::vector<std::string> rows;
  for (const std::string& word : words)
    for (std::string& row : split(word, ";"))
      if (row.find_first_not_of(" \t\n") != std::string::npos) rows.push_back(std::move(row));
  return rows;
}

bool is_missing(const std::string& cell) { return cell.empty() || cell == "-" || cell == "."; }

void require_equal_rows(const std::string& row, const std::string& cells, std::size_t first,
                        std::size_t place, std::size_t found) {
  if (found != first)
    throw BadInput(row + "s must have equally many " + cells + ": " + row + " 1 has " +
                   std::to_string(first) + ", " + row + " " + std::to_string(place) + " has " +
                   std::to_string(found));
}

std::optional<bool> mark_of(const std::string& cell, std::size_t listener, std::size_t place,
                            const std::string& shown) {
  if (is_missing(cell)) return std::nullopt;
  if (cell != "1" && cell != "0")
    throw BadInput("marks of listener " + std::to_string(listener) +
                   " must be 1 for right, 0 for wrong, - for missing; got " + quoted(shown) +
                   ", wrong at place " + std::to_string(place));
  return cell == "1";
}

}  // namespace

stats::CountTable Given::count_rows(const std::string& name) const {
  stats::CountTable rows;
  const auto add = [&](const std::string& cell) {
    rows.back().push_back(
        count_of("count of row " + std::to_string(rows.size()), cell, 0, stats::kMostTrials));
  };
  if (table_) {
    const Cells found = columns(name);
    for (std::size_t row = 0; row < found.front().size(); ++row) {
      rows.emplace_back();
      for (const auto& column : found) add(column[row]);
    }
    return rows;
  }
  for (const std::string& row : rows_of(typed(name))) {
    rows.emplace_back();
    for (const std::string& cell : split(row, ", \t\n")) add(cell);
    require_equal_rows("row", "counts", rows.front().size(), rows.size(), rows.back().size());
  }
  if (rows.empty()) throw BadInput("the table needs at least one row of counts");
  return rows;
}

Given::Numbers Given::ratings(const std::string& name) const {
  Cells cells;
  if (table_)
    cells = columns(name);
  else
    for (const std::string& row : rows_of(typed(name))) {
      cells.push_back(list_elements(name, {row}));
      require_equal_rows("rater", "ratings", cells.front().size(), cells.size(), cells.back().size());
    }
  if (cells.empty()) throw BadInput(name + " needs at least one rater");
  Numbers raters;
  for (const auto& rater : cells) {
    raters.emplace_back();
    for (const std::string& cell : rater) {
      const auto number = text::number(cell);
      if (!number && !is_missing(cell))
        throw BadInput(name + " must be numbers, or - where missing; got " + quoted(cell) + " of rater " +
                       std::to_string(raters.size()) + " at place " +
                       std::to_string(raters.back().size() + 1));
      raters.back().push_back(number);
    }
  }
  return raters;
}

std::vector<stats::Marks> Given::marks_of_any_length(const std::string& name) const {
  std::vector<stats::Marks> raters;
  const auto add = [&](const std::vector<std::string>& cells, const std::string& shown) {
    raters.emplace_back();
    for (const std::string& cell : cells)
      raters.back().push_back(mark_of(cell, raters.size(), raters.back().size() + 1, shown));
  };
  if (table_)
    for (const auto& column : columns(name)) add(column, "the column");
  else
    for (const std::string& word : typed(name)) {
      std::vector<std::string> cells;
      for (const char mark : word) cells.push_back({mark});
      add(cells, word);
    }
  return raters;
}

std::vector<stats::Marks> Given::marks(const std::string& name) const {
  std::vector<stats::Marks> raters = marks_of_any_length(name);
  for (std::size_t i = 0; i < raters.size(); ++i)
    require_equal_rows("listener", "marks", raters.front().size(), i + 1, raters[i].size());
  return raters;
}

std::vector<std::vector<bool>> Given::whole_marks(const std::string& name) const {
  std::vector<std::vector<bool>> raters;
  for (const stats::Marks& marks : marks_of_any_length(name)) {
    raters.emplace_back();
    for (const auto& mark : marks) {
      if (!mark)
        throw BadInput(name + " must have no gaps here, listener " + std::to_string(raters.size()) +
                       " has one at place " + std::to_string(raters.back().size() + 1));
      raters.back().push_back(*mark);
    }
  }
  return raters;
}

}  // namespace desk
