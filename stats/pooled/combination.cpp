#include "stats/pooled/combination.h"

#include <boost/math/distributions/normal.hpp>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <limits>
#include <string>

#include "stats/arguments.h"

namespace stats {
namespace {

void require_combinable(std::span<const double> p) {
  require_count("number of p", std::ssize(p), 1, kMostTrials);
  for (std::size_t i = 0; i < p.size(); ++i)
    require_between("p[" + std::to_string(i) + "]", p[i], std::numeric_limits<double>::min(), 1);
}

double z_of_upper_tail(double p) {
  if (p == 1) return -std::numeric_limits<double>::infinity();
  return quantile(complement(boost::math::normal(), p));
}

}  // namespace

CombinedP fisher_combination(std::span<const double> p) {
  require_combinable(p);
  double statistic = 0;
  for (const double value : p) statistic -= 2 * std::log(value);
  return {statistic, boost::math::gamma_q(double(p.size()), statistic / 2)};
}

CombinedP stouffer_combination(std::span<const double> p, std::span<const double> weights) {
  require_combinable(p);
  if (!weights.empty()) require_count("number of weights", std::ssize(weights), std::ssize(p), std::ssize(p));
  for (std::size_t i = 0; i < weights.size(); ++i)
    require_between("weights[" + std::to_string(i) + "]", weights[i], std::numeric_limits<float>::min(), 1e6);
  double sum = 0, squares = 0;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const double weight = weights.empty() ? 1.0 : weights[i];
    sum += weight * z_of_upper_tail(p[i]);
    squares += weight * weight;
  }
  const double z = sum / std::sqrt(squares);
  return {z, std::erfc(z / std::sqrt(2.0)) / 2};
}

}  // namespace stats
