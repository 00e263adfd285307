#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace stats {

/// Twice the mid-ranks of `values`, so that they are whole numbers: the smallest value has 2 and tied values
/// share the mean of their ranks. {10, 30, 10} gives {3, 6, 3}.
///
/// @param values  all finite.
/// @throws std::domain_error  naming the place, counted from 0.
std::vector<std::int64_t> doubled_midranks(std::span<const double> values);

/// Spearman's correlation of two lists of ranks (or doubled ranks) kept in whole numbers, so that equal
/// correlations compare equal: rho = covariance / sqrt(x_variance y_variance). All three are scaled by n
/// squared.
struct RankMoments {
  std::int64_t covariance;
  std::int64_t x_variance;
  std::int64_t y_variance;
};

/// @param x, y  of equal length, at most 10,000.
RankMoments rank_moments(std::span<const std::int64_t> x, std::span<const std::int64_t> y);

/// rho; both variances above 0.
double rho(const RankMoments& moments);

}  // namespace stats
