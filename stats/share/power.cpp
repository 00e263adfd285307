#include "stats/share/power.h"

#include <algorithm>
#include <array>
#include <boost/math/special_functions/beta.hpp>
#include <vector>

#include "stats/arguments.h"
#include "stats/share/binomial.h"
#include "stats/share/operating_table.h"

namespace stats {
namespace {

double tail_at(double share, int correct, int trials) {
  if (share == 0 || share == 1) return share;
  return chance_of_at_least(correct, trials, share);
}

std::vector<double> power_by_trials(double target, double share, double level, double chance, int limit) {
  require_level("target", target);
  require_closed_probability("share", share);
  require_count("limit", limit, 1, kMostTrials);
  return operating_table(limit, level, chance, std::array{share}).power.front();
}

/// Powers that equal the target to 12 digits count as reaching it.
auto falls_short_of(double target) {
  return [=](double power) { return power < target * (1 - 1e-12); };
}

}  // namespace

PowerOfTrials power_of_trials(double share, int trials, double level, double chance) {
  require_closed_probability("share", share);
  const auto minimum = minimum_correct(trials, level, chance);
  if (!minimum) return {trials, minimum, 0.0, 0.0};
  return {trials, minimum, chance_of_at_least(*minimum, trials, chance), tail_at(share, *minimum, trials)};
}

std::optional<PowerOfTrials> smallest_trials_first(double target, double share, double level, double chance,
                                                   int limit) {
  const auto power = power_by_trials(target, share, level, chance, limit);
  const auto first = std::find_if_not(power.begin(), power.end(), falls_short_of(target));
  if (first == power.end()) return std::nullopt;
  return power_of_trials(share, static_cast<int>(first - power.begin()) + 1, level, chance);
}

std::optional<PowerOfTrials> smallest_trials_stable(double target, double share, double level, double chance,
                                                    int limit) {
  const auto power = power_by_trials(target, share, level, chance, limit);
  const auto last_short = std::find_if(power.rbegin(), power.rend(), falls_short_of(target));
  if (last_short == power.rbegin()) return std::nullopt;
  return power_of_trials(share, static_cast<int>(power.rend() - last_short) + 1, level, chance);
}

std::optional<double> smallest_share_caught(int trials, double level, double chance, double probability) {
  const auto minimum = minimum_correct(trials, level, chance);
  require_level("probability", probability);
  if (!minimum) return std::nullopt;
  return boost::math::ibeta_inv(double(*minimum), trials - *minimum + 1.0, probability);
}

double share_heard(double share, double chance) {
  require_open_probability("chance", chance);
  require_between("share", share, chance, 1);
  return (share - chance) / (1 - chance);
}

double share_right(double heard, double chance) {
  require_open_probability("chance", chance);
  require_closed_probability("heard", heard);
  return chance + heard * (1 - chance);
}

}  // namespace stats
