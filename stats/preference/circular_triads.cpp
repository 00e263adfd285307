#include "stats/preference/circular_triads.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "stats/arguments.h"
#include "stats/random.h"

namespace stats {
namespace {

/// How many items have been preferred 0, 1, 2, ... times: four bits for each, the lowest for 0. Up to 15 items.
using ScoreCounts = std::uint64_t;

int items_with(ScoreCounts counts, int score) { return static_cast<int>(counts >> 4 * score & 15); }
ScoreCounts one_with(int score) { return ScoreCounts{1} << 4 * score; }

std::int64_t pairs_won(std::int64_t score) { return score * (score - 1) / 2; }

/// All triads but those in which one item is preferred to both others.
std::int64_t triads_of(const std::vector<std::int64_t>& scores) {
  const auto n = std::ssize(scores);
  std::int64_t triads = n * (n - 1) * (n - 2) / 6;
  for (const std::int64_t score : scores) triads -= pairs_won(score);
  return triads;
}

double ways_to_choose(int chosen, int from) {
  double ways = 1;
  for (int i = 1; i <= chosen; ++i) ways = ways * (from - chosen + i) / i;
  return ways;
}

/// Compares one more item with all of `before`: of those with each score, from `score` on, some win. Calls `visit(scores
/// after, ways)` for every choice of how many.
/// @param after  `before` with the winners among lower scores moved up.
/// @param own    how many of those the new item was preferred to.
template <typename Visit>
void add_item(ScoreCounts before, int score, ScoreCounts after, int own, double ways, const Visit& visit) {
  if (before >> 4 * score == 0) return visit(after + one_with(own), ways);
  const int here = items_with(before, score);
  for (int win = 0; win <= here; ++win, after += one_with(score + 1) - one_with(score))
    add_item(before, score + 1, after, own + here - win, ways * ways_to_choose(win, here), visit);
}

PermutationP drawn_triads_p(int items, std::int64_t seen, const MonteCarlo& monte_carlo) {
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    std::vector<std::int64_t> scores(static_cast<std::size_t>(items));
    std::uint64_t bits = 0;
    int left = 0;
    for (std::size_t i = 0; i < scores.size(); ++i)
      for (std::size_t j = 0; j < i; ++j, bits >>= 1, --left) {
        if (left == 0) bits = random.word(), left = 64;
        ++scores[(bits & 1) ? i : j];
      }
    reaching += triads_of(scores) <= seen;
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

std::int64_t most_triads(std::int64_t n) { return (n * n * n - (n % 2 == 0 ? 4 : 1) * n) / 24; }

}  // namespace

std::vector<double> circular_triads_by_chance(int items) {
  require_count("number of items", items, 3, kExactTournament);
  std::map<ScoreCounts, double> states{{one_with(0), 1.0}};
  for (int held = 1; held < items; ++held) {
    std::map<ScoreCounts, double> next;
    for (const auto& [before, probability] : states)
      add_item(before, 0, before, 0, std::ldexp(probability, -held),
               [&next](ScoreCounts after, double ways) { next[after] += ways; });
    states = std::move(next);
  }
  std::vector<double> by_triads(static_cast<std::size_t>(most_triads(items)) + 1);
  for (const auto& [counts, probability] : states) {
    std::int64_t triads = std::int64_t{items} * (items - 1) * (items - 2) / 6;
    for (int score = 0; score < items; ++score) triads -= items_with(counts, score) * pairs_won(score);
    by_triads[static_cast<std::size_t>(triads)] += probability;
  }
  return by_triads;
}

CircularTriads circular_triads(const PreferenceTable& table, const MonteCarlo& monte_carlo) {
  require_count("comparisons of each pair", comparisons_of_each_pair(table, 3), 1, 1);
  require_draws(monte_carlo);
  std::vector<std::int64_t> scores;
  for (const auto& row : table) scores.push_back(std::accumulate(row.begin(), row.end(), 0));
  const std::int64_t n = std::ssize(table), triads = triads_of(scores), most = most_triads(n);
  const auto p = [&] {
    if (n > kExactTournament) return drawn_triads_p(static_cast<int>(n), triads, monte_carlo);
    const auto by_chance = circular_triads_by_chance(static_cast<int>(n));
    return exact_p(std::min(1.0, std::accumulate(by_chance.begin(), by_chance.begin() + triads + 1, 0.0)));
  };
  return {triads, most, double(n * (n - 1) * (n - 2)) / 24, 1 - double(triads) / double(most), p()};
}

}  // namespace stats
