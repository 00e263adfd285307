#include "hearing/level_curve.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

#include "electrical/argument.h"

namespace hearing {
namespace {

constexpr int kMeanPoints = 2001;  // odd, as Simpson's rule needs

void check_table(const std::vector<double>& frequency_hz, const std::vector<double>& level_db) {
  if (frequency_hz.size() < 2 || frequency_hz.size() != level_db.size()) {
    throw std::domain_error("a response must have at least 2 frequencies and a level for each, got " +
                            std::to_string(frequency_hz.size()) + " and " + std::to_string(level_db.size()));
  }
  for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
    electrical::require_positive("frequency_hz", frequency_hz[i]);
    if (i > 0 && frequency_hz[i] <= frequency_hz[i - 1]) {
      throw std::domain_error("frequency_hz must rise, got " + electrical::number_text(frequency_hz[i]) +
                              " after " + electrical::number_text(frequency_hz[i - 1]));
    }
    if (!std::isfinite(level_db[i])) {
      throw std::domain_error("level_db at " + electrical::number_text(frequency_hz[i]) +
                              " Hz must be a finite number, got " + electrical::number_text(level_db[i]));
    }
  }
}

double interpolated(const std::vector<double>& frequency_hz, const std::vector<double>& level_db,
                    double at_hz) {
  const auto above = std::upper_bound(frequency_hz.begin() + 1, frequency_hz.end() - 1, at_hz);
  const auto i = static_cast<std::size_t>(above - frequency_hz.begin());
  const double share =
      std::log(at_hz / frequency_hz[i - 1]) / std::log(frequency_hz[i] / frequency_hz[i - 1]);
  return level_db[i - 1] + share * (level_db[i] - level_db[i - 1]);
}

}  // namespace

LevelCurve::LevelCurve(std::function<double(double)> level_db, const electrical::Band& band)
    : level_db_(std::move(level_db)), band_(band) {}

LevelCurve::LevelCurve(std::vector<double> frequency_hz, std::vector<double> level_db)
    : band_{}, points_hz_(frequency_hz) {
  check_table(frequency_hz, level_db);
  band_ = {frequency_hz.front(), frequency_hz.back()};
  level_db_ = [f = std::move(frequency_hz), db = std::move(level_db)](double at_hz) {
    return interpolated(f, db, at_hz);
  };
}

double LevelCurve::level_db(double frequency_hz) const {
  electrical::require_within("frequency_hz of a response", frequency_hz, band_.low_hz, band_.high_hz);
  return level_db_(frequency_hz);
}

LevelCurve predicted_curve(const electrical::Source& source, const electrical::Cable& cable,
                           const electrical::Load& load) {
  return {[=](double f) { return electrical::level_db(electrical::response(source, cable, load, f)); },
          electrical::known_band(load)};
}

electrical::Band common_audio_band(const LevelCurve& first, const LevelCurve& second) {
  return overlap(overlap(first.band(), second.band()), electrical::kAudioBand);
}

double log_mean(const std::function<double(double)>& of_frequency_hz, const electrical::Band& band) {
  const std::vector<double> points = electrical::log_spaced(band, kMeanPoints);
  double sum = of_frequency_hz(points.front()) + of_frequency_hz(points.back());
  for (std::size_t i = 1; i + 1 < points.size(); ++i) {
    sum += (i % 2 == 1 ? 4 : 2) * of_frequency_hz(points[i]);
  }
  return sum / (3.0 * (kMeanPoints - 1));
}

}  // namespace hearing
