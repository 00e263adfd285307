#include "stats/redraw/redraw_fixed.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <vector>

#include "stats/arguments.h"

namespace stats {
namespace {

struct SplitSums {
  std::size_t least = 0;  ///< of min(one, other), which every trial adds in any case
  std::size_t gaps = 0;   ///< of |one - other|
};

SplitSums checked_split_sums(std::span<const Split> splits, int ones) {
  constexpr int most = 1'000'000;
  require_count("number of trials", std::ssize(splits), 0, most);
  require_count("ones", ones, 0, std::ssize(splits));
  SplitSums sums;
  std::int64_t all = 0;
  for (const auto [one, other] : splits) {
    require_count("one", one, 0, most);
    require_count("other", other, 0, most);
    all += std::int64_t{one} + other;
    require_count("sum of all counts", all, 0, most);
    sums.least += static_cast<std::size_t>(std::min(one, other));
    sums.gaps += static_cast<std::size_t>(std::abs(one - other));
  }
  require_between("steps of the work", double(splits.size()) * (ones + 1.0) * double(sums.gaps + 1), 0, 2e9);
  return sums;
}

/// Adds the first `count` places of `from`, weighted, `up` places higher.
void add_moved(TotalDistribution& to, const TotalDistribution& from, std::size_t count, std::size_t up,
               double weight) {
  for (std::size_t total = 0; total < count; ++total) to[total + up] += weight * from[total];
}

}  // namespace

TotalDistribution redraw_fixed(std::span<const Split> splits, int ones) {
  const SplitSums sums = checked_split_sums(splits, ones);
  // [ones used so far][total above the least]
  std::vector<TotalDistribution> at(static_cast<std::size_t>(ones) + 1, TotalDistribution(sums.gaps + 1));
  at[0][0] = 1;
  TotalDistribution next(sums.gaps + 1);
  std::size_t reached = 1;  // places that can be above 0
  int done = 0;
  for (const auto [one, other] : splits) {
    const int left = static_cast<int>(splits.size()) - done++;
    const auto one_adds = static_cast<std::size_t>(std::max(0, one - other));
    const auto other_adds = static_cast<std::size_t>(std::max(0, other - one));
    // Only as many used as there can be, and as many as leave no more than there are trials for.
    for (int used = std::min(ones, done); used >= std::max(0, ones - left + 1); --used) {
      const auto row = static_cast<std::size_t>(used);
      std::fill(next.begin(), next.end(), 0.0);
      add_moved(next, at[row], reached, other_adds, double(left - (ones - used)) / left);
      if (used > 0) add_moved(next, at[row - 1], reached, one_adds, double(ones - used + 1) / left);
      at[row].swap(next);
    }
    reached += one_adds + other_adds;
  }
  TotalDistribution distribution(sums.least);
  distribution.insert(distribution.end(), at.back().begin(), at.back().end());
  return distribution;
}

}  // namespace stats
