#pragma once

#include <optional>
#include <string_view>

#include "stats/discrimination/share_right.h"
#include "stats/share/interval.h"

namespace stats {

/// d' of an unbiased observer, estimated from the number right.
struct DPrimeEstimate {
  double
      d_prime;  ///< most likely: 0 with no more right than by chance, infinity where every answer was right
  std::optional<double> standard_error;  ///< by the delta method; nothing at d' = 0 and at infinity
  Interval limits;                       ///< likelihood interval
};

/// @param link        how was asked and decided, see share_right.h.
/// @param correct     right answers, 0 to `trials`.
/// @param trials      answers given, 1 to 1,000,000; independent, with the same d' in each.
/// @param confidence  strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// The limits are those of `likelihood_interval` for the share right, taken to d': the upper is infinity
/// where every answer was right, the lower 0 where chance is within the share's interval. Both are 0 where
/// even the share's upper limit is below chance: then no d' fits. The standard error is sqrt(s (1 - s)/n) /
/// slope at the estimate; near 0 and with nearly all right it means little.
///
/// An approximation: the coverage is that of the share's interval at the share right that d' gives. At 0.95
/// it is never below, for any link and d' above 0 (rounded down):
///
///     trials                          10      16      20      50     100
///     all d'                      0.8346  0.8257  0.8224  0.8425  0.8411
///     share right 0.6 to 0.9      0.8346  0.8257  0.8671  0.9155  0.9266
///
/// For a bound that holds, take the exact interval (clopper_pearson) to d' by `d_prime_at`.
/// Example: 12 of 16 in ABX by differencing at 0.95: d' = 2.02, standard error 0.684, limits 0.348 to 3.456.
/// Source: P. M. Brockhoff and R. H. B. Christensen, Food Qual. Prefer. 21 (2010) 330.
DPrimeEstimate estimate_d_prime(Link link, int correct, int trials, double confidence);

/// What to say of an estimate that is no ordinary number: "infinite: every answer was right", "0: no more right than by
/// chance", "0: so few right that no d' fits" (then both limits are 0); empty for others.
std::string_view d_prime_remark(const DPrimeEstimate& estimate);

}  // namespace stats
