#pragma once

#include <optional>
#include <vector>

#include "stats/discrimination/hits.h"
#include "stats/permutation.h"

namespace stats {

/// Rated answers: how often each category was used, from the surest "A" to the surest "B", where A was
/// presented (`signal`) and where B was (`noise`). Both of equal length, 2 to 1,000 categories, and each with
/// 1 to 100,000 answers in all.
struct RatedAnswers {
  std::vector<int> signal;
  std::vector<int> noise;
};

/// All functions
/// @throws std::domain_error  naming the argument, its value and its range.

/// The receiver operating characteristic: hit and false-alarm rate when the first 0, 1, ... up to all
/// categories are taken for "A"; from {0, 0} to {1, 1}.
std::vector<HitRates> roc_points(const RatedAnswers& answers);

/// Area under those points joined by straight lines.
struct RocArea {
  double area;  ///< P(A is rated surer "A" than B) + P(rated alike)/2: 1/2 for chance, 1 for all in order
  std::optional<double> standard_error;  ///< of DeLong; nothing with a single answer to A or to B
};

/// The area needs no assumption on how sureness is distributed. With normal observations of equal spread it
/// is the share right in 2-AFC: d' = d_prime_at(Link::two_afc, area) (the straight lines make both somewhat
/// too small with few categories). The standard error is 0 where the categories part A from B wholly, which
/// says nothing about the next trials.
///
/// Example: signal {33, 11, 2, 2, 3}, noise {2, 11, 6, 6, 33}: area 0.893, standard error 0.0307.
/// Source: D. Bamber, J. Math. Psychol. 12 (1975) 387; standard error: E. R. DeLong, D. M. DeLong and D. L.
/// Clarke-Pearson, Biometrics 44 (1988) 837.
RocArea roc_area(const RatedAnswers& answers);

/// Permutation test of the area against 1/2: every way to share the ratings out among the presentations of A
/// and of B is equally likely (the test of Mann and Whitney with mid-ranks). Counted exactly where
/// `mean_difference_test` counts, else drawn.
///
/// @param alternative  greater: A is rated surer "A" than B.
/// Example: signal {3, 1, 0}, noise {0, 1, 3}, greater: 2/70 = 0.0286.
/// Source: H. B. Mann and D. R. Whitney, Ann. Math. Statist. 18 (1947) 50.
PermutationP roc_test(const RatedAnswers& answers, Alternative alternative,
                      const MonteCarlo& monte_carlo = {});

}  // namespace stats
