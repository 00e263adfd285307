#include "stats/evidence/betting.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "stats/arguments.h"
#include "stats/evidence/running_moments.h"

namespace stats {
namespace {

void check_bounded_observations(std::span<const double> observations) {
  require_count("number of observations", std::ssize(observations), 1, kMostTrials);
  for (const double x : observations) require_closed_probability("observation", x);
}

void check_betting_cap(double cap) {
  if (cap != 1) require_open_probability("cap", cap);
}

/// t ln(1 + t), by which the bets shrink.
double betting_shrinkage(std::size_t t) { return double(t) * std::log1p(double(t)); }

}  // namespace

std::vector<HoeffdingStep> hoeffding_sequence(std::span<const double> observations, double level) {
  check_bounded_observations(observations);
  require_level("level", level);
  const double log_level = std::log(2 / level);
  std::vector<HoeffdingStep> steps;
  double weights = 0;
  double weighted = 0;
  double squares = 0;
  for (std::size_t i = 0; i < observations.size(); ++i) {
    const double weight = std::fmin(1, std::sqrt(8 * log_level / betting_shrinkage(i + 1)));
    weights += weight;
    weighted += weight * observations[i];
    squares += weight * weight;
    steps.push_back({weighted / weights, (log_level + squares / 8) / weights});
  }
  return steps;
}

std::vector<double> log_kelly_capital(std::span<const double> observations, double mean, double cap) {
  check_bounded_observations(observations);
  require_open_probability("mean", mean);
  check_betting_cap(cap);
  std::vector<double> capital;
  RunningMoments moments;
  double log_capital = 0;
  for (const double x : observations) {
    const double lead = moments.mean() - mean;
    const double bet = std::clamp(lead / (moments.variance() + lead * lead), 0.0, cap / mean);
    log_capital += std::log1p(bet * (x - mean));
    capital.push_back(log_capital);
    moments.add(x);
  }
  return capital;
}

std::vector<double> hedged_bets(std::span<const double> observations, double level) {
  check_bounded_observations(observations);
  require_level("level", level);
  const double log_level = std::log(2 / level);
  std::vector<double> bets(observations.size());
  RunningMoments moments;
  for (std::size_t i = 0; i < observations.size(); ++i) {
    bets[i] = std::sqrt(2 * log_level / (moments.variance() * betting_shrinkage(i + 1)));
    moments.add(observations[i]);
  }
  return bets;
}

std::vector<double> log_hedged_capital(std::span<const double> observations, double mean, double level,
                                       double cap) {
  require_closed_probability("mean", mean);
  check_betting_cap(cap);
  const auto bets = hedged_bets(observations, level);
  std::vector<double> capital;
  double up = std::log(0.5);
  double down = up;
  for (std::size_t i = 0; i < observations.size(); ++i) {
    const double gap = observations[i] - mean;
    up += std::log1p(std::fmin(bets[i], cap / mean) * gap);
    down += std::log1p(-std::fmin(bets[i], cap / (1 - mean)) * gap);
    capital.push_back(std::fmax(up, down));
  }
  return capital;
}

}  // namespace stats
