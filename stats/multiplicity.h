#pragma once

#include <span>
#include <vector>

namespace stats {

/// Adjusted p-values of a family of tests, in the order given; each is compared with the level of the whole
/// family. Equal p-values get equal adjusted values; none exceeds 1. An empty family gives an empty result.
///
/// @param p  raw p-values, each between 0 and 1; a planned test that was not carried out counts as 1.
/// @throws std::domain_error  for a value outside, not-a-number included, with its place counted from 0.

/// Bonferroni: p times the number of tests. Controls the chance of any false support, whatever the
/// dependence.
///
/// Example for all: of {0.01, 0.02, 0.03, 0.04} the adjusted p of the last is 0.16 by Bonferroni, 0.06 by
/// Holm, 0.04 by Hochberg, Hommel and Benjamini-Hochberg, and 0.083 by Benjamini-Yekutieli.
std::vector<double> bonferroni(std::span<const double> p);

/// Holm's step-down: controls the same and never needs a smaller p than Bonferroni.
/// Source: S. Holm, Scand. J. Statist. 6 (1979) 65.
std::vector<double> holm(std::span<const double> p);

/// Hochberg's step-up: never needs a smaller p than Holm. Controls the same for independent and for
/// positively dependent tests (where Simes' inequality holds). Source: Y. Hochberg, Biometrika 75 (1988) 800.
std::vector<double> hochberg(std::span<const double> p);

/// Hommel: never needs a smaller p than Hochberg, under the same condition. Takes time by the square of the
/// number of tests. Source: G. Hommel, Biometrika 75 (1988) 383; as computed by S. P. Wright, Biometrics 48
/// (1992) 1005.
std::vector<double> hommel(std::span<const double> p);

/// Benjamini-Hochberg's step-up: controls the expected share of false ones among the supported (for
/// independent or positively dependent tests). Source: Y. Benjamini and Y. Hochberg, J. R. Stat. Soc. B 57
/// (1995) 289.
std::vector<double> benjamini_hochberg(std::span<const double> p);

/// Benjamini-Yekutieli: Benjamini-Hochberg times 1 + 1/2 + ... + 1/n; controls the same whatever the
/// dependence.
/// Source: Y. Benjamini and D. Yekutieli, Ann. Statist. 29 (2001) 1165.
std::vector<double> benjamini_yekutieli(std::span<const double> p);

}  // namespace stats
