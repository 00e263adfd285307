#include "stats/share/approximate_interval.h"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/special_functions/beta.hpp>
#include <cmath>

#include "stats/arguments.h"
#include "stats/root.h"

namespace stats {
namespace {

void check_interval(int correct, int trials, double confidence) {
  require_correct_of_trials(correct, trials);
  require_level("confidence", confidence);
}

/// The share at which P(X > correct) + P(X = correct)/2, the mean of two tails, has grown to `tail`.
double mid_p_limit(int correct, int trials, double tail) {
  const auto at_least = [=](int count, double share) {
    if (count == 0) return 1.0;
    return count > trials ? 0.0 : boost::math::ibeta(double(count), trials - count + 1.0, share);
  };
  const auto excess = [=](double share) {
    return (at_least(correct, share) + at_least(correct + 1, share)) / 2 - tail;
  };
  if (excess(0) >= 0) return 0;
  if (excess(1) <= 0) return 1;
  return root_between(excess, 0.0, 1.0);
}

double jeffreys_limit(int correct, int trials, double tail) {
  return correct == 0 ? 0.0 : boost::math::ibeta_inv(correct + 0.5, trials - correct + 0.5, tail);
}

/// count ln(seen/share), 0 for no count.
double likelihood_loss(double count, double seen, double share) {
  return count == 0 ? 0.0 : count * std::log(seen / share);
}

/// The share below the one seen where the logarithm of the likelihood has lost `most_loss`.
double likelihood_limit(int correct, int trials, double most_loss) {
  if (correct == 0) return 0;
  if (correct == trials) return std::exp(-most_loss / trials);
  const double seen = double(correct) / trials;
  const auto excess = [=](double share) {
    return likelihood_loss(correct, seen, share) + likelihood_loss(trials - correct, 1 - seen, 1 - share) -
           most_loss;
  };
  return root_between(excess, seen * std::exp(-most_loss / correct - 1), seen);
}

}  // namespace

Interval mid_p(int correct, int trials, double confidence) {
  check_interval(correct, trials, confidence);
  const double tail = (1 - confidence) / 2;
  return {mid_p_limit(correct, trials, tail), 1 - mid_p_limit(trials - correct, trials, tail)};
}

double mid_p_lower(int correct, int trials, double confidence) {
  check_interval(correct, trials, confidence);
  return mid_p_limit(correct, trials, 1 - confidence);
}

double mid_p_upper(int correct, int trials, double confidence) {
  check_interval(correct, trials, confidence);
  return 1 - mid_p_limit(trials - correct, trials, 1 - confidence);
}

Interval jeffreys(int correct, int trials, double confidence) {
  check_interval(correct, trials, confidence);
  const double tail = (1 - confidence) / 2;
  return {jeffreys_limit(correct, trials, tail), 1 - jeffreys_limit(trials - correct, trials, tail)};
}

double jeffreys_lower(int correct, int trials, double confidence) {
  check_interval(correct, trials, confidence);
  return jeffreys_limit(correct, trials, 1 - confidence);
}

double jeffreys_upper(int correct, int trials, double confidence) {
  check_interval(correct, trials, confidence);
  return 1 - jeffreys_limit(trials - correct, trials, 1 - confidence);
}

Interval likelihood_interval(int correct, int trials, double confidence) {
  check_interval(correct, trials, confidence);
  const double most_loss = quantile(boost::math::chi_squared(1), confidence) / 2;
  return {likelihood_limit(correct, trials, most_loss),
          1 - likelihood_limit(trials - correct, trials, most_loss)};
}

}  // namespace stats
