#pragma once

#include <optional>
#include <span>
#include <vector>

#include "stats/permutation.h"

namespace stats {

/// Spearman's correlation of x with y beyond what both have in common with other properties.
struct PartialRho {
  double
      rho;  ///< of what is left of the ranks of x and of y after least squares on the ranks of the controls
  int degrees_of_freedom;  ///< n - 2 - controls
  double t_p;              ///< two-sided, by Student's t: an approximation
  PermutationP
      test;  ///< two-sided, what is left of x given to the items in any order; likewise an approximation
};

/// @param x, y      of equal length, 4 to 2,000, all finite.
/// @param controls  1 to 10 properties, each as long; at least 3 items more than controls.
/// @return  nothing where nothing is left of x or of y: one goes wholly with the controls.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Neither p is exact: what is left depends on the sample. Its true size at 0.05 with 10 items, of which x and y both go with
/// one control, is 0.069 by either (tests/simulation). The permutation counts every order up to 8 items, beyond it draws.
/// Example: x 1 2 3 4 5 6, y 2 1 4 3 6 5, control 1 1 2 2 3 3: rho -1: within equal controls they go against each other.
/// Source: M. G. Kendall and A. Stuart, The Advanced Theory of Statistics 2, chapter 27 (from memory); D. Freedman and D. Lane,
/// J. Bus. Econ. Stat. 1 (1983) 292.
std::optional<PartialRho> partial_rho(std::span<const double> x, std::span<const double> y,
                                      const std::vector<std::vector<double>>& controls,
                                      const MonteCarlo& monte_carlo = {});

}  // namespace stats
