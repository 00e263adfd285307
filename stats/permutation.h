#pragma once

#include <cstdint>

namespace stats {

/// Which arrangements count against the null: those with a statistic at least as large as the one seen, at
/// most as large, or at least as far from its mean under the null.
enum class Alternative { greater, less, two_sided };

/// Whether a statistic centred on its mean under the null counts against it as much as the one seen.
bool counts_against(std::int64_t statistic, std::int64_t seen, Alternative alternative);

/// The same for statistics with rounding errors: within `tolerance` they count as equal.
bool counts_against(double statistic, double seen, Alternative alternative, double tolerance);

/// How the permutation tests draw where they cannot look at every arrangement.
struct MonteCarlo {
  std::uint64_t seed = 1;  ///< the same seed gives the same result on every machine
  int draws = 99'999;      ///< 1 to 100,000,000
};

/// p of a permutation test, with what it rests on.
struct PermutationP {
  double p;
  bool exact;             ///< every arrangement was counted; otherwise drawn at random
  int draws;              ///< random arrangements drawn, 0 when exact
  double standard_error;  ///< of p by the draws, sqrt(p (1 - p) / draws); 0 when exact
};

/// An exact p.
PermutationP exact_p(double p);

/// p of `reaching` of `draws` random arrangements: (reaching + 1)/(draws + 1), the seen arrangement counted
/// among them, so that the test holds its level for every number of draws. Source: A. C. Davison and D. V.
/// Hinkley, Bootstrap Methods and their Application (1997), section 4.2.
PermutationP monte_carlo_p(std::int64_t reaching, int draws);

/// @throws std::domain_error  for draws outside the range.
void require_draws(const MonteCarlo& monte_carlo);

}  // namespace stats
