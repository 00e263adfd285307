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
std::vector<double> bonferroni(std::span<const double> p);

/// Holm's step-down: controls the same and never needs a smaller p than Bonferroni.
/// Source: S. Holm, Scand. J. Statist. 6 (1979) 65.
std::vector<double> holm(std::span<const double> p);

/// Benjamini-Hochberg's step-up: controls the expected share of false ones among the supported (for
/// independent or positively dependent tests). Source: Y. Benjamini and Y. Hochberg, J. R. Stat. Soc. B 57
/// (1995) 289.
std::vector<double> benjamini_hochberg(std::span<const double> p);

}  // namespace stats
