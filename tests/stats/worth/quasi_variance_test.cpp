#include "stats/worth/quasi_variance.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/refusal.h"
#include "stats/worth/published_preferences.h"
#include "stats/worth/worth.h"

namespace stats {
namespace {

void expect_errors(const QuasiVariances& found, const std::vector<double>& expected, double error) {
  ASSERT_EQ(found.variance.size(), expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i)
    EXPECT_NEAR(std::sqrt(found.variance[i]), expected[i], error) << i;
}

// PC-5: baseball (data confirmed: R package BradleyTerry2). With home effect, recomputed by R's qvcalc at glm's default
// epsilon, which is off in the seventh digit; without, by R's least squares on the same criterion until it stands still.
TEST(QuasiVariances, OfBaseball) {
  const auto home = fit_worths(7, baseball(), 0, {.order_effect = true}).value();
  expect_errors(quasi_variances(home.covariance),
                {.2593386, .2179751, .2234723, .2224204, .2258201, .2189600, .2188008}, 6e-7);
  const auto plain = fit_worths(7, baseball()).value();
  const auto found = quasi_variances(plain.covariance);
  expect_errors(found,
                {.25602300904614, .21555967481344, .22137509934106, .21949774803333, .22361658685007,
                 .21632348787757, .21688116019978},
                5.1e-13);
  EXPECT_NEAR(found.lowest_error, -.0096905614289468, 1e-12);
  EXPECT_NEAR(found.highest_error, .0198346387093677, 1e-12);
}

TEST(QuasiVariances, DoNotDependOnTheReference) {
  const auto one = quasi_variances(fit_worths(8, flutes(), 0)->covariance);
  const auto other = quasi_variances(fit_worths(8, flutes(), 5)->covariance);
  for (std::size_t i = 0; i < 8; ++i) EXPECT_NEAR(one.variance[i], other.variance[i], 1e-9);
}

TEST(QuasiVariances, OfIndependentEstimatesAreTheirs) {
  const auto found = quasi_variances({{1, 0, 0, 0}, {0, 2, 0, 0}, {0, 0, 3, 0}, {0, 0, 0, 4}});
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(found.variance[i], double(i + 1), 1e-12);
  EXPECT_NEAR(found.lowest_error, 0, 1e-14);
  EXPECT_NEAR(found.highest_error, 0, 1e-14);
}

// Three differences with variances 1, 1, 4: q of the middle item is (1 + 1 - 4)/2.
TEST(QuasiVariances, MayBeBelowZero) {
  const auto found = quasi_variances({{1, 0, -1}, {0, 0, 0}, {-1, 0, 1}});
  EXPECT_NEAR(found.variance[0], 2, 1e-10);
  EXPECT_NEAR(found.variance[1], -1, 1e-10);
  EXPECT_NEAR(found.variance[2], 2, 1e-10);
}

TEST(QuasiVariances, RefuseImpossibleArguments) {
  EXPECT_EQ(refusal([] {
              quasi_variances({{1, 0}, {0, 1}});
            }),
            "number of items must be between 3 and 100, got 2");
  EXPECT_EQ(refusal([] {
              quasi_variances({{1, 0, 0}, {0, 1}, {0, 0, 1}});
            }),
            "length of a row must be between 3 and 3, got 2");
  EXPECT_EQ(refusal([] {
              quasi_variances({{1, 1, 0}, {1, 1, 0}, {0, 0, 1}});
            }),
            "the difference of items 1 and 2 has no variance above 0");
}

}  // namespace
}  // namespace stats
