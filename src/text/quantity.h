#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace text {

/// The kinds of quantity that can be typed or stand in a header, named by the unit in which they are kept.
enum class Unit {
  ohm,
  henry,
  farad,
  siemens,
  metre,
  square_metre,
  hertz,
  second,
  volt,
  watt,
  volt_per_sqrt_hertz,
  ohm_per_metre,
  henry_per_metre,
  farad_per_metre,
  siemens_per_metre,
  decibel,       ///< a ratio: a difference, gain or sensitivity
  decibel_volt,  ///< a voltage level re 1 V (dBV); dBu is converted, 0 dBu = sqrt(0.6) V
  decibel_a,     ///< an A-weighted sound level (dBA)
  celsius,       ///< a temperature in degrees Celsius; kelvin is converted
  degree,        ///< an angle
  percent,
};

/// How a unit as written is carried to the unit in which the quantity is kept:
/// kept = written * 10^power_of_ten * factor + offset.
struct Scale {
  Unit unit;
  int power_of_ten = 0;
  double factor = 1;
  double offset = 0;
};

/// The unit written by `symbol`: "mohm", "pF", "mm2", "dB", "V/sqrtHz", "uH/m".
///
/// Prefixes are case-sensitive (m is milli, M is mega; "m" alone is the metre). U+00B5 and U+03BC are read as
/// u, U+03A9 and U+2126 as ohm, U+00B0 as deg, U+00B2 as 2. Names of two letters and more are read in any
/// case.
std::optional<Scale> unit_named(std::string_view symbol);

/// Symbols that can be written for `unit`, the usual ones, for messages: {"ohm", "mohm", ...}.
std::vector<std::string> symbols_of(Unit unit);

/// The symbol that messages name first: "ohm", "pF".
std::string usual_symbol(Unit unit);

/// The quantity in words, with its article: "a resistance", "a temperature".
std::string kind_of(Unit unit);

/// The value of `digits` written in the unit `scale`, in the unit kept, rounded once where the scale is a
/// power of ten; nothing when `digits` is not a number.
std::optional<double> scaled_number(std::string_view digits, const Scale& scale);

/// The value of a number with its unit, in the unit kept (SI base units, dB, degrees Celsius).
///
/// "0.6ohm", "0,6 ohm", "100mohm", "2.5mm2", "470pF", "3m", "0.55uH", "90dB", "1kHz", "20C".
/// The sign is not judged here.
///
/// @throws BadInput  saying what was found and what was expected: no number, no unit ("write 0.6ohm"), the
///         unit of another kind of quantity, or an unknown unit with the nearest known one.
double quantity(std::string_view text, Unit expected);

/// A kept value with a fitting prefix, for people: with_unit(4.7e-10, Unit::farad) is "470 pF".
/// @param digits  significant digits, 1 to 17 (std::domain_error otherwise).
std::string with_unit(double value, Unit unit, int digits = 3);

}  // namespace text
