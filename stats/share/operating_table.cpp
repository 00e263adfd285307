#include "stats/share/operating_table.h"

#include <algorithm>
#include <cmath>

#include "stats/arguments.h"
#include "stats/level.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

/// Tail of the number right at a minimum: first for no trials and a minimum of 1.
struct Tail {
  double at_least = 0;    // P(X >= minimum)
  double just_below = 1;  // P(X = minimum - 1)
};

/// One more trial makes n; the minimum stays.
Tail with_same_minimum(Tail before, double share, int n, int minimum) {
  return {before.at_least + share * before.just_below,
          before.just_below * ((1 - share) * (double(n) / (n + 1 - minimum)))};
}

/// One more trial makes n; the minimum grows from `minimum` by one.
Tail with_higher_minimum(Tail before, double share, int n, int minimum) {
  return {before.at_least - share * before.just_below * (double(n - minimum) / minimum),
          before.just_below * (share * (double(n) / minimum))};
}

/// Near the level the error gathered on the way could decide; there the tail is computed afresh.
bool reaches_level(double tail, double level, int minimum, int n, double chance) {
  if (std::abs(tail - level) < 1e-9 * level) tail = chance_of_at_least(minimum, n, chance);
  return reaches(tail, level);
}

std::vector<double> power_along(std::span<const int> minimum_correct, double share) {
  std::vector<double> power(minimum_correct.size());
  Tail tail;
  int minimum = 1;
  for (std::size_t i = 0; i < power.size(); ++i) {
    const int n = static_cast<int>(i) + 1;
    tail = minimum_correct[i] == minimum ? with_same_minimum(tail, share, n, minimum)
                                         : with_higher_minimum(tail, share, n, minimum);
    minimum = minimum_correct[i];
    power[i] = std::clamp(tail.at_least, 0.0, 1.0);
  }
  return power;
}

}  // namespace

OperatingTable operating_table(int most_trials, double level, double chance, std::span<const double> shares) {
  require_count("most_trials", most_trials, 1, kMostTrials);
  require_level("level", level);
  require_open_probability("chance", chance);
  for (double share : shares) require_closed_probability("share", share);

  OperatingTable table;
  table.minimum_correct.reserve(static_cast<std::size_t>(most_trials));
  table.size.reserve(static_cast<std::size_t>(most_trials));
  Tail tail;
  int minimum = 1;
  for (int n = 1; n <= most_trials; ++n) {
    const Tail same = with_same_minimum(tail, chance, n, minimum);
    if (reaches_level(same.at_least, level, minimum, n, chance))
      tail = same;
    else
      tail = with_higher_minimum(tail, chance, n, minimum++);
    table.minimum_correct.push_back(minimum);
    table.size.push_back(tail.at_least);
  }
  for (double share : shares) table.power.push_back(power_along(table.minimum_correct, share));
  return table;
}

}  // namespace stats
