#include "stats/discrimination/hits.h"

#include <boost/math/constants/constants.hpp>
#include <cmath>
#include <limits>

#include "stats/arguments.h"
#include "stats/discrimination/normal.h"
#include "stats/discrimination/share_right.h"
#include "stats/root.h"

namespace stats {
namespace {

void check_hit_counts(const HitCounts& counts) {
  require_count("signals", counts.signals, 1, kMostTrials);
  require_count("hits", counts.hits, 0, counts.signals);
  require_count("noises", counts.noises, 1, kMostTrials);
  require_count("false_alarms", counts.false_alarms, 0, counts.noises);
}

void check_hit_rates(HitRates rates) {
  require_closed_probability("hit", rates.hit);
  require_closed_probability("false_alarm", rates.false_alarm);
}

/// Infinity less infinity says nothing.
std::optional<double> unless_undefined(double value) {
  if (std::isnan(value)) return std::nullopt;
  return value;
}

double through_link(Link link, double z_difference) {
  return d_prime_at(link, normal_below(z_difference / 2));
}

/// Needs 0 < F < H < 1.
double solve_differencing(HitRates rates) {
  constexpr double root_two = boost::math::constants::root_two<double>();
  const double criterion = -root_two * normal_quantile(rates.false_alarm / 2);
  const auto excess = [=](double d_prime) {
    return normal_below((d_prime - criterion) / root_two) + normal_below((-d_prime - criterion) / root_two) -
           rates.hit;
  };
  const double enough = std::fmax(0, criterion + root_two * normal_quantile(rates.hit)) + 1;
  return root_between(excess, 0.0, enough);
}

double d_prime_by_differencing(HitRates rates) {
  if (rates.hit <= rates.false_alarm) return 0;
  if (rates.hit == 1 || rates.false_alarm == 0) return std::numeric_limits<double>::infinity();
  return solve_differencing(rates);
}

}  // namespace

HitRates hit_rates(const HitCounts& counts) {
  check_hit_counts(counts);
  return {double(counts.hits) / counts.signals, double(counts.false_alarms) / counts.noises};
}

HitRates log_linear_rates(const HitCounts& counts) {
  check_hit_counts(counts);
  return {(counts.hits + 0.5) / (counts.signals + 1.0), (counts.false_alarms + 0.5) / (counts.noises + 1.0)};
}

std::optional<double> d_prime_of_rates(HitModel model, HitRates rates) {
  check_hit_rates(rates);
  const double z_difference = normal_quantile(rates.hit) - normal_quantile(rates.false_alarm);
  if (std::isnan(z_difference)) return std::nullopt;
  switch (model) {
    case HitModel::same_different_differencing:
      return d_prime_by_differencing(rates);
    case HitModel::same_different_independent:
      return through_link(Link::same_different_independent, z_difference);
    case HitModel::abx_differencing:
      return through_link(Link::abx_differencing, z_difference);
    case HitModel::abx_independent:
      return through_link(Link::abx_independent, z_difference);
    case HitModel::yes_no:
      break;
  }
  return z_difference;
}

std::optional<double> criterion_c(HitRates rates) {
  check_hit_rates(rates);
  return unless_undefined(-(normal_quantile(rates.hit) + normal_quantile(rates.false_alarm)) / 2);
}

std::optional<double> ln_beta(HitRates rates) {
  check_hit_rates(rates);
  const double z_hit = normal_quantile(rates.hit);
  const double z_false_alarm = normal_quantile(rates.false_alarm);
  return unless_undefined((z_false_alarm * z_false_alarm - z_hit * z_hit) / 2);
}

}  // namespace stats
