#include "stats/association/pairing_sums.h"

#include <algorithm>
#include <bit>
#include <numeric>

#include "stats/arguments.h"

namespace stats {
namespace {

using Counts = std::vector<double>;

/// The values as steps of `unit` above the smallest, which keeps the sums short.
struct Scores {
  std::int64_t unit;
  std::vector<std::int64_t> steps;
  std::int64_t sum() const { return std::accumulate(steps.begin(), steps.end(), std::int64_t{0}); }
};

Scores scores_of(std::span<const std::int64_t> values) {
  const std::int64_t lowest = *std::min_element(values.begin(), values.end());
  std::int64_t unit = 0;
  for (std::int64_t value : values) unit = std::gcd(unit, value - lowest);
  if (unit == 0) unit = 1;
  Scores scores{unit, {}};
  for (std::int64_t value : values) scores.steps.push_back((value - lowest) / unit);
  return scores;
}

void add_moved(Counts& to, const Counts& from, std::int64_t by) {
  const auto shift = static_cast<std::size_t>(by);
  if (to.size() < from.size() + shift) to.resize(from.size() + shift);
  for (std::size_t sum = 0; sum < from.size(); ++sum) to[sum + shift] += from[sum];
}

/// Counts of pairings by sum of products. The x are taken one after the other; all that matters of the past
/// is which y are used (one bit each), so the sets of one size follow from the sets one smaller.
Counts pairing_counts(std::span<const std::int64_t> x, std::span<const std::int64_t> y) {
  const unsigned all = (1u << x.size()) - 1;
  std::vector<Counts> counts_of_set(all + 1);
  counts_of_set[0] = {1};
  for (std::size_t used = 0; used < x.size(); ++used)
    for (unsigned set = 0; set < all; ++set) {
      if (std::popcount(set) != static_cast<int>(used)) continue;
      const Counts counts = std::move(counts_of_set[set]);
      for (std::size_t i = 0; i < y.size(); ++i) {
        const unsigned bit = 1u << i;
        if (!(set & bit)) add_moved(counts_of_set[set | bit], counts, x[used] * y[i]);
      }
    }
  return counts_of_set[all];
}

}  // namespace

PairingSums::PairingSums(std::span<const std::int64_t> x, std::span<const std::int64_t> y) {
  require_count("number of x", std::ssize(x), 1, kExactRanks);
  require_count("number of y", std::ssize(y), std::ssize(x), std::ssize(x));
  const Scores x_scores = scores_of(x);
  const Scores y_scores = scores_of(y);
  const Counts counts = pairing_counts(x_scores.steps, y_scores.steps);
  const std::int64_t mean = x_scores.sum() * y_scores.sum();
  for (std::int64_t sum = 0; sum < std::ssize(counts); ++sum)
    if (const double pairings = counts[static_cast<std::size_t>(sum)]; pairings > 0)
      points_.push_back({(std::ssize(x) * sum - mean) * x_scores.unit * y_scores.unit, pairings});
}

double PairingSums::share(std::int64_t covariance, Alternative alternative) const {
  double all = 0;
  double reaching = 0;
  for (const auto& [value, pairings] : points_) {
    all += pairings;
    if (counts_against(value, covariance, alternative)) reaching += pairings;
  }
  return reaching / all;
}

}  // namespace stats
