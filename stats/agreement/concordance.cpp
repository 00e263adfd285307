#include "stats/agreement/concordance.h"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <map>

#include "stats/arguments.h"
#include "stats/association/ranks.h"
#include "stats/random.h"

namespace stats {
namespace {

/// Everything is in doubled mid-ranks, so that it is whole.
using DoubledRanks = std::vector<std::int64_t>;

/// Four times S: the mean of the doubled rank sums is raters (items + 1).
std::int64_t fourfold_squares(const DoubledRanks& sums, std::int64_t raters) {
  const std::int64_t mean = raters * (std::ssize(sums) + 1);
  std::int64_t squares = 0;
  for (const std::int64_t sum : sums) squares += (sum - mean) * (sum - mean);
  return squares;
}

void add_ranks(DoubledRanks& sums, const DoubledRanks& ranks) {
  for (std::size_t item = 0; item < sums.size(); ++item) sums[item] += ranks[item];
}

/// Sum of t^3 - t over the rater's groups of t tied items.
std::int64_t tie_term(DoubledRanks ranks) {
  std::sort(ranks.begin(), ranks.end());
  std::int64_t term = 0;
  for (auto first = ranks.begin(); first != ranks.end();) {
    const auto end = std::upper_bound(first, ranks.end(), *first);
    const std::int64_t tied = end - first;
    term += tied * tied * tied - tied;
    first = end;
  }
  return term;
}

/// Calls `visit` with every different order of the ranks.
template <typename Visit>
void for_each_ranking(DoubledRanks ranks, const Visit& visit) {
  std::sort(ranks.begin(), ranks.end());
  do visit(ranks);
  while (std::next_permutation(ranks.begin(), ranks.end()));
}

double different_rankings(const DoubledRanks& ranks) {
  std::map<std::int64_t, double> seen;
  double orders = 1;
  for (std::size_t i = 0; i < ranks.size(); ++i) orders *= double(i + 1) / ++seen[ranks[i]];
  return orders;
}

/// Share of all arrangements with S as large or larger; nothing where that takes too many steps. Rater after
/// rater, over the rank sums so far in ascending order: which item has which no longer matters.
std::optional<double> share_of_rankings(std::span<const DoubledRanks> raters, std::int64_t seen) {
  DoubledRanks sorted = raters.front();
  std::sort(sorted.begin(), sorted.end());
  std::map<DoubledRanks, double> ways{{sorted, 1.0}};
  double steps = 0;
  for (const DoubledRanks& ranks : raters.subspan(1, raters.size() - 2)) {
    steps += 10 * double(ways.size()) * different_rankings(ranks);  // each also looks up its rank sums
    if (steps > kMostRankingSteps) return std::nullopt;
    std::map<DoubledRanks, double> longer;
    for (const auto& [sums, count] : ways)
      for_each_ranking(ranks, [&](DoubledRanks next) {
        add_ranks(next, sums);
        std::sort(next.begin(), next.end());
        longer[std::move(next)] += count;
      });
    ways = std::move(longer);
  }
  steps += double(ways.size()) * different_rankings(raters.back());
  if (steps > kMostRankingSteps) return std::nullopt;
  double reaching = 0, all = 0;
  for (const auto& [sums, count] : ways)
    for_each_ranking(raters.back(), [&](DoubledRanks next) {
      add_ranks(next, sums);
      all += count;
      if (fourfold_squares(next, std::ssize(raters)) >= seen) reaching += count;
    });
  return reaching / all;
}

PermutationP rankings_p(std::vector<DoubledRanks> raters, std::int64_t seen, const MonteCarlo& monte_carlo) {
  if (const auto share = share_of_rankings(raters, seen)) return exact_p(*share);
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  DoubledRanks sums;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    sums = raters.front();
    for (DoubledRanks& ranks : std::span(raters).subspan(1)) {
      random.shuffle(std::span(ranks));
      add_ranks(sums, ranks);
    }
    reaching += fourfold_squares(sums, std::ssize(raters)) >= seen;
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

std::vector<DoubledRanks> checked_ranks(std::span<const std::vector<double>> raters) {
  require_count("number of raters", std::ssize(raters), 2, 1'000);
  const auto items = std::ssize(raters.front());
  require_count("number of items", items, 2, 1'000);
  require_count("raters times items", std::ssize(raters) * items, 4, 100'000);
  std::vector<DoubledRanks> ranks;
  for (const auto& rater : raters) {
    require_count("values of a rater", std::ssize(rater), items, items);
    ranks.push_back(doubled_midranks(rater));
  }
  return ranks;
}

}  // namespace

std::optional<Concordance> concordance(std::span<const std::vector<double>> raters,
                                       const MonteCarlo& monte_carlo) {
  require_draws(monte_carlo);
  const auto ranks = checked_ranks(raters);
  const auto m = std::ssize(raters), n = std::ssize(raters.front());
  DoubledRanks sums(static_cast<std::size_t>(n));
  std::int64_t ties = 0;
  for (const DoubledRanks& rater : ranks) {
    add_ranks(sums, rater);
    ties += tie_term(rater);
  }
  const std::int64_t largest = m * (m * (n * n * n - n) - ties);
  if (m * (n * n * n - n) == ties) return std::nullopt;
  const std::int64_t squares = fourfold_squares(sums, m);
  Concordance result{};
  result.w = 3 * double(squares) / double(largest);
  result.sum_of_squares = double(squares) / 4;
  result.freedom = static_cast<int>(n - 1);
  result.chi_square = double(m) * result.freedom * result.w;
  result.chi_square_p = cdf(complement(boost::math::chi_squared(result.freedom), result.chi_square));
  result.permutation = rankings_p(ranks, squares, monte_carlo);
  for (const std::int64_t sum : sums) result.rank_sums.push_back(double(sum) / 2);
  return result;
}

}  // namespace stats
