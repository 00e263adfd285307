#include "findings/words/numbers.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace findings {
namespace {

constexpr double kUsualToleranceDb = 0.1;

}  // namespace

std::optional<double> typed_number(std::string_view field, std::string_view typed) {
  if (typed.empty()) return std::nullopt;
  std::string digits(typed);
  std::replace(digits.begin(), digits.end(), ',', '.');
  if (digits.front() == '+') digits.erase(0, 1);
  double value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error != std::errc{} || end != digits.data() + digits.size() || !std::isfinite(value))
    throw std::domain_error(std::string(field) + " must be a number, got \"" + std::string(typed) + "\"");
  return value;
}

double level_tolerance_db(const plan::Plan& plan) {
  const double tolerance_db =
      typed_number("level_tolerance_db", plan.level_tolerance_db).value_or(kUsualToleranceDb);
  if (tolerance_db < 0)
    throw std::domain_error("level_tolerance_db must be 0 or more, got " + plan.level_tolerance_db);
  return tolerance_db;
}

std::string fixed(double value, int decimals) {
  std::array<char, 400> text{};
  const auto end =
      std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals);
  std::string result(text.data(), end.ptr);
  if (result.front() == '-' && result.find_first_of("123456789") == std::string::npos) result.erase(0, 1);
  return result;
}

std::string signed_db(double value_db) {
  const std::string text = fixed(value_db, 2);
  const bool positive = text.front() != '-' && text.find_first_of("123456789") != std::string::npos;
  return (positive ? "+" : "") + text + " dB";
}

std::string probability_words(double probability) {
  return probability < 0.0001 ? "below 0.0001" : fixed(probability, 4);
}

std::string p_words(double p) { return "p " + probability_words(p); }

std::string percent(double share) {
  std::string text = fixed(100 * share, 2);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text + " %";
}

std::string plain(double value) {
  std::array<char, 40> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value);
  return {text.data(), end.ptr};
}

double rounded_up(double share) { return std::ceil(share * 100 - 1e-9) / 100; }

std::string counted(int number, std::string_view singular) {
  return std::to_string(number) + " " + std::string(singular) + (number == 1 ? "" : "s");
}

std::string frequency_words(double frequency_hz) {
  if (frequency_hz < 1000) return fixed(frequency_hz, 0) + " Hz";
  return fixed(frequency_hz / 1000, 1) + " kHz";
}

std::string listed(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " and " : ", ";
    text += words[i];
  }
  return text;
}

}  // namespace findings
