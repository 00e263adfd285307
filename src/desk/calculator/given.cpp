#include "desk/calculator/given.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "stats/arguments.h"
#include "text/error.h"
#include "text/nearest.h"
#include "text/number.h"

namespace desk {
namespace {

using text::BadInput;

std::string quoted(const std::string& words) { return '"' + words + '"'; }

/// The stretches between any of `separators`; empty ones are left out.
std::vector<std::string> split(const std::string& words, std::string_view separators) {
  std::vector<std::string> parts;
  for (std::size_t from = 0; from < words.size();) {
    const std::size_t to = std::min(words.find_first_of(separators, from), words.size());
    if (to > from) parts.push_back(words.substr(from, to - from));
    from = to + 1;
  }
  return parts;
}

long long whole(const std::string& name, const std::string& typed) {
  const auto number = text::whole_number(typed);
  if (!number) throw BadInput(name + " must be a whole number, got " + quoted(typed));
  return *number;
}

int count_of(const std::string& name, const std::string& typed, int lowest, int highest) {
  const long long number = whole(name, typed);
  stats::require_count(name, number, lowest, highest);
  return static_cast<int>(number);
}

/// The elements of a list, as documented at `Given::list`.
std::vector<std::string> list_elements(const std::string& name, const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) all += (all.empty() ? "" : " ") + word;
  std::vector<std::string> elements = split(all, " ;\t\n");
  if (elements.size() == 1) {
    const std::string only = elements.front();
    elements = split(only, ",");
    if (elements.size() == 2 && only.find('.') == std::string::npos && text::number(only))
      throw BadInput(name + " " + quoted(only) + " may be one number or two; write " + elements[0] + "." +
                     elements[1] + " for one, \"" + elements[0] + "; " + elements[1] + "\" for two");
  }
  for (std::string& element : elements)
    if (element.size() > 1 && element.ends_with(',')) element.pop_back();
  if (elements.empty()) throw BadInput(name + " needs at least one number");
  return elements;
}

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

Given::Given(const Calculation& calculation, std::map<std::string, std::vector<std::string>> typed,
             std::optional<text::Table> table)
    : typed_(std::move(typed)),
      table_(std::move(table)),
      see_("see blindswap calc " + calculation.name + " --help") {
  for (const Argument& argument : calculation.arguments) {
    if (has(argument.plain_name()) || argument.shape == Shape::flag) continue;
    if (!argument.is_required()) {
      if (!argument.standard.empty()) typed_[argument.plain_name()] = {argument.standard};
      continue;
    }
    const bool all_columns = table_ && (argument.shape == Shape::rows || argument.shape == Shape::raters);
    if (!all_columns) throw BadInput(argument.plain_name() + " is missing\n" + see_);
    typed_[argument.plain_name()] = {};
  }
}

const std::vector<std::string>& Given::typed(const std::string& name) const { return typed_.at(name); }

const std::string& Given::word(const std::string& name) const {
  if (typed(name).size() != 1)
    throw BadInput(name + " must be one word, got " + std::to_string(typed(name).size()) + "\n" + see_);
  return typed(name).front();
}

const std::string& Given::one_of(const std::string& name, const std::vector<std::string>& words) const {
  const std::string& found = word(name);
  if (std::find(words.begin(), words.end(), found) != words.end()) return found;
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i)
    all += (i == 0 ? "" : i + 1 == words.size() ? " or " : ", ") + words[i];
  throw BadInput(name + " must be " + all + ", got " + quoted(found) + text::did_you_mean(found, words));
}

int Given::count(const std::string& name, int lowest, int highest) const {
  return count_of(name, word(name), lowest, highest);
}

double Given::number(const std::string& name) const {
  const std::string& typed = word(name);
  const std::size_t bar = typed.find('/');
  const auto above = text::number(typed.substr(0, bar));
  const auto below = bar == std::string::npos ? 1.0 : text::number(typed.substr(bar + 1));
  if (!above || !below || *below == 0 || !std::isfinite(*above / *below))
    throw BadInput(name + " must be a number like 0.5 or a fraction like 1/3, got " + quoted(typed));
  return *above / *below;
}

double Given::level(const std::string& name) const {
  const double level = number(name);
  stats::require_level(name, level);
  return level;
}

double Given::chance() const {
  const double chance = number("chance");
  stats::require_open_probability("chance", chance);
  return chance;
}

std::vector<double> Given::list(const std::string& name) const {
  std::vector<double> numbers;
  for (const std::string& element : words(name)) {
    const auto number = text::number(element);
    if (!number)
      throw BadInput(name + " must be numbers, got " + quoted(element) + " at place " +
                     std::to_string(numbers.size() + 1));
    numbers.push_back(*number);
  }
  return numbers;
}

std::vector<int> Given::counts(const std::string& name, int lowest, int highest) const {
  std::vector<int> numbers;
  std::vector<std::string> elements;
  for (const std::string& word : table_ ? words(name) : typed(name))
    for (std::string& element : split(word, ",; \t\n")) elements.push_back(std::move(element));
  if (elements.empty()) throw BadInput(name + " needs at least one number");
  for (const std::string& element : elements)
    numbers.push_back(count_of(name + "[" + std::to_string(numbers.size()) + "]", element, lowest, highest));
  return numbers;
}

std::vector<std::string> Given::words(const std::string& name) const {
  if (!table_) return list_elements(name, typed(name));
  const Cells found = columns(name);
  if (found.size() != 1) throw BadInput(name + " must name one column of " + table_->problems.file());
  return found.front();
}

std::vector<std::vector<int>> Given::colon_counts(const std::string& name) const {
  std::vector<std::vector<int>> all;
  for (const std::string& word : words(name)) {
    all.emplace_back();
    for (const std::string& part : split(word, ":")) {
      const auto count = text::whole_number(part);
      if (!count || word.find(':') == std::string::npos)
        throw BadInput("a trial must be counts with a colon between, like 2:1; got " + quoted(word));
      stats::require_count("count of trial " + quoted(word), *count, 0, stats::kMostTrials);
      all.back().push_back(static_cast<int>(*count));
    }
    if (all.back().size() < 2)
      throw BadInput("a trial must be counts with a colon between, like 2:1; got " + quoted(word));
  }
  return all;
}

Given::Cells Given::columns(const std::string& name) const {
  std::vector<std::size_t> places;
  for (const std::string& column : typed(name)) {
    const auto place = table_->column(column);
    if (!place) {
      std::vector<std::string> names;
      for (const text::Cell& cell : table_->header) names.push_back(cell.text);
      throw BadInput(table_->problems.file() + " has no column " + quoted(column) + " for " + name +
                     text::did_you_mean(column, names));
    }
    places.push_back(*place);
  }
  if (places.empty())
    for (std::size_t i = 0; i < table_->header.size(); ++i) places.push_back(i);
  Cells columns(places.size());
  for (const text::Row& row : table_->rows)
    for (std::size_t i = 0; i < places.size(); ++i) columns[i].push_back(row.cells[places[i]].text);
  return columns;
}

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

stats::Alternative Given::alternative() const {
  const std::string& word = one_of("alternative", {"two-sided", "greater", "less"});
  if (word == "greater") return stats::Alternative::greater;
  return word == "less" ? stats::Alternative::less : stats::Alternative::two_sided;
}

stats::MonteCarlo Given::draws() const {
  const long long seed = whole("seed", word("seed"));
  stats::require_count("seed", seed, 0, std::numeric_limits<std::int64_t>::max());
  return {static_cast<std::uint64_t>(seed), count("draws", 1, 100'000'000)};
}

}  // namespace desk
