#include "stats/arguments.h"

#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>
#include <string>

namespace stats {
namespace {

std::string shortest(double value) {
  std::array<char, 32> text;
  return {text.data(), std::to_chars(text.data(), text.data() + text.size(), value).ptr};
}

[[noreturn]] void refuse(std::string_view name, std::string_view range, const std::string& value) {
  throw std::domain_error(std::string(name) + " must be " + std::string(range) + ", got " + value);
}

}  // namespace

void require_open_probability(std::string_view name, double value) {
  if (!(value > 0 && value < 1)) refuse(name, "strictly between 0 and 1", shortest(value));
}

void require_closed_probability(std::string_view name, double value) { require_between(name, value, 0, 1); }

void require_level(std::string_view name, double value) {
  if (value > 1 && value < 100)
    refuse(name, "strictly between 0 and 1",
           shortest(value) + " (write " + shortest(value / 100) + " for " + shortest(value) + " %)");
  require_open_probability(name, value);
}

void require_count(std::string_view name, std::int64_t value, std::int64_t lowest, std::int64_t highest) {
  if (value < lowest || value > highest)
    refuse(name, "between " + std::to_string(lowest) + " and " + std::to_string(highest),
           std::to_string(value));
}

void require_between(std::string_view name, double value, double lowest, double highest) {
  if (!(value >= lowest && value <= highest))
    refuse(name, "between " + shortest(lowest) + " and " + shortest(highest), shortest(value));
}

void require_correct_of_trials(std::int64_t correct, std::int64_t trials) {
  require_count("trials", trials, 1, kMostTrials);
  require_count("correct", correct, 0, trials);
}

void require_finite(std::string_view name, std::span<const double> values) {
  for (std::size_t i = 0; i < values.size(); ++i)
    if (!std::isfinite(values[i]))
      refuse(std::string(name) + "[" + std::to_string(i) + "]", "a finite number", shortest(values[i]));
}

}  // namespace stats
