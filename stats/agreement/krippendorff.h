#pragma once

#include <cstdint>
#include <optional>

#include "stats/agreement/ratings.h"

namespace stats {

/// How much two different answers c and k disagree.
enum class Metric {
  nominal,   ///< always by 1
  ordinal,   ///< the square of: answers from c to k in rank, half of those equal to c or k left out
  interval,  ///< (c - k)^2
  ratio,     ///< ((c - k) / (c + k))^2, answers 0 or more
};

/// Agreement of any number of raters, any of whose answers may be missing.
struct KrippendorffAlpha {
  double alpha;                  ///< 1 - observed / expected disagreement: 1 perfect, 0 as by chance
  double observed_disagreement;  ///< mean within subjects, in the squared units of the metric
  double expected_disagreement;  ///< mean over all pairs of pairable answers
  std::int64_t answers;          ///< given in all
  std::int64_t pairable;         ///< those on subjects with two or more answers; alpha uses only these
};

/// Krippendorff's alpha.
///
/// @param ratings  see ratings.h. The time grows with the square of the number of raters, for the ratio
///                 metric also with that of the different answers: 10,000 of those take 0.1 s or so.
/// @return  nothing when the pairable answers do not vary: alpha is then 0/0, and says nothing about
///          agreement. So also when there are none. Differences whose squares are too small for a double
///          (below 1e-154 or so) are none.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: raters {0,1,0,0,0,0,0,0,1,0} and {1,1,1,0,0,1,0,0,0,0}, nominal: 0.095.
/// Source: K. Krippendorff, Computing Krippendorff's Alpha-Reliability, University of Pennsylvania (2011);
/// Content Analysis (1980).
std::optional<KrippendorffAlpha> krippendorff_alpha(const Ratings& ratings, Metric metric);

}  // namespace stats
