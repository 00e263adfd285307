#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace stats {

/// Pairs of values that are not alike.
/// @param groups  how many values are alike, for each different value.
std::int64_t untied_pairs(std::span<const int> groups);

/// Null distribution of Kendall's score S over all pairings of values with ties: symmetric, from -most to most.
struct ScoreDistribution {
  std::int64_t most;
  std::vector<double> probability;  ///< of S = -most, -most + 1, ..., most
};

/// @param x_groups, y_groups  how many values are alike, for each different value in rising order; sums equal.
/// @return  nothing where counting would take 10^8 steps or more.
std::optional<ScoreDistribution> score_distribution(std::span<const int> x_groups,
                                                    std::span<const int> y_groups);

}  // namespace stats
