#include "stats/sequential/sequential_power.h"

#include <vector>

#include "stats/arguments.h"
#include "stats/root.h"

namespace stats {

double sequential_power(const StoppingRule& rule, std::span<const int> answers, double share) {
  require_closed_probability("share", share);
  std::vector<Gain> gains;
  for (const int count : answers) gains.push_back({count, 0, share});
  return operate(rule, gains).support;
}

std::optional<double> sequential_share_caught(const StoppingRule& rule, std::span<const int> answers,
                                              double probability) {
  require_level("probability", probability);
  if (sequential_power(rule, answers, 1) < probability) return std::nullopt;
  if (sequential_power(rule, answers, 0) >= probability) return 0.0;
  const auto excess = [&](double share) { return sequential_power(rule, answers, share) - probability; };
  return root_between(excess, 0.0, 1.0, 40);
}

}  // namespace stats
