#pragma once

#include <optional>
#include <span>

#include "stats/share/interval.h"

namespace stats {

/// A line through pairs by the median of their slopes, which a few odd pairs do not turn.
struct TheilSen {
  double slope;      ///< median of the slopes of all two pairs with different x
  double intercept;  ///< median of y less slope times median of x
  int slopes;        ///< how many were formed
  /// Limits of the slope by inverting Kendall's test, at least `confidence` if all pairings are equally likely; nothing
  /// where so few pairs cannot give that confidence. Where x or y have ties, those of untied pairs, which are wide enough.
  std::optional<Interval> interval;
};

/// @param x, y        of equal length, 2 to 2,000, all finite.
/// @param confidence  strictly between 0 and 1.
/// @return  nothing when all x are equal.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: x 1 to 5, y 1.26 1.27 1.12 1.16 1.03: slope -0.05625, intercept 1.32875; at 0.95 -0.15 to 0.04.
/// Accuracy: exact to 150 pairs; beyond, the variance n (n - 1)(2 n + 5)/18 of Kendall's score and the normal distribution.
/// Source: P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379; M. Hollander and D. A. Wolfe, Nonparametric Statistical Methods.
std::optional<TheilSen> theil_sen(std::span<const double> x, std::span<const double> y, double confidence);

}  // namespace stats
