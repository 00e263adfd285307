#include "hearing/exposure_limit.h"

#include <cmath>

#include "electrical/argument.h"

namespace hearing {
namespace {

void check_level(double level_dba) { electrical::require_within("level_dba", level_dba, 0, 140); }

}  // namespace

double permitted_minutes_a_day(double level_dba) {
  check_level(level_dba);
  return kNioshMinutes / std::exp2((level_dba - kNioshLevelDba) / kNioshExchangeDb);
}

double permitted_hours_a_week(double level_dba) {
  check_level(level_dba);
  return kWeeklyHours * std::pow(10, (kWeeklyLevelDba - level_dba) / 10);
}

}  // namespace hearing
