#include "findings/circuit/level.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "findings/circuit/specimen.h"
#include "findings/listening/tally.h"
#include "findings/words/numbers.h"
#include "hearing/level_difference.h"
#include "hearing/residual.h"

namespace findings {
namespace {

/// What a level reads: sitting, channel, moment.
using Place = std::tuple<int, std::string, std::string>;

/// Rounding of decimal levels must not turn 0.1 dB into more than 0.1 dB.
constexpr double kRoundingDb = 1e-9;

std::set<int> sittings_of(const Evidence& evidence, int comparison) {
  std::set<int> sittings;
  for (const TrialEvidence* trial : trials_of(evidence, comparison)) sittings.insert(trial->sitting);
  return sittings;
}

std::map<Place, double> readings_of(const Evidence& evidence, int specimen, const std::set<int>& sittings) {
  std::map<Place, double> readings;
  for (const TerminalLevel& level : evidence.levels)
    if (level.specimen == specimen && sittings.contains(level.sitting))
      readings[{level.sitting, level.channel, level.moment}] = level.level_db;
  return readings;
}

void take_farther(std::optional<double>& farthest, double value) {
  if (!farthest || std::abs(value) > std::abs(*farthest)) farthest = value;
}

void add_drift(const std::map<Place, double>& readings, std::optional<double>& drift_db) {
  for (const auto& [place, end_db] : readings) {
    if (std::get<2>(place) != "end") continue;
    const auto start = readings.find({std::get<0>(place), std::get<1>(place), "start"});
    if (start != readings.end()) take_farther(drift_db, end_db - start->second);
  }
}

bool is_complete(const std::map<Place, double>& differences, const std::set<int>& sittings) {
  const auto has = [&](int sitting, const char* channel) {
    return differences.contains({sitting, channel, "start"}) &&
           differences.contains({sitting, channel, "end"});
  };
  return !sittings.empty() && std::all_of(sittings.begin(), sittings.end(), [&](int sitting) {
    return has(sitting, "mono") || (has(sitting, "left") && has(sitting, "right"));
  });
}

void describe_measured(const Evidence& evidence, const plan::Comparison& comparison,
                       const std::set<int>& sittings, LevelFinding& level) {
  const auto first = readings_of(evidence, comparison.first, sittings);
  const auto second = readings_of(evidence, comparison.second, sittings);
  add_drift(first, level.drift_db);
  add_drift(second, level.drift_db);
  std::map<Place, double> differences;
  double sum = 0;
  for (const auto& [place, level_db] : second)
    if (const auto other = first.find(place); other != first.end()) {
      differences[place] = level_db - other->second;
      sum += differences[place];
      take_farther(level.largest_measured_db, differences[place]);
    }
  if (!differences.empty()) level.measured_db = sum / static_cast<double>(differences.size());
  level.measured_completely = is_complete(differences, sittings);
}

std::string state_of(const LevelFinding& level) {
  if (level.measured_db) {
    const bool beyond = is_beyond(*level.largest_measured_db, level.tolerance_db);
    return level.measured_completely && !beyond ? "matched" : "measured, not matched";
  }
  return level.predicted_as_set_db ? "predicted only" : "not verified";
}

void describe_predicted(const Evidence& evidence, const plan::Comparison& comparison,
                        ComparisonFinding& finding) {
  const auto first = predicted_curve_of(evidence, comparison.first);
  const auto second = predicted_curve_of(evidence, comparison.second);
  const hearing::Weighting& weighting = weighting_of(evidence.plan);
  LevelFinding& level = finding.level;
  if (!first || !second || !are_comparable(*first, *second, weighting)) return;
  level.predicted_db = hearing::level_difference(weighting, *second, *first).difference_db;
  level.predicted_as_set_db = *level.predicted_db - level.trim_db;

  const hearing::Residual residual = hearing::residual(*second, *first, level.trim_db);
  finding.predicted_residual = {.minimum_db = residual.minimum_db,
                                .maximum_db = residual.maximum_db,
                                .rms_db = residual.rms_db,
                                .largest_db = residual.largest_db,
                                .frequency_of_largest_hz = residual.frequency_of_largest_hz,
                                .low_hz = residual.band.low_hz,
                                .high_hz = residual.band.high_hz};
  const auto first_line = *line_of(evidence, comparison.first);
  const auto second_line = *line_of(evidence, comparison.second);
  finding.first_line_words = cable_of(evidence, comparison.first)->line_words;
  finding.second_line_words = cable_of(evidence, comparison.second)->line_words;
  finding.predicted_curve = sampled(residual.band, [&](double frequency_hz) {
    return electrical::level_difference_db(*evidence.rig.source, second_line, first_line, *evidence.rig.load,
                                           frequency_hz);
  });
}

void describe_resistances(const Evidence& evidence, const plan::Comparison& comparison,
                          ComparisonFinding& finding) {
  if (const auto line = line_of(evidence, comparison.first))
    finding.loop_resistance_first_ohm = electrical::loop_resistance_ohm(*line);
  if (const auto line = line_of(evidence, comparison.second))
    finding.loop_resistance_second_ohm = electrical::loop_resistance_ohm(*line);
  for (const int specimen : {comparison.first, comparison.second})
    if (const auto* cable = cable_of(evidence, specimen); cable && cable->loop_resistance_spread_ohm)
      take_farther(finding.loop_resistance_spread_ohm, *cable->loop_resistance_spread_ohm);
}

}  // namespace

bool is_beyond(double difference_db, double tolerance_db) {
  return std::abs(difference_db) > tolerance_db + kRoundingDb;
}

void describe_level(const Evidence& evidence, ComparisonFinding& finding) {
  const auto& comparison = evidence.plan.comparisons.at(static_cast<std::size_t>(finding.comparison));
  LevelFinding& level = finding.level;
  level.weighting = weighting_of(evidence.plan).title;
  level.tolerance_db = level_tolerance_db(evidence.plan);
  level.trim_db =
      attenuation_db(evidence.plan, comparison.second) - attenuation_db(evidence.plan, comparison.first);
  describe_resistances(evidence, comparison, finding);
  describe_predicted(evidence, comparison, finding);
  describe_measured(evidence, comparison, sittings_of(evidence, finding.comparison), level);
  level.state = state_of(level);
}

}  // namespace findings
