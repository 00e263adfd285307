#include "hearing/trim.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "electrical/argument.h"

namespace hearing {
namespace {

constexpr double kSmallestStepDb = 0.001;
constexpr double kLargestStepDb = 20;

void check(std::span<const double> level_db, double step_db) {
  if (level_db.empty()) throw std::domain_error("trims need at least one level, got none");
  for (const double level : level_db) electrical::require_within("level_db", level, -1000, 1000);
  if (step_db != 0) {
    electrical::require_within("step_db (or 0, no trim possible)", step_db, kSmallestStepDb, kLargestStepDb);
  }
}

int nearest_steps(double excess_db, double step_db) {
  return step_db == 0 ? 0 : static_cast<int>(std::ceil(excess_db / step_db - 0.5));
}

}  // namespace

std::vector<Trim> trims(std::span<const double> level_db, double step_db) {
  check(level_db, step_db);
  const double quietest = *std::min_element(level_db.begin(), level_db.end());
  std::vector<Trim> result;
  for (const double level : level_db) {
    const int steps = nearest_steps(level - quietest, step_db);
    result.push_back({steps, steps * step_db, level - steps * step_db});
  }
  return result;
}

std::vector<RemainingDifference> remaining_differences(std::span<const Trim> trims) {
  std::vector<RemainingDifference> pairs;
  for (std::size_t i = 0; i < trims.size(); ++i) {
    for (std::size_t j = i + 1; j < trims.size(); ++j) {
      pairs.push_back({i, j, trims[i].level_db - trims[j].level_db});
    }
  }
  return pairs;
}

}  // namespace hearing
