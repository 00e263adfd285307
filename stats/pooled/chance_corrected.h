#pragma once

#include <span>

#include "stats/pooled/beta_binomial_fit.h"
#include "stats/pooled/subject_count.h"
#include "stats/redraw/total.h"

namespace stats {

/// Chance-corrected beta-binomial distribution: a subject hears the difference in a share h of trials, which
/// is drawn from a beta distribution, and guesses in the others with `chance` of being right; the share right
/// is chance + (1 - chance) h.
///
/// @param trials  1 to 10,000.
/// @param chance  probability that a guess is right, from 0 (the plain beta-binomial) to below 1.
/// @param mean    mean share heard, between 0 and 1.
/// @param gamma   1/(a + b + 1) of the beta distribution, between 0 and 1: 0 for subjects who are all alike,
///                1 for subjects who hear it always or never.
/// @return  distribution of the number right, whose mean is n (chance + (1 - chance) mean); tails: see
///          stats/redraw/total.h.
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// Example: 4 trials at 1/3, mean 0.4, gamma 0.3: 0.0552, 0.1808, 0.2783, 0.2802, 0.2055 for 0 to 4 right.
/// Accuracy: relative error below 1e-10 up to 10,000 trials: a sum of non-negative terms over the trials
/// heard (tests/stats).
/// Source: P. B. Brockhoff, Food Qual. Prefer. 14 (2003) 405; J. Bi, Sensory Discrimination Tests and
/// Measurements (2006).
TotalDistribution chance_corrected(int trials, double chance, double mean, double gamma);

/// Maximum likelihood estimate of the mean share heard and gamma (see stats/pooled/beta_binomial_fit.h for
/// what it holds and for its standard errors). With a share right at or below chance the mean is 0 and gamma
/// has no estimate, unless some subject stands out.
///
/// @param subjects  1 to 10,000, each with 1 to 10,000 trials; numbers of trials may differ.
///
/// Example: 3 4 5 5 5 6 6 6 7 8 9 10, each of 10, chance 1/2: mean 0.2165, gamma 0.5462.
BetaBinomialFit fit_chance_corrected(std::span<const SubjectCount> subjects, double chance);

}  // namespace stats
