#pragma once

#include <boost/math/constants/constants.hpp>
#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <limits>

namespace stats {

/// The standard normal distribution, to full relative accuracy in the lower tail; infinite arguments are
/// allowed.

/// Phi(x), the probability below x.
inline double normal_below(double x) {
  if (std::isinf(x)) return x > 0 ? 1 : 0;
  return boost::math::erfc(-x / boost::math::constants::root_two<double>()) / 2;
}

inline double normal_density(double x) {
  return boost::math::constants::one_div_root_two_pi<double>() * std::exp(-x * x / 2);
}

/// z(probability), the inverse of `normal_below`: minus infinity at 0, infinity at 1.
inline double normal_quantile(double probability) {
  if (probability == 0) return -std::numeric_limits<double>::infinity();
  if (probability == 1) return std::numeric_limits<double>::infinity();
  return -boost::math::constants::root_two<double>() * boost::math::erfc_inv(2 * probability);
}

}  // namespace stats
