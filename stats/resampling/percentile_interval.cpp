#include "stats/resampling/percentile_interval.h"

#include <algorithm>
#include <cmath>

namespace stats {

Interval percentile_interval(std::span<double> values, double confidence) {
  const double n = double(values.size());
  const auto place_of = [&](double share) {
    const double place = std::clamp(std::ceil(n * share - 1e-9 * n * share), 1.0, n);
    return values.begin() + static_cast<std::ptrdiff_t>(place) - 1;
  };
  const auto lower = place_of((1 - confidence) / 2), upper = place_of((1 + confidence) / 2);
  std::nth_element(values.begin(), lower, values.end());
  const double lower_value = *lower;
  std::nth_element(lower, upper, values.end());
  return {lower_value, *upper};
}

}  // namespace stats
