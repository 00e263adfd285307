#include "stats/sequential/rules_on_counts.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <vector>

#include "stats/arguments.h"
#include "stats/share/operating_table.h"

namespace stats {
namespace {

Look& look_after_trial(StoppingRule& rule, int trial) {
  return rule.looks[static_cast<std::size_t>(trial) - 1];
}

StoppingRule rule_without_bounds(int trials) { return {std::vector<Look>(static_cast<std::size_t>(trials))}; }

}  // namespace

StoppingRule fixed_rule(int trials, double level, double chance) {
  require_count("trials", trials, 1, kMostTrials);
  return unadjusted_rule(std::vector{trials}, level, chance);
}

StoppingRule unadjusted_rule(int trials, double level, double chance, int first_look) {
  require_count("trials", trials, 1, kMostTrials);
  require_count("first_look", first_look, 1, trials);
  std::vector<int> looks(static_cast<std::size_t>(trials - first_look) + 1);
  std::iota(looks.begin(), looks.end(), first_look);
  return unadjusted_rule(looks, level, chance);
}

StoppingRule unadjusted_rule(std::span<const int> looks, double level, double chance) {
  require_looks(looks, kMostTrials);
  const auto minimum = operating_table(looks.back(), level, chance, {}).minimum_correct;
  StoppingRule rule = rule_without_bounds(looks.back());
  for (const int trial : looks) {
    const int needed = minimum[static_cast<std::size_t>(trial) - 1];
    if (needed <= trial) look_after_trial(rule, trial).support = needed;
  }
  return rule;
}

StoppingRule score_rule(std::span<const int> looks, std::span<const double> boundary, double chance) {
  require_looks(looks, kMostTrials);
  require_count("number of boundaries", std::ssize(boundary), std::ssize(looks), std::ssize(looks));
  require_open_probability("chance", chance);
  StoppingRule rule = rule_without_bounds(looks.back());
  for (std::size_t k = 0; k < looks.size(); ++k) {
    require_between("boundary", boundary[k], -INFINITY, INFINITY);
    const double n = looks[k];
    const double count =
        std::ceil(n * chance + boundary[k] * std::sqrt(n * chance * (1 - chance)) - 1e-12 * n);
    if (count <= n)
      look_after_trial(rule, looks[k]).support = std::max(0, static_cast<int>(std::fmax(count, 0)));
  }
  return rule;
}

StoppingRule e_process_rule(int trials, double level, const LogEProcess& log_e) {
  require_count("trials", trials, 1, kMostTrials);
  require_level("level", level);
  const double needed = -std::log(level) * (1 - 1e-12);
  StoppingRule rule;
  int upper = 0;   // smallest count of the upper side
  int lower = -1;  // largest count of the lower side
  for (int n = 1; n <= trials; ++n) {
    const auto enough = [&](int count) { return log_e(count, n) >= needed; };
    ++upper;
    while (upper > 0 && enough(upper - 1)) --upper;
    while (upper <= n && !enough(upper)) ++upper;
    while (lower + 1 < upper && enough(lower + 1)) ++lower;
    while (lower >= 0 && !enough(lower)) --lower;
    rule.looks.push_back(
        {upper <= n ? std::optional(upper) : std::nullopt, lower >= 0 ? std::optional(lower) : std::nullopt});
  }
  return rule;
}

}  // namespace stats
