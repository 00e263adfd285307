#pragma once

#include <optional>

namespace stats {

/// Probability of `correct` or more right answers when every answer is a guess.
///
/// @param correct  right answers, 0 to `trials`.
/// @param trials   answers given, 1 to 1,000,000.
/// @param chance   probability that one guess is right, strictly between 0 and 1:
///                 1/2 for ABX and same-different, 1/3 for the triangle.
/// @return  P(X >= correct), at most 1; exactly 1 for 0 correct. Probabilities below 1e-300 may come out as
/// 0.
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// Example: 12 of 16 at 1/2 gives 2517/65536 = 0.0384.
/// Accuracy: relative error below 1e-12 up to 10,000 trials (tests/stats).
/// Source: exact upper tail of the binomial distribution, e.g. ISO 10399:2004, annex A.
double chance_of_at_least(int correct, int trials, double chance);

/// Probability of `correct` or fewer right answers: the lower tail P(X <= correct). Arguments, accuracy and
/// refusals as `chance_of_at_least`.
double chance_of_at_most(int correct, int trials, double chance);

/// Probability of exactly `correct` right answers. Arguments, accuracy and refusals as `chance_of_at_least`.
double chance_of_exactly(int correct, int trials, double chance);

/// Two-sided exact p of `correct` of `trials` against `chance`.
///
/// At chance 1/2: twice the smaller tail, at most 1. At any other chance: the method of small p-values, the
/// sum of the probabilities of all counts that are no more probable than the one seen, where probabilities
/// alike to 1 part in 10^7 count as equal. At 1/2 the two methods are the same. Arguments and refusals as
/// `chance_of_at_least`.
///
/// Example: 12 of 16 at 1/2 gives 0.0768; 7 of 20 at 0.3 gives 0.6295.
/// Source: the rule of R's binom.test.
double two_sided(int correct, int trials, double chance);

/// Smallest number right that a one-sided exact test at `level` supports: the smallest x with P(X >= x) <=
/// level; nothing when not even all right would reach the level. A tail equal to the level counts (see
/// stats/level.h).
///
/// @param level  strictly between 0 and 1, 0.05 for 5 %. Other arguments and refusals as
/// `chance_of_at_least`.
///
/// Example: 16 trials at 0.05 and chance 1/2 need 12.
/// Source: ISO 10399:2004 table A.1; the triangle tables (ISO 4120) follow the same rule.
std::optional<int> minimum_correct(int trials, double level, double chance);

/// The same for a two-sided test at chance 1/2: the smallest number of agreeing answers, whichever way, with
/// 2 P(X >= x) <= level.
///
/// Example: 16 trials at 0.05 need 13.
std::optional<int> minimum_correct_two_sided(int trials, double level);

}  // namespace stats
