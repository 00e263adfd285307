#include "text/time.h"

#include <algorithm>
#include <array>
#include <stdexcept>

namespace text {
namespace {

using namespace std::chrono;

std::string padded(long long value, std::size_t width) {
  const std::string digits = std::to_string(value);
  return std::string(width > digits.size() ? width - digits.size() : 0, '0') + digits;
}

/// Takes fixed-width fields off the front of a text.
class Fields {
 public:
  explicit Fields(std::string_view text) : rest_(text) {}

  bool literal(char expected) {
    if (!rest_.starts_with(expected)) return false;
    rest_.remove_prefix(1);
    return true;
  }

  /// A field of exactly `width` digits within the range.
  bool digits(std::size_t width, int least, int most, int& value) {
    if (rest_.size() < width) return false;
    value = 0;
    for (const char c : rest_.substr(0, width)) {
      if (c < '0' || c > '9') return false;
      value = value * 10 + (c - '0');
    }
    rest_.remove_prefix(width);
    return value >= least && value <= most;
  }

  /// 1 to 9 digits of a fraction of a second.
  bool fraction(nanoseconds& value) {
    const std::size_t count = std::min(rest_.find_first_not_of("0123456789"), rest_.size());
    int counted = 0;
    if (count < 1 || count > 9 || !digits(count, 0, 999'999'999, counted)) return false;
    for (std::size_t i = count; i < 9; ++i) counted *= 10;
    value = nanoseconds(counted);
    return true;
  }

  bool done() const { return rest_.empty(); }

 private:
  std::string_view rest_;
};

std::optional<minutes> offset(Fields& fields) {
  if (fields.literal('Z')) return minutes(0);
  const bool east = fields.literal('+');
  if (!east && !fields.literal('-')) return std::nullopt;
  int hour = 0;
  int minute = 0;
  if (!(fields.digits(2, 0, 23, hour) && fields.literal(':') && fields.digits(2, 0, 59, minute)))
    return std::nullopt;
  return (east ? 1 : -1) * (hours(hour) + minutes(minute));
}

}  // namespace

std::string rfc3339(TimePoint time, Precision precision) {
  const auto whole = floor<milliseconds>(time);
  const auto day = floor<days>(whole);
  const year_month_day date(day);
  const int year_number = static_cast<int>(date.year());
  if (year_number < 0 || year_number > 9999)
    throw std::domain_error("year must be 0 to 9999, got " + std::to_string(year_number));
  const hh_mm_ss clock(whole - day);
  std::string text = padded(year_number, 4) + "-" + padded(static_cast<unsigned>(date.month()), 2) + "-" +
                     padded(static_cast<unsigned>(date.day()), 2) + "T" + padded(clock.hours().count(), 2) +
                     ":" + padded(clock.minutes().count(), 2) + ":" + padded(clock.seconds().count(), 2);
  if (precision == Precision::milliseconds) text.append(".").append(padded(clock.subseconds().count(), 3));
  return text + "Z";
}

std::optional<TimePoint> parse_rfc3339(std::string_view text) {
  Fields fields(text);
  std::array<int, 6> part{};
  const bool read =
      fields.digits(4, 0, 9999, part[0]) && fields.literal('-') && fields.digits(2, 1, 12, part[1]) &&
      fields.literal('-') && fields.digits(2, 1, 31, part[2]) && fields.literal('T') &&
      fields.digits(2, 0, 23, part[3]) && fields.literal(':') && fields.digits(2, 0, 59, part[4]) &&
      fields.literal(':') && fields.digits(2, 0, 59, part[5]);
  nanoseconds fraction(0);
  if (!read || (fields.literal('.') && !fields.fraction(fraction))) return std::nullopt;
  const auto ahead = offset(fields);
  const year_month_day date{year{part[0]}, month{static_cast<unsigned>(part[1])},
                            day{static_cast<unsigned>(part[2])}};
  if (!ahead || !fields.done() || !date.ok()) return std::nullopt;
  const auto moment = sys_days(date) + hours(part[3]) + minutes(part[4]) + seconds(part[5]) - *ahead;
  // A clock of nanoseconds in 64 bits ends in the years 1677 and 2262.
  if (moment < ceil<seconds>(TimePoint::min()) || moment >= floor<seconds>(TimePoint::max()))
    return std::nullopt;
  return floor<TimePoint::duration>(TimePoint(moment) + fraction);
}

}  // namespace text
