#pragma once

#include <optional>
#include <span>

#include "stats/pooled/subject_count.h"

namespace stats {

/// Maximum likelihood estimate of a beta-binomial distribution from the counts of several subjects, plain or
/// chance-corrected.
struct BetaBinomialFit {
  /// Mean share right, or heard where a chance of guessing was given; between 0 and 1.
  double mean;
  /// Between 0 (all subjects alike) and 1 (all or nothing), both possible. Nothing where it has no estimate:
  /// the mean is 0 or 1, there is a single subject, or no subject has two trials.
  std::optional<double> gamma;
  /// By the observed information at the estimate. Where gamma is 0 or 1 or nothing, that of the mean alone
  /// with gamma held there (0 if nothing); nothing where the mean is 0 or 1, or the information is not
  /// positive.
  std::optional<double> mean_error;
  /// Likewise; nothing where gamma is 0, 1 or nothing.
  std::optional<double> gamma_error;
  double log_likelihood;           ///< with binomial coefficients
  double binomial_log_likelihood;  ///< the largest with gamma 0
  double likelihood_ratio;         ///< twice their difference, 0 or more
  /// p of the likelihood ratio against gamma = 0, which lies at the boundary: half the tail of chi-square
  /// with one degree of freedom, and 1 where the ratio is 0. An approximation for many subjects. Its true
  /// size at 0.05 for 4 subjects of 8 trials (plain; enumerated, tests/stats): 0.0206 at a share of 0.5,
  /// 0.0183 at 0.7. `tarone_exact` (stats/pooled/overdispersion.h) has an exact size.
  double half_chi_square_p;
};

/// The estimate behind `fit_beta_binomial` (chance 0) and `fit_chance_corrected`. For every gamma the mean is
/// the root of the score; along that ridge the roots of the score of gamma in sixteen cells from 0 to 1, and
/// the ends, are compared. Estimates and standard
/// errors agree with a computation in 50 digits to 5e-12 (tests/stats).
BetaBinomialFit fitted_beta_binomial(std::span<const SubjectCount> subjects, double chance);

}  // namespace stats
