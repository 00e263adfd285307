#pragma once

#include <optional>

#include "stats/discrimination/hits.h"
#include "stats/share/interval.h"

namespace stats {

/// d' from hits and false alarms, with a likelihood interval.
struct HitEstimate {
  std::optional<double> d_prime;  ///< `d_prime_of_rates` of the rates as counted, uncorrected
  Interval limits;
};

/// Profile-likelihood interval: the d' at which, with the criterion chosen as likely as it can be for that
/// d', the counts are not too much less likely than the rates seen make them: 2 [l(seen) - l(d')] <= the
/// chi-square quantile (1 degree of freedom) at `confidence`.
///
/// The upper limit is infinity where all signals were hits or no noise gave a false alarm. In the yes-no task
/// the lower limit is minus infinity where there was no hit or nothing but false alarms; in the other models
/// limits below 0 are 0, both where no d' fits well enough (H much below F). In ABX and by independent
/// observation the limits are those of z(H) - z(F), taken to d'.
///
/// An approximation. Coverage at 0.95 in the yes-no task with the criterion half-way, by enumeration and
/// rounded down:
///
///     trials of each      10      20
///     d' = 0          0.9477  0.9574
///     d' = 1          0.9356  0.9492
///     d' = 2          0.9466  0.9190
///
/// @param confidence  strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: error of the limits below 1e-8 up to 1,000 trials.
/// Example: 15 hits of 20 and 6 false alarms of 20, yes-no, 0.95: d' = 1.199, limits 0.383 to 2.048.
/// Source: D. D. Dorfman and E. Alf, Psychometrika 33 (1968) 117 (likelihood); S. S. Wilks, Ann. Math.
/// Statist. 9 (1938) 60.
HitEstimate estimate_d_prime_of_hits(HitModel model, const HitCounts& counts, double confidence);

}  // namespace stats
