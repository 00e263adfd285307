#include "stats/effects/two_shares.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/refusal.h"

namespace stats {
namespace {

// Recomputed: R, fisher.test(matrix(c(24, 24, 36, 12), 2)).
TEST(TwoShares, AreFishersAndCornfields) {
  const auto found = compare_shares(36, 48, 24, 48, 0.95);
  EXPECT_EQ(found.difference, -0.25);
  EXPECT_NEAR(found.p, .019788881632, 5.1e-13);
  EXPECT_NEAR(found.odds_ratio.value(), .33733169548, 1e-5);  // R stops there
  EXPECT_NEAR(found.odds_ratio_interval->lower, .127233450074, 1e-5);
  EXPECT_NEAR(found.odds_ratio_interval->upper, .856311898214, 1e-5);
}

// Newcombe (1998), Table II (memory): 56/70 less 48/80, .0524 to .3339.
TEST(TwoShares, HaveNewcombesInterval) {
  const auto found = compare_shares(48, 80, 56, 70, 0.95);
  EXPECT_NEAR(found.difference_interval.lower, .0524, 5.1e-5);
  EXPECT_NEAR(found.difference_interval.upper, .3339, 5.1e-5);
}

// BIN-8, tea tasting: 4 of 4 against 0 of 4, two-sided 2/70.
TEST(TwoShares, GoToTheEnds) {
  const auto found = compare_shares(0, 4, 4, 4, 0.95);
  EXPECT_NEAR(found.p, 2 / 70., 1e-15);
  EXPECT_TRUE(std::isinf(found.odds_ratio.value()));
  EXPECT_TRUE(std::isinf(found.odds_ratio_interval->upper));
  EXPECT_GT(found.odds_ratio_interval->lower, 1);
  EXPECT_EQ(compare_shares(4, 4, 0, 4, 0.95).odds_ratio, 0);
  const auto nothing = compare_shares(0, 5, 0, 9, 0.95);
  EXPECT_EQ(nothing.p, 1);
  EXPECT_FALSE(nothing.odds_ratio);
  EXPECT_FALSE(nothing.odds_ratio_interval);
  const auto large = compare_shares(50'000, 100'000, 51'000, 100'000, 0.95);
  EXPECT_GT(large.odds_ratio_interval->lower, 1);
}

TEST(TwoShares, RefuseImpossibleArguments) {
  EXPECT_EQ(refusal([] { compare_shares(5, 4, 1, 4, 0.95); }),
            "right of the first must be between 0 and 4, got 5");
  EXPECT_EQ(refusal([] { compare_shares(1, 4, 1, 0, 0.95); }),
            "trials of the second must be between 1 and 100000, got 0");
}

}  // namespace
}  // namespace stats
