#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "stats/permutation.h"

namespace stats {

/// Up to this number of pairs every pairing is counted; beyond, pairings are drawn.
inline constexpr int kExactRanks = 12;

/// Exact null distribution of a rank correlation: over all n! pairings of the x with the y, how many give
/// which centred sum of products n sum(x y) - sum(x) sum(y), the `covariance` of `RankMoments`.
class PairingSums {
 public:
  struct Point {
    std::int64_t covariance;
    double pairings;  ///< a whole number, at most 12!
  };

  /// @param x, y  whole numbers (ranks or doubled ranks) of equal length, 1 to `kExactRanks`.
  /// @throws std::domain_error  for another length.
  PairingSums(std::span<const std::int64_t> x, std::span<const std::int64_t> y);

  /// Every attainable value with its count, smallest first.
  const std::vector<Point>& points() const { return points_; }

  /// Share of all pairings that count against the null as much as the `covariance` seen.
  double share(std::int64_t covariance, Alternative alternative) const;

 private:
  std::vector<Point> points_;
};

}  // namespace stats
