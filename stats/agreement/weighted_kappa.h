#pragma once

#include <cstdint>
#include <optional>

#include "stats/agreement/count_table.h"
#include "stats/agreement/weights.h"

namespace stats {

/// Agreement of two raters where some disagreements count less than others.
struct WeightedKappa {
  double kappa;
  double observed_agreement;   ///< mean weight of the pairs of answers
  double expected_agreement;   ///< the same by chance, from the raters' own shares
  double standard_error;       ///< asymptotic, for an interval around kappa
  double null_standard_error;  ///< asymptotic if the true kappa is 0, for a test of that alone
  std::int64_t things;
};

/// Cohen's weighted kappa. With `identity_weights` it is `cohen_kappa`.
///
/// @param counts   square, 2 to 1,000 categories: row by the first rater, column by the second. In all 1 to
///                 1,000,000.
/// @param weights  a row and a column for each category, see weights.h.
/// @return  nothing when no disagreement is expected by chance: the answers used agree fully by the weights
///          (with the weights of weights.h, both raters put everything into the same one category). Kappa is
///          then 0/0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: kappa is exact; both standard errors are approximations for many things.
/// Example: {{88, 10, 2}, {14, 40, 6}, {18, 10, 12}} with linear weights gives 0.474, standard error 0.054.
/// Source: J. Cohen, Psychol. Bull. 70 (1968) 213; both standard errors: J. L. Fleiss, J. Cohen and B. S.
/// Everitt, Psychol. Bull. 72 (1969) 323.
std::optional<WeightedKappa> weighted_kappa(const CountTable& counts, const AgreementWeights& weights);

}  // namespace stats
