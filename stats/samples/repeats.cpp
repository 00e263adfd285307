#include "stats/samples/repeats.h"

#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <stdexcept>

#include "stats/arguments.h"
#include "stats/samples/mean_difference.h"

namespace stats {

RepeatSpread spread_within(std::span<const std::vector<double>> groups) {
  double squares = 0;
  int degrees = 0;
  for (const auto& group : groups) {
    require_finite("repeats", group);
    const double centre = mean(group);
    for (const double value : group) squares += (value - centre) * (value - centre);
    degrees += static_cast<int>(group.size()) - 1;
  }
  return {degrees > 0 ? std::optional(std::sqrt(squares / degrees)) : std::nullopt, degrees};
}

double repeatability_limit(const RepeatSpread& spread, int first, int second, double confidence) {
  require_count("first repeats", first, 1, 100'000);
  require_count("second repeats", second, 1, 100'000);
  require_count("degrees of freedom", spread.degrees_of_freedom, 1, 1'000'000'000);
  require_level("confidence", confidence);
  if (!spread.standard_deviation) throw std::domain_error("a standard deviation within repeats is needed");
  const double t = quantile(boost::math::students_t(spread.degrees_of_freedom), (1 + confidence) / 2);
  return t * *spread.standard_deviation * std::sqrt(1.0 / first + 1.0 / second);
}

}  // namespace stats
