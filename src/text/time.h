#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace text {

using TimePoint = std::chrono::system_clock::time_point;

enum class Precision { seconds, milliseconds };

/// `time` in UTC as RFC 3339 writes it: "2031-05-01T19:30:00Z", with milliseconds "2031-05-01T19:30:00.250Z".
/// Rounded down to the precision.
/// @throws std::domain_error  for years outside 0 to 9999.
std::string rfc3339(TimePoint time, Precision precision = Precision::seconds);

/// The moment written by all of `text`, strictly as RFC 3339: date, "T", time, an optional fraction of 1 to 9
/// digits, and "Z" or an offset such as "+02:00". Nothing for anything else, impossible dates and leap
/// seconds (:60) included. The fraction is rounded down to the clock's tick.
std::optional<TimePoint> parse_rfc3339(std::string_view text);

}  // namespace text
