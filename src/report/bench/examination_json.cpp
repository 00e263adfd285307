#include <nlohmann/json.hpp>

#include "report/bench/bench_report.h"

namespace report {
namespace {

using nlohmann::json;

json comparison_json(const findings::BenchComparison& comparison) {
  json spreads = json::array(), rows = json::array();
  for (const auto& each : comparison.repeatability) {
    json spread = {{"quantity", each.quantity},
                   {"relative", each.is_relative},
                   {"degrees_of_freedom", each.within.degrees_of_freedom}};
    if (each.within.standard_deviation) spread["standard_deviation"] = *each.within.standard_deviation;
    spreads.push_back(std::move(spread));
  }
  for (const auto& row : comparison.rows) {
    json differences = json::array();
    for (const auto& one : row.differences) {
      json difference = {{"quantity", one.quantity}, {"difference", one.difference}};
      if (one.repeatability_limit) difference["repeatability_limit"] = *one.repeatability_limit;
      differences.push_back(std::move(difference));
    }
    rows.push_back({{"cable", row.cable},
                    {"piece", row.piece},
                    {"condition", row.condition},
                    {"feature", row.feature},
                    {"state", row.state},
                    {"readings", row.readings},
                    {"differences", differences}});
  }
  return {{"kind", comparison.kind}, {"rig", comparison.rig}, {"repeatability", spreads}, {"rows", rows}};
}

json feature_json(const findings::FeatureTest& test) {
  json differences = json::array();
  for (std::size_t i = 0; i < test.difference.size(); ++i) {
    json one = {{"quantity", test.quantities[i]}, {"difference", test.difference[i]}};
    if (test.tested) one["adjusted_p"] = test.tested->adjusted_p[i];
    differences.push_back(std::move(one));
  }
  json value = {{"cable", test.cable},
                {"feature", test.feature},
                {"kind", test.kind},
                {"rig", test.rig},
                {"first_state", test.first_state},
                {"second_state", test.second_state},
                {"first_readings", test.first_readings},
                {"second_readings", test.second_readings},
                {"relative", test.is_relative},
                {"differences", differences}};
  if (test.tested) {
    value["p"] = test.tested->test.p;
    value["smallest_p"] = test.tested->smallest_p;
  }
  return value;
}

}  // namespace

std::string examination_json(const findings::BenchFindings& bench) {
  json doubts = json::array(), comparisons = json::array(), features = json::array();
  for (const auto& doubt : bench.doubts)
    doubts.push_back({{"readings", doubt.readings},
                      {"cable", doubt.cable},
                      {"what", doubt.what},
                      {"explanation", doubt.explanation}});
  for (const auto& comparison : bench.comparisons) comparisons.push_back(comparison_json(comparison));
  for (const auto& test : bench.features) features.push_back(feature_json(test));
  const json value = {{"schema", 1},
                      {"baseline", bench.baseline},
                      {"doubts", doubts},
                      {"comparisons", comparisons},
                      {"features", features}};
  return value.dump(2) + "\n";
}

}  // namespace report
