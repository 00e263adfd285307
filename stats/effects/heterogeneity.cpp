#include "stats/effects/heterogeneity.h"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <string>

#include "stats/arguments.h"
#include "stats/root.h"

namespace stats {
namespace {

void check(const Effect& effect, const std::string& of) {
  require_finite("estimate" + of, std::span(&effect.estimate, 1));
  require_between("standard error" + of, effect.standard_error, 1e-150, 1e150);
}

Interval about(const Effect& effect, double quantile) {
  return {effect.estimate - quantile * effect.standard_error,
          effect.estimate + quantile * effect.standard_error};
}

/// Mean by precision where true effects vary by so much more, its standard error, and q.
struct Weighed {
  Effect mean;
  double q;
};

Weighed weighed(std::span<const Effect> effects, double between) {
  double weights = 0, sum = 0;
  for (const Effect& effect : effects) {
    const double weight = 1 / (effect.standard_error * effect.standard_error + between);
    weights += weight;
    sum += weight * effect.estimate;
  }
  Weighed all{{sum / weights, 1 / std::sqrt(weights)}, 0};
  for (const Effect& effect : effects) {
    const double off = effect.estimate - all.mean.estimate;
    all.q += off * off / (effect.standard_error * effect.standard_error + between);
  }
  return all;
}

double between_variance(std::span<const Effect> effects) {
  const double expected = double(effects.size() - 1);
  const auto excess = [&](double between) { return weighed(effects, between).q - expected; };
  if (excess(0) <= 0) return 0;
  double reach = effects.front().standard_error * effects.front().standard_error;
  while (excess(reach) > 0) reach *= 4;
  return root_between(excess, 0.0, reach);
}

}  // namespace

EffectDifference effect_difference(const Effect& first, const Effect& second, double confidence) {
  check(first, " of the first");
  check(second, " of the second");
  require_level("confidence", confidence);
  const Effect difference{second.estimate - first.estimate,
                          std::hypot(first.standard_error, second.standard_error)};
  const double quantile = boost::math::quantile(complement(boost::math::normal(), (1 - confidence) / 2));
  return {difference.estimate, difference.standard_error, about(difference, quantile),
          std::erfc(std::abs(difference.estimate) / difference.standard_error / std::sqrt(2.0))};
}

Heterogeneity heterogeneity(std::span<const Effect> effects, double confidence) {
  require_count("number of campaigns", std::ssize(effects), 2, 1'000);
  for (std::size_t i = 0; i < effects.size(); ++i) check(effects[i], " of campaign " + std::to_string(i + 1));
  require_level("confidence", confidence);
  const double degrees = double(effects.size() - 1), tail = (1 - confidence) / 2;
  const Weighed common = weighed(effects, 0);
  Heterogeneity found{};
  found.q = common.q;
  found.degrees_of_freedom = static_cast<int>(degrees);
  found.p = cdf(complement(boost::math::chi_squared(degrees), common.q));
  found.inconsistent_share = common.q > degrees ? (common.q - degrees) / common.q : 0;
  found.between_variance = between_variance(effects);
  found.common = common.mean;
  found.common_interval = about(common.mean, quantile(complement(boost::math::normal(), tail)));
  const Weighed varying = weighed(effects, found.between_variance);
  found.average = {varying.mean.estimate, varying.mean.standard_error * std::sqrt(varying.q / degrees)};
  found.average_interval = about(found.average, quantile(complement(boost::math::students_t(degrees), tail)));
  return found;
}

}  // namespace stats
