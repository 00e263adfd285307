#pragma once

#include <span>
#include <vector>

#include "stats/worth/pair_count.h"

namespace stats {

/// Whether the worths of a paired comparison have finite estimates.
enum class Estimability {
  finite,
  disconnected,  ///< items fall into groups that were never compared with each other
  separated      ///< some differences, ties or the order effect would have to be infinite
};

struct EstimableWorths {
  Estimability estimability;
  /// A number from 0 for each item. Disconnected: the groups compared among themselves. Separated: items between which
  /// preferences went round in both directions, or through ties, have the same number.
  std::vector<int> groups;
};

/// Exact, by the directions in which the likelihood never falls: without an order effect and without ties these are the
/// items no other of a group was ever preferred to; ties and the order effect add those in which all preferences go beyond
/// the ties, and those that the order alone explains. Found as solutions of difference constraints (no negative circle),
/// the order effect as their one parameter.
///
/// @param items, counts  as `require_pair_counts`.
/// @param order_effect    whether being presented first is to have an effect.
/// @param ties_as_halves  whether a tie is half a preference for either, and no model of ties is fitted.
/// @throws std::domain_error  likewise.
/// Example: 0 preferred to 1 twice of 2, 1 to 2 once of 3: separated, 0 alone.
/// Source: L. R. Ford, Am. Math. Mon. 64 (1957) 28, for the case without ties and order.
EstimableWorths estimable_worths(int items, std::span<const PairCount> counts, bool order_effect,
                                 bool ties_as_halves = false);

}  // namespace stats
