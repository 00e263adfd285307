#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/plan.h"

namespace findings {

/// The number that a sealed field holds as typed, decimal point or comma; nothing for "".
/// @throws std::domain_error  naming the field when it is anything else.
std::optional<double> typed_number(std::string_view field, std::string_view typed);

/// The plan's tolerance for levels; 0.1 dB when none is given: a margin of common practice, no source.
double level_tolerance_db(const plan::Plan& plan);

/// "+0.62 dB", "0.00 dB".
std::string signed_db(double value_db);

/// "p 0.0384", "p <0.0001".
std::string p_words(double p);

/// A share as per cent without needless digits: 0.95 is "95 %", 0.975 is "97.5 %".
std::string percent(double share);

/// A share rounded upwards to three decimals, so that "this or more" and "at most this" stay true; and downwards for "at least
/// this". What lies within 1e-9 of a printed value is that value.
double rounded_up(double share);
double rounded_down(double share);

/// "1 trial", "3 trials".
std::string counted(int number, std::string_view singular);

/// "24 trials planned", and how many of them a look left out, if any.
std::string planned_words(int planned, int stopped);

/// A frequency in the unit people say: "240 Hz", "3.2 kHz".
std::string frequency_words(double frequency_hz);

/// "a, b and c".
std::string listed(const std::vector<std::string>& words);

}  // namespace findings
