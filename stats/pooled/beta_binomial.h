#pragma once

#include <optional>
#include <span>

#include "stats/pooled/beta_binomial_fit.h"
#include "stats/pooled/subject_count.h"
#include "stats/redraw/total.h"

namespace stats {

/// Beta-binomial distribution: the number right of a subject whose own share right is drawn from a beta
/// distribution, Beta(a, b), given by its mean and its spread.
///
/// @param trials  1 to 100,000.
/// @param mean    a/(a + b), the mean share right, between 0 and 1.
/// @param gamma   1/(a + b + 1), between 0 and 1: the correlation of two answers of one subject. 0: all
///                subjects alike, the binomial; 1: everything right with probability `mean`, else everything
///                wrong.
/// @return  distribution of the number right; tails: see stats/redraw/total.h.
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// Example: 10 trials, mean 0.4, gamma 1/6 (a = 2, b = 3): P(0) = 0.0659, P(4) = 0.1399.
/// Accuracy: relative error below 1e-11 up to 10,000 trials (tests/stats); probabilities below 1e-300 may
/// come out as 0.
/// Source: J. G. Skellam, J. R. Stat. Soc. B 10 (1948) 257.
TotalDistribution beta_binomial(int trials, double mean, double gamma);

/// Maximum likelihood estimate of mean and gamma from several subjects (see stats/pooled/beta_binomial_fit.h
/// for what it holds and for its standard errors).
///
/// @param subjects  1 to 10,000, each with 1 to 10,000 trials; numbers of trials may differ.
///
/// Example: 3 4 5 5 5 6 6 6 7 8 9 10, each of 10: mean 0.6185 (standard error 0.0577), gamma 0.0767
/// (0.0702).
/// Source: D. A. Williams, Biometrics 31 (1975) 949.
BetaBinomialFit fit_beta_binomial(std::span<const SubjectCount> subjects);

/// Moment estimate of gamma: (X^2 - (k - 1)) / sum of (1 - n/N)(n - 1) over the k subjects, where X^2 is
/// Pearson's and N the sum of all n; below 0 when subjects differ less than chance makes them.
/// @return  nothing for a single subject, when everything is right or wrong, or no subject has two trials.
/// Example: the same subjects: 0.0840.
/// Source: D. A. Williams, Appl. Statist. 31 (1982) 144.
std::optional<double> moment_gamma(std::span<const SubjectCount> subjects);

}  // namespace stats
