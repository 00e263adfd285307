#pragma once

#include <optional>
#include <vector>

#include "stats/share/interval.h"

namespace stats {

/// One form of the intraclass correlation.
struct IntraclassCorrelation {
  double value;       ///< at most 1; may fall below 0, to -infinity for means (see `intraclass`)
  Interval interval;  ///< two-sided; limits may lie below 0 likewise
};

/// A ratio of mean squares as a test of differences between subjects.
struct VarianceRatio {
  double f;  ///< infinity where the divisor is 0
  double freedom;
  double divisor_freedom;
  double p;  ///< P(F as large or larger) when subjects do not differ
};

/// All six forms of Shrout and Fleiss, by their numbers there: what one answer is worth (`..._single`) and
/// what the mean of all raters' answers is worth (`..._mean`).
struct Intraclass {
  double between_subjects;  ///< mean squares: BMS
  double within_subjects;   ///< WMS
  double between_raters;    ///< JMS
  double residual;          ///< EMS

  IntraclassCorrelation one_way_single;  ///< ICC(1,1): each subject has other raters
  IntraclassCorrelation random_single;   ///< ICC(2,1): agreement, the raters are a sample of raters
  IntraclassCorrelation fixed_single;    ///< ICC(3,1): consistency, these raters alone
  IntraclassCorrelation one_way_mean;    ///< ICC(1,k)
  IntraclassCorrelation random_mean;     ///< ICC(2,k)
  IntraclassCorrelation fixed_mean;      ///< ICC(3,k), Cronbach's alpha

  VarianceRatio one_way_test;  ///< for ICC(1,.)
  VarianceRatio two_way_test;  ///< for ICC(2,.) and ICC(3,.)
};

/// Intraclass correlations of complete answers on a numerical scale.
///
/// @param answers     a row for each subject, an entry for each rater: 2 to 50,000 subjects, 2 to 1,000
///                    raters, at most 100,000 answers, each between -1e100 and 1e100.
/// @param confidence  strictly between 0 and 1.
/// @return  nothing when all answers are equal (0/0). Where subjects' means are all equal, ICC(1,k) and
///          ICC(3,k) are -infinity; so is ICC(2,k) where the variance of a mean is estimated as not above 0,
///          and a limit of it where the limit of ICC(2,1) is so low that it stands for no mean. With equal
///          answers of all raters on every subject all forms are 1, and so are their limits. Where two raters
///          exactly contradict each other about two subjects, ICC(2,1) is -infinity too.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Sums of squares below 10^-25 of the largest are rounding and count as 0.
/// Accuracy: the intervals of ICC(1,.) and ICC(3,.) are exact for normal effects. Those of ICC(2,.) rest on
/// Satterthwaite's degrees of freedom (below 1, which only a negative estimate can give, they count as 1):
/// with 10 subjects, 4 raters, a true ICC(2,1) of 0.5 and raters' variance half of the residual's, intervals
/// at 0.95 cover in 0.94 of simulated cases (tests/stats).
/// Example: the 6 subjects and 4 judges of Shrout and Fleiss: .17 .29 .71 .44 .62 .91.
/// Source: P. E. Shrout and J. L. Fleiss, Psychol. Bull. 86 (1979) 420; K. O. McGraw and S. P. Wong, Psychol.
/// Methods 1 (1996) 30, whose ICC(C,1) is ICC(3,1) and ICC(A,1) is ICC(2,1).
std::optional<Intraclass> intraclass(const std::vector<std::vector<double>>& answers, double confidence);

}  // namespace stats
