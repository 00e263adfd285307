#pragma once

#include <optional>

namespace stats {

/// Answers counted by what was presented. A hit is the answer "A" to A (or "different" to different), a false
/// alarm the same answer to B (or to same).
struct HitCounts {
  int hits;          ///< 0 to `signals`
  int signals;       ///< trials that presented A, 1 to 1,000,000
  int false_alarms;  ///< 0 to `noises`
  int noises;        ///< trials that presented B, 1 to 1,000,000
};

/// Share of hits and share of false alarms, each between 0 and 1.
struct HitRates {
  double hit;
  double false_alarm;
};

/// All functions
/// @throws std::domain_error  naming the argument, its value and its range.

/// The rates as counted.
HitRates hit_rates(const HitCounts& counts);

/// The rates with the log-linear correction: 1/2 added to each of the four counts, (hits + 1/2)/(signals +
/// 1), so that no rate is 0 or 1 and every measure is finite. It draws d' towards 0; no function here applies
/// it by itself, and a report must name it.
/// Source: M. J. Hautus, Behav. Res. Methods Instrum. Comput. 27 (1995) 46.
HitRates log_linear_rates(const HitCounts& counts);

/// How the answer follows from what was presented.
enum class HitModel {
  yes_no,                       ///< one presentation, "A" or "not A"
  same_different_differencing,  ///< "different" where two presentations lie farther apart than a criterion
  same_different_independent,
  abx_differencing,  ///< hit: "X is A" to A
  abx_independent,
};

/// d' from rates. In the yes-no task z(H) - z(F), which is negative where A is called A more rarely than B.
/// In ABX and by independent observation the d' of the link (share_right.h) at Phi((z(H) - z(F))/2), the
/// share right without bias, and 0 where H <= F. In same-different by differencing the d' with H = Phi((d' -
/// k)/sqrt 2) + Phi((-d' - k)/sqrt 2), where the criterion k has F = 2 Phi(-k/sqrt 2); 0 where H <= F.
///
/// @return  infinity where H = 1 or F = 0; minus infinity, in the other models 0, where H = 0 or F = 1;
///          nothing where both rates are 0 or both 1: then any d' fits. Error below 1e-9.
/// Example: H = 0.75, F = 0.30: 1.199 in the yes-no task, 1.869 in ABX by differencing, 1.661 by independent
/// observation, 2.406 and 1.955 in same-different.
/// Source: N. A. Macmillan and C. D. Creelman, Detection Theory, 2nd ed. (2005), chapters 1 and 9.
std::optional<double> d_prime_of_rates(HitModel model, HitRates rates);

/// Criterion of the yes-no task, c = -(z(H) + z(F))/2, in standard deviations from half-way between the
/// means: above 0 the observer says "A" too rarely. Infinite where only one rate is 0 or 1, or both are
/// alike; nothing where one is 0 and the other 1.
/// Example: H = 0.75, F = 0.30: c = -0.075.
std::optional<double> criterion_c(HitRates rates);

/// ln beta = c d' = [z(F)^2 - z(H)^2]/2, the logarithm of the likelihood ratio at the criterion; beta is its
/// exponential. Nothing where both rates are 0 or 1.
/// Example: H = 0.75, F = 0.30: ln beta = -0.090, beta = 0.914.
std::optional<double> ln_beta(HitRates rates);

}  // namespace stats
