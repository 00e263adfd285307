#include "stats/association/bootstrap_rho.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>
#include <stdexcept>
#include <string>
#include <vector>

#include "stats/arguments.h"
#include "stats/association/ranks.h"
#include "stats/random.h"
#include "stats/resampling/percentile_interval.h"

namespace stats {
namespace {

using Weights = std::vector<std::int64_t>;

/// Numbers from 0, the same for equal ranks, rising.
std::vector<std::size_t> rank_places(const std::vector<std::int64_t>& ranks) {
  std::vector<std::int64_t> different(ranks);
  std::sort(different.begin(), different.end());
  different.erase(std::unique(different.begin(), different.end()), different.end());
  std::vector<std::size_t> places;
  for (const std::int64_t rank : ranks)
    places.push_back(static_cast<std::size_t>(std::lower_bound(different.begin(), different.end(), rank) -
                                              different.begin()));
  return places;
}

/// Spearman's rho of pairs that count several times, ties by mid-ranks.
class WeightedRho {
 public:
  WeightedRho(const std::vector<std::int64_t>& x_ranks, const std::vector<std::int64_t>& y_ranks)
      : x_(rank_places(x_ranks)), y_(rank_places(y_ranks)) {}

  std::optional<double> of(const Weights& weights) const {
    const double all = double(std::accumulate(weights.begin(), weights.end(), std::int64_t{0}));
    const auto x = distances(x_, weights, all), y = distances(y_, weights, all);
    double xx = 0, yy = 0, xy = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
      const double weight = double(weights[i]), a = x[x_[i]], b = y[y_[i]];
      xx += weight * a * a;
      yy += weight * b * b;
      xy += weight * a * b;
    }
    if (xx == 0 || yy == 0) return std::nullopt;
    return xy / std::sqrt(xx * yy);
  }

 private:
  /// Doubled mid-rank of each place less that of the middle.
  static std::vector<double> distances(const std::vector<std::size_t>& places, const Weights& weights,
                                       double all) {
    std::vector<double> counts(*std::max_element(places.begin(), places.end()) + 1);
    for (std::size_t i = 0; i < places.size(); ++i) counts[places[i]] += double(weights[i]);
    double below = 0;
    for (double& count : counts) {
      const double here = count;
      count = 2 * below + here - all;
      below += here;
    }
    return counts;
  }

  std::vector<std::size_t> x_, y_;
};

/// @param draw  puts the weights of a resample in place.
std::optional<BootstrapRho> bootstrapped(const WeightedRho& weighted, std::size_t pairs, double confidence,
                                         const MonteCarlo& monte_carlo,
                                         const std::function<void(QuickRandom&, Weights&)>& draw) {
  const auto seen = weighted.of(Weights(pairs, 1));
  if (!seen) return std::nullopt;
  QuickRandom random(monte_carlo.seed);
  std::vector<double> values;
  Weights weights(pairs);
  for (int i = 0; i < monte_carlo.draws; ++i) {
    std::fill(weights.begin(), weights.end(), 0);
    draw(random, weights);
    if (const auto one = weighted.of(weights)) values.push_back(*one);
  }
  if (values.empty()) return std::nullopt;
  const auto count = static_cast<int>(values.size());
  return BootstrapRho{*seen, percentile_interval(values, confidence), count, monte_carlo.draws - count};
}

void require_bootstrap(double confidence, const MonteCarlo& monte_carlo) {
  require_level("confidence", confidence);
  require_count("draws", monte_carlo.draws, 1, 1'000'000);
}

}  // namespace

std::optional<BootstrapRho> bootstrap_rho(std::span<const double> x, std::span<const double> y,
                                          double confidence, const MonteCarlo& monte_carlo) {
  require_count("number of x", std::ssize(x), 3, 10'000);
  require_count("number of y", std::ssize(y), std::ssize(x), std::ssize(x));
  require_finite("x", x);
  require_finite("y", y);
  require_bootstrap(confidence, monte_carlo);
  const auto pairs = static_cast<std::uint32_t>(x.size());
  return bootstrapped({doubled_midranks(x), doubled_midranks(y)}, pairs, confidence, monte_carlo,
                      [=](QuickRandom& random, Weights& weights) {
                        random.each_below(pairs, pairs, [&](std::uint32_t pair) { ++weights[pair]; });
                      });
}

std::optional<BootstrapRho> bootstrap_rho_by_item(std::span<const double> values,
                                                  std::span<const ItemPair> pairs, PairValue pair_value,
                                                  double confidence, const MonteCarlo& monte_carlo) {
  require_count("number of items", std::ssize(values), 3, 1'000);
  require_bootstrap(confidence, monte_carlo);
  const PairRanks ranks = pair_ranks(values, pairs, pair_value);
  const auto items = static_cast<std::uint32_t>(values.size());
  Weights drawn(items);
  return bootstrapped({ranks.differences, ranks.outcomes}, pairs.size(), confidence, monte_carlo,
                      [&](QuickRandom& random, Weights& weights) {
                        std::fill(drawn.begin(), drawn.end(), 0);
                        random.each_below(items, items, [&](std::uint32_t item) { ++drawn[item]; });
                        for (std::size_t i = 0; i < pairs.size(); ++i)
                          weights[i] =
                              drawn[std::size_t(pairs[i].first)] * drawn[std::size_t(pairs[i].second)];
                      });
}

}  // namespace stats
