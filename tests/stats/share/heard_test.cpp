#include "stats/share/heard.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "stats/refusal.h"
#include "stats/share/binomial.h"
#include "stats/share/power.h"

namespace stats {
namespace {

// Recomputed: R (qbeta(.025, 12, 5) - .5)/.5 and so on.
TEST(Heard, AgreesWithRecomputedValues) {
  const HeardEstimate estimate = estimate_heard(12, 16, 0.5, 0.95);
  EXPECT_EQ(estimate.heard, 0.5);
  EXPECT_FALSE(estimate.below_chance);
  EXPECT_EQ(estimate.limits.lower, 0);
  EXPECT_NEAR(estimate.limits.upper, .85467592349424, 5.1e-13);
  EXPECT_NEAR(heard_lower(12, 16, 0.5, 0.95), .031207157812662, 5.1e-13);
  EXPECT_NEAR(heard_upper(16, 48, 1.0 / 3, 0.95), .19192808919404, 5.1e-13);
}

TEST(Heard, IsTheShareRightTurnedBack) {
  for (int correct = 0; correct <= 30; ++correct)
    for (double chance : {0.2, 1.0 / 3, 0.5}) {
      const HeardEstimate estimate = estimate_heard(correct, 30, chance, 0.9);
      const Interval right = clopper_pearson(correct, 30, 0.9);
      EXPECT_NEAR(share_right(estimate.heard, chance), std::max(correct / 30.0, chance), 1e-14);
      EXPECT_NEAR(share_right(estimate.limits.lower, chance), std::max(right.lower, chance), 1e-14);
      EXPECT_NEAR(share_right(estimate.limits.upper, chance), std::max(right.upper, chance), 1e-14);
      EXPECT_EQ(estimate.below_chance, correct / 30.0 < chance);
      EXPECT_NEAR(estimate.limits.lower, heard_lower(correct, 30, chance, 0.95), 1e-13);
      EXPECT_NEAR(estimate.limits.upper, heard_upper(correct, 30, chance, 0.95), 1e-13);
    }
}

TEST(Heard, IsNothingBelowChance) {
  const HeardEstimate few = estimate_heard(2, 16, 0.5, 0.95);  // two-sided p = .0042
  EXPECT_EQ(few.heard, 0);
  EXPECT_TRUE(few.below_chance);
  EXPECT_EQ(few.limits.lower, 0);
  EXPECT_EQ(few.limits.upper, 0);
  EXPECT_FALSE(estimate_heard(8, 16, 0.5, 0.95).below_chance);
}

TEST(Heard, CoversAtLeastAsOftenAsSaid) {
  for (double heard : {0.0, 0.1, 0.37, 0.9}) {
    double covered = 0;
    const double share = share_right(heard, 1.0 / 3);
    for (int correct = 0; correct <= 24; ++correct) {
      const Interval limits = estimate_heard(correct, 24, 1.0 / 3, 0.95).limits;
      if (limits.lower <= heard && heard <= limits.upper) covered += chance_of_exactly(correct, 24, share);
    }
    EXPECT_GE(covered, 0.95);
  }
}

TEST(Heard, IsAboveNothingJustWhenTheTestSupports) {
  for (int correct = 0; correct <= 40; ++correct)
    EXPECT_EQ(heard_lower(correct, 40, 1.0 / 3, 0.95) > 0, chance_of_at_least(correct, 40, 1.0 / 3) < 0.05);
}

TEST(Heard, Refuses) {
  EXPECT_EQ(refusal([] { estimate_heard(17, 16, 0.5, 0.95); }), "correct must be between 0 and 16, got 17");
  EXPECT_EQ(refusal([] { estimate_heard(0, 16, 1, 0.95); }),
            "chance must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { heard_lower(0, 16, 0, 0.95); }), "chance must be strictly between 0 and 1, got 0");
  EXPECT_EQ(refusal([] { heard_upper(16, 16, 0.5, std::numeric_limits<double>::quiet_NaN()); }),
            "confidence must be strictly between 0 and 1, got nan");
}

}  // namespace
}  // namespace stats
