#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace text {

/// The number written by all of `text`, whatever the locale.
///
/// Decimal digits with an optional sign (also U+2212), one decimal point or decimal comma and an optional
/// exponent: "0.6", "0,6", "-3", "+1e-3", ".5". No spaces, no grouping of thousands, no hexadecimal, infinity
/// or NaN.
///
/// @param power_of_ten  the number is multiplied by 10 to this power, rounded once: number("470", -12) ==
///         470e-12.
/// @return  nothing when `text` is anything else or the result does not fit a double.
std::optional<double> number(std::string_view text, int power_of_ten = 0);

/// The whole number written by all of `text`: optional sign, then digits; nothing when it is anything else
/// or beyond 64 bits.
std::optional<long long> whole_number(std::string_view text);

/// `value` with exactly `decimals` digits after the point, rounded from its exact binary value; never
/// "-0.00". Not-a-number prints "nan", the infinities "inf" and "-inf".
/// @throws std::domain_error  unless `decimals` is 0 to 30.
std::string fixed(double value, int decimals);

/// The fewest digits that read back as exactly `value`: "0.1", "100000"; minus zero prints "0".
/// Below 1e-6 and from 1e15 the scientific form: "1e-12".
std::string shortest(double value);

/// `value` rounded to `digits` significant digits, trailing zeros kept: significant(0.6, 3) is "0.600",
/// significant(1234.5, 2) is "1200". Below 1e-6 and from 1e15 the scientific form: "4.70e-10".
/// @throws std::domain_error  unless `digits` is 1 to 17.
std::string significant(double value, int digits);

/// A probability with four decimals: "0.0384", "1.0000"; "<0.0001" below that, ">0.9999" when only rounding
/// would make it 1.
/// @throws std::domain_error  unless `probability` is within 0 and 1.
std::string p_value(double probability);

}  // namespace text
