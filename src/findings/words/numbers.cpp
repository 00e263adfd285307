#include "findings/words/numbers.h"

#include <cmath>
#include <stdexcept>

#include "text/number.h"

namespace findings {
namespace {

constexpr double kUsualToleranceDb = 0.1;

}  // namespace

std::optional<double> typed_number(std::string_view field, std::string_view typed) {
  if (typed.empty()) return std::nullopt;
  const auto value = text::number(typed);
  if (!value)
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

std::string signed_db(double value_db) {
  const std::string text = text::fixed(value_db, 2);
  const bool positive = text.front() != '-' && text.find_first_of("123456789") != std::string::npos;
  return (positive ? "+" : "") + text + " dB";
}

std::string p_words(double p) { return "p " + text::p_value(p); }

std::string percent(double share) {
  std::string text = text::fixed(100 * share, 2);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text + " %";
}

double rounded_up(double share) { return std::ceil((share - 1e-9) * 1000) / 1000; }

double rounded_down(double share) { return -rounded_up(-share); }

std::string counted(int number, std::string_view singular) {
  return std::to_string(number) + " " + std::string(singular) + (number == 1 ? "" : "s");
}

std::string planned_words(int planned, int stopped) {
  return counted(planned, "trial") + " planned" +
         (stopped > 0 ? ", " + std::to_string(stopped) + " of them left out after a look" : "");
}

std::string frequency_words(double frequency_hz) {
  if (frequency_hz < 1000) return text::fixed(frequency_hz, 0) + " Hz";
  return text::fixed(frequency_hz / 1000, 1) + " kHz";
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
