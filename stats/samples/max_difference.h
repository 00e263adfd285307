#pragma once

#include <vector>

#include "stats/permutation.h"

namespace stats {

/// Whether two groups of repeated curves differ anywhere, over all their bands at once.
struct MaxDifference {
  std::size_t place;               ///< the band in which they differ most, for the spread of all curves there
  std::vector<double> difference;  ///< per band: mean of the first group less that of the second
  std::vector<double> adjusted_p;  ///< per band: that any band would differ so much
  PermutationP test;               ///< of the largest
  /// The least p that groups of these sizes can have: one in so many divisions; twice that where both directions count
  /// and the groups are equally large, since the division with the groups exchanged differs as much.
  double smallest_p;
};

/// Permutation test with the largest difference over the bands: every division of all curves into groups of these sizes is
/// equally likely under the null, however the bands hang together. Each band's difference counts in units of the standard
/// deviation of all curves in that band, which no division changes; a band in which all are equal counts nothing. So the
/// chance that any band is called different where nothing is stays at the level, for few repeats too.
///
/// @param first, second  curves of equally many bands (1 to 100,000), 1 to 1,000 in each group and 3 in both or more; finite.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Up to 1,000,000 divisions, and 2e7 with their bands, are counted; beyond, divisions are drawn.
/// Three against three cannot reach a p below 1/20 in a direction stated before, below 1/10 in either.
/// Source: P. H. Westfall and S. S. Young, Resampling-Based Multiple Testing (1993), single-step max (from memory).
MaxDifference max_difference_test(const std::vector<std::vector<double>>& first,
                                  const std::vector<std::vector<double>>& second, Alternative alternative,
                                  const MonteCarlo& monte_carlo = {});

}  // namespace stats
