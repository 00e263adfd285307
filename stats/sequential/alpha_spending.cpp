#include "stats/sequential/alpha_spending.h"

#include <boost/math/constants/constants.hpp>
#include <boost/math/special_functions/erf.hpp>
#include <cmath>

#include "stats/arguments.h"

namespace stats {

double level_spent(Spending spending, double level, double fraction) {
  require_level("level", level);
  require_closed_probability("fraction", fraction);
  if (fraction == 0 || fraction == 1) return fraction * level;
  if (spending == Spending::pocock)
    return level * std::log1p((boost::math::constants::e<double>() - 1) * fraction);
  return boost::math::erfc(boost::math::erfc_inv(level) /
                           std::sqrt(fraction));  // 2 (1 - Phi(x)) = erfc(x/sqrt 2)
}

}  // namespace stats
