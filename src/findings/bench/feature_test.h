#pragma once

#include <optional>
#include <string>
#include <vector>

#include "findings/bench/measurement.h"
#include "stats/samples/max_difference.h"

namespace findings {

/// A feature of one cable in two states, in one kind of reading on one rig.
struct FeatureTest {
  std::string cable, feature, kind, rig;
  std::string first_state, second_state;  ///< differences are first less second; "on" comes first
  int first_readings = 0, second_readings = 0;
  std::vector<std::string> quantities;  ///< those that all readings have
  bool is_relative = false;
  std::vector<double> difference;              ///< per quantity, of the means; empty where they share none
  std::optional<stats::MaxDifference> tested;  ///< nothing for fewer than 3 readings in all
};

/// Every feature that was read in two states, tested against the repeats: whole readings are permuted, and the largest
/// difference over all bands is the statistic (`stats::max_difference_test`, either direction).
std::vector<FeatureTest> feature_tests(const std::vector<Measurement>& measurements);

}  // namespace findings
