#include "findings/circuit/measured.h"

#include <algorithm>
#include <numeric>
#include <set>

#include "findings/circuit/specimen.h"
#include "hearing/deviation.h"

namespace findings {
namespace {

using hearing::LevelCurve;

/// The part of the band that all repeats share; nothing when they share none.
std::optional<electrical::Band> shared_band(const std::vector<LevelCurve>& repeats, electrical::Band band) {
  std::optional<electrical::Band> shared = band;
  for (const LevelCurve& repeat : repeats)
    if (shared) shared = electrical::common_band(*shared, repeat.band());
  return shared;
}

/// The ends of the band and every point of any repeat within it. Each repeat is linear in ln f between its
/// own points, so their mean is linear between these, and they differ most at one of these.
std::vector<double> points_within(const std::vector<LevelCurve>& repeats, const electrical::Band& band) {
  std::set<double> points{band.low_hz, band.high_hz};
  for (const LevelCurve& repeat : repeats)
    for (const double point : repeat.points_hz())
      if (point > band.low_hz && point < band.high_hz) points.insert(point);
  return {points.begin(), points.end()};
}

std::vector<double> levels_at(const std::vector<LevelCurve>& repeats, double frequency_hz) {
  std::vector<double> level_db;
  for (const LevelCurve& repeat : repeats) level_db.push_back(repeat.level_db(frequency_hz));
  return level_db;
}

/// The mean of the repeats in dB.
std::optional<LevelCurve> mean_of(const std::vector<LevelCurve>& repeats) {
  const auto band = shared_band(repeats, electrical::kEveryFrequency);
  if (repeats.empty() || !band) return std::nullopt;
  std::vector<double> frequency_hz = points_within(repeats, *band);
  std::vector<double> mean_db;
  for (const double frequency : frequency_hz) {
    const auto level_db = levels_at(repeats, frequency);
    mean_db.push_back(std::accumulate(level_db.begin(), level_db.end(), 0.0) /
                      static_cast<double>(level_db.size()));
  }
  return LevelCurve(std::move(frequency_hz), std::move(mean_db));
}

/// The largest difference between two repeats within 20 Hz to 20 kHz; nothing when there is only one.
std::optional<double> spread_db(const std::vector<LevelCurve>& repeats) {
  const auto band = shared_band(repeats, electrical::kAudioBand);
  if (repeats.size() < 2 || !band) return std::nullopt;
  double largest_db = 0;
  for (const double frequency : points_within(repeats, *band)) {
    const auto level_db = levels_at(repeats, frequency);
    const auto [least, greatest] = std::minmax_element(level_db.begin(), level_db.end());
    largest_db = std::max(largest_db, *greatest - *least);
  }
  return largest_db;
}

std::optional<LevelCurve> measured_curve(const Evidence& evidence, int specimen) {
  const CableEvidence* cable = cable_of(evidence, specimen);
  const auto& series = evidence.plan.specimens.at(static_cast<std::size_t>(specimen)).series_resistance_ohm;
  if (!cable || !series.empty()) return std::nullopt;
  return mean_of(cable->response.repeats);
}

}  // namespace

void describe_measured_response(const Evidence& evidence, ComparisonFinding& finding) {
  const auto& comparison = evidence.plan.comparisons.at(static_cast<std::size_t>(finding.comparison));
  const auto first = measured_curve(evidence, comparison.first);
  const auto second = measured_curve(evidence, comparison.second);
  const hearing::Weighting& weighting = weighting_of(evidence.plan);
  if (!first || !second || !are_comparable(*first, *second, weighting)) return;

  const hearing::Deviation deviation = hearing::deviation(*second, *first, weighting);
  DeviationFinding measured{.largest_db = deviation.largest_db,
                            .frequency_of_largest_hz = deviation.frequency_of_largest_hz,
                            .rms_db = deviation.rms_db,
                            .weighted_level_db = deviation.weighted_level_db,
                            .low_hz = deviation.band.low_hz,
                            .high_hz = deviation.band.high_hz,
                            .repeatability_db = std::nullopt};
  for (const int specimen : {comparison.first, comparison.second})
    if (const auto spread = spread_db(cable_of(evidence, specimen)->response.repeats))
      measured.repeatability_db = std::max(measured.repeatability_db.value_or(0), *spread);
  finding.measured = measured;
  finding.measured_curve = sampled(deviation.band, [&](double frequency_hz) {
    return second->level_db(frequency_hz) - first->level_db(frequency_hz);
  });
}

}  // namespace findings
