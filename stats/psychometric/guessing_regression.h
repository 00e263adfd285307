#pragma once

#include <optional>
#include <span>
#include <vector>

#include "stats/psychometric/guessing_likelihood.h"

namespace stats {

/// A regression of shares right on anything, by maximum likelihood.
struct GuessingRegression {
  std::vector<double> coefficients;
  /// Row by row; by the information expected at the estimate, and by the one observed, less the second derivatives. They
  /// differ unless the logit is taken without guesses and lapses.
  std::vector<std::vector<double>> expected_covariance, observed_covariance;
  double log_likelihood;  ///< of the counts, binomial coefficients included
  double deviance;        ///< twice the distance to a share of its own for each row
  double pearson;         ///< sum of (right - expected)^2 / variance
  int degrees_of_freedom;
};

/// @param rows   1 to 10,000, each with equally many finite predictors, 1 to 30 (a column of ones is the intercept), 0 or more
///               trials, and right answers among them.
/// @param model  chance 0 or more, lapse 0 or more, together below 1. No fit of the lapse here.
/// @param start  coefficients to start from; none: those of a straight line through the shares.
/// @return  nothing where the search does not settle: predictors that say the same, estimates at infinity.
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// With guesses the likelihood may have more than one peak; for one predictor `psychometric_function` looks for the highest.
/// Example: 9 of 16 right of chance 1/2: F = 1/8, intercept log(1/7).
/// Source: P. McCullagh and J. A. Nelder, Generalized Linear Models (1989), chapter 4, with the link for guesses.
std::optional<GuessingRegression> fit_guessing_regression(std::span<const GuessingRow> rows,
                                                          const GuessingModel& model,
                                                          std::vector<double> start = {});

/// Deviance and Pearson's sum of fitted sums, one for each row.
double guessing_deviance(std::span<const GuessingRow> rows, const GuessingModel& model,
                         std::span<const double> sums);
double guessing_pearson(std::span<const GuessingRow> rows, const GuessingModel& model,
                        std::span<const double> sums);

/// @throws std::domain_error  for a chance or a lapse outside their ranges.
void require_guessing_model(const GuessingModel& model);

}  // namespace stats
