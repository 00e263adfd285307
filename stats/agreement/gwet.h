#pragma once

#include <cstdint>
#include <optional>

#include "stats/agreement/count_table.h"
#include "stats/agreement/weights.h"

namespace stats {

/// Agreement of two or more raters that does not collapse when nearly all answers are in one category.
struct GwetAgreement {
  double coefficient;                    ///< AC1, or AC2 with weights; at most 1
  double observed_agreement;             ///< over subjects with two or more answers
  double expected_agreement;             ///< by chance, as the coefficient understands it
  std::optional<double> standard_error;  ///< asymptotic; nothing with one subject
  std::int64_t subjects;                 ///< with one or more answers
};

/// Gwet's AC1.
///
/// @param counts  a row for each subject, a column for each category (2 to 1,000, also those that nobody
///                chose, since their number counts): how many raters chose it. Rows may have different sums
///                where raters did not answer; rows of zeros are left out. In all 1 to 1,000,000. A square
///                table of two raters is turned into such rows by `by_subject`.
/// @return  nothing when no subject has two answers. All answers in one category give 1.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: the coefficient is exact. The standard error is that of subjects drawn from a large population
/// and of these raters alone, from the subjects' own parts with n - 1 in the divisor; an approximation for
/// many subjects.
/// Example: two raters, {{118, 5}, {2, 0}}: 0.941, standard error 0.023 (Cohen's kappa is -0.023).
/// Source: K. L. Gwet, Br. J. Math. Stat. Psychol. 61 (2008) 29; missing answers: K. L. Gwet, Handbook of
/// Inter-Rater Reliability, 4th edition (2014).
std::optional<GwetAgreement> gwet_ac1(const CountTable& counts);

/// Gwet's AC2: the same where some disagreements count less than others. With `identity_weights` it is AC1.
///
/// @param weights  a row and a column for each category, see weights.h.
/// @return  nothing also when the weights make every pair of categories agree fully and so expect full
///          agreement.
std::optional<GwetAgreement> gwet_ac2(const CountTable& counts, const AgreementWeights& weights);

}  // namespace stats
