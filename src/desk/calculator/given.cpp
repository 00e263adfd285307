#include "desk/calculator/given.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "desk/calculator/typed_words.h"
#include "stats/arguments.h"
#include "text/error.h"
#include "text/nearest.h"
#include "text/number.h"

namespace desk {

using text::BadInput;

namespace {

bool may_be_negative(text::Unit unit) {
  return unit == text::Unit::decibel || unit == text::Unit::degree || unit == text::Unit::celsius;
}

double quantity_of(const std::string& name, const std::string& typed, text::Unit unit) {
  try {
    return text::quantity(typed, unit);
  } catch (const BadInput& error) {
    throw BadInput(name + ": " + error.what());
  }
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

std::string Given::only_one(const std::vector<std::string>& names) const {
  std::string all;
  std::vector<std::string> found;
  for (std::size_t i = 0; i < names.size(); ++i) {
    all += (i == 0 ? "--" : i + 1 == names.size() ? " or --" : ", --") + names[i];
    if (has(names[i])) found.push_back(names[i]);
  }
  if (found.size() != 1)
    throw BadInput("exactly one of " + all + " must be given, got " + std::to_string(found.size()) + "\n" +
                   see_);
  return found.front();
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

double Given::quantity(const std::string& name, text::Unit unit) const {
  const double value = quantity_of(name, word(name), unit);
  if (value < 0 && !may_be_negative(unit))
    throw BadInput(name + " must be 0 or more, got " + quoted(word(name)));
  return value;
}

double Given::positive_quantity(const std::string& name, text::Unit unit) const {
  const double value = quantity_of(name, word(name), unit);
  if (value <= 0) throw BadInput(name + " must be above 0, got " + quoted(word(name)));
  return value;
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
