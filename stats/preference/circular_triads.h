#pragma once

#include <cstdint>
#include <vector>

#include "stats/permutation.h"
#include "stats/preference/preference_table.h"

namespace stats {

/// Up to this number of items every way of preferring is counted; beyond, ways are drawn.
inline constexpr int kExactTournament = 12;

/// How consistent one listener is who prefers one of every two items: a circular triad is three items of which A is
/// preferred to B, B to C, and C to A, so that no ranking can hold all three.
struct CircularTriads {
  std::int64_t triads;
  std::int64_t most;  ///< circular triads that so many items can have: (n^3 - n)/24, even n (n^3 - 4n)/24
  double expected;    ///< by guessing: a quarter of all triads
  double zeta;        ///< coefficient of consistency, 1 - triads/most: 1 if one ranking holds all preferences
  PermutationP test;  ///< P(as few circular triads or fewer), every preference a fair coin
};

/// @param table  3 to `kMostItems` items, every pair compared once: 1 for the item preferred.
/// @throws std::domain_error  naming what is wrong; see `comparisons_of_each_pair`.
/// Example: 4 items with scores 3 2 1 0: no circular triad, zeta 1, p 24/64 = 0.375: so few items cannot show consistency.
/// Accuracy: relative error of an exact p below 1e-13, a sum of non-negative terms.
/// Source: M. G. Kendall and B. Babington Smith, Biometrika 31 (1940) 324.
CircularTriads circular_triads(const PreferenceTable& table, const MonteCarlo& monte_carlo = {});

/// Probability of 0, 1, 2, ... circular triads when every preference is a fair coin.
/// @param items  3 to `kExactTournament`.
std::vector<double> circular_triads_by_chance(int items);

}  // namespace stats
