#pragma once

#include <span>

namespace stats {

/// Several one-sided p-values of independent tests combined into one, for the hypothesis that every single
/// null is true. A statistic, and its p.
///
/// Both are exact for independent continuous p-values. Those of exact tests on counts are discrete and larger
/// than a continuous one would be, so the combined p is conservative: four binomial tests of 16 trials at
/// chance 1/2, Fisher at 0.05, support in truth with probability 0.0185, Stouffer with 0.0164
/// (enumerated, tests/stats).
///
/// @param p  1 or more values above 0 (from the smallest normal double) to 1, all of tests in the same
///           direction; a p of 0 is no exact p and is refused.
/// @throws std::domain_error  naming the argument, its value and its range.
struct CombinedP {
  double statistic;
  double p;
};

/// Fisher: -2 times the sum of ln p, chi-square with 2 degrees of freedom for each p.
///
/// Example: {0.01, 0.2, 0.3} gives 14.837, p = 0.0216.
/// Source: R. A. Fisher, Statistical Methods for Research Workers (4th ed. 1932), section 21.1.
CombinedP fisher_combination(std::span<const double> p);

/// Stouffer: the normal z of each p, their weighted sum divided by the root of the sum of squared weights. A
/// p of exactly 1 has z = -infinity and makes the combined p 1.
///
/// @param weights  one for each p, above 0 and at most 10^6 (the root of its number of trials, say); none at
///                 all for equal weights.
///
/// Example: {0.01, 0.2, 0.3} gives z = 2.132, p = 0.0165.
/// Source: S. A. Stouffer and others, The American Soldier (1949), volume 1; weights: T. Liptak, Magyar Tud.
/// Akad. Mat. Kut. Int. Kozl. 3 (1958) 171.
CombinedP stouffer_combination(std::span<const double> p, std::span<const double> weights = {});

}  // namespace stats
