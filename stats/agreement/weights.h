#pragma once

#include <cstddef>
#include <vector>

namespace stats {

/// How far two answers agree, row by the one category, column by the other: 1 for the same category, 0 for no
/// agreement at all.
using AgreementWeights = std::vector<std::vector<double>>;

/// All of them take
/// @param categories  2 to 1,000.
/// @throws std::domain_error  naming the argument, its value and its range.

/// 1 for the same category and 0 for any other: the unweighted coefficients.
AgreementWeights identity_weights(int categories);

/// 1 - |i - j| / (categories - 1), for ordered categories at equal steps.
/// Example: with 3 categories neighbours agree by 1/2.
AgreementWeights linear_weights(int categories);

/// 1 - (i - j)^2 / (categories - 1)^2. Example: with 3 categories neighbours agree by 3/4.
AgreementWeights quadratic_weights(int categories);

/// Checks weights of one's own: a square of `categories` rows, every entry between 0 and 1, 1 on the
/// diagonal, the same above it as below.
void require_weights(const AgreementWeights& weights, std::size_t categories);

}  // namespace stats
