#include "stats/association/kendall.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

#include "stats/arguments.h"
#include "stats/association/ranks.h"
#include "stats/association/score_distribution.h"
#include "stats/random.h"

namespace stats {
namespace {

using DoubledRanks = std::vector<std::int64_t>;

std::int64_t score_of(const DoubledRanks& x, const DoubledRanks& y) {
  std::int64_t score = 0;
  for (std::size_t i = 0; i < x.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      score += ((x[i] > x[j]) - (x[i] < x[j])) * ((y[i] > y[j]) - (y[i] < y[j]));
  return score;
}

/// How many ranks are alike, for each different one in rising order.
std::vector<int> groups_of(DoubledRanks ranks) {
  std::sort(ranks.begin(), ranks.end());
  std::vector<int> groups;
  for (std::size_t i = 0; i < ranks.size(); ++i) {
    if (i == 0 || ranks[i] != ranks[i - 1]) groups.push_back(0);
    ++groups.back();
  }
  return groups;
}

double untied_pairs_of(const std::vector<int>& groups) {
  const double n = double(std::accumulate(groups.begin(), groups.end(), 0));
  double pairs = n * (n - 1) / 2;
  for (const double group : groups) pairs -= group * (group - 1) / 2;
  return pairs;
}

double counted_score_p(const ScoreDistribution& distribution, std::int64_t seen, Alternative alternative) {
  double p = 0;
  for (std::size_t i = 0; i < distribution.probability.size(); ++i)
    if (counts_against(static_cast<std::int64_t>(i) - distribution.most, seen, alternative))
      p += distribution.probability[i];
  return std::min(1.0, p);
}

PermutationP drawn_score_p(const DoubledRanks& x, DoubledRanks y, std::int64_t seen, Alternative alternative,
                           const MonteCarlo& monte_carlo) {
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    random.shuffle(std::span(y));
    reaching += counts_against(score_of(x, y), seen, alternative);
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

}  // namespace

std::optional<KendallCorrelation> kendall(std::span<const double> x, std::span<const double> y,
                                          Alternative alternative, const MonteCarlo& monte_carlo) {
  require_count("number of x", std::ssize(x), 2, 10'000);
  require_count("number of y", std::ssize(y), std::ssize(x), std::ssize(x));
  require_finite("x", x);
  require_finite("y", y);
  require_draws(monte_carlo);
  const DoubledRanks x_ranks = doubled_midranks(x), y_ranks = doubled_midranks(y);
  const auto x_groups = groups_of(x_ranks), y_groups = groups_of(y_ranks);
  if (x_groups.size() == 1 || y_groups.size() == 1) return std::nullopt;
  const std::int64_t score = score_of(x_ranks, y_ranks);
  const auto distribution = score_distribution(x_groups, y_groups);
  return KendallCorrelation{score,
                            double(score) / std::sqrt(untied_pairs_of(x_groups) * untied_pairs_of(y_groups)),
                            distribution ? exact_p(counted_score_p(*distribution, score, alternative))
                                         : drawn_score_p(x_ranks, y_ranks, score, alternative, monte_carlo)};
}

}  // namespace stats
