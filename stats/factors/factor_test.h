#pragma once

#include <optional>
#include <span>
#include <vector>

#include "stats/permutation.h"

namespace stats {

/// Values of items, the level of one factor that each has, and what else they share: "same conductor, other shield" compares
/// shields (levels) within conductors (blocks). The null hypothesis of all tests below: within each block the values are given
/// to the items in any order, each equally likely. So blocks may differ in anything.
struct FactorLayout {
  std::span<const double> values;  ///< 2 to 10,000, all finite
  std::span<const int> levels;     ///< as many, 0 to 99
  std::span<const int> blocks;     ///< as many, any numbers; empty: one block
};

/// Up to this number of arrangements every one is counted; beyond, arrangements are drawn.
inline constexpr double kExactArrangements = 1'000'000;

/// Whether a factor makes any difference.
struct FactorTest {
  /// Squared distance of the level's sums from what the null expects, by their covariance under it. In one block it is
  /// (n - 1) times the share of the squares that lies between levels.
  double statistic;
  int degrees_of_freedom;  ///< of its chi-square distribution for many items, with which p does not deal
  PermutationP test;       ///< P(statistic this large or larger)
  double arrangements;     ///< different ones under the null
  std::optional<double>
      smallest_p;  ///< that any arrangement could have; nothing where arrangements are drawn
};

/// @return  nothing where no block has both different levels and different values.
/// @throws std::domain_error  naming the argument, its value and its range; so do the functions below.
/// Example: values 12 15 18 20 of one level and 21 25 28 of another: p 2/35.
/// Source: H. Strasser and C. Weber, Math. Methods Statist. 8 (1999) 220.
std::optional<FactorTest> factor_test(const FactorLayout& layout, const MonteCarlo& monte_carlo = {});

/// Each of several factors within items that are alike in all the others and in their block.
///
/// @param factors  1 to 10: the level of each item.
/// @param blocks   as in `FactorLayout`.
/// @return  nothing for a factor that never varies alone.
/// Example: two shields on each of two conductors, values 1 3 | 5 7: shield and conductor p 1/2 each, which is the smallest
/// that so few can have.
std::vector<std::optional<FactorTest>> main_effects(std::span<const double> values,
                                                    const std::vector<std::vector<int>>& factors,
                                                    std::span<const int> blocks = {},
                                                    const MonteCarlo& monte_carlo = {});

/// A difference between levels that was planned: "shielded less the mean of both unshielded".
struct ContrastTest {
  double estimate;  ///< sum of weight times mean of the level, averaged over the blocks that have all of them
  int blocks;       ///< that have
  PermutationP test;
  double arrangements;
  std::optional<double> smallest_p;
};

/// Blocks are averaged by their precision, 1 / sum of weight^2 / items of the level.
///
/// @param weights  one for each level from 0; finite, their sum 0, not all 0. Levels beyond have weight 0.
/// @return  nothing where no block has all the levels with weights, and where values do not vary within those.
/// Example: 12 15 18 20 against 21 25 28 with weights 1, -1: -8.417, p 2/35 two-sided.
std::optional<ContrastTest> contrast_test(const FactorLayout& layout, std::span<const double> weights,
                                          Alternative alternative, const MonteCarlo& monte_carlo = {});

}  // namespace stats
