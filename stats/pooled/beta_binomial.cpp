#include "stats/pooled/beta_binomial.h"

#include <cmath>
#include <cstddef>
#include <numeric>

#include "stats/arguments.h"
#include "stats/pooled/overdispersion.h"

namespace stats {

TotalDistribution beta_binomial(int trials, double mean, double gamma) {
  require_count("trials", trials, 1, 100'000);
  require_closed_probability("mean", mean);
  require_closed_probability("gamma", gamma);
  TotalDistribution at(static_cast<std::size_t>(trials) + 1);
  if (gamma == 1) {
    at.front() = 1 - mean;
    at.back() = mean;
    return at;
  }
  // P(x + 1)/P(x) = (n - x)/(x + 1) right(x)/wrong(n - x - 1), from near the mean to both ends.
  const auto right = [=](double before) { return mean * (1 - gamma) + before * gamma; };
  const auto wrong = [=](double before) { return (1 - mean) * (1 - gamma) + before * gamma; };
  const auto start = static_cast<std::size_t>(std::lround(mean * trials));
  at[start] = 1;
  for (std::size_t x = start; x + 1 < at.size(); ++x) {
    const double wrongs = trials - double(x);
    at[x + 1] = at[x] * (wrongs / double(x + 1)) * (right(double(x)) / wrong(wrongs - 1));
  }
  for (std::size_t x = start; x > 0; --x) {
    const double wrongs = trials - double(x);
    at[x - 1] = at[x] * (double(x) / (wrongs + 1)) * (wrong(wrongs) / right(double(x - 1)));
  }
  const double all = std::accumulate(at.begin(), at.end(), 0.0);
  for (double& probability : at) probability /= all;
  return at;
}

BetaBinomialFit fit_beta_binomial(std::span<const SubjectCount> subjects) {
  return fitted_beta_binomial(subjects, 0);
}

std::optional<double> moment_gamma(std::span<const SubjectCount> subjects) {
  const SubjectSums sums = checked_sums(subjects, 100'000);
  if (!sums.can_vary) return std::nullopt;
  double weights = 0;
  for (const auto [correct, trials] : subjects) weights += (1 - trials / double(sums.trials)) * (trials - 1);
  return (*pearson_dispersion(subjects) - 1) * double(subjects.size() - 1) / weights;
}

}  // namespace stats
