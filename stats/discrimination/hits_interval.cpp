#include "stats/discrimination/hits_interval.h"

#include <algorithm>
#include <boost/math/constants/constants.hpp>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/special_functions/erf.hpp>
#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <limits>

#include "stats/arguments.h"
#include "stats/discrimination/normal.h"
#include "stats/root.h"

namespace stats {
namespace {

constexpr double kEndless = std::numeric_limits<double>::infinity();

/// Each probability and its complement, without cancellation.
struct HitChances {
  double hit, miss, false_alarm, rejection;
};

HitChances yes_no_chances(double d_prime, double criterion) {
  const double a = d_prime / 2 - criterion, b = d_prime / 2 + criterion;
  return {normal_below(a), normal_below(-a), normal_below(-b), normal_below(b)};
}

HitChances differencing_chances(double d_prime, double criterion) {
  constexpr double root_two = boost::math::constants::root_two<double>();
  const double near = normal_below((-d_prime - criterion) / root_two);
  return {normal_below((d_prime - criterion) / root_two) + near,
          normal_below((criterion - d_prime) / root_two) - near, boost::math::erfc(criterion / 2),
          boost::math::erf(criterion / 2)};
}

double log_likelihood_term(int count, double chance) {
  return count == 0 ? 0.0 : count * std::log(std::max(chance, 1e-300));
}

double hit_log_likelihood(const HitCounts& counts, const HitChances& chances) {
  return log_likelihood_term(counts.hits, chances.hit) +
         log_likelihood_term(counts.signals - counts.hits, chances.miss) +
         log_likelihood_term(counts.false_alarms, chances.false_alarm) +
         log_likelihood_term(counts.noises - counts.false_alarms, chances.rejection);
}

/// How a model is searched: its d' from `least` to `far`, where the likelihood is that of infinity.
struct HitProfile {
  HitChances (*chances)(double d_prime, double criterion);
  double least_d_prime;
  double far_d_prime;
  Interval (*criteria)(double d_prime);  // hold the most likely one
};

constexpr HitProfile kYesNo{yes_no_chances, -18, 18, [](double d_prime) {
                              const double reach = std::abs(d_prime) / 2 + 9;
                              return Interval{-reach, reach};
                            }};
constexpr HitProfile kDifferencing{differencing_chances, 0, 26, [](double d_prime) {
                                     return Interval{0, d_prime + 13};
                                   }};

/// 2 [l(seen) - l(d')] with the most likely criterion.
double hit_deviance(const HitProfile& profile, const HitCounts& counts, double d_prime) {
  const HitRates seen = hit_rates(counts);
  const double best =
      hit_log_likelihood(counts, {seen.hit, 1 - seen.hit, seen.false_alarm, 1 - seen.false_alarm});
  const auto [lowest, highest] = profile.criteria(d_prime);
  const auto loss = [&](double criterion) {
    return best - hit_log_likelihood(counts, profile.chances(d_prime, criterion));
  };
  return 2 * boost::math::tools::brent_find_minima(loss, lowest, highest, 26).second;
}

/// Limits of the profile's own d', between which the deviance is at most `deviance`.
Interval profile_limits(const HitProfile& profile, const HitCounts& counts, double estimate,
                        double deviance) {
  const auto excess = [&](double d_prime) { return hit_deviance(profile, counts, d_prime) - deviance; };
  const auto solve = [&](double from, double to) { return root_between(excess, from, to, 40); };
  const bool endless_above = counts.hits == counts.signals || counts.false_alarms == 0;
  const bool endless_below =
      profile.least_d_prime < 0 && (counts.hits == 0 || counts.false_alarms == counts.noises);
  const double best = std::clamp(estimate, profile.least_d_prime, profile.far_d_prime);

  Interval limits{best, best};
  if (endless_below)
    limits.lower = -kEndless;
  else if (excess(profile.least_d_prime) <= 0)
    limits.lower = profile.least_d_prime;
  else if (best > profile.least_d_prime)
    limits.lower = solve(profile.least_d_prime, best);
  if (endless_above)
    limits.upper = kEndless;
  else if (excess(best) < 0)
    limits.upper = solve(best, profile.far_d_prime);
  return limits;
}

/// The limit of z(H) - z(F) taken to the model's d': rates with that difference and no bias.
double unbiased_d_prime(HitModel model, double z_difference) {
  if (model == HitModel::yes_no) return z_difference;
  const HitRates rates{normal_below(z_difference / 2), normal_below(-z_difference / 2)};
  return d_prime_of_rates(model, rates).value();
}

}  // namespace

HitEstimate estimate_d_prime_of_hits(HitModel model, const HitCounts& counts, double confidence) {
  const HitRates rates = hit_rates(counts);
  require_level("confidence", confidence);
  const double deviance = quantile(boost::math::chi_squared(1), confidence);
  const auto d_prime = d_prime_of_rates(model, rates);
  if (model == HitModel::same_different_differencing)
    return {d_prime, profile_limits(kDifferencing, counts, d_prime.value_or(0), deviance)};
  const double z_difference = d_prime_of_rates(HitModel::yes_no, rates).value_or(0);
  const auto [lower, upper] = profile_limits(kYesNo, counts, z_difference, deviance);
  return {d_prime, {unbiased_d_prime(model, lower), unbiased_d_prime(model, upper)}};
}

}  // namespace stats
