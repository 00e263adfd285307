#include "stats/psychometric/curve_link.h"

#include <algorithm>
#include <boost/math/constants/constants.hpp>
#include <boost/math/distributions/normal.hpp>
#include <cmath>

namespace stats {

LinkAt link_at(CurveLink link, double x) {
  x = std::clamp(x, -30.0, link == CurveLink::cloglog ? 6.5 : 30.0);
  if (link == CurveLink::logit) {
    const double share = 1 / (1 + std::exp(-x)), rest = 1 / (1 + std::exp(x));
    return {share, rest, share * rest, share * rest * (rest - share)};
  }
  if (link == CurveLink::probit) {
    const double root_half = boost::math::constants::one_div_root_two<double>();
    const double density = std::exp(-x * x / 2) * boost::math::constants::one_div_root_two_pi<double>();
    return {std::erfc(-x * root_half) / 2, std::erfc(x * root_half) / 2, density, -x * density};
  }
  const double rate = std::exp(x), rest = std::exp(-rate);
  return {-std::expm1(-rate), rest, rate * rest, rate * rest * (1 - rate)};
}

double link_inverse(CurveLink link, double share) {
  if (link == CurveLink::logit) return std::log(share / (1 - share));
  if (link == CurveLink::probit) return quantile(boost::math::normal(), share);
  return std::log(-std::log1p(-share));
}

}  // namespace stats
