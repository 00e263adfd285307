#pragma once

#include <span>

#include "stats/sequential/stopping_rule.h"

namespace stats {

/// Exact group-sequential test of counts: at each look the smallest count that keeps the probability of a
/// false alarm so far within what is spent so far. Its true rate of false alarms is at most `spent.back()`
/// and is exact (`operate`), without a normal approximation.
///
/// @param looks   trial numbers, each larger than the one before, 1 to 1,000,000.
/// @param spent   for each look the level spent up to it, never falling, from 0 to below 1; the last is the
///                level of the test. E.g. `level_spent` of alpha_spending.h at the planned fractions.
/// @param chance  probability that one guess is right, strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// Example: looks after 8, 16 and 24 trials with 0.01, 0.02 and 0.05 spent at chance 1/2 need 8, 13 and 17.
/// Source: K. K. G. Lan and D. L. DeMets, Biometrika 70 (1983) 659, the principle, on exact binomial tails.
StoppingRule spending_rule(std::span<const int> looks, std::span<const double> spent, double chance);

/// The same for a total to which trial n adds `gains[n - 1]` under the null; looks up to the number of gains.
/// The bounds up to a look depend only on the gains up to it, so they can be computed as the trials come in.
StoppingRule spending_rule(std::span<const int> looks, std::span<const double> spent,
                           std::span<const Gain> gains);

}  // namespace stats
