#pragma once

#include <optional>
#include <vector>

namespace stats {

/// Distribution of a total that is a whole number from 0: place s holds P(total = s). What
/// `poisson_binomial`, `redraw_layouts`, `redraw_fixed` and `beta_binomial` give; the functions here read the
/// tails from it. Tails are summed from the far end inwards, so that small probabilities are added first.
using TotalDistribution = std::vector<double>;

/// Distribution of the sum of two independent totals; {} is refused.
TotalDistribution convolved(const TotalDistribution& one, const TotalDistribution& other);

/// Arguments of the functions below
/// @param distribution  one place or more.
/// @param observed      the total seen, 0 to the largest that has a place; it may be one of probability 0.
/// @throws std::domain_error  naming the argument, its value and its range.

/// P(total >= observed), at most 1.
double total_at_least(const TotalDistribution& distribution, int observed);

/// P(total <= observed), at most 1.
double total_at_most(const TotalDistribution& distribution, int observed);

/// Two-sided p by distance: P(|total - mean| >= |observed - mean|), where distances alike to 1 part in 10^9
/// of the largest total count as equal. The rule of `redraw_two_sided`.
double total_two_sided_by_distance(const TotalDistribution& distribution, int observed);

/// Two-sided p by the method of small p-values: the sum of the probabilities of all totals that are no more
/// probable than the one seen, where probabilities alike to 1 part in 10^7 count as equal. The rule of
/// `two_sided`, of R's binom.test and of R's fisher.test.
double total_two_sided_by_probability(const TotalDistribution& distribution, int observed);

/// Smallest total of non-zero probability with P(total >= s) <= level; nothing when even the largest has
/// more.
/// @param level  strictly between 0 and 1. A tail equal to the level counts (see stats/level.h).
std::optional<int> total_minimum(const TotalDistribution& distribution, double level);

}  // namespace stats
