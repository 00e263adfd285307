#include "stats/factors/block_permutation.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "stats/random.h"

namespace stats {
namespace {

/// Items of each block.
std::vector<std::vector<std::size_t>> items_of(std::span<const int> blocks) {
  std::map<int, std::vector<std::size_t>> items;
  for (std::size_t i = 0; i < blocks.size(); ++i) items[blocks[i]].push_back(i);
  std::vector<std::vector<std::size_t>> list;
  for (auto& [block, of_block] : items) list.push_back(std::move(of_block));
  return list;
}

/// Different orders of some levels: n! / prod n_level!.
double orders_of(const std::vector<int>& levels) {
  double log = std::lgamma(double(levels.size()) + 1);
  std::map<int, int> counts;
  for (const int level : levels) ++counts[level];
  for (const auto& [level, count] : counts) log -= std::lgamma(count + 1.0);
  return std::round(std::exp(log));
}

}  // namespace

BlockPermutation permute_within_blocks(std::vector<int> levels, std::span<const int> blocks,
                                       const std::function<double(std::span<const int>)>& statistic,
                                       Alternative alternative, double tolerance, double most,
                                       const MonteCarlo& monte_carlo) {
  const auto items = items_of(blocks);
  const double seen = statistic(levels);
  std::vector<std::vector<int>> orders;  // of each block
  double arrangements = 1;
  for (const auto& block : items) {
    auto& order = orders.emplace_back();
    for (const std::size_t item : block) order.push_back(levels[item]);
    arrangements *= orders_of(order);
  }
  const auto put = [&](std::size_t block) {
    for (std::size_t i = 0; i < items[block].size(); ++i) levels[items[block][i]] = orders[block][i];
  };
  if (arrangements > most) {
    Random random(monte_carlo.seed);
    std::int64_t reaching = 0;
    for (int draw = 0; draw < monte_carlo.draws; ++draw) {
      for (std::size_t block = 0; block < items.size(); ++block) {
        random.shuffle(std::span(orders[block]));
        put(block);
      }
      reaching += counts_against(statistic(levels), seen, alternative, tolerance);
    }
    return {monte_carlo_p(reaching, monte_carlo.draws), arrangements, std::nullopt};
  }
  std::vector<double> all;
  for (std::size_t block = 0; block < items.size(); ++block) {
    std::sort(orders[block].begin(), orders[block].end());
    put(block);
  }
  for (std::size_t block = 0; block < items.size();) {
    if (block == 0) all.push_back(statistic(levels));
    // The next order of the first block that has one; those before start again.
    const bool moved = std::next_permutation(orders[block].begin(), orders[block].end());
    put(block);
    block = moved ? 0 : block + 1;
  }
  const auto share_against = [&](double value) {
    return double(std::count_if(
               all.begin(), all.end(),
               [&](double one) { return counts_against(one, value, alternative, tolerance); })) /
           double(all.size());
  };
  const auto [lowest, highest] = std::minmax_element(all.begin(), all.end());
  const bool downwards =
      alternative == Alternative::less || (alternative == Alternative::two_sided && -*lowest > *highest);
  return {exact_p(share_against(seen)), arrangements, share_against(downwards ? *lowest : *highest)};
}

}  // namespace stats
