#include "desk/calculator/calculator_typed.h"

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

long long typed_whole(const std::string& name, const std::string& typed) {
  const auto whole = text::whole_number(typed);
  if (!whole) throw BadInput(name + " must be a whole number, got " + quoted(typed));
  return *whole;
}

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

std::vector<int> typed_row(const std::string& row, std::size_t place) {
  std::vector<int> counts;
  for (const std::string& count : split(row, ", \t\n"))
    counts.push_back(typed_count("count of row " + std::to_string(place), count, 0, stats::kMostTrials));
  return counts;
}

stats::Marks typed_listener(const std::string& word, std::size_t listener) {
  stats::Marks marks;
  for (const char mark : word) {
    if (std::string_view("10-.").find(mark) == std::string_view::npos)
      throw BadInput("marks of listener " + std::to_string(listener) +
                     " must be 1 for right, 0 for wrong, - for missing; got " + quoted(word) +
                     ", wrong at place " + std::to_string(marks.size() + 1));
    const bool answered = mark == '1' || mark == '0';
    marks.push_back(answered ? std::optional(mark == '1') : std::nullopt);
  }
  return marks;
}

}  // namespace

int typed_count(const std::string& name, const std::string& typed, int lowest, int highest) {
  const long long whole = typed_whole(name, typed);
  stats::require_count(name, whole, lowest, highest);
  return static_cast<int>(whole);
}

double typed_share(const std::string& name, const std::string& typed) {
  const std::size_t bar = typed.find('/');
  const auto above = text::number(typed.substr(0, bar));
  const auto below = bar == std::string::npos ? 1.0 : text::number(typed.substr(bar + 1));
  if (!above || !below || *below == 0 || !std::isfinite(*above / *below))
    throw BadInput(name + " must be a number like 0.5 or a fraction like 1/3, got " + quoted(typed));
  return *above / *below;
}

double typed_level(const std::string& name, const std::string& typed) {
  const double level = typed_share(name, typed);
  stats::require_level(name, level);
  return level;
}

std::vector<double> typed_list(const std::string& name, const std::vector<std::string>& words) {
  std::vector<double> numbers;
  for (const std::string& element : list_elements(name, words)) {
    const auto number = text::number(element);
    if (!number)
      throw BadInput(name + " must be numbers, got " + quoted(element) + " at place " +
                     std::to_string(numbers.size() + 1));
    numbers.push_back(*number);
  }
  return numbers;
}

stats::CountTable typed_table(const std::vector<std::string>& words) {
  stats::CountTable table;
  for (const std::string& word : words)
    for (const std::string& row : split(word, ";")) {
      table.push_back(typed_row(row, table.size() + 1));
      if (table.back().size() != table.front().size())
        throw BadInput("rows must have equally many counts: row 1 has " +
                       std::to_string(table.front().size()) + ", row " + std::to_string(table.size()) +
                       " has " + std::to_string(table.back().size()));
    }
  if (table.empty()) throw BadInput("the table needs at least one row of counts");
  return table;
}

stats::Split typed_split(const std::string& typed) {
  const std::size_t colon = typed.find(':');
  if (colon == std::string::npos)
    throw BadInput("a trial must be two counts with a colon between, like 2:1; got " + quoted(typed));
  return {
      typed_count("trial " + quoted(typed) + ", first count", typed.substr(0, colon), 0, stats::kMostTrials),
      typed_count("trial " + quoted(typed) + ", second count", typed.substr(colon + 1), 0,
                  stats::kMostTrials)};
}

std::vector<stats::Marks> typed_marks(const std::vector<std::string>& words) {
  std::vector<stats::Marks> raters;
  for (const std::string& word : words) {
    raters.push_back(typed_listener(word, raters.size() + 1));
    if (raters.back().size() != raters.front().size())
      throw BadInput("listeners must have equally many marks: listener 1 has " +
                     std::to_string(raters.front().size()) + ", listener " + std::to_string(raters.size()) +
                     " has " + std::to_string(raters.back().size()));
  }
  return raters;
}

stats::Alternative typed_alternative(const std::string& typed) {
  if (typed == "two-sided") return stats::Alternative::two_sided;
  if (typed == "greater") return stats::Alternative::greater;
  if (typed == "less") return stats::Alternative::less;
  throw BadInput("alternative must be two-sided, greater or less, got " + quoted(typed) +
                 text::did_you_mean(typed, {"two-sided", "greater", "less"}));
}

stats::MonteCarlo typed_draws(const DrawsTyped& typed) {
  const long long seed = typed_whole("seed", typed.seed);
  stats::require_count("seed", seed, 0, std::numeric_limits<std::int64_t>::max());
  return {static_cast<std::uint64_t>(seed), typed_count("draws", typed.draws, 1, 100'000'000)};
}

}  // namespace desk
