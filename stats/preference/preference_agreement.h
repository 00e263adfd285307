#pragma once

#include <cstdint>
#include <optional>

#include "stats/permutation.h"
#include "stats/preference/preference_table.h"

namespace stats {

/// How far several listeners, each of whom compared every pair once, prefer alike.
struct PreferenceAgreement {
  std::int64_t agreements;  ///< pairs of listeners with the same preference, summed over the pairs of items
  double u;           ///< Kendall's coefficient of agreement: 1 if all prefer alike, 0 expected by chance
  double lowest_u;    ///< -1/(m - 1) of m listeners, -1/m if m is odd
  PermutationP test;  ///< P(as many agreements or more), every preference a fair coin
  /// The approximation by chi-square, without continuity correction, and its degrees of freedom; nothing for two
  /// listeners, where it is undefined. `test` does not rest on it.
  std::optional<double> chi_square;
  std::optional<double> degrees_of_freedom;
};

/// @param table  2 to `kMostItems` items; row i, column j says how many of the listeners preferred i to j. Every pair has
///               the same number of listeners, 2 to 1,000.
/// @throws std::domain_error  naming what is wrong; see `comparisons_of_each_pair`.
///
/// The null is that of a listener who guesses, not of one who ranks at random: listeners who are consistent but agree on
/// nothing give about the null's mean with a wider spread. p is exact where counting takes less than 10^9 steps (36
/// listeners with 32 items, 250 with 8); beyond, preferences are drawn.
/// Accuracy: relative error of an exact p below 1e-12, a sum of non-negative terms.
/// Example: 3 listeners of one mind on 3 items: 9 agreements, u 1, p 1/64.
/// Source: M. G. Kendall and B. Babington Smith, Biometrika 31 (1940) 324.
PreferenceAgreement preference_agreement(const PreferenceTable& table, const MonteCarlo& monte_carlo = {});

}  // namespace stats
