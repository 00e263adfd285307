#include "stats/sequential/shared_stopping.h"

#include <cstddef>
#include <vector>

#include "stats/arguments.h"
#include "stats/sequential/spending_rule.h"

namespace stats {
namespace {

std::vector<Gain> gains_of_splits(std::span<const Split> splits) {
  std::vector<Gain> gains;
  for (const auto [one, other] : splits) gains.push_back({one, other, 0.5});
  return gains;
}

}  // namespace

Operation operate_shared(const StoppingRule& rule, std::span<const Split> splits) {
  return operate(rule, gains_of_splits(splits));
}

StoppingRule unadjusted_shared_rule(std::span<const Split> splits, double level) {
  require_count("number of splits", std::ssize(splits), 1, kMostTrials);
  StoppingRule rule;
  for (std::size_t n = 1; n <= splits.size(); ++n)
    rule.looks.push_back({redraw_minimum(splits.first(n), level), {}});
  return rule;
}

StoppingRule shared_spending_rule(std::span<const Split> splits, std::span<const int> looks,
                                  std::span<const double> spent) {
  return spending_rule(looks, spent, gains_of_splits(splits));
}

}  // namespace stats
