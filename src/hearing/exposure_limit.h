#pragma once

namespace hearing {

/// NIOSH recommended exposure limit: 85 dBA for 8 hours a day, halved per 3 dB.
/// Source: NIOSH, Criteria for a Recommended Standard: Occupational Noise Exposure, 1998 (year from memory).
constexpr double kNioshLevelDba = 85;
constexpr double kNioshMinutes = 480;
constexpr double kNioshExchangeDb = 3;

/// Safe listening: 80 dBA for 40 hours a week, equal energy at other levels.
/// Source: ITU-T H.870, 2018.
constexpr double kWeeklyLevelDba = 80;
constexpr double kWeeklyHours = 40;

/// Minutes a day at a steady level: 480 / 2^((L - 85)/3). May exceed a day for low levels.
/// @param level_dba  0 to 140.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 94 dBA gives 60 minutes.
double permitted_minutes_a_day(double level_dba);

/// Hours a week at a steady level, by equal energy: 40 * 10^((80 - L)/10). May exceed a week.
/// @param level_dba  0 to 140.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 90 dBA gives 4 hours.
double permitted_hours_a_week(double level_dba);

}  // namespace hearing
