#include "stats/sequential/sprt.h"

#include <algorithm>
#include <boost/math/special_functions/expm1.hpp>
#include <cmath>

#include "stats/arguments.h"
#include "stats/root.h"

namespace stats {
namespace {

/// What a right and a wrong answer add to the logarithm of the likelihood ratio; `wrong` is its loss.
struct SprtGains {
  double right;
  double wrong;
};

void check_sprt(const Sprt& test) {
  require_open_probability("chance", test.chance);
  require_open_probability("alternative", test.alternative);
  require_open_probability("alternative - chance", test.alternative - test.chance);
  require_level("alpha", test.alpha);
  require_level("beta", test.beta);
  require_open_probability("alpha + beta", test.alpha + test.beta);
}

SprtGains sprt_gains(const Sprt& test) {
  return {std::log(test.alternative / test.chance), std::log((1 - test.chance) / (1 - test.alternative))};
}

/// (e^x - 1)/x and (e^x - 1 - x)/x^2, for |x| up to about 10.
double first_exp_remainder(double x) { return x == 0 ? 1 : boost::math::expm1(x) / x; }
double second_exp_remainder(double x) {
  if (std::fabs(x) > 0.5) return (boost::math::expm1(x) - x) / (x * x);
  double sum = 0;
  double term = 0.5;
  for (int i = 3; std::fabs(term) > 1e-18; ++i) {
    sum += term;
    term *= x / i;
  }
  return sum;
}

/// Wald's h: the root other than 0 of share e^(h right) + (1 - share) e^(-h wrong) = 1; 0 where both fall
/// together.
double sprt_exponent(const SprtGains& gains, double share) {
  const auto [right, wrong] = gains;
  const auto beyond = [&](double h) {  // divided by h: 0 is no root any more
    return share * right * first_exp_remainder(h * right) -
           (1 - share) * wrong * first_exp_remainder(-h * wrong);
  };
  const double drift = beyond(0);
  if (drift == 0) return 0;
  double far = drift < 0 ? 1 : -1;
  while (beyond(far) * drift > 0) far *= 2;
  return root_between(beyond, std::min(0.0, far), std::max(0.0, far));
}

double sprt_give_up_at_exponent(const SprtLines& lines, double h) {
  const double up = lines.log_upper;
  const double down = lines.log_lower;
  if (h == 0) return up / (up - down);
  if (h > 0) return boost::math::expm1(-h * up) / boost::math::expm1(-h * (up - down));
  return std::exp(-h * down) * boost::math::expm1(h * up) / boost::math::expm1(h * (up - down));
}

}  // namespace

SprtLines sprt_lines(const Sprt& test) {
  check_sprt(test);
  const auto [right, wrong] = sprt_gains(test);
  const double upper = std::log((1 - test.beta) / test.alpha);
  const double lower = std::log(test.beta / (1 - test.alpha));
  return {upper, lower, wrong / (right + wrong), upper / (right + wrong), lower / (right + wrong)};
}

Look sprt_look(const Sprt& test, int trials) {
  const SprtLines lines = sprt_lines(test);
  require_count("trials", trials, 1, kMostTrials);
  const double upper = lines.upper_intercept + lines.slope * trials;
  const double lower = lines.lower_intercept + lines.slope * trials;
  const double slack = 1e-12 * (1 + upper);
  Look look;
  look.support = static_cast<int>(std::fmin(std::ceil(upper - slack), kMostTrials));
  if (lower + slack >= 0) look.give_up = static_cast<int>(std::floor(lower + slack));
  return look;
}

StoppingRule sprt_rule(const Sprt& test, int trials) {
  check_sprt(test);
  require_count("trials", trials, 1, kMostTrials);
  StoppingRule rule;
  for (int n = 1; n <= trials; ++n) rule.looks.push_back(sprt_look(test, n));
  return rule;
}

double sprt_give_up_wald(const Sprt& test, double share) {
  const SprtLines lines = sprt_lines(test);
  require_closed_probability("share", share);
  if (share == 0 || share == 1) return 1 - share;
  return sprt_give_up_at_exponent(lines, sprt_exponent(sprt_gains(test), share));
}

double sprt_expected_trials_wald(const Sprt& test, double share) {
  const SprtLines lines = sprt_lines(test);
  require_closed_probability("share", share);
  const auto [right, wrong] = sprt_gains(test);
  const double up = lines.log_upper;
  const double down = lines.log_lower;
  if (share == 0) return -down / wrong;
  if (share == 1) return up / right;
  const double h = sprt_exponent({right, wrong}, share);
  if (std::fabs(h) * std::max({up, -down, right, wrong}) > 1) {
    const double give_up = sprt_give_up_at_exponent(lines, h);
    return (give_up * down + (1 - give_up) * up) / (share * right - (1 - share) * wrong);
  }
  // Near h = 0 both are small: the same ratio with h^2 taken out of each.
  const double height = up * second_exp_remainder(h * up) - down * second_exp_remainder(h * down);
  const double width = up * first_exp_remainder(h * up) - down * first_exp_remainder(h * down);
  const double drift = share * right * right * second_exp_remainder(h * right) +
                       (1 - share) * wrong * wrong * second_exp_remainder(-h * wrong);
  return -up * down * height / (width * drift);
}

}  // namespace stats
