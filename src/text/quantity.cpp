#include "text/quantity.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "text/error.h"
#include "text/nearest.h"
#include "text/number.h"
#include "text/units.h"
#include "text/utf8.h"

namespace text {
namespace {

constexpr std::pair<std::string_view, std::string_view> other_spellings[] = {
    {"\xC2\xB5", "u"},         // U+00B5 micro sign
    {"\xCE\xBC", "u"},         // U+03BC Greek mu
    {"\xCE\xA9", "ohm"},       // U+03A9 Greek omega
    {"\xE2\x84\xA6", "ohm"},   // U+2126 ohm sign
    {"\xC2\xB0", "deg"},       // U+00B0 degree sign
    {"\xC2\xB2", "2"},         // U+00B2 superscript two
    {"\xE2\x88\x9A", "sqrt"},  // U+221A square root
    {"_per_", "/"},
};

std::string plain_spelling(std::string_view symbol) {
  std::string plain(symbol);
  for (const auto& [other, usual] : other_spellings)
    for (std::size_t at = plain.find(other); at != std::string::npos;
         at = plain.find(other, at + usual.size()))
      plain.replace(at, other.size(), usual);
  return plain;
}

/// One letter must be written as it is (s and S, h and H, m and M); longer names in any case.
bool same_name(std::string_view written, std::string_view name) {
  return written == name || (name.size() > 1 && lower_case(written) == lower_case(name));
}

std::optional<Scale> scale_by(const UnitName& row, std::string_view symbol, bool exactly) {
  const auto same = [&](std::string_view written) {
    return exactly ? written == row.name : same_name(written, row.name);
  };
  if (same(symbol)) return row.scale;
  if (symbol.empty() || row.prefixes.find(symbol[0]) == std::string_view::npos || !same(symbol.substr(1)))
    return std::nullopt;
  Scale scale = row.scale;
  scale.power_of_ten += power_of_prefix(symbol[0]);
  return scale;
}

/// Bytes of `text` that form the number in front of a unit.
std::size_t length_of_number(std::string_view text) {
  constexpr std::string_view digits = "0123456789";
  std::size_t at = 0;
  if (text.starts_with("\xE2\x88\x92"))
    at = 3;
  else if (text.starts_with('-') || text.starts_with('+'))
    at = 1;
  at = std::min(text.find_first_not_of("0123456789.,", at), text.size());
  if (at == text.size() || (text[at] != 'e' && text[at] != 'E')) return at;
  const std::size_t sign = text.substr(at + 1, 1).find_first_of("+-") == 0 ? 1 : 0;
  const std::size_t exponent = at + 1 + sign;
  const std::size_t end = std::min(text.find_first_not_of(digits, exponent), text.size());
  return end > exponent ? end : at;
}

std::string such_as(Unit unit, std::string_view digits) {
  return std::string(unit_kind(unit).kind) + " such as " + std::string(digits) +
         std::string(unit_kind(unit).usual);
}

[[noreturn]] void refuse_unit(std::string_view text, std::string_view symbol, Unit expected) {
  const std::string message = quoted(text) + " has an unknown unit " + quoted(symbol);
  const std::string near = did_you_mean(plain_spelling(symbol), symbols_of(expected));
  if (!near.empty()) throw BadInput(message + near);
  std::string known;
  for (const std::string& name : symbols_of(expected)) known += (known.empty() ? "" : ", ") + name;
  throw BadInput(message + "; " + std::string(unit_kind(expected).kind) + " is written in " + known);
}

}  // namespace

std::optional<Scale> unit_named(std::string_view symbol) {
  const std::string plain = plain_spelling(symbol);
  for (const bool exactly : {true, false})
    for (const UnitName& row : unit_names())
      if (const auto scale = scale_by(row, plain, exactly)) return scale;
  return std::nullopt;
}

std::vector<std::string> symbols_of(Unit unit) {
  std::vector<std::string> symbols;
  std::string_view rest = unit_kind(unit).symbols;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    symbols.emplace_back(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return symbols;
}

std::string usual_symbol(Unit unit) { return std::string(unit_kind(unit).usual); }

std::string kind_of(Unit unit) { return std::string(unit_kind(unit).kind); }

std::optional<double> scaled_number(std::string_view digits, const Scale& scale) {
  const auto value = number(digits, scale.power_of_ten);
  if (!value) return std::nullopt;
  return *value * scale.factor + scale.offset;
}

double quantity(std::string_view text, Unit expected) {
  const std::string_view whole = trimmed(text);
  const std::size_t length = length_of_number(whole);
  const std::string_view digits = whole.substr(0, length);
  const std::string_view symbol = trimmed(whole.substr(length));
  if (!number(digits))
    throw BadInput(quoted(whole) + " does not begin with a number; write " + such_as(expected, "0.6"));
  if (symbol.empty())
    throw BadInput(quoted(whole) + " has no unit: write " + std::string(digits) +
                   std::string(unit_kind(expected).usual));
  const auto scale = unit_named(symbol);
  if (!scale) refuse_unit(whole, symbol, expected);
  if (scale->unit != expected) {
    const bool bare_m = symbol == "m";
    throw BadInput(quoted(whole) + " is " + kind_of(scale->unit) + ", expected " + such_as(expected, digits) +
                   (bare_m ? " (m alone is metre)" : ""));
  }
  const auto value = scaled_number(digits, *scale);
  if (!value || !std::isfinite(*value)) throw BadInput(quoted(whole) + " is too large");
  return *value;
}

std::string with_unit(double value, Unit unit, int digits) {
  const double size = std::abs(number(significant(value, digits)).value_or(0));
  std::string best(unit_kind(unit).usual);
  std::optional<int> power;
  for (const std::string& symbol : symbols_of(unit)) {
    const Scale scale = unit_named(symbol).value();
    const bool prefixed = scale.factor == 1 && scale.offset == 0;
    if (size == 0 || !prefixed || (power && scale.power_of_ten <= *power)) continue;
    if (power && size < number("1", scale.power_of_ten)) continue;
    best = symbol;
    power = scale.power_of_ten;
  }
  const auto shown = number(shortest(value), -power.value_or(0));
  return significant(shown.value_or(value), digits) + " " + best;
}

}  // namespace text
