#include "stats/sequential/spending_rule.h"

#include <cmath>
#include <cstddef>
#include <vector>

#include "stats/arguments.h"

namespace stats {
namespace {

void check_spent_levels(std::span<const double> spent, std::span<const int> looks) {
  require_count("number of levels spent", std::ssize(spent), std::ssize(looks), std::ssize(looks));
  double before = 0;
  for (const double level : spent) {
    require_between("spent", level, before, std::nextafter(1.0, 0.0));
    before = level;
  }
}

}  // namespace

StoppingRule spending_rule(std::span<const int> looks, std::span<const double> spent,
                           std::span<const Gain> gains) {
  require_looks(looks, static_cast<int>(std::ssize(gains)));
  check_spent_levels(spent, looks);
  StoppingRule rule{std::vector<Look>(static_cast<std::size_t>(looks.back()))};
  RunningTotal total;
  double false_alarms = 0;
  int trial = 0;
  for (std::size_t k = 0; k < looks.size(); ++k) {
    while (trial < looks[k]) total.add(gains[static_cast<std::size_t>(trial++)]);
    const auto needed = total.smallest_total(false_alarms, spent[k]);
    if (needed) false_alarms += total.take_at_least(*needed);
    rule.looks[static_cast<std::size_t>(trial) - 1].support = needed;
  }
  return rule;
}

StoppingRule spending_rule(std::span<const int> looks, std::span<const double> spent, double chance) {
  require_open_probability("chance", chance);
  require_looks(looks, kMostTrials);
  const std::vector<Gain> gains(static_cast<std::size_t>(looks.back()), {1, 0, chance});
  return spending_rule(looks, spent, gains);
}

}  // namespace stats
