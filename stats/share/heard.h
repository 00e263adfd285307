#pragma once

#include "stats/share/interval.h"

namespace stats {

/// The share of trials truly heard, the rest guessed, estimated from the number right.
struct HeardEstimate {
  double heard;       ///< (s - c)/(1 - c) for the share right s; 0 where that is negative
  bool below_chance;  ///< fewer were right than guessing gives on average: `heard` was raised to 0
  Interval limits;    ///< the exact interval of the share right, mapped alike; limits below 0 raised to 0
};

/// Arguments of the functions below
/// @param correct     right answers, 0 to `trials`.
/// @param trials      answers given, 1 to 1,000,000.
/// @param chance      probability that one guess is right, strictly between 0 and 1.
/// @param confidence  strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.

/// Abbott's correction for guessing, with the exact two-sided interval: it holds the true share heard at
/// least as often as `confidence`. Since no share heard is negative, 0 is the most likely share where fewer
/// were right than by chance. Both limits are 0 where even the upper one would be negative: then no share
/// heard fits, and something turned answers to the wrong ones.
///
/// Example: 12 of 16 at chance 1/2 and 0.95: 0.5, limits 0 to 0.855.
/// Source: W. S. Abbott, J. Econ. Entomol. 18 (1925) 265; interval: clopper_pearson.
HeardEstimate estimate_heard(int correct, int trials, double chance, double confidence);

/// Exact one-sided limits, likewise. The lower one is above 0 just when the exact test supports the result;
/// the upper one says how many at most could have been heard.
///
/// Example: 12 of 16 at chance 1/2 and 0.95: at least 0.031. 16 of 48 at 1/3 and 0.95: at most 0.193.
double heard_lower(int correct, int trials, double chance, double confidence);
double heard_upper(int correct, int trials, double chance, double confidence);

}  // namespace stats
