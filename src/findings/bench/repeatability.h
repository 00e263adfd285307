#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "findings/bench/measurement.h"
#include "stats/samples/repeats.h"

namespace findings {

/// How far repeats of one quantity lie apart, over all cables that were measured more than once.
struct Repeatability {
  std::string quantity;
  bool is_relative = false;      ///< values are natural logarithms: 0.01 is 1 %
  stats::RepeatSpread within{};  ///< of one reading, pooled over the groups of repeats
};

/// The difference of one quantity between a cable and the baseline.
struct BenchDifference {
  std::string quantity;
  bool is_relative = false;
  double difference = 0;  ///< cable less baseline, of the means of their repeats
  /// What repeats alone would stay below in 95 of 100 comparisons: t(0.975) s sqrt(1/n + 1/m). Nothing without repeats.
  std::optional<double> repeatability_limit;
  bool is_beyond() const { return repeatability_limit && std::abs(difference) > *repeatability_limit; }
};

/// All quantities of one kind of reading on one rig.
struct BenchComparison {
  std::string kind, rig;
  std::vector<Repeatability> repeatability;
  struct Row {
    std::string cable, piece, condition, feature, state;
    int readings = 0;
    std::vector<BenchDifference> differences;  ///< empty for the baseline and where the two share no quantity
  };
  std::vector<Row> rows;
};

/// Every kind of reading that was made of the baseline, cable by cable against it; like with like: a piece with the same
/// piece, a condition with the same condition, the readings without a feature, or those in the same state.
///
/// The spread is taken within repeats (`repeats_of`) and pooled over all cables, so that cables measured once are shown
/// against it too. The limit is exact for normal readings of equal spread: t with the pooled degrees of freedom.
/// Where many quantities are looked at, about one in twenty is beyond its limit by chance alone.
/// Source: the repeatability limit of ISO 5725-6 (from memory), which takes 1.96 for t.
/// @param baseline  "" for none: then there is nothing to compare, and only the spread is stated.
std::vector<BenchComparison> compare_with_baseline(const std::vector<Measurement>& measurements,
                                                   const std::string& baseline);

}  // namespace findings
