#include "stats/permutation.h"

#include <cmath>
#include <cstdlib>

#include "stats/arguments.h"

namespace stats {

bool counts_against(std::int64_t statistic, std::int64_t seen, Alternative alternative) {
  if (alternative == Alternative::greater) return statistic >= seen;
  if (alternative == Alternative::less) return statistic <= seen;
  return std::abs(statistic) >= std::abs(seen);
}

bool counts_against(double statistic, double seen, Alternative alternative, double tolerance) {
  if (alternative == Alternative::greater) return statistic >= seen - tolerance;
  if (alternative == Alternative::less) return statistic <= seen + tolerance;
  return std::abs(statistic) >= std::abs(seen) - tolerance;
}

PermutationP exact_p(double p) { return {p, true, 0, 0.0}; }

PermutationP monte_carlo_p(std::int64_t reaching, int draws) {
  const double p = double(reaching + 1) / (draws + 1.0);
  return {p, false, draws, std::sqrt(p * (1 - p) / draws)};
}

void require_draws(const MonteCarlo& monte_carlo) {
  require_count("draws", monte_carlo.draws, 1, 100'000'000);
}

}  // namespace stats
