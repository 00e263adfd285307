#include "stats/pooled/beta_binomial_fit.h"

#include <algorithm>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <cstdint>
#include <utility>

#include "stats/pooled/beta_binomial_likelihood.h"
#include "stats/root.h"

namespace stats {
namespace {

constexpr double kNextToEnd = 1e-9;  // where the scores at 0 and 1 are read

/// A point of the ridge: the best mean for one gamma.
struct RidgePoint {
  double mean;
  double gamma;
  LikelihoodJet jet;  ///< derivatives only where the mean is above 0
};

/// With something wrong the likelihood falls to 0 at a mean of 1, so the score falls through 0 or is below
/// it.
RidgePoint ridge_point(const BetaBinomialLikelihood& likelihood, double gamma, double guess) {
  if (likelihood.at(kNextToEnd, gamma).mean <= 0) {
    RidgePoint nothing{0, gamma, {}};
    nothing.jet.value = likelihood.nothing_heard();
    return nothing;
  }
  const auto score = [&](double mean) {
    const LikelihoodJet jet = likelihood.at(mean, gamma);
    return std::pair(jet.mean, jet.mean_mean);
  };
  std::uintmax_t steps = 200;
  const double mean =
      boost::math::tools::newton_raphson_iterate(score, guess, kNextToEnd, 1 - kNextToEnd, 50, steps);
  return {mean, gamma, likelihood.at(mean, gamma)};
}

/// Where the score of gamma falls through 0 between two points of the ridge.
RidgePoint ridge_root(const BetaBinomialLikelihood& likelihood, const RidgePoint& low,
                      const RidgePoint& high) {
  const auto score = [&](double gamma) { return ridge_point(likelihood, gamma, low.mean).jet.gamma; };
  return ridge_point(likelihood, root_between(score, low.gamma, high.gamma, 50), low.mean);
}

RidgePoint highest_point(const BetaBinomialLikelihood& likelihood, const RidgePoint& binomial) {
  constexpr int cells = 16;
  RidgePoint best = binomial, low = binomial;
  const auto consider = [&](const RidgePoint& point) {
    if (point.jet.value > best.jet.value) best = point;
  };
  const auto guess = [&] { return low.mean > 0 ? low.mean : 0.5; };
  for (int cell = 1; cell <= cells; ++cell) {
    const double gamma = cell == cells ? 1 - kNextToEnd : double(cell) / cells;
    const RidgePoint high = ridge_point(likelihood, gamma, guess());
    if (low.jet.gamma > 0 && high.jet.gamma < 0) consider(ridge_root(likelihood, low, high));
    low = high;
  }
  if (low.jet.gamma >= 0) consider(ridge_point(likelihood, 1, guess()));
  return best;
}

void add_errors(BetaBinomialFit& fit, const LikelihoodJet& jet) {
  if (fit.mean == 0) return;
  const double gamma = fit.gamma.value_or(0);
  if (!(jet.mean_mean < 0)) return;
  const double determinant = jet.mean_mean * jet.gamma_gamma - jet.mean_gamma * jet.mean_gamma;
  if (gamma == 0 || gamma == 1) {
    fit.mean_error = 1 / std::sqrt(-jet.mean_mean);
  } else if (determinant > 0) {
    fit.mean_error = std::sqrt(-jet.gamma_gamma / determinant);
    fit.gamma_error = std::sqrt(-jet.mean_mean / determinant);
  }
}

}  // namespace

BetaBinomialFit fitted_beta_binomial(std::span<const SubjectCount> subjects, double chance) {
  const SubjectSums sums = checked_sums(subjects, 10'000);
  BetaBinomialFit fit{};
  fit.half_chi_square_p = 1;
  if (sums.correct == sums.trials) {
    fit.mean = 1;
    return fit;
  }
  const BetaBinomialLikelihood likelihood(subjects, chance);
  const RidgePoint binomial = ridge_point(likelihood, 0, 0.5);
  const RidgePoint best = sums.can_vary ? highest_point(likelihood, binomial) : binomial;
  fit.mean = best.mean;
  if (sums.can_vary && best.mean > 0) fit.gamma = best.gamma;
  fit.log_likelihood = best.jet.value;
  fit.binomial_log_likelihood = binomial.jet.value;
  fit.likelihood_ratio = std::max(0.0, 2 * (best.jet.value - binomial.jet.value));
  if (fit.likelihood_ratio > 0) fit.half_chi_square_p = std::erfc(std::sqrt(fit.likelihood_ratio / 2)) / 2;
  add_errors(fit, best.jet);
  return fit;
}

}  // namespace stats
