#include "stats/pooled/trend.h"

#include <algorithm>
#include <numeric>
#include <optional>

#include "stats/arguments.h"
#include "stats/random.h"
#include "stats/redraw/redraw_fixed.h"

namespace stats {
namespace {

constexpr double kMostTrendSteps = 5e8;

std::int64_t trend_right(const std::vector<bool>& answers) {
  return std::count(answers.begin(), answers.end(), true);
}

std::int64_t trend_sum(const std::vector<bool>& answers) {
  std::int64_t sum = 0;
  for (std::size_t trial = 0; trial < answers.size(); ++trial)
    if (answers[trial]) sum += static_cast<std::int64_t>(trial) + 1;
  return sum;
}

/// Distribution of one rater's sum less its smallest, right (right + 1)/2.
TotalDistribution rank_sum_distribution(const std::vector<bool>& answers) {
  std::vector<Split> numbers;
  for (int number = 1; number <= static_cast<int>(answers.size()); ++number) numbers.push_back({number, 0});
  const std::int64_t right = trend_right(answers);
  const TotalDistribution sums = redraw_fixed(numbers, static_cast<int>(right));
  const std::int64_t least = right * (right + 1) / 2;
  const std::int64_t width = right * (std::ssize(answers) - right) + 1;
  return {sums.begin() + least, sums.begin() + least + width};
}

double trend_steps(std::span<const std::vector<bool>> raters) {
  double steps = 0, width = 1;
  for (const auto& answers : raters) {
    const auto n = double(answers.size()), right = double(trend_right(answers));
    steps += n * (right + 1) * (n * (n + 1) / 2 + 1) + width * (right * (n - right) + 1);
    width += right * (n - right);
  }
  return steps;
}

/// `doubled_mean` is twice the mean of the sum, a whole number.
double exact_trend_p(std::span<const std::vector<bool>> raters, std::int64_t sum, std::int64_t doubled_mean,
                     Alternative alternative) {
  TotalDistribution distribution{1.0};
  std::int64_t least = 0;
  for (const auto& answers : raters) {
    distribution = convolved(distribution, rank_sum_distribution(answers));
    least += trend_right(answers) * (trend_right(answers) + 1) / 2;
  }
  double p = 0;
  for (std::int64_t above = 0; above < std::ssize(distribution); ++above)
    if (counts_against(2 * (least + above) - doubled_mean, 2 * sum - doubled_mean, alternative))
      p += distribution[static_cast<std::size_t>(above)];
  return std::min(1.0, p);
}

PermutationP drawn_trend_p(std::span<const std::vector<bool>> raters, std::int64_t sum,
                           std::int64_t doubled_mean, Alternative alternative,
                           const MonteCarlo& monte_carlo) {
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  std::vector<std::int64_t> numbers;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    std::int64_t drawn = 0;
    for (const auto& answers : raters) {
      numbers.resize(answers.size());
      std::iota(numbers.begin(), numbers.end(), 1);
      random.shuffle(std::span(numbers));
      drawn = std::accumulate(numbers.begin(), numbers.begin() + trend_right(answers), drawn);
    }
    reaching += counts_against(2 * drawn - doubled_mean, 2 * sum - doubled_mean, alternative);
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

}  // namespace

Trend trend_over_trials(std::span<const std::vector<bool>> raters, Alternative alternative,
                        const MonteCarlo& monte_carlo) {
  require_count("number of raters", std::ssize(raters), 1, 100);
  require_draws(monte_carlo);
  std::int64_t sum = 0, doubled_mean = 0;
  for (const auto& answers : raters) {
    require_count("answers of a rater", std::ssize(answers), 1, 1'000);
    sum += trend_sum(answers);
    doubled_mean += trend_right(answers) * (std::ssize(answers) + 1);
  }
  const PermutationP p = trend_steps(raters) <= kMostTrendSteps
                             ? exact_p(exact_trend_p(raters, sum, doubled_mean, alternative))
                             : drawn_trend_p(raters, sum, doubled_mean, alternative, monte_carlo);
  return {sum, double(doubled_mean) / 2, p};
}

}  // namespace stats
