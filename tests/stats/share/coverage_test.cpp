#include "stats/share/coverage.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

constexpr IntervalMethod kMethods[] = {IntervalMethod::clopper_pearson, IntervalMethod::mid_p,
                                       IntervalMethod::wilson, IntervalMethod::jeffreys,
                                       IntervalMethod::likelihood};

double coverage_by_enumeration(IntervalMethod method, int trials, double share, double confidence) {
  double covered = 0;
  for (int correct = 0; correct <= trials; ++correct) {
    const auto [lower, upper] = share_interval(method, correct, trials, confidence);
    if (lower <= share && share <= upper) covered += chance_of_exactly(correct, trials, share);
  }
  return covered;
}

// CI-3, recomputed: exact sums over x.
TEST(Coverage, AgreesWithRecomputedSums) {
  EXPECT_NEAR(coverage(IntervalMethod::wilson, 50, 0.2, 0.95), .950701, 5.1e-7);
  EXPECT_NEAR(coverage(IntervalMethod::clopper_pearson, 16, 0.5, 0.95), .978729, 5.1e-7);
  EXPECT_NEAR(coverage(IntervalMethod::clopper_pearson, 50, 0.2, 0.95), .967062, 5.1e-7);
}

// Recomputed: R sum(dbinom(x, n, .75)[lower <= .75 & .75 <= upper]), limits by qbeta, uniroot and the score
// formula.
TEST(Coverage, AgreesWithOtherRecomputedSums) {
  EXPECT_NEAR(coverage(IntervalMethod::mid_p, 16, 0.75, 0.95), .962847447954, 5.1e-13);
  EXPECT_NEAR(coverage(IntervalMethod::wilson, 20, 0.75, 0.95), .934762207428, 5.1e-13);
  EXPECT_NEAR(coverage(IntervalMethod::jeffreys, 10, 0.75, 0.95), .923958778381, 5.1e-13);
  EXPECT_NEAR(coverage(IntervalMethod::likelihood, 16, 0.75, 0.95), .909393603913, 5.1e-13);
}

// The table of coverage.h. Recomputed: R, the sum over x at every limit -+ 1e-11.
TEST(LeastCoverage, AgreesWithTheRecomputedTable) {
  constexpr int trials[] = {10, 16, 20, 50, 100};
  constexpr double least[][5] = {{.96102051007, .957814203804, .95796993669, .95076742438, .950263750139},
                                 {.926590503761, .923176579085, .929313031495, .92481067697, .920698014853},
                                 {.834953514862, .836184473108, .836588907622, .837547866528, .837863918175},
                                 {.868057270408, .89616179158, .893383636053, .883830429964, .880087473584},
                                 {.834642536762, .82577771445, .822481088556, .842505354726, .841115079042}};
  for (std::size_t i = 0; i < 5; ++i)
    for (std::size_t j = 0; j < 5; ++j)
      EXPECT_NEAR(least_coverage(kMethods[i], trials[j], 0.95).coverage, least[i][j], 1e-8)
          << i << " with " << trials[j];
  EXPECT_NEAR(least_coverage(IntervalMethod::wilson, 50, 0.95, 0.6, 0.9).coverage, .930812224741, 1e-8);
}

TEST(LeastCoverage, OfTheExactIntervalIsAtLeastTheConfidence) {
  for (int trials = 1; trials <= 60; ++trials)
    for (double confidence : {0.5, 0.9, 0.95, 0.99})
      EXPECT_GE(least_coverage(IntervalMethod::clopper_pearson, trials, confidence).coverage,
                confidence - 1e-12);
}

TEST(Coverage, AgreesWithEnumeration) {
  for (const IntervalMethod method : kMethods)
    for (int trials : {1, 2, 7, 30})
      for (double share : {0.01, 0.2, 0.5, 0.77})
        EXPECT_NEAR(coverage(method, trials, share, 0.9), coverage_by_enumeration(method, trials, share, 0.9),
                    1e-13);
}

TEST(LeastCoverage, IsBelowThatOfEveryShareAndReachedBesideItsPlace) {
  for (const IntervalMethod method : kMethods)
    for (int trials : {1, 5, 16}) {
      const LeastCoverage least = least_coverage(method, trials, 0.95, 0.5, 0.99);
      EXPECT_GE(least.share, 0.5);
      EXPECT_LE(least.share, 0.99);
      for (double share = 0.5005; share < 0.99; share += 0.001)
        EXPECT_GE(coverage_by_enumeration(method, trials, share, 0.95), least.coverage - 1e-12);
      const double near = std::min(coverage_by_enumeration(method, trials, least.share - 1e-9, 0.95),
                                   coverage_by_enumeration(method, trials, least.share + 1e-9, 0.95));
      EXPECT_NEAR(near, least.coverage, 1e-7);
    }
}

TEST(Coverage, AtTheEdges) {
  for (const IntervalMethod method : kMethods) {
    EXPECT_EQ(coverage(method, 16, 0, 0.95), 1);
    EXPECT_EQ(coverage(method, 16, 1, 0.95), 1);
    EXPECT_EQ(least_coverage(method, 16, 0.95, 0.7, 0.7).coverage, coverage(method, 16, 0.7, 0.95));
  }
}

TEST(Coverage, Refuses) {
  constexpr IntervalMethod wilson = IntervalMethod::wilson;
  EXPECT_EQ(refusal([] { coverage(wilson, 16, 1.1, 0.95); }), "share must be between 0 and 1, got 1.1");
  EXPECT_EQ(refusal([] { coverage(wilson, 0, 0.5, 0.95); }), "trials must be between 1 and 10000, got 0");
  EXPECT_EQ(refusal([] { coverage(wilson, 10'001, 0.5, 0.95); }),
            "trials must be between 1 and 10000, got 10001");
  EXPECT_EQ(refusal([] { coverage(wilson, 16, 0.5, 1); }),
            "confidence must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { least_coverage(wilson, 16, 0.95, 0.5, 0.4); }),
            "highest must be between 0.5 and 1, got 0.4");
  EXPECT_EQ(refusal([] { least_coverage(wilson, 16, 0.95, std::numeric_limits<double>::quiet_NaN()); }),
            "lowest must be between 0 and 1, got nan");
}

}  // namespace
}  // namespace stats
