#pragma once

#include <optional>
#include <span>
#include <vector>

#include "stats/permutation.h"

namespace stats {

/// A row for each listener: what each item was given. Ranks are taken within the row, ties by mid-ranks.
using RepeatedMeasures = std::span<const std::vector<double>>;

/// Friedman's test of whether items differ.
struct Friedman {
  std::vector<double> rank_sums;  ///< of each item
  double chi_square;              ///< corrected for ties; k - 1 degrees of freedom for many listeners
  double concordance;             ///< Kendall's W: 1 if all listeners rank alike
  PermutationP test;              ///< P(chi_square this large or larger)
};

/// The null hypothesis: each listener's answers are given to the items in any order, each equally likely. Counted by sets of
/// rank sums as long as that takes less than 10^7 steps (3 items and 50 listeners, 4 and 10, 5 and 4); beyond, orders are
/// drawn.
///
/// @param measures  1 to 1,000 listeners, each with the same number of items, 2 to 100; all finite.
/// @return  nothing when every listener gave all items the same.
/// @throws std::domain_error  naming the argument, its value and its range; so does `page`.
/// Example: 3 listeners who rank 3 items alike: chi-square 6, p 6/216 = 1/36.
/// Source: M. Friedman, J. Am. Stat. Assoc. 32 (1937) 675.
std::optional<Friedman> friedman(RepeatedMeasures measures, const MonteCarlo& monte_carlo = {});

/// Page's test of whether items rise in the order in which they stand, which must be known before the answers.
struct PageTrend {
  double statistic;  ///< L: the sum of item places (from 1) times rank sums
  double expected;   ///< under the null: n k (k + 1)^2 / 4
  PermutationP test;
};

/// The same null hypothesis. Exact as long as counting takes less than 10^8 steps (8 items and 30 listeners); beyond, orders
/// are drawn.
///
/// @param measures  as `friedman`.
/// @return  likewise.
/// Example: 3 listeners who rank 3 items in the order foreseen: L 42, p 1/216.
/// Source: E. B. Page, J. Am. Stat. Assoc. 58 (1963) 216.
std::optional<PageTrend> page(RepeatedMeasures measures, Alternative alternative = Alternative::greater,
                              const MonteCarlo& monte_carlo = {});

}  // namespace stats
