#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "stats/permutation.h"

namespace stats {

/// Do conditions differ in their share right, where every subject has one answer to each?
struct CochranQ {
  double q;
  int degrees_of_freedom;        ///< conditions less 1
  double chi_square_p;           ///< approximation, for many subjects
  PermutationP permutation;      ///< exact, or drawn
  std::vector<int> column_sums;  ///< right in each condition
};

/// Cochran's Q. The null hypothesis: given how many of a subject's answers are right, all placements over the
/// conditions are equally likely, independently between subjects. For two conditions it is McNemar's test.
///
/// The chi-square p has no sure level: at 0.05 with every answer right in 1/2, its true size is 0.0495 for 8
/// subjects and 3 conditions, 0.0398 for 8 and 4, and 0.0520 for 8 and 2 (enumerated, tests/stats).
///
/// @param subjects  1 or more rows of 2 to 100 conditions, true for right; at most 100,000 answers.
/// @return  nothing when every subject has everything right or everything wrong: Q is then 0/0. The
/// permutation p, P(Q >= the Q seen), is exact where it takes up to 10^6 steps (18 subjects by 3, 20 by 6),
/// beyond it is drawn at random.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Source: W. G. Cochran, Biometrika 37 (1950) 256.
std::optional<CochranQ> cochran_q(std::span<const std::vector<bool>> subjects,
                                  const MonteCarlo& monte_carlo = {});

}  // namespace stats
