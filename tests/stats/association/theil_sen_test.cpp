#include "stats/association/theil_sen.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

using Values = std::vector<double>;

// CO-8: cloud seeding, Hollander and Wolfe (memory; recomputed, scipy.stats.theilslopes).
TEST(TheilSen, AgreesWithCloudSeeding) {
  const auto found = theil_sen(Values{1, 2, 3, 4, 5}, Values{1.26, 1.27, 1.12, 1.16, 1.03}, 0.95).value();
  EXPECT_EQ(found.slopes, 10);
  EXPECT_NEAR(found.slope, -.05625, 1e-14);
  EXPECT_NEAR(found.intercept, 1.32875, 1e-14);
  EXPECT_NEAR(found.interval->lower, -.15, 1e-14);
  EXPECT_NEAR(found.interval->upper, .04, 1e-14);
}

// CO-9: Zimmer, Ellermeier and Schmid (2004) (data confirmed: R package eba; recomputed).
TEST(TheilSen, AgreesWithSoundsAgainstSharpness) {
  Values sharpness, log_magnitude;
  for (const CsvRow& row : check_values("envirosound_covariates.csv")) {
    sharpness.push_back(row.number("sharpness"));
    log_magnitude.push_back(std::log(row.number("magnitude")));
  }
  EXPECT_NEAR(theil_sen(sharpness, log_magnitude, 0.95)->slope, .3559553826, 5.1e-11);
}

// Few pairs cannot give much confidence: the slopes of four hold the true one in 22 of 24 pairings at most.
TEST(TheilSen, HasNoIntervalForTooFewPairs) {
  const Values x{1, 2, 3, 4}, y{1, 3, 2, 5};
  EXPECT_EQ(theil_sen(x, y, 0.95)->interval.has_value(), false);
  EXPECT_TRUE(theil_sen(x, y, 0.9)->interval.has_value());
}

// The interval holds a true slope of 0 in all pairings that Kendall's test keeps: counted over every order of 6.
TEST(TheilSen, IntervalCoversAsOftenAsItSays) {
  Values x{1, 2, 4, 7, 8, 10}, y{1, 2, 3, 4, 5, 6};
  for (const double confidence : {0.5, 0.8, 0.9, 0.95, 0.99}) {
    int holding = 0, all = 0;
    std::sort(y.begin(), y.end());
    do {
      const auto found = theil_sen(x, y, confidence).value();
      ASSERT_TRUE(found.interval);
      holding += found.interval->lower <= 0 && found.interval->upper >= 0;
      ++all;
    } while (std::next_permutation(y.begin(), y.end()));
    EXPECT_GE(double(holding) / all, confidence);
  }
}

TEST(TheilSen, CoversForManyPairs) {
  Random random(4);
  int holding = 0;
  for (int repeat = 0; repeat < 200; ++repeat) {
    Values x, y;
    for (int i = 0; i < 160; ++i) {
      x.push_back(random.below(1'000'000));
      y.push_back(random.below(1'000'000));
    }
    const auto found = theil_sen(x, y, 0.9).value();
    holding += found.interval->lower <= 0 && found.interval->upper >= 0;
  }
  EXPECT_NEAR(holding, 180, 17);  // 4 standard deviations
}

TEST(TheilSen, RefusesImpossibleArguments) {
  EXPECT_FALSE(theil_sen(Values{1, 1}, Values{1, 2}, 0.9));
  EXPECT_EQ(refusal([] {
              theil_sen(Values{1, 2}, Values{1, 2}, 95);
            }),
            "confidence must be strictly between 0 and 1, got 95 (write 0.95 for 95 %)");
  EXPECT_EQ(refusal([] { theil_sen(Values{1}, Values{1}, 0.9); }),
            "number of x must be between 2 and 2000, got 1");
}

}  // namespace
}  // namespace stats
