#pragma once

#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "stats/permutation.h"

namespace stats {

/// What comes of giving the levels of items to them in other orders within their blocks.
struct BlockPermutation {
  PermutationP test;
  double arrangements;
  std::optional<double> smallest_p;  ///< nothing where arrangements are drawn
};

/// Every different arrangement of `levels` within `blocks`, or drawn ones beyond `most` of them; how many have a statistic that
/// counts against the null as much as that of the levels as given.
///
/// @param blocks     from 0, one for each item.
/// @param tolerance  within which statistics count as equal.
BlockPermutation permute_within_blocks(std::vector<int> levels, std::span<const int> blocks,
                                       const std::function<double(std::span<const int>)>& statistic,
                                       Alternative alternative, double tolerance, double most,
                                       const MonteCarlo& monte_carlo);

}  // namespace stats
