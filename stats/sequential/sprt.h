#pragma once

#include "stats/sequential/stopping_rule.h"

namespace stats {

/// Wald's sequential probability ratio test: every answer is right with probability `chance`, or with
/// probability `alternative`? After each answer the likelihood ratio of the two is compared with two bounds.
///
/// @param chance       strictly between 0 and 1.
/// @param alternative  above `chance`, below 1.
/// @param alpha        wanted probability of support at `chance`.
/// @param beta         wanted probability of giving up at `alternative`; alpha + beta below 1.
/// Both errors are wanted, not held: Wald proves only that they are at most alpha/(1 - beta) and
/// beta/(1 - alpha). They are usually below alpha and beta, since the ratio jumps over its bounds; `operate` on
/// `sprt_rule` gives the truth.
/// @throws std::domain_error  every function below, naming the argument, its value and its range.
/// Source: A. Wald, Ann. Math. Stat. 16 (1945) 117; Sequential Analysis (1947), chapters 3 and 5.
struct Sprt {
  double chance;
  double alternative;
  double alpha;
  double beta;
};

/// The bounds of the logarithm of the likelihood ratio, and the same as two parallel lines for the count of
/// right answers after n trials: support at or above `upper_intercept + slope * n`, give up at or below
/// `lower_intercept + slope * n`.
struct SprtLines {
  double log_upper;        ///< log((1 - beta)/alpha), above 0
  double log_lower;        ///< log(beta/(1 - alpha)), below 0
  double slope;            ///< right answers a trial, between chance and alternative
  double upper_intercept;  ///< above 0
  double lower_intercept;  ///< below 0
};

/// Example: 0.5 against 0.7 with errors 0.05: slope 0.603, intercepts 3.475 and -3.475.
SprtLines sprt_lines(const Sprt& test);

/// The whole-number bounds after `trials` trials (1 to 1,000,000). `support` may be more than `trials`: out
/// of reach yet; there is no `give_up` while its line is below 0.
///
/// A count on a line has reached it. Whether it is on it is decided to 1 part in 10^12 of the line, so that
/// the rounding of decimal arguments does not matter: 0.25 against 0.75 with errors 0.1 has its line exactly at
/// n/2 + 1, and 3 of 4 is support.
/// Example: 0.5 against 0.8 with errors 0.05 and 0.2: support from 6 of 6 on.
Look sprt_look(const Sprt& test, int trials);

/// The test, ended undecided after `trials` trials ("not shown"): `operate` gives its exact error rates and
/// numbers of trials, `follow` its decision for given answers. Ending early can only make support rarer.
/// Example: 0.5 against 0.7 with errors 0.05, ended after 100 trials: false alarms 0.0431.
StoppingRule sprt_rule(const Sprt& test, int trials);

/// Wald's approximations, which neglect the jump over the bounds.

/// Approximate probability of giving up when the share right is `share` (the operating characteristic, OC):
/// 1 - alpha at chance and beta at the alternative, by construction.
/// @param share  between 0 and 1.
/// Example: 0.5 against 0.7 with errors 0.05: 0.997 at 0.4, where the exact value is 0.9979.
double sprt_give_up_wald(const Sprt& test, double share);

/// Approximate mean number of trials (ASN). It is too small: by 1 to 5 trials in the usual cases.
/// Example: 0.5 against 0.7 with errors 0.05: 30.4 at chance, where the exact value is 33.3.
double sprt_expected_trials_wald(const Sprt& test, double share);

}  // namespace stats
