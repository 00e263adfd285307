#pragma once

#include <cstdint>
#include <span>

#include "stats/permutation.h"

namespace stats {

/// How many of the pairings drawn at random count against the null as much as the `covariance` seen (see `RankMoments`).
///
/// Pairings are drawn in blocks of 4,096 with a seed each, so that the result is the same for every number of threads.
///
/// @param x, y     doubled ranks of equal length, 2 to 10,000.
/// @param threads  1 or more.
std::int64_t drawn_pairings_against(std::span<const std::int64_t> x, std::span<const std::int64_t> y,
                                    std::int64_t covariance, Alternative alternative,
                                    const MonteCarlo& monte_carlo, int threads);

}  // namespace stats
