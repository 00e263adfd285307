#pragma once

#include "stats/share/interval.h"

namespace stats {

/// Answers "A" among all answers, against 1/2.
struct AnswerBias {
  double share;     ///< of answers "A"
  double p;         ///< exact two-sided p against 1/2
  Interval limits;  ///< exact interval of the share
};

/// Does the observer prefer an answer? p and limits are exact where each answer is "A" with the same
/// probability, whatever was presented. Where A and B were presented equally often and are told apart, the
/// count varies less, and both err on the safe side. How far the criterion lies from the middle says
/// `criterion_c` (hits.h).
///
/// @param answers_a   answers "A", 0 to `answers`.
/// @param answers     1 to 1,000,000.
/// @param confidence  strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 12 answers "A" of 16 at 0.95: share 0.75, p = 0.0768, limits 0.476 to 0.927.
/// Source: two_sided (binomial.h) and clopper_pearson (interval.h).
AnswerBias answer_bias(int answers_a, int answers, double confidence);

}  // namespace stats
