#pragma once

#include "stats/share/interval.h"

namespace stats {

/// More intervals for a true share, approximations like `wilson`: near `confidence` on average, below it for
/// some shares. How far below says coverage.h. Arguments and refusals: as for the intervals of interval.h.

/// Mid-p interval: as the exact one, but of the probability of the count seen only half is counted in each
/// tail. At 0.95 its coverage is never below 0.923 for 16 trials, 0.920 for 100. With nothing right it goes
/// from 0 to 1 - (1 - confidence)^(1/n).
///
/// Example: 12 of 16 at 0.95 gives 0.501 to 0.915.
/// Source: H. O. Lancaster, J. Am. Stat. Assoc. 56 (1961) 223; G. Berry and P. Armitage, The Statistician 44
/// (1995) 417.
Interval mid_p(int correct, int trials, double confidence);

/// One-sided limits: at the lower, P(X > correct) + P(X = correct)/2 is 1 - confidence. Below a confidence of
/// 1/2 that is above 0 also with nothing right; where no share has so much, with everything right, it is 1.
double mid_p_lower(int correct, int trials, double confidence);
double mid_p_upper(int correct, int trials, double confidence);

/// Interval of Jeffreys: quantiles of the beta distribution with correct + 1/2 and trials - correct + 1/2,
/// but lower is 0 with nothing right and upper 1 with everything right. At 0.95 its coverage is never below
/// 0.896 for 16 trials, 0.880 for 100.
///
/// Example: 12 of 16 at 0.95 gives 0.509 to 0.909.
/// Source: L. D. Brown, T. T. Cai and A. DasGupta, Statist. Sci. 16 (2001) 101.
Interval jeffreys(int correct, int trials, double confidence);

/// One-sided limits of Jeffreys, likewise.
double jeffreys_lower(int correct, int trials, double confidence);
double jeffreys_upper(int correct, int trials, double confidence);

/// Likelihood interval: the shares whose binomial likelihood is not too far below that of the share seen, 2
/// [l(seen) - l(share)] <= the chi-square quantile (1 degree of freedom) at `confidence`. It does not depend
/// on the scale: for any growing function of the share, the interval is that function of these limits. Lower
/// is 0 with nothing right, upper 1 with everything right. At 0.95 its coverage is never below 0.825 for 16
/// trials, 0.841 for 100.
///
/// Example: 12 of 16 at 0.95 gives 0.511 to 0.915.
/// Source: S. S. Wilks, Ann. Math. Statist. 9 (1938) 60.
Interval likelihood_interval(int correct, int trials, double confidence);

}  // namespace stats
