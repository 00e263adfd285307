#pragma once

#include <span>
#include <vector>

namespace stats {

/// What the exact one-sided test does for every number of trials n from 1: row n stands at place n - 1.
struct OperatingTable {
  /// Smallest number right that the test supports; n + 1 where not even all right would.
  std::vector<int> minimum_correct;
  /// Probability of support when every answer is a guess: at most the level, and 0 where support is
  /// impossible.
  std::vector<double> size;
  /// [alternative][n - 1]: probability of support when the true share right is shares[alternative].
  std::vector<std::vector<double>> power;
};

/// The table of the one-sided exact test at `level` against `chance` for n = 1 to `most_trials`.
///
/// As n grows by one, the minimum stays or grows by one, so each entry follows from the one before it in a
/// few operations.
///
/// @param most_trials  1 to 1,000,000.
/// @param level        strictly between 0 and 1.
/// @param chance       strictly between 0 and 1.
/// @param shares       true shares right, each between 0 and 1; may be empty.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: absolute error below 1e-12 up to 3,000 trials; the minimum is that of `minimum_correct`
/// (tests/stats).
OperatingTable operating_table(int most_trials, double level, double chance, std::span<const double> shares);

}  // namespace stats
