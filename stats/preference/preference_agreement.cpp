#include "stats/preference/preference_agreement.h"

#include <algorithm>
#include <bit>
#include <boost/math/distributions/binomial.hpp>
#include <cmath>
#include <numeric>
#include <vector>

#include "stats/arguments.h"
#include "stats/random.h"

namespace stats {
namespace {

std::int64_t pairs_of(std::int64_t count) { return count * (count - 1) / 2; }

/// Agreements of a pair of items of which `wins` of `listeners` prefer the first.
std::int64_t agreements_of(std::int64_t wins, std::int64_t listeners) {
  return pairs_of(wins) + pairs_of(listeners - wins);
}

double steps_to_count(std::int64_t pairs, std::int64_t listeners) {
  return double(pairs) * double(pairs) / 2 * double(listeners * listeners) / 4 * double(listeners / 2 + 1);
}

/// P(sum of agreements over the pairs >= seen), by adding pair after pair; agreements above the fewest possible.
double counted_agreements_p(std::int64_t pairs, std::int64_t listeners, std::int64_t seen) {
  const std::int64_t fewest = agreements_of(listeners / 2, listeners);
  const auto range = static_cast<std::size_t>(pairs_of(listeners) - fewest);
  const boost::math::binomial wins_by_chance(double(listeners), 0.5);
  std::vector<double> one(range + 1);
  for (int wins = 0; wins <= listeners; ++wins)
    one[static_cast<std::size_t>(agreements_of(wins, listeners) - fewest)] +=
        pdf(wins_by_chance, double(wins));
  std::vector<double> sum{1};
  for (std::int64_t pair = 0; pair < pairs; ++pair) {
    std::vector<double> next(sum.size() + range);
    for (std::size_t value = 0; value < one.size(); ++value)
      if (one[value] > 0)
        for (std::size_t i = 0; i < sum.size(); ++i) next[i + value] += sum[i] * one[value];
    sum = std::move(next);
  }
  return std::min(1.0, std::accumulate(sum.begin() + (seen - pairs * fewest), sum.end(), 0.0));
}

std::int64_t coin_wins(Random& random, std::int64_t listeners) {
  std::int64_t wins = 0;
  for (; listeners > 0; listeners -= 64) {
    const std::uint64_t word = random.word();
    wins += std::popcount(listeners >= 64 ? word : word & ((std::uint64_t{1} << listeners) - 1));
  }
  return wins;
}

PermutationP drawn_agreements_p(std::int64_t pairs, std::int64_t listeners, std::int64_t seen,
                                const MonteCarlo& monte_carlo) {
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    std::int64_t agreements = 0;
    for (std::int64_t pair = 0; pair < pairs; ++pair)
      agreements += agreements_of(coin_wins(random, listeners), listeners);
    reaching += agreements >= seen;
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

}  // namespace

PreferenceAgreement preference_agreement(const PreferenceTable& table, const MonteCarlo& monte_carlo) {
  const std::int64_t listeners = comparisons_of_each_pair(table, 2), pairs = pairs_of(std::ssize(table));
  require_count("number of listeners", listeners, 2, 1'000);
  require_draws(monte_carlo);
  std::int64_t agreements = 0;
  for (std::size_t i = 0; i < table.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) agreements += agreements_of(table[i][j], listeners);

  const double m = double(listeners), all = double(pairs * pairs_of(listeners));
  PreferenceAgreement found{agreements,
                            2 * double(agreements) / all - 1,
                            listeners % 2 == 0 ? -1 / (m - 1) : -1 / m,
                            steps_to_count(pairs, listeners) < 1e9
                                ? exact_p(counted_agreements_p(pairs, listeners, agreements))
                                : drawn_agreements_p(pairs, listeners, agreements, monte_carlo),
                            std::nullopt,
                            std::nullopt};
  if (listeners > 2) {
    found.chi_square = 4 / (m - 2) * (double(agreements) - all * (m - 3) / (m - 2) / 2);
    found.degrees_of_freedom = double(pairs) * m * (m - 1) / ((m - 2) * (m - 2));
  }
  return found;
}

}  // namespace stats
