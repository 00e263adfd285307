#include "import/load_text.h"

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <vector>

#include "text/error.h"
#include "text/quantity.h"
#include "text/utf8.h"

namespace imported {
namespace {

constexpr std::string_view examples =
    "write a resistor (8ohm), a line input (47kohm||100pF) or a loudspeaker "
    "(3.0ohm + 0.1mH + [27ohm||475uF||21.3mH])";

[[noreturn]] void refuse(std::string_view part, const std::string& expected) {
  throw text::BadInput("\"" + std::string(part) + "\" is not " + expected);
}

std::vector<std::string_view> split(std::string_view typed, std::string_view separator) {
  std::vector<std::string_view> parts;
  for (std::size_t at = 0; at <= typed.size();) {
    const std::size_t end = std::min(typed.find(separator, at), typed.size());
    parts.push_back(text::trimmed(typed.substr(at, end - at)));
    at = end + separator.size();
  }
  return parts;
}

std::optional<double> value_in(std::string_view part, text::Unit unit) {
  const std::size_t digits_end = part.find_first_not_of("0123456789.,eE+-");
  if (digits_end == std::string_view::npos) return std::nullopt;
  const auto scale = text::unit_named(text::trimmed(part.substr(digits_end)));
  if (!scale || scale->unit != unit) return std::nullopt;
  return text::quantity(part, unit);
}

/// The one value of that unit among the parts.
double one_of(const std::vector<std::string_view>& parts, text::Unit unit, std::string_view whole) {
  std::optional<double> found;
  for (const std::string_view part : parts)
    if (const auto value = value_in(part, unit)) {
      if (found) refuse(whole, "one " + text::kind_of(unit).substr(2) + " in parallel with the others");
      found = value;
    }
  if (!found) refuse(whole, "a resistance, a capacitance and an inductance in parallel");
  return *found;
}

electrical::Resonance resonance_of(std::string_view bracketed) {
  if (bracketed.size() < 2 || bracketed.back() != ']') refuse(bracketed, "closed by \"]\"");
  const std::string_view inside = bracketed.substr(1, bracketed.size() - 2);
  const auto parts = split(inside, "||");
  if (parts.size() != 3) refuse(bracketed, "a resistance, a capacitance and an inductance in parallel");
  return {one_of(parts, text::Unit::ohm, inside), one_of(parts, text::Unit::farad, inside),
          one_of(parts, text::Unit::henry, inside)};
}

electrical::Load circuit_of(const std::vector<std::string_view>& parts) {
  electrical::EquivalentCircuit circuit{};
  circuit.resistance_ohm = text::quantity(parts.front(), text::Unit::ohm);
  for (std::size_t i = 1; i < parts.size(); ++i) {
    if (parts[i].starts_with('[')) {
      circuit.resonances.push_back(resonance_of(parts[i]));
    } else if (i == 1) {
      circuit.inductance_henry = text::quantity(parts[i], text::Unit::henry);
    } else {
      refuse(parts[i], "a resonance in square brackets");
    }
  }
  return circuit;
}

electrical::Load resistor_of(std::string_view typed) {
  const auto parts = split(typed, "||");
  electrical::Resistor resistor{text::quantity(parts.front(), text::Unit::ohm)};
  if (parts.size() > 2) refuse(typed, "one resistance and one capacitance");
  if (parts.size() == 2) resistor.parallel_capacitance_farad = text::quantity(parts[1], text::Unit::farad);
  return resistor;
}

}  // namespace

electrical::Load parse_load(std::string_view typed) {
  const auto parts = split(text::trimmed(typed), "+");
  const bool is_circuit = parts.size() > 1 || typed.find('[') != std::string_view::npos;
  try {
    const electrical::Load load = is_circuit ? circuit_of(parts) : resistor_of(typed);
    electrical::impedance_ohm(load, 1000);
    return load;
  } catch (const std::exception& error) {
    throw text::BadInput("load \"" + std::string(typed) + "\": " + error.what() + "\n" +
                         std::string(examples));
  }
}

}  // namespace imported
