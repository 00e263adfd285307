#include "stats/samples/repeats.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/refusal.h"

namespace stats {
namespace {

// By hand: deviations -0.01 0.01, -0.02 0 0.02, none: 0.0002 + 0.0008 over 1 + 2.
TEST(Repeats, SpreadWithinTheirGroups) {
  const std::vector<std::vector<double>> groups{{1.00, 1.02}, {5.0, 5.02, 4.98}, {7}};
  const auto spread = spread_within(groups);
  EXPECT_EQ(spread.degrees_of_freedom, 3);
  EXPECT_NEAR(spread.standard_deviation.value(), std::sqrt(0.001 / 3), 1e-14);
  EXPECT_FALSE(spread_within(std::vector<std::vector<double>>{{1}, {2}}).standard_deviation);
}

// SciPy: t.ppf(0.975, 7) = 2.364624251592785, t.ppf(0.995, 3) = 5.84090930973336.
TEST(Repeats, LimitTheDifferenceOfTheirMeans) {
  EXPECT_NEAR(repeatability_limit({0.02, 7}, 2, 2, 0.95), 0.02 * 2.364624251592785, 1e-13);
  EXPECT_NEAR(repeatability_limit({1, 3}, 1, 4, 0.99), 5.84090930973336 * std::sqrt(1.25), 1e-11);
}

TEST(Repeats, RefuseImpossibleArguments) {
  EXPECT_EQ(refusal([] {
              repeatability_limit({0.02, 0}, 2, 2, 0.95);
            }),
            "degrees of freedom must be between 1 and 1000000000, got 0");
  EXPECT_NE(refusal([] { repeatability_limit({0.02, 7}, 0, 2, 0.95); }), "accepted");
  EXPECT_NE(refusal([] { repeatability_limit({std::nullopt, 7}, 1, 2, 0.95); }), "accepted");
  EXPECT_NE(refusal([] { repeatability_limit({0.02, 7}, 1, 2, 95); }), "accepted");
  EXPECT_NE(refusal([] { spread_within(std::vector<std::vector<double>>{{0. / 0.}}); }), "accepted");
}

}  // namespace
}  // namespace stats
