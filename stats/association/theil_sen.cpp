#include "stats/association/theil_sen.h"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <vector>

#include "stats/arguments.h"
#include "stats/association/score_distribution.h"
#include "stats/level.h"

namespace stats {
namespace {

constexpr std::size_t kExactScores = 150;

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

/// The smallest S with P(S or more) at most half of 1 - confidence, for untied pairs; nothing where none is.
std::optional<std::int64_t> critical_score(std::size_t pairs, double confidence) {
  const double tail = (1 - confidence) / 2, n = double(pairs);
  if (pairs > kExactScores)
    return static_cast<std::int64_t>(std::ceil(quantile(complement(boost::math::normal(), tail)) *
                                               std::sqrt(n * (n - 1) * (2 * n + 5) / 18))) +
           2;
  const std::vector<int> singles(pairs, 1);
  const auto distribution = score_distribution(singles, singles);
  double p = 0;
  std::optional<std::int64_t> critical;
  for (std::int64_t score = distribution->most; score > 0; score -= 2) {
    p += distribution->probability[static_cast<std::size_t>(score + distribution->most)];
    if (!reaches(p, tail)) break;
    critical = score;
  }
  return critical;
}

}  // namespace

std::optional<TheilSen> theil_sen(std::span<const double> x, std::span<const double> y, double confidence) {
  require_count("number of x", std::ssize(x), 2, 2'000);
  require_count("number of y", std::ssize(y), std::ssize(x), std::ssize(x));
  require_finite("x", x);
  require_finite("y", y);
  require_level("confidence", confidence);
  std::vector<double> slopes;
  for (std::size_t i = 0; i < x.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (x[i] != x[j]) slopes.push_back((y[i] - y[j]) / (x[i] - x[j]));
  if (slopes.empty()) return std::nullopt;
  std::sort(slopes.begin(), slopes.end());
  const double slope = median(slopes);
  TheilSen found{slope, median({y.begin(), y.end()}) - slope * median({x.begin(), x.end()}),
                 static_cast<int>(slopes.size()), std::nullopt};
  if (const auto critical = critical_score(x.size(), confidence)) {
    // A score of less than the critical one is not refused: so many slopes lie outside on either side.
    const std::int64_t outside = (std::ssize(slopes) - (*critical - 2)) / 2;
    if (outside >= 1)
      found.interval = Interval{slopes[static_cast<std::size_t>(outside - 1)],
                                slopes[slopes.size() - static_cast<std::size_t>(outside)]};
  }
  return found;
}

}  // namespace stats
