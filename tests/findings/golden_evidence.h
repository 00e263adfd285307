#pragma once

#include <string>

#include "electrical/golden_cases.h"
#include "findings/evidence_builder.h"

/// Two specimens on the loudspeaker LS1: cables A1 (first) and A2 (second) of the golden line cases, levels
/// as printed in tests/hearing/data/level_differences.csv, pair A2-A1, pink_K48k_integral (recomputed: 400001
/// points, trapezoid).
inline constexpr double kA2LessA1Db = 0.617051104;
inline constexpr double kResidualMinimumDb = -0.496303218;
inline constexpr double kResidualMaximumDb = 0.701904057;

inline Builder golden(int steps_of_second = 0, const std::string& step_db = "0.5") {
  Builder builder;
  const auto& a1 = golden_cases().at("A1");
  builder.evidence.rig.source = a1.source;
  builder.evidence.rig.load = a1.load;
  builder.evidence.cables["A1"].line = a1.cable;
  builder.evidence.cables["A2"].line = golden_cases().at("A2").cable;
  builder.plan().volume_step_db = step_db;
  const int claim = builder.comparison(builder.specimen("A1"), builder.specimen("A2", "", steps_of_second));
  builder.trials(claim, 8, 16);
  return builder;
}

inline findings::ComparisonFinding first_of(const Builder& builder) {
  return builder.findings().comparisons.at(0);
}
