#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace stats {

/// The checks of arguments, one for each kind, so that every refusal reads alike:
/// "correct must be between 0 and 16, got 17".
/// All throw std::domain_error naming the argument, its range and its value; not-a-number is always refused.

/// The largest number of trials that any function takes.
inline constexpr int kMostTrials = 1'000'000;

/// Strictly between 0 and 1.
void require_open_probability(std::string_view name, double value);

/// Between 0 and 1, both included.
void require_closed_probability(std::string_view name, double value);

/// A level of significance or a confidence, strictly between 0 and 1. A value that looks like per cent is
/// answered with the number to write instead.
void require_level(std::string_view name, double value);

/// A whole number between `lowest` and `highest`, both included.
void require_count(std::string_view name, std::int64_t value, std::int64_t lowest, std::int64_t highest);

/// A number between `lowest` and `highest`, both included.
void require_between(std::string_view name, double value, double lowest, double highest);

/// `trials` between 1 and `kMostTrials`, and `correct` between 0 and `trials`.
void require_correct_of_trials(std::int64_t correct, std::int64_t trials);

/// Every value finite; the message gives the place, counted from 0.
void require_finite(std::string_view name, std::span<const double> values);

}  // namespace stats
