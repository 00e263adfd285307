#include "stats/samples/mean_difference.h"

#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <numeric>
#include <vector>

#include "stats/arguments.h"
#include "stats/random.h"
#include "stats/samples/division_count.h"

namespace stats {
namespace {

constexpr int kMostValues = 100'000;

void check(std::span<const double> x, std::span<const double> y) {
  require_count("number of x", std::ssize(x), 1, kMostValues);
  require_count("number of y", std::ssize(y), 1, kMostValues);
  require_finite("x", x);
  require_finite("y", y);
}

bool varies(std::span<const double> values) {
  return std::any_of(values.begin(), values.end(), [&](double value) { return value != values.front(); });
}

double largest_size(std::span<const double> values) {
  const auto [lowest, highest] = std::minmax_element(values.begin(), values.end());
  return std::max(std::abs(*lowest), std::abs(*highest));
}

Alternative turned(Alternative alternative) {
  if (alternative == Alternative::greater) return Alternative::less;
  if (alternative == Alternative::less) return Alternative::greater;
  return alternative;
}

/// Squared standard error of the mean.
double squared_error(std::span<const double> values) {
  const double centre = mean(values);
  double squares = 0;
  for (double value : values) squares += (value - centre) * (value - centre);
  const double n = double(values.size());
  return squares / (n - 1) / n;
}

/// Both samples, less the mean of all: the sum over the first is then a fixed multiple of the difference of
/// means.
std::vector<double> centred(std::vector<double> both) {
  const double centre = mean(both);
  for (double& value : both) value -= centre;
  return both;
}

/// Calls `visit(sum)` with the sum of the chosen values for every way to choose `left` of those from `first`
/// on.
template <typename Visit>
void for_each_choice(std::span<const double> values, std::size_t left, double sum, const Visit& visit) {
  if (left == 0) return visit(sum);
  for (std::size_t i = 0; i + left <= values.size(); ++i)
    for_each_choice(values.subspan(i + 1), left - 1, sum + values[i], visit);
}

}  // namespace

double mean(std::span<const double> values) {
  require_count("number of values", std::ssize(values), 1, 2 * kMostValues);
  return std::accumulate(values.begin(), values.end(), 0.0) / double(values.size());
}

double mean_difference(std::span<const double> x, std::span<const double> y) {
  check(x, y);
  return mean(x) - mean(y);
}

PermutationP mean_difference_test(std::span<const double> x, std::span<const double> y,
                                  Alternative alternative, const MonteCarlo& monte_carlo) {
  check(x, y);
  require_draws(monte_carlo);
  if (x.size() > y.size()) return mean_difference_test(y, x, turned(alternative), monte_carlo);
  std::vector<double> both(x.begin(), x.end());
  both.insert(both.end(), y.begin(), y.end());
  std::vector<double> values = centred(both);
  const auto first = std::span(values).first(x.size());
  const auto sum_of_first = [&] { return std::accumulate(first.begin(), first.end(), 0.0); };
  const double seen = sum_of_first();
  const double tolerance = 1e-12 * double(x.size()) * std::max(largest_size(x), largest_size(y));
  std::int64_t reaching = 0;
  const auto count = [&](double sum) { reaching += counts_against(sum, seen, alternative, tolerance); };

  const double ways = number_of_divisions(x.size(), values.size());
  if (ways <= kExactDivisions) {
    for_each_choice(values, x.size(), 0.0, count);
    return exact_p(double(reaching) / ways);
  }
  if (const auto share = share_of_divisions(both, x.size(), alternative)) return exact_p(*share);
  Random random(monte_carlo.seed);
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    random.shuffle(std::span(values));
    count(sum_of_first());
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

std::optional<Interval> welch_interval(std::span<const double> x, std::span<const double> y,
                                       double confidence) {
  check(x, y);
  require_level("confidence", confidence);
  if (x.size() < 2 || y.size() < 2 || !(varies(x) || varies(y))) return std::nullopt;
  const double of_x = squared_error(x);
  const double of_y = squared_error(y);
  const double part = of_x / (of_x + of_y);
  const double freedom =
      1 / (part * part / (double(x.size()) - 1) + (1 - part) * (1 - part) / (double(y.size()) - 1));
  if (!std::isfinite(freedom)) return std::nullopt;
  const double t = quantile(complement(boost::math::students_t(freedom), (1 - confidence) / 2));
  const double half_width = t * std::sqrt(of_x + of_y);
  const double difference = mean(x) - mean(y);
  return Interval{difference - half_width, difference + half_width};
}

}  // namespace stats
