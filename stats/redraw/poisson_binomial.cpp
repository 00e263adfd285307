#include "stats/redraw/poisson_binomial.h"

#include <cstddef>
#include <cstdint>

#include "stats/arguments.h"

namespace stats {

TotalDistribution poisson_binomial(std::span<const TrialGroup> groups) {
  constexpr int most_trials = 20'000;
  std::int64_t all = 0;
  for (const auto [trials, chance] : groups) {
    require_count("trials", trials, 0, most_trials);
    require_closed_probability("chance", chance);
    all += trials;
    require_count("trials of all groups", all, 0, most_trials);
  }
  TotalDistribution at(static_cast<std::size_t>(all) + 1);
  at[0] = 1;
  std::size_t done = 0;
  for (const auto [trials, chance] : groups)
    for (int trial = 0; trial < trials; ++trial) {
      for (std::size_t right = ++done; right > 0; --right)
        at[right] = at[right] * (1 - chance) + at[right - 1] * chance;
      at[0] *= 1 - chance;
    }
  return at;
}

}  // namespace stats
