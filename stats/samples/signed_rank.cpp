#include "stats/samples/signed_rank.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

#include "stats/arguments.h"
#include "stats/association/ranks.h"
#include "stats/random.h"

namespace stats {
namespace {

constexpr int kExactSigns = 500;

/// Sizes of the differences other than 0, those alike made equal; ascending, with the signs beside them.
struct SignedSizes {
  std::vector<double> sizes;
  std::vector<bool> positive;
};

SignedSizes sizes_of(std::span<const double> differences) {
  std::vector<double> sorted(differences.begin(), differences.end());
  std::sort(sorted.begin(), sorted.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
  const double alike = 1e-12 * std::abs(sorted.back());
  SignedSizes found;
  double last = 0;
  for (const double difference : sorted) {
    const double size = std::abs(difference);
    if (size == 0 || size < alike) continue;
    const bool tied = !found.sizes.empty() && size - last <= alike;
    found.sizes.push_back(tied ? found.sizes.back() : size);
    found.positive.push_back(difference > 0);
    last = size;
  }
  return found;
}

/// Twice the sum less its mean under the null, of doubled ranks.
std::int64_t centred(std::int64_t positive, std::int64_t total) { return 2 * positive - total; }

double counted_signs_p(const std::vector<std::int64_t>& ranks, std::int64_t positive, std::int64_t total,
                       Alternative alternative) {
  std::vector<double> sums(static_cast<std::size_t>(total) + 1);
  sums[0] = 1;
  std::size_t reached = 0;
  for (const std::int64_t rank : ranks) {
    const auto step = static_cast<std::size_t>(rank);
    reached += step;
    for (std::size_t sum = reached; sum + 1 > step; --sum) sums[sum] = (sums[sum] + sums[sum - step]) / 2;
    for (std::size_t sum = 0; sum < step; ++sum) sums[sum] /= 2;
  }
  double p = 0;
  for (std::size_t sum = 0; sum < sums.size(); ++sum)
    if (counts_against(centred(static_cast<std::int64_t>(sum), total), centred(positive, total), alternative))
      p += sums[sum];
  return std::min(1.0, p);
}

PermutationP drawn_signs_p(const std::vector<std::int64_t>& ranks, std::int64_t positive, std::int64_t total,
                           Alternative alternative, const MonteCarlo& monte_carlo) {
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    std::int64_t sum = 0;
    std::uint64_t bits = 0;
    for (std::size_t i = 0; i < ranks.size(); ++i, bits >>= 1) {
      if (i % 64 == 0) bits = random.word();
      if (bits & 1) sum += ranks[i];
    }
    reaching += counts_against(centred(sum, total), centred(positive, total), alternative);
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

}  // namespace

SignedRank signed_rank(std::span<const double> differences, Alternative alternative,
                       const MonteCarlo& monte_carlo) {
  require_count("number of differences", std::ssize(differences), 1, 100'000);
  require_finite("difference", differences);
  require_draws(monte_carlo);
  const SignedSizes signs = sizes_of(differences);
  const auto ranks = doubled_midranks(signs.sizes);
  const std::int64_t total = std::accumulate(ranks.begin(), ranks.end(), std::int64_t{0});
  std::int64_t positive = 0;
  for (std::size_t i = 0; i < ranks.size(); ++i)
    if (signs.positive[i]) positive += ranks[i];
  return {static_cast<int>(std::ssize(differences) - std::ssize(ranks)), static_cast<int>(ranks.size()),
          double(positive) / 2,
          std::ssize(ranks) <= kExactSigns ? exact_p(counted_signs_p(ranks, positive, total, alternative))
                                           : drawn_signs_p(ranks, positive, total, alternative, monte_carlo)};
}

}  // namespace stats
