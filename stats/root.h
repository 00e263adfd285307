#pragma once

#include <boost/math/tools/toms748_solve.hpp>
#include <cstdint>

namespace stats {

/// Where a continuous function crosses 0 between two places at which it is of different sign (or 0), to `bits` of its
/// size.
/// Source: G. E. Alefeld, F. A. Potra and Y. Shi, ACM Trans. Math. Softw. 21 (1995) 327, in Boost.Math.
template <typename Function>
double root_between(const Function& function, double low, double high, int bits = 52) {
  std::uintmax_t steps = 200;
  const auto [below, above] = boost::math::tools::toms748_solve(
      function, low, high, boost::math::tools::eps_tolerance<double>(bits), steps);
  return (below + above) / 2;
}

}  // namespace stats
