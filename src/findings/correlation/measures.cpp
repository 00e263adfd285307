#include "findings/correlation/measures.h"

#include "findings/circuit/specimen.h"

namespace findings {
namespace {

std::optional<double> loop_resistance_ohm(const Evidence& evidence, int specimen) {
  const auto line = line_of(evidence, specimen);
  if (!line) return std::nullopt;
  return electrical::loop_resistance_ohm(*line);
}

std::optional<double> predicted_level_db(const Evidence& evidence, int specimen) {
  const auto curve = predicted_curve_of(evidence, specimen);
  if (!curve) return std::nullopt;
  const auto level_db = weighted_level_db(weighting_of(evidence.plan), *curve);
  if (!level_db) return std::nullopt;
  return *level_db - attenuation_db(evidence.plan, specimen);
}

std::optional<double> inductance_microhenry(const Evidence& evidence, int specimen) {
  const auto line = line_of(evidence, specimen);
  if (!line) return std::nullopt;
  return electrical::totals(*line).inductance_henry * 1e6;
}

std::optional<double> capacitance_picofarad(const Evidence& evidence, int specimen) {
  const auto line = line_of(evidence, specimen);
  if (!line) return std::nullopt;
  return electrical::totals(*line).capacitance_farad * 1e12;
}

std::optional<double> largest_residual_db(const ComparisonFinding& finding) {
  if (!finding.predicted_residual) return std::nullopt;
  return finding.predicted_residual->largest_db;
}

std::optional<double> rms_residual_db(const ComparisonFinding& finding) {
  if (!finding.predicted_residual) return std::nullopt;
  return finding.predicted_residual->rms_db;
}

std::optional<double> terminal_level_db(const ComparisonFinding& finding) {
  return finding.level.measured_db;
}

std::optional<double> largest_deviation_db(const ComparisonFinding& finding) {
  if (!finding.measured) return std::nullopt;
  return finding.measured->largest_db;
}

std::optional<double> rms_deviation_db(const ComparisonFinding& finding) {
  if (!finding.measured) return std::nullopt;
  return finding.measured->rms_db;
}

std::optional<double> weighted_deviation_db(const ComparisonFinding& finding) {
  if (!finding.measured) return std::nullopt;
  return finding.measured->weighted_level_db;
}

constexpr Measure kMeasures[] = {
    {"loop resistance, ohm", true, loop_resistance_ohm, nullptr},
    {"inductance, uH", true, inductance_microhenry, nullptr},
    {"capacitance, pF", true, capacitance_picofarad, nullptr},
    {"predicted level with the trims as set, dB", true, predicted_level_db, nullptr},
    {"largest predicted residual, dB", true, nullptr, largest_residual_db},
    {"r.m.s. predicted residual, dB", false, nullptr, rms_residual_db},
    {"level at the load's terminals, dB", true, nullptr, terminal_level_db},
    {"largest measured deviation, dB", true, nullptr, largest_deviation_db},
    {"r.m.s. measured deviation, dB", false, nullptr, rms_deviation_db},
    {"weighted measured deviation, dB", true, nullptr, weighted_deviation_db},
};

}  // namespace

std::span<const Measure> measures() { return kMeasures; }

std::optional<double> difference(const Measure& measure, const Evidence& evidence,
                                 const ComparisonFinding& finding) {
  if (!measure.of_specimen) return measure.of_pair(finding);
  const auto& comparison = evidence.plan.comparisons.at(static_cast<std::size_t>(finding.comparison));
  const auto first = measure.of_specimen(evidence, comparison.first);
  const auto second = measure.of_specimen(evidence, comparison.second);
  if (!first || !second) return std::nullopt;
  return *second - *first;
}

}  // namespace findings
