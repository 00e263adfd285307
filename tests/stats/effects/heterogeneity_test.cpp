#include "stats/effects/heterogeneity.h"

#include <gtest/gtest.h>

#include <vector>

#include "stats/refusal.h"

namespace stats {
namespace {

// Recomputed: R package metafor, rma(yi, sei =, method = "PM", test = "knha") and method "FE".
TEST(Heterogeneities, OfTwoCampaigns) {
  const std::vector<Effect> effects{{1, .3}, {.2, .4}};
  const auto found = heterogeneity(effects, 0.95);
  EXPECT_NEAR(found.q, 2.56, 1e-12);
  EXPECT_EQ(found.degrees_of_freedom, 1);
  EXPECT_NEAR(found.p, .109598583399, 5.1e-13);
  EXPECT_NEAR(found.inconsistent_share, 1.56 / 2.56, 1e-12);
  EXPECT_NEAR(found.between_variance, .195, 1e-12);  // .8^2 / 2 less (.3^2 + .4^2) / 2
  EXPECT_NEAR(found.common.estimate, .712, 1e-12);
  EXPECT_NEAR(found.common.standard_error, .24, 1e-12);
  EXPECT_NEAR(found.common_interval.lower, .24160864371, 5.1e-12);
  EXPECT_NEAR(found.average.estimate, .64375,
              1e-6);  // metafor stops its search of tau^2 in the seventh digit
  EXPECT_NEAR(found.average.standard_error, .397600220757, 1e-6);
  EXPECT_NEAR(found.average_interval.lower, -4.408239785746, 1e-5);
  EXPECT_NEAR(found.average_interval.upper, 5.695739830416, 1e-5);
}

TEST(Heterogeneities, OfAgreeingCampaignsAreNone) {
  const auto found = heterogeneity(std::vector<Effect>{{1, .3}, {1, .4}, {1, .2}}, 0.95);
  EXPECT_EQ(found.q, 0);
  EXPECT_EQ(found.p, 1);
  EXPECT_EQ(found.between_variance, 0);
  EXPECT_EQ(found.inconsistent_share, 0);
}

// (1 - 0.2) / 0.5 = 1.6 standard errors; R: 2 * pnorm(-1.6) = .109598583399.
TEST(EffectDifferences, AreNormal) {
  const auto found = effect_difference({1, .3}, {.2, .4}, 0.95);
  EXPECT_NEAR(found.difference, -.8, 1e-15);
  EXPECT_NEAR(found.standard_error, .5, 1e-15);
  EXPECT_NEAR(found.p, .109598583399, 5.1e-13);
  EXPECT_NEAR(found.interval.lower, -.8 - 1.959963984540 * .5, 5.1e-12);
}

TEST(EffectDifferences, RefuseImpossibleArguments) {
  EXPECT_EQ(refusal([] {
              effect_difference({1, 0}, {1, 1}, 0.95);
            }).substr(0, 34),
            "standard error of the first must b");
  EXPECT_EQ(refusal([] {
              heterogeneity(std::vector<Effect>{{1, 1}}, 0.95);
            }),
            "number of campaigns must be between 2 and 1000, got 1");
}

}  // namespace
}  // namespace stats
