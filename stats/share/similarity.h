#pragma once

#include <optional>

#include "stats/share/power.h"

namespace stats {

/// Tests of similarity: do so few answers right show that less than a given share of trials is heard? The
/// null hypothesis is that this share, or more, is heard and the rest guessed; few right answers count
/// against it. It is the exact one-sided test of power.h, read from the wrong answers. The upper limit that
/// belongs to it is `heard_upper` (heard.h).
///
/// Arguments of the functions below
/// @param correct  right answers, 0 to `trials`.
/// @param trials   answers given, 1 to 1,000,000.
/// @param heard    share of trials heard that would be too much to call similar, strictly between 0 and 1
///                 (called proportion of discriminators where each trial has a listener of its own).
/// @param level    risk of calling similar what is heard in that share of trials (the beta of the printed
///                 tables), strictly between 0 and 1.
/// @param chance   probability that one guess is right, strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.

/// p of the test: P(X <= correct) if the share `heard` is heard.
/// Example: 9 of 30 at heard 0.3 and chance 1/3: 0.0084.
double similarity_p(int correct, int trials, double heard, double chance);

/// Largest number right that still shows similarity: the largest x with P(X <= x) <= level; nothing when not
/// even 0 right would.
/// Example: 30 trials at level 0.05, heard 0.3, chance 1/3: 11.
/// Source: the rule of ISO 4120 and ISO 10399, table A.2.
std::optional<int> most_correct_for_similarity(int trials, double level, double heard, double chance);

/// What the test of similarity can do with a number of trials.
struct SimilarityOfTrials {
  int trials;
  std::optional<int> most_correct;  ///< nothing: not even 0 right would show similarity
  double size;                      ///< probability of showing similarity when the share `heard` is heard
  double power;                     ///< probability of showing similarity when every answer is a guess
};

SimilarityOfTrials similarity_of_trials(int trials, double level, double heard, double chance);

/// Smallest number of trials whose power is at least `target`, or from which on it stays so up to `limit`
/// (see power.h).
///
/// @param target  probability of showing similarity when nothing is heard, strictly between 0 and 1.
/// @return  nothing when no number up to `limit` has the power.
/// Example: heard 0.3, level 0.05, chance 1/3, target 0.8: 39 trials, at most 15 of them right.
std::optional<SimilarityOfTrials> smallest_similarity_trials_first(double target, double level, double heard,
                                                                   double chance, int limit = kSearchLimit);
std::optional<SimilarityOfTrials> smallest_similarity_trials_stable(double target, double level, double heard,
                                                                    double chance, int limit = kSearchLimit);

}  // namespace stats
