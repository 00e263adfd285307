#include "stats/association/kendall.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

#include "stats/arguments.h"
#include "stats/association/ranks.h"
#include "stats/association/score_distribution.h"
#include "stats/association/spearman.h"
#include "stats/random.h"

namespace stats {
namespace {

using DoubledRanks = std::vector<std::int64_t>;

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

/// The ranks numbered from 0, alike ones the same, in an order of places in which x rises.
std::vector<std::size_t> numbered(const DoubledRanks& x, const DoubledRanks& y) {
  std::vector<std::size_t> places(x.size());
  std::iota(places.begin(), places.end(), std::size_t{0});
  std::sort(places.begin(), places.end(), [&](std::size_t i, std::size_t j) { return x[i] < x[j]; });
  DoubledRanks different(y);
  std::sort(different.begin(), different.end());
  different.erase(std::unique(different.begin(), different.end()), different.end());
  std::vector<std::size_t> numbers;
  for (const std::size_t place : places)
    numbers.push_back(static_cast<std::size_t>(
        std::lower_bound(different.begin(), different.end(), y[place]) - different.begin()));
  return numbers;
}

/// Counts of numbers, of which those below one are summed in the logarithm of their kinds.
/// Source: P. M. Fenwick, Softw. Pract. Exper. 24 (1994) 327 (from memory).
class RunningCounts {
 public:
  explicit RunningCounts(std::size_t kinds) : sums_(kinds + 1) {}

  void add(std::size_t number) {
    for (std::size_t i = number + 1; i < sums_.size(); i += i & (~i + 1)) ++sums_[i];
  }
  std::int64_t below(std::size_t number) const {
    std::int64_t sum = 0;
    for (std::size_t i = number; i > 0; i -= i & (~i + 1)) sum += sums_[i];
    return sum;
  }

 private:
  std::vector<std::int64_t> sums_;
};

/// @param y  numbered, in an order in which x rises.
std::int64_t score_of(const std::vector<int>& x_groups, const std::vector<std::size_t>& y,
                      std::size_t kinds) {
  RunningCounts counts(kinds);
  std::int64_t score = 0;
  std::size_t from = 0;
  for (const int group : x_groups) {
    const std::size_t to = from + static_cast<std::size_t>(group);
    for (std::size_t i = from; i < to; ++i)
      score += counts.below(y[i]) - (static_cast<std::int64_t>(from) - counts.below(y[i] + 1));
    for (; from < to; ++from) counts.add(y[from]);
  }
  return score;
}

double counted_score_p(const ScoreDistribution& distribution, std::int64_t seen, Alternative alternative) {
  double p = 0;
  for (std::size_t i = 0; i < distribution.probability.size(); ++i)
    if (counts_against(static_cast<std::int64_t>(i) - distribution.most, seen, alternative))
      p += distribution.probability[i];
  return std::min(1.0, p);
}

PermutationP drawn_score_p(const std::vector<int>& x_groups, std::vector<std::size_t> y, std::size_t kinds,
                           std::int64_t seen, Alternative alternative, const MonteCarlo& monte_carlo) {
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    random.shuffle(std::span(y));
    reaching += counts_against(score_of(x_groups, y, kinds), seen, alternative);
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

void require_kendall_pairs(std::span<const double> x, std::span<const double> y) {
  require_count("number of x", std::ssize(x), 2, 2'000);
  require_count("number of y", std::ssize(y), std::ssize(x), std::ssize(x));
  require_finite("x", x);
  require_finite("y", y);
}

}  // namespace

std::optional<KendallCorrelation> kendall(std::span<const double> x, std::span<const double> y,
                                          Alternative alternative, const MonteCarlo& monte_carlo) {
  require_kendall_pairs(x, y);
  require_draws(monte_carlo);
  const DoubledRanks x_ranks = doubled_midranks(x), y_ranks = doubled_midranks(y);
  const auto x_groups = groups_of(x_ranks), y_groups = groups_of(y_ranks);
  if (x_groups.size() == 1 || y_groups.size() == 1) return std::nullopt;
  const auto y_numbers = numbered(x_ranks, y_ranks);
  const std::int64_t score = score_of(x_groups, y_numbers, y_groups.size());
  const auto distribution = score_distribution(x_groups, y_groups);
  return KendallCorrelation{
      score, double(score) / std::sqrt(double(untied_pairs(x_groups)) * double(untied_pairs(y_groups))),
      distribution ? exact_p(counted_score_p(*distribution, score, alternative))
                   : drawn_score_p(x_groups, y_numbers, y_groups.size(), score, alternative, monte_carlo)};
}

std::optional<double> smallest_attainable_kendall_p(std::span<const double> x, std::span<const double> y,
                                                    Alternative alternative) {
  require_kendall_pairs(x, y);
  const auto highest_p = smallest_attainable_p(x, y, Alternative::greater),
             lowest_p = smallest_attainable_p(x, y, Alternative::less);
  if (alternative != Alternative::two_sided || !highest_p)
    return alternative == Alternative::less ? lowest_p : highest_p;
  DoubledRanks x_ranks = doubled_midranks(x), y_ranks = doubled_midranks(y);
  std::sort(x_ranks.begin(), x_ranks.end());
  std::sort(y_ranks.begin(), y_ranks.end());
  const auto score = [&] {
    return score_of(groups_of(x_ranks), numbered(x_ranks, y_ranks), groups_of(y_ranks).size());
  };
  const std::int64_t highest = score();
  std::reverse(y_ranks.begin(), y_ranks.end());
  const std::int64_t lowest = -score();
  return highest == lowest ? *highest_p + *lowest_p : highest > lowest ? highest_p : lowest_p;
}

}  // namespace stats
