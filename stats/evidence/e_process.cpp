#include "stats/evidence/e_process.h"

#include <boost/math/constants/constants.hpp>
#include <boost/math/special_functions/beta.hpp>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <limits>

#include "stats/arguments.h"

namespace stats {
namespace {

void check_e_counts(int correct, int trials, double chance) {
  require_correct_of_trials(correct, trials);
  require_open_probability("chance", chance);
}

void check_mixture_prior(double a, double b) {
  require_between("a", a, 0.001, 10'000);
  require_between("b", b, 0.001, 10'000);
}

double e_process_log_beta(double a, double b) {
  return boost::math::lgamma(a) + boost::math::lgamma(b) - boost::math::lgamma(a + b);
}

double e_process_log_mixture(double correct, double wrong, double chance, double a, double b) {
  return e_process_log_beta(correct + a, wrong + b) - e_process_log_beta(a, b) - correct * std::log(chance) -
         wrong * std::log1p(-chance);
}

/// Logarithm of the integral of p^(a-1) (1-p)^(b-1) over (chance, 1), divided by chance^a (1-chance)^b, by
/// the series of the incomplete beta function; for a/(a+b) at most chance, where its terms only fall.
double e_process_log_upper_tail(double a, double b, double chance) {
  double sum = 0;
  double term = 1 / b;
  for (int i = 1; term > sum * 1e-17; ++i) {
    sum += term;
    term *= (1 - chance) * (a + b + i - 1) / (b + i);
  }
  return std::log(sum);
}

}  // namespace

double log_likelihood_ratio(int correct, int trials, double chance, double alternative) {
  check_e_counts(correct, trials, chance);
  require_open_probability("alternative", alternative);
  return correct * std::log(alternative / chance) +
         (trials - correct) * std::log((1 - alternative) / (1 - chance));
}

double log_beta_mixture(int correct, int trials, double chance, double a, double b) {
  check_e_counts(correct, trials, chance);
  check_mixture_prior(a, b);
  return e_process_log_mixture(correct, trials - correct, chance, a, b);
}

double log_upper_beta_mixture(int correct, int trials, double chance, double a, double b) {
  check_e_counts(correct, trials, chance);
  check_mixture_prior(a, b);
  const double wrong = trials - correct;
  const double prior = boost::math::ibetac(a, b, chance);
  if (correct + a > chance * (trials + a + b))
    return e_process_log_mixture(correct, wrong, chance, a, b) +
           std::log(boost::math::ibetac(correct + a, wrong + b, chance) / prior);
  return e_process_log_upper_tail(correct + a, wrong + b, chance) + a * std::log(chance) +
         b * std::log1p(-chance) - e_process_log_beta(a, b) - std::log(prior);
}

double calibrated_e(double p, double kappa) {
  require_closed_probability("p", p);
  require_open_probability("kappa", kappa);
  return p == 0 ? std::numeric_limits<double>::infinity() : kappa * std::pow(p, kappa - 1);
}

double vovk_sellke_bound(double p) {
  require_closed_probability("p", p);
  constexpr double kE = boost::math::constants::e<double>();
  if (p == 0) return 0;
  return p * kE < 1 ? -kE * p * std::log(p) : 1;
}

}  // namespace stats
