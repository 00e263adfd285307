#include "stats/worth/goodness_of_fit.h"

#include <boost/math/distributions/chi_squared.hpp>
#include <stdexcept>
#include <vector>

#include "stats/random.h"
#include "stats/worth/pair_likelihood.h"
#include "stats/worth/worth_likelihood.h"

namespace stats {
namespace {

constexpr std::int64_t kMostSimulatedAnswers = 100'000;

std::int64_t answers_to(const PairCount& count) {
  return count.first_preferred + count.ties + count.second_preferred;
}

/// As many answers to each row, drawn by its shares.
std::vector<PairCount> answers_drawn(std::span<const PairCount> counts, const std::vector<PairShares>& shares,
                                     Random& random) {
  std::vector<PairCount> drawn;
  for (std::size_t row = 0; row < counts.size(); ++row) {
    PairCount& count = drawn.emplace_back(counts[row].first, counts[row].second, 0, 0, 0);
    for (std::int64_t answer = answers_to(counts[row]); answer > 0; --answer) {
      const double place = double(random.word() >> 11) * 0x1p-53;
      ++(place < shares[row].first                     ? count.first_preferred
         : place < shares[row].first + shares[row].tie ? count.ties
                                                       : count.second_preferred);
    }
  }
  return drawn;
}

double deviance_of(std::span<const PairCount> counts, const WorthLikelihood& likelihood) {
  double best = 0;
  for (const PairCount& count : counts) best += saturated(count, likelihood.tie() != kNoPlace);
  return 2 * (best - likelihood.log_likelihood(largest_parameters(likelihood)));
}

}  // namespace

std::optional<GoodnessOfFit> goodness_of_fit(int items, std::span<const PairCount> counts,
                                             const WorthOptions& options, const MonteCarlo& monte_carlo) {
  require_draws(monte_carlo);
  if (options.bias_reduced) throw std::domain_error("goodness of fit needs a fit without bias reduction");
  const auto fit = fit_worths(items, counts, 0, options);
  if (!fit) return std::nullopt;
  GoodnessOfFit found{fit->deviance, fit->degrees_of_freedom, std::nullopt, std::nullopt};
  if (fit->degrees_of_freedom > 0)
    found.chi_square_p =
        cdf(complement(boost::math::chi_squared(fit->degrees_of_freedom), std::max(0.0, fit->deviance)));
  std::int64_t answers = 0;
  for (const PairCount& count : counts) answers += answers_to(count);
  if (answers > kMostSimulatedAnswers) return found;

  const WorthLikelihood likelihood(items, counts, 0, options);
  const auto parameters = largest_parameters(likelihood);
  std::vector<PairShares> shares;
  for (const PairCount& count : counts) {
    const auto [x, log_tie] = likelihood.difference_and_tie(count, parameters);
    shares.push_back(pair_shares(options.model, likelihood.tie() != kNoPlace, x, log_tie));
  }
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    const auto drawn = answers_drawn(counts, shares, random);
    reaching += deviance_of(drawn, WorthLikelihood(items, drawn, 0, options)) >= fit->deviance - 1e-9;
  }
  found.simulated = monte_carlo_p(reaching, monte_carlo.draws);
  return found;
}

}  // namespace stats
