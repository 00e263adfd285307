#pragma once

#include <span>
#include <vector>

#include "stats/sequential/alpha_spending.h"

namespace stats {

/// Group-sequential tests of a normal score that is looked at several times: Z at look k has correlation
/// sqrt(t_j/t_k) with Z at look j < k, where t is the information (the number of trials) in any unit, and
/// under the null each Z is standard normal. On counts these are approximations: put them to counts with
/// `score_rule` and see what they truly do, or use `spending_rule`, which is exact.
///
/// Accuracy of every function: probabilities to 1e-12, boundaries and constants to 1e-9 (recursive
/// Gauss-Legendre integration).
/// Time: for 50 equal looks about 10 ms for a size and 0.2 s for a constant.
/// Source of the recursion: P. Armitage, C. K. McPherson and B. C. Rowe, J. R. Stat. Soc. A 132 (1969) 235;
/// C. Jennison and B. W. Turnbull, Group Sequential Methods (2000), chapter 19.

/// Stopping when Z reaches the boundary, or when it reaches it in either direction.
enum class Sides { one, two };

/// Probability under the null that Z is first on or beyond its boundary at look 1, 2, ...; their sum is the
/// size of the test.
///
/// @param boundary     1 to 100 numbers, for two sides 0 or more; infinity closes a look.
/// @param information  for each look, above 0 and rising by at least 0.0001 of the last; only its ratios
///                     matter.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 1.96 at each of 5 equal looks, two sides: 0.050 and then 0.033, 0.024, 0.019 and 0.016, in all
/// 0.142.
std::vector<double> exit_probabilities(std::span<const double> boundary, std::span<const double> information,
                                       Sides sides);

/// The constant boundary with that level over `looks` equally spaced looks.
/// @param looks  1 to 100.
/// @param level  strictly between 0 and 1, for two sides both together; for one side below 1/2.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 5 looks at 0.05, two sides: 2.41318, a nominal level of 0.0158 at each look.
/// Source: S. J. Pocock, Biometrika 64 (1977) 191.
double pocock_constant(int looks, double level, Sides sides);

/// The constant C of the boundary C sqrt(K/k) at look k of K. Arguments as above.
/// Example: 5 looks at 0.05, two sides: 2.04007.
/// Source: P. C. O'Brien and T. R. Fleming, Biometrics 35 (1979) 549.
double obrien_fleming_constant(int looks, double level, Sides sides);

/// The boundary that spends `level` by a spending function (alpha_spending.h).
/// @param fractions  of the information at each look, 1 to 100 numbers above 0 and at most 1, rising by at
///                   least 0.0001.
/// @return  one number for each look; infinity where less than 1e-300 may be spent.
/// For two sides the whole level is spent on both together. Many programs spend level/2 on each side by a
/// function of its own: for that ask for one side at level/2.
/// Example: looks at 1/2 and 1, O'Brien-Fleming type: 2.77181 and 1.97931 for two sides at 0.05; 2.96259 and
/// 1.96860 for one side at 0.025.
std::vector<double> spending_boundary(Spending spending, double level, std::span<const double> fractions,
                                      Sides sides);

}  // namespace stats
