#pragma once

#include <optional>

#include "stats/agreement/krippendorff.h"
#include "stats/permutation.h"

namespace stats {

/// Up to this number of arrangements every one is counted; beyond, arrangements are drawn.
inline constexpr double kExactAlphaArrangements = 100'000;

/// Krippendorff's alpha and whether it is more than chance.
struct AlphaTest {
  double alpha;
  PermutationP test;  ///< one-sided: an alpha as large or larger
};

/// Permutation test of alpha. The null hypothesis: each rater's answers fall in any order on the subjects
/// that the rater answered, each order equally likely, independently of the other raters. So a rater's liking
/// for some answers makes no agreement.
///
/// Alphas alike to 1e-12 of the larger of 1 and |alpha| count as equal. Arrangements without an alpha (only
/// where answers are missing) count as reaching the one seen, so that the test holds its level.
///
/// @param ratings  as `krippendorff_alpha`.
/// @return  nothing where `krippendorff_alpha` is nothing.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: two raters who both answer {1, 1, 2, 2} for four subjects, nominal: alpha 1, p = 1/6.
std::optional<AlphaTest> permute_alpha(const Ratings& ratings, Metric metric,
                                       const MonteCarlo& monte_carlo = {});

}  // namespace stats
