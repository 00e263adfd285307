#include "hearing/auditory/smoothed.h"

#include <algorithm>
#include <cmath>

#include "electrical/argument.h"
#include "hearing/auditory/filter.h"

namespace hearing {
namespace {

constexpr double kCamsApart = 0.25;
constexpr int kPointsEachSide = 65;  // odd, as Simpson's rule needs
constexpr double kReach = 16;        // of p g: the weight has fallen to 2e-6

double as_power(double level_db) { return std::pow(10, level_db / 10); }

struct Passed {
  double first = 0, second = 0;
};

/// Adds what a filter passes between two frequencies on one side of its centre, by Simpson's rule.
void add_side(Passed& passed, double centre_hz, double low_hz, double high_hz, const LevelCurve& first,
              const LevelCurve& second) {
  if (high_hz <= low_hz) return;
  const double step = (high_hz - low_hz) / (kPointsEachSide - 1);
  for (int i = 0; i < kPointsEachSide; ++i) {
    const double f = i + 1 == kPointsEachSide ? high_hz : low_hz + i * step;
    const bool end = i == 0 || i + 1 == kPointsEachSide;
    const double weight = (end ? 1 : i % 2 == 1 ? 4 : 2) * step / 3 * auditory_weight(centre_hz, f);
    passed.first += weight * as_power(first.level_db(f));
    passed.second += weight * as_power(second.level_db(f));
  }
}

double difference_in_filter_db(double centre_hz, const electrical::Band& band, const LevelCurve& first,
                               const LevelCurve& second) {
  const double reach_hz = kReach * erb_hz(centre_hz) / 4;
  Passed passed;
  add_side(passed, centre_hz, std::max(band.low_hz, centre_hz - reach_hz), centre_hz, first, second);
  add_side(passed, centre_hz, centre_hz, std::min(band.high_hz, centre_hz + reach_hz), first, second);
  return 10 * std::log10(passed.first / passed.second);
}

}  // namespace

AuditoryDifference auditory_difference(const LevelCurve& first, const LevelCurve& second, double trim_db) {
  electrical::require_within("trim_db", trim_db, -1000, 1000);
  AuditoryDifference found{0, 0, 0, common_audio_band(first, second), {}, {}};
  const double low_cam = erb_rate_cam(found.band.low_hz), cams = erb_rate_cam(found.band.high_hz) - low_cam;
  const int filters = 2 + static_cast<int>(cams / kCamsApart);
  double squares = 0;
  for (int i = 0; i < filters; ++i) {
    const double centre_hz = std::clamp(frequency_at_cam_hz(low_cam + cams * i / (filters - 1)),
                                        found.band.low_hz, found.band.high_hz);
    const double difference_db = difference_in_filter_db(centre_hz, found.band, first, second) - trim_db;
    if (i == 0 || std::abs(difference_db) > std::abs(found.largest_db)) {
      found.largest_db = difference_db;
      found.frequency_of_largest_hz = centre_hz;
    }
    squares += difference_db * difference_db;
    found.centre_hz.push_back(centre_hz);
    found.difference_db.push_back(difference_db);
  }
  found.rms_db = std::sqrt(squares / filters);
  return found;
}

}  // namespace hearing
