#pragma once

#include <vector>

namespace stats {

/// A variance for each item such that those of any two, added, are near the variance of their difference: so readers can
/// compare any two items, not each with a reference only.
struct QuasiVariances {
  /// Of each item. One may be below 0 where no such variances fit well; that item then has no standard error of its own.
  std::vector<double> variance;
  /// Over all pairs: how much too small and too large the standard error of a difference comes out, as a share of it.
  double lowest_error;   ///< 0 or below
  double highest_error;  ///< 0 or above
};

/// The least squares of the logarithms of the variances of differences.
///
/// @param covariance  of estimates, row by row, 3 to 100 items; 0 for a reference.
/// @throws std::domain_error  for another number of items, rows of another length, and differences without variance.
/// Example: independent estimates with variances 1, 2, 3: these, and errors 0.
/// Accuracy: 1e-12 of the largest (tests/stats). Three items always fit exactly.
/// Source: D. Firth and R. X. de Menezes, Biometrika 91 (2004) 65.
QuasiVariances quasi_variances(const std::vector<std::vector<double>>& covariance);

}  // namespace stats
