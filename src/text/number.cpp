#include "text/number.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace text {
namespace {

constexpr std::string_view minus_sign = "\xE2\x88\x92";  // U+2212
constexpr int largest_exponent = 100'000;

struct Written {
  bool negative = false;
  std::string_view digits;
};

Written without_sign(std::string_view text) {
  if (text.starts_with(minus_sign)) return {true, text.substr(minus_sign.size())};
  if (text.starts_with('-')) return {true, text.substr(1)};
  if (text.starts_with('+')) return {false, text.substr(1)};
  return {false, text};
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool all_digits(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), is_digit);
}

std::optional<int> exponent(std::string_view text) {
  const Written written = without_sign(text);
  if (!all_digits(written.digits)) return std::nullopt;
  int value = 0;
  const auto [end, error] =
      std::from_chars(written.digits.data(), written.digits.data() + written.digits.size(), value);
  if (error != std::errc() || value > largest_exponent) return std::nullopt;
  return written.negative ? -value : value;
}

/// Digits with at most one point or comma, and at least one digit; the comma becomes a point.
std::optional<std::string> mantissa(std::string_view text) {
  std::string plain;
  int marks = 0;
  for (const char c : text) {
    const bool mark = c == '.' || c == ',';
    if (!mark && !is_digit(c)) return std::nullopt;
    marks += mark ? 1 : 0;
    plain += mark ? '.' : c;
  }
  if (marks > 1 || plain.size() == static_cast<std::size_t>(marks)) return std::nullopt;
  return plain;
}

bool only_zeros(const std::string& plain) { return plain.find_first_of("123456789") == std::string::npos; }

std::string printed(double value, std::chars_format format, int digits) {
  std::array<char, 400> buffer{};
  const auto [end, error] =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, format, digits);
  return {buffer.data(), end};
}

std::string without_minus_of_zero(std::string text) {
  if (text.starts_with('-') && text.substr(0, text.find('e')).find_first_of("123456789") == std::string::npos)
    text.erase(0, 1);
  return text;
}

std::string not_finite(double value) { return std::isnan(value) ? "nan" : value < 0 ? "-inf" : "inf"; }

void require_within(const char* name, int value, int least, int most) {
  if (value < least || value > most)
    throw std::domain_error(std::string(name) + " must be " + std::to_string(least) + " to " +
                            std::to_string(most) + ", got " + std::to_string(value));
}

}  // namespace

std::optional<double> number(std::string_view text, int power_of_ten) {
  const Written written = without_sign(text);
  const std::size_t mark = written.digits.find_first_of("eE");
  std::optional<int> power = 0;
  if (mark != std::string_view::npos) power = exponent(written.digits.substr(mark + 1));
  std::optional<std::string> plain = mantissa(written.digits.substr(0, mark));
  if (!plain || !power) return std::nullopt;
  if (only_zeros(*plain)) return 0.0;
  plain->append(1, 'e').append(std::to_string(*power + power_of_ten));
  double value = 0;
  const auto [end, error] = std::from_chars(plain->data(), plain->data() + plain->size(), value);
  if (error != std::errc() || end != plain->data() + plain->size() || !std::isfinite(value))
    return std::nullopt;
  return written.negative ? -value : value;
}

std::optional<long long> whole_number(std::string_view text) {
  const Written written = without_sign(text);
  if (!all_digits(written.digits)) return std::nullopt;
  const std::string plain = std::string(written.negative ? 1 : 0, '-').append(written.digits);
  long long value = 0;
  const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), value);
  if (error != std::errc()) return std::nullopt;
  return value;
}

std::string fixed(double value, int decimals) {
  require_within("decimals", decimals, 0, 30);
  if (!std::isfinite(value)) return not_finite(value);
  return without_minus_of_zero(printed(value, std::chars_format::fixed, decimals));
}

std::string shortest(double value) {
  if (!std::isfinite(value)) return not_finite(value);
  const double size = std::abs(value);
  const bool plain = value == 0 || (size >= 1e-6 && size < 1e15);
  std::array<char, 32> buffer{};
  const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                          plain ? std::chars_format::fixed : std::chars_format::scientific);
  return without_minus_of_zero({buffer.data(), end});
}

std::string significant(double value, int digits) {
  require_within("digits", digits, 1, 17);
  if (!std::isfinite(value)) return not_finite(value);
  const std::string scientific = printed(value, std::chars_format::scientific, digits - 1);
  const int power = exponent(std::string_view(scientific).substr(scientific.find('e') + 1)).value();
  if (value != 0 && (power < -6 || power >= 15)) return scientific;
  const double rounded = power >= digits ? number(scientific).value() : value;
  return fixed(rounded, std::max(0, digits - 1 - power));
}

std::string p_value(double probability) {
  if (!(probability >= 0 && probability <= 1))
    throw std::domain_error("probability must be within 0 and 1, got " + shortest(probability));
  if (probability < 0.0001) return "<0.0001";
  if (probability < 1 && probability > 0.9999) return ">0.9999";
  return fixed(probability, 4);
}

}  // namespace text
