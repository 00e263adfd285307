#include "hearing/residual.h"

#include <cmath>

#include "electrical/argument.h"
#include "electrical/extreme.h"

namespace hearing {
namespace {

std::vector<double> points_of_both(const LevelCurve& first, const LevelCurve& second) {
  std::vector<double> points(first.points_hz().begin(), first.points_hz().end());
  points.insert(points.end(), second.points_hz().begin(), second.points_hz().end());
  return points;
}

}  // namespace

Residual residual(const LevelCurve& first, const LevelCurve& second, double trim_db) {
  electrical::require_within("trim_db", trim_db, -1000, 1000);
  const electrical::Band band = common_audio_band(first, second);
  const auto left_over = [&](double f) { return first.level_db(f) - second.level_db(f) - trim_db; };
  const std::vector<double> points = points_of_both(first, second);
  const auto least = electrical::minimum_over(left_over, band, points);
  const auto greatest = electrical::maximum_over(left_over, band, points);
  const double mean_square = log_mean([&](double f) { return std::pow(left_over(f), 2); }, band);
  const auto& largest = std::abs(least.value) > std::abs(greatest.value) ? least : greatest;
  return {.minimum_db = least.value,
          .maximum_db = greatest.value,
          .rms_db = std::sqrt(mean_square),
          .largest_db = largest.value,
          .frequency_of_largest_hz = largest.frequency_hz,
          .band = band};
}

}  // namespace hearing
