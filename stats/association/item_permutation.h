#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "stats/association/spearman.h"

namespace stats {

/// Two items compared, and what came of it.
struct ItemPair {
  int first;  ///< place of an item in the list of values, from 0
  int second;
  double outcome;  ///< for signed differences: in favour of `first`
};

/// What a pair takes from the values of its items: |first - second|, or first - second.
enum class PairValue { absolute_difference, signed_difference };

/// Up to this number of items every order of the values is counted; beyond, orders are drawn.
inline constexpr int kExactItems = 8;

/// Whether the outcomes of pairs go with the differences of a property of their items, by Spearman's rank
/// correlation over the pairs with mid-ranks for ties.
///
/// Pairs that share items are not independent, so pairs must not be permuted. The null hypothesis here: the
/// values are given to the items in any order, each equally likely; the pairs and their outcomes stay. In
/// orders where all listed pairs have the same difference rho counts as 0. Differences alike to 1 part in
/// 10^9 of the range of the values are tied, and correlations alike to 1e-12 are equal.
///
/// @param values  one for each item, 2 to 1,000, all finite.
/// @param pairs   2 to 10,000; two different items each, outcomes finite.
/// @return  nothing when all differences or all outcomes are equal.
/// @throws std::domain_error  naming the argument, its value and its range.
std::optional<RankCorrelation> permute_by_item(std::span<const double> values,
                                               std::span<const ItemPair> pairs, PairValue pair_value,
                                               Alternative alternative, const MonteCarlo& monte_carlo = {});

/// Doubled mid-ranks of the pairs' differences, tied as in `permute_by_item`, and of their outcomes.
struct PairRanks {
  std::vector<std::int64_t> differences, outcomes;
};

/// Arguments and refusals as `permute_by_item`.
PairRanks pair_ranks(std::span<const double> values, std::span<const ItemPair> pairs, PairValue pair_value);

/// Smallest p that any order of these values could give with these pairs and outcomes: when it is above the
/// level, no order can be supported. Arguments and refusals as `permute_by_item`, but at most
/// `kExactItems` items.
std::optional<double> smallest_attainable_p_by_item(std::span<const double> values,
                                                    std::span<const ItemPair> pairs, PairValue pair_value,
                                                    Alternative alternative);

/// Smallest |rho| of any order of these values that reaches a two-sided level; nothing when none does, and
/// when all differences or all outcomes are equal. Arguments and refusals likewise.
///
/// @param level  strictly between 0 and 1.
std::optional<double> smallest_significant_rho_by_item(std::span<const double> values,
                                                       std::span<const ItemPair> pairs, PairValue pair_value,
                                                       double level);

}  // namespace stats
