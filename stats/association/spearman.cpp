#include "stats/association/spearman.h"

#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <map>
#include <numeric>

#include "stats/arguments.h"
#include "stats/association/drawn_pairings.h"
#include "stats/association/ranks.h"
#include "stats/level.h"

namespace stats {
namespace {

using Ranks = std::vector<std::int64_t>;

constexpr int kMostPairs = 10'000;

void check_pairs(std::span<const double> x, std::span<const double> y) {
  require_count("number of x", std::ssize(x), 2, kMostPairs);
  require_count("number of y", std::ssize(y), std::ssize(x), std::ssize(x));
  require_finite("x", x);
  require_finite("y", y);
}

/// Share of all pairings that give the same pairs of values as x and y in these orders: with the counts n_xy
/// of equal pairs, prod n_x! prod n_y! / (n! prod n_xy!).
double share_of_same_pairs(const Ranks& x, const Ranks& y) {
  std::map<std::int64_t, int> of_x, of_y;
  std::map<std::pair<std::int64_t, std::int64_t>, int> of_pair;
  for (std::size_t i = 0; i < x.size(); ++i) {
    ++of_x[x[i]];
    ++of_y[y[i]];
    ++of_pair[{x[i], y[i]}];
  }
  const auto log_factorial = [](int count) { return std::lgamma(count + 1.0); };
  double log_share = -log_factorial(static_cast<int>(x.size()));
  for (const auto& [value, count] : of_x) log_share += log_factorial(count);
  for (const auto& [value, count] : of_y) log_share += log_factorial(count);
  for (const auto& [pair, count] : of_pair) log_share -= log_factorial(count);
  return std::exp(log_share);
}

double t_approximation(int n, double level) {
  const double t = quantile(complement(boost::math::students_t(n - 2), level / 2));
  return t / std::sqrt(n - 2 + t * t);
}

/// The smallest |rho| of the exact null of these ranks.
std::optional<SmallestRho> smallest_of(const Ranks& x, const Ranks& y, double level) {
  const PairingSums sums(x, y);
  RankMoments moments = rank_moments(x, y);
  std::optional<std::int64_t> smallest;
  for (const auto& [covariance, pairings] : sums.points()) {
    const std::int64_t size = std::abs(covariance);
    if (size > 0 && (!smallest || size < *smallest) &&
        reaches(sums.share(size, Alternative::two_sided), level))
      smallest = size;
  }
  if (!smallest) return std::nullopt;
  moments.covariance = *smallest;
  return SmallestRho{rho(moments), true};
}

}  // namespace

std::optional<RankCorrelation> spearman(std::span<const double> x, std::span<const double> y,
                                        Alternative alternative, const MonteCarlo& monte_carlo, int threads) {
  check_pairs(x, y);
  require_draws(monte_carlo);
  require_count("threads", threads, 1, 256);
  const Ranks x_ranks = doubled_midranks(x);
  const Ranks y_ranks = doubled_midranks(y);
  const RankMoments seen = rank_moments(x_ranks, y_ranks);
  if (seen.x_variance == 0 || seen.y_variance == 0) return std::nullopt;
  const PermutationP test = std::ssize(x) <= kExactRanks
                                ? exact_p(PairingSums(x_ranks, y_ranks).share(seen.covariance, alternative))
                                : monte_carlo_p(drawn_pairings_against(x_ranks, y_ranks, seen.covariance,
                                                                       alternative, monte_carlo, threads),
                                                monte_carlo.draws);
  return RankCorrelation{rho(seen), test};
}

std::optional<double> smallest_attainable_p(std::span<const double> x, std::span<const double> y,
                                            Alternative alternative) {
  check_pairs(x, y);
  Ranks x_ranks = doubled_midranks(x);
  Ranks rising = doubled_midranks(y);
  std::sort(x_ranks.begin(), x_ranks.end());
  std::sort(rising.begin(), rising.end());
  const Ranks falling(rising.rbegin(), rising.rend());
  const RankMoments highest = rank_moments(x_ranks, rising);
  const RankMoments lowest = rank_moments(x_ranks, falling);
  if (highest.x_variance == 0 || highest.y_variance == 0) return std::nullopt;

  const double share_of_highest = share_of_same_pairs(x_ranks, rising);
  const double share_of_lowest = share_of_same_pairs(x_ranks, falling);
  const bool two_sided = alternative == Alternative::two_sided;
  if (two_sided && highest.covariance == -lowest.covariance) return share_of_highest + share_of_lowest;
  const bool upwards =
      two_sided ? highest.covariance > -lowest.covariance : alternative == Alternative::greater;
  return upwards ? share_of_highest : share_of_lowest;
}

std::optional<SmallestRho> smallest_significant_rho(int n, double level) {
  require_count("n", n, 2, kMostPairs);
  require_level("level", level);
  if (n > kExactRanks) return SmallestRho{t_approximation(n, level), false};
  Ranks ranks(static_cast<std::size_t>(n));
  std::iota(ranks.begin(), ranks.end(), std::int64_t{1});
  return smallest_of(ranks, ranks, level);
}

std::optional<SmallestRho> smallest_significant_rho(std::span<const double> x, std::span<const double> y,
                                                    double level) {
  check_pairs(x, y);
  require_level("level", level);
  const auto smallest_p = smallest_attainable_p(x, y, Alternative::two_sided);
  if (!smallest_p || !reaches(*smallest_p, level)) return std::nullopt;
  if (std::ssize(x) > kExactRanks) return smallest_significant_rho(static_cast<int>(x.size()), level);
  return smallest_of(doubled_midranks(x), doubled_midranks(y), level);
}

}  // namespace stats
