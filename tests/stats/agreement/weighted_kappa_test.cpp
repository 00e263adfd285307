#include "stats/agreement/weighted_kappa.h"

#include <gtest/gtest.h>

#include <limits>

#include "stats/agreement/kappa.h"
#include "stats/refusal.h"

namespace stats {
namespace {

const CountTable kCohenTable{{88, 10, 2}, {14, 40, 6}, {18, 10, 12}};
const CountTable kSexualFun{{7, 7, 2, 3}, {2, 8, 3, 7}, {1, 5, 4, 9}, {2, 8, 9, 14}};

// AG-1: Cohen (1960), table 1 (memory), linear weights recomputed: R vcd::Kappa. Null standard errors
// recomputed: NumPy, Fleiss, Cohen and Everitt (1969), equation 9.
TEST(WeightedKappa, AgreesWithCohensTable) {
  const auto kappa = weighted_kappa(kCohenTable, linear_weights(3)).value();
  EXPECT_NEAR(kappa.kappa, .4736842105, 5.1e-11);
  EXPECT_NEAR(kappa.standard_error, .05443231, 5.1e-9);
  EXPECT_NEAR(kappa.null_standard_error, .05469634129, 5.1e-12);
  EXPECT_NEAR(kappa.observed_agreement, .8, 1e-15);
  EXPECT_NEAR(kappa.expected_agreement, .62, 1e-15);
  EXPECT_EQ(kappa.things, 200);
}

// AG-2: R package vcd, data SexualFun (confirmed from the package's output; recomputed). Null standard
// errors recomputed as above.
TEST(WeightedKappa, AgreesWithVcd) {
  const auto linear = weighted_kappa(kSexualFun, linear_weights(4)).value();
  EXPECT_NEAR(linear.kappa, .2373806, 5.1e-8);
  EXPECT_NEAR(linear.standard_error, .07831633, 5.1e-9);
  EXPECT_NEAR(linear.null_standard_error, .07699031209, 5.1e-12);
  const auto quadratic = weighted_kappa(kSexualFun, quadratic_weights(4)).value();
  EXPECT_NEAR(quadratic.kappa, .3320455862, 5.1e-11);
  EXPECT_NEAR(quadratic.standard_error, .09729752, 5.1e-9);
  EXPECT_NEAR(quadratic.null_standard_error, .10434937507, 5.1e-12);
}

// AG-5: irrCAC's table of 3 categories (confirmed; recomputed).
TEST(WeightedKappa, AgreesWithIrrCac) {
  const auto kappa = weighted_kappa({{13, 0, 0}, {0, 20, 7}, {0, 4, 56}}, quadratic_weights(3)).value();
  EXPECT_NEAR(kappa.kappa, .8921568627, 5.1e-11);
}

TEST(WeightedKappa, IsTheUnweightedWithIdentityWeights) {
  for (const auto& table : {kCohenTable, kSexualFun}) {
    const auto weighted = weighted_kappa(table, identity_weights(static_cast<int>(table.size()))).value();
    const auto plain = cohen_kappa(table).value();
    EXPECT_NEAR(weighted.kappa, plain.kappa, 1e-15);
    EXPECT_NEAR(weighted.standard_error, plain.standard_error, 1e-15);
    EXPECT_NEAR(weighted.null_standard_error, plain.null_standard_error, 1e-15);
  }
  for (const auto& weights : {linear_weights(2), quadratic_weights(2)})
    EXPECT_EQ(weights, identity_weights(2));
}

TEST(WeightedKappa, TakesWeightsOfOnesOwn) {
  const AgreementWeights own{{1, .25, 0}, {.25, 1, .5}, {0, .5, 1}};
  const auto kappa = weighted_kappa(kCohenTable, own).value();
  // Mathematics: observed (140 + 24 x .25 + 16 x .5)/200; expected from shares (.5 .3 .2) and (.6 .3 .1).
  EXPECT_NEAR(kappa.observed_agreement, .77, 1e-15);
  EXPECT_NEAR(kappa.expected_agreement, .41 + .25 * .33 + .5 * .09, 1e-15);
}

TEST(WeightedKappa, IsNothingWhereNoDisagreementIsExpected) {
  EXPECT_FALSE(weighted_kappa({{10, 0}, {0, 0}}, linear_weights(2)));
  EXPECT_FALSE(weighted_kappa({{3, 2}, {1, 4}}, {{1, 1}, {1, 1}}));
  EXPECT_EQ(weighted_kappa({{6, 0}, {4, 0}}, linear_weights(2)).value().kappa, 0);
  EXPECT_EQ(weighted_kappa({{6, 0}, {0, 4}}, linear_weights(2)).value().kappa, 1);
}

TEST(Weights, AreAsDocumented) {
  EXPECT_EQ(linear_weights(3), (AgreementWeights{{1, .5, 0}, {.5, 1, .5}, {0, .5, 1}}));
  EXPECT_EQ(quadratic_weights(3), (AgreementWeights{{1, .75, 0}, {.75, 1, .75}, {0, .75, 1}}));
  EXPECT_EQ(refusal([] { linear_weights(1); }), "categories must be between 2 and 1000, got 1");
}

TEST(WeightedKappa, RefusesImpossibleWeights) {
  const auto with = [](const AgreementWeights& weights) {
    return refusal([&] { weighted_kappa({{3, 2}, {1, 4}}, weights); });
  };
  EXPECT_EQ(with({{1, 0}}), "rows of weights must be between 2 and 2, got 1");
  EXPECT_EQ(with({{1, 0}, {0}}), "entries of a row of weights must be between 2 and 2, got 1");
  EXPECT_EQ(with({{1, -.5}, {-.5, 1}}), "weight must be between 0 and 1, got -0.5");
  EXPECT_EQ(with({{1, .5}, {.5, .9}}), "weight of a category with itself must be between 1 and 1, got 0.9");
  EXPECT_EQ(with({{1, .5}, {.25, 1}}), "weight below the diagonal must be between 0.5 and 0.5, got 0.25");
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(with({{1, nan}, {nan, 1}}), "weight must be between 0 and 1, got nan");
  EXPECT_EQ(refusal([] {
              weighted_kappa({{1, 2}}, identity_weights(2));
            }),
            "rows of a square table must be between 2 and 2, got 1");
}

}  // namespace
}  // namespace stats
