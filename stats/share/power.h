#pragma once

#include <optional>

namespace stats {

/// What the exact one-sided test can do with a number of trials.
struct PowerOfTrials {
  int trials;
  std::optional<int> minimum_correct;  ///< nothing: not even all right would be supported
  double size;                         ///< probability of support when every answer is a guess
  double power;                        ///< probability of support at the true share
};

/// Arguments of the functions below
/// @param share   long-run share right, between 0 and 1.
/// @param trials  1 to 1,000,000.
/// @param level   level of the one-sided exact test, strictly between 0 and 1.
/// @param chance  probability that one guess is right, strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.

/// Probability that the exact one-sided test supports a result, and what it rests on.
/// More trials can lower the power, since the minimum is a whole number: at share 0.7 and level 0.05, 18
/// trials give 0.534 and 20 give 0.416.
PowerOfTrials power_of_trials(double share, int trials, double level, double chance);

/// How far the two searches look: to this number of trials unless another is given.
inline constexpr int kSearchLimit = 3'000;

/// Smallest number of trials whose power is at least `target`, ignoring that a few more trials may have less;
/// the rule of the printed tables of numbers of assessors (ISO 4120 and ISO 10399, table A.3).
///
/// @param target  power wanted, strictly between 0 and 1.
/// @return  nothing when no number up to `limit` has the power.
/// Example: share 0.7, level 0.05, target 0.8 gives 37 trials, 24 of them right.
std::optional<PowerOfTrials> smallest_trials_first(double target, double share, double level, double chance,
                                                   int limit = kSearchLimit);

/// Smallest number of trials from which on the power stays at least `target` for every number up to `limit`.
/// Example: share 0.7, level 0.05, target 0.8 gives 42 trials, 27 of them right.
std::optional<PowerOfTrials> smallest_trials_stable(double target, double share, double level, double chance,
                                                    int limit = kSearchLimit);

/// Smallest long-run share right that the test supports with at least `probability`: "had the share been this
/// or more, a test like this would have supported it". Computed from the design alone, never from a result.
///
/// @param probability  strictly between 0 and 1, e.g. 0.8.
/// @return  the share to an error below 1e-12; below `chance` when `probability` is less than the test's
/// size;
///          nothing when not even all right would be supported.
/// Example: 16 trials at 0.05 and chance 1/2: 0.801 for 0.8.
std::optional<double> smallest_share_caught(int trials, double level, double chance, double probability);

/// The share of trials truly heard that lies behind a share right, when the rest is guessed: (s - c)/(1 - c).
/// @param share  from `chance` to 1.
/// Example: right in 0.90 at chance 1/2 means hearing it in 0.80 of trials.
double share_heard(double share, double chance);

/// The other way: c + h (1 - c), the share right of someone who hears it in `heard` of trials and guesses the
/// rest.
/// @param heard  between 0 and 1.
double share_right(double heard, double chance);

}  // namespace stats
