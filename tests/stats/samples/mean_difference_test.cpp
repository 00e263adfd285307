#include "stats/samples/mean_difference.h"

#include <gtest/gtest.h>

#include <limits>
#include <vector>

#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

using Values = std::vector<double>;

// CO-7 (recomputed): complete separation, two-sided 2/35; greater 1/20.
TEST(MeanDifferenceTest, AgreesWithSmallExamples) {
  const auto two_sided =
      mean_difference_test(Values{12, 15, 18, 20}, Values{21, 25, 28}, Alternative::two_sided);
  EXPECT_TRUE(two_sided.exact);
  EXPECT_DOUBLE_EQ(two_sided.p, 2.0 / 35);
  const auto greater = mean_difference_test(Values{121, 118, 110}, Values{34, 12, 22}, Alternative::greater);
  EXPECT_DOUBLE_EQ(greater.p, 1.0 / 20);
  EXPECT_DOUBLE_EQ(mean_difference_test(Values{121, 118, 110}, Values{34, 12, 22}, Alternative::less).p, 1);
}

// Recomputed: Python itertools.combinations, sums compared to 1e-9; scipy.stats.permutation_test gives the
// same p.
TEST(MeanDifferenceTest, AgreesWithEnumeration) {
  const Values x{31.2, 30.4, 33.1, 29.8, 30.9, 32.2, 31.5, 30.1};
  const Values y{30.0, 29.9, 31.0, 28.7, 30.2, 29.5, 30.6};
  EXPECT_NEAR(mean_difference(x, y), 1.164285714285711, 1e-13);
  EXPECT_EQ(mean_difference_test(x, y, Alternative::greater).p, 111.0 / 6435);
  EXPECT_EQ(mean_difference_test(y, x, Alternative::less).p, 111.0 / 6435);
  EXPECT_EQ(mean_difference_test(x, y, Alternative::two_sided).p, 232.0 / 6435);
  EXPECT_EQ(mean_difference_test(y, x, Alternative::two_sided).p, 232.0 / 6435);
}

// Sums of equal decimals in another order differ in their last bits and must still be ties.
TEST(MeanDifferenceTest, CountsEqualDifferencesAsEqual) {
  EXPECT_EQ(mean_difference_test(Values{0.1, 0.2, 0.3}, Values{0.3, 0.2, 0.1}, Alternative::greater).p,
            14.0 / 20);
  EXPECT_EQ(mean_difference_test(Values{0.1, 0.1}, Values{0.1, 0.1, 0.1}, Alternative::two_sided).p, 1);
}

// Recomputed: plain Python 3, whole numbers, tests/independent/exact.py mean_difference_p on these values.
TEST(MeanDifferenceTest, CountsManyWholeNumbersBySums) {
  Values x, y;
  for (int i = 0; i < 40; ++i) {
    x.push_back(37 + i % 3);
    y.push_back(37 + (i % 5 == 0 ? 2 : i % 2));
  }
  const auto test = mean_difference_test(x, y, Alternative::two_sided);
  EXPECT_TRUE(test.exact);
  EXPECT_NEAR(test.p, 0.39935518704819273, 1e-12);
  for (double& value : x) value /= 8;
  for (double& value : y) value /= 8;
  const auto drawn = mean_difference_test(x, y, Alternative::two_sided);
  EXPECT_FALSE(drawn.exact);
  EXPECT_NEAR(drawn.p, test.p, 4 * drawn.standard_error);
}

TEST(MeanDifferenceTest, DrawsWhereThereIsTooMuchToCount) {
  Random random(6);
  Values x, y;
  for (int i = 0; i < 40; ++i) {
    x.push_back(random.below(1'000) / 100.0);
    y.push_back(random.below(1'000) / 100.0);
  }
  for (double& value : x) value += 20;
  const auto apart = mean_difference_test(x, y, Alternative::greater, {.seed = 5, .draws = 999});
  EXPECT_FALSE(apart.exact);
  EXPECT_EQ(apart.draws, 999);
  EXPECT_EQ(apart.p, 1.0 / 1'000);
}

// Against Welch's test, an independent approximation that is good for this many values: the 95 % interval
// ends at 0 just when p is about 0.05.
TEST(MeanDifferenceTest, DrawnAgreesWithWelchsInterval) {
  Random random(7);
  Values x, y;
  for (int i = 0; i < 60; ++i) {
    x.push_back(random.below(1'000));
    y.push_back(random.below(1'000));
  }
  const double shift = welch_interval(x, y, 0.95).value().lower;
  for (double& value : x) value -= shift;
  EXPECT_NEAR(mean_difference_test(x, y, Alternative::two_sided).p, 0.05, 0.004);
}

TEST(MeanDifferenceTest, TakesVeryUnequalSamples) {
  const Values one{1e9};
  const Values many(50'000, 1e9 - 1);
  EXPECT_DOUBLE_EQ(mean_difference_test(one, many, Alternative::greater).p, 1.0 / 50'001);
  EXPECT_DOUBLE_EQ(mean_difference_test(many, one, Alternative::less).p, 1.0 / 50'001);
}

// Recomputed: Welch's formula with scipy.stats.t.ppf.
TEST(WelchInterval, AgreesWithRecomputedValues) {
  const auto first = welch_interval(Values{12, 15, 18, 20}, Values{21, 25, 28}, 0.95).value();
  EXPECT_NEAR(first.lower, -15.568323744087257, 1e-11);
  EXPECT_NEAR(first.upper, -1.2650095892460786, 1e-11);
  const auto second = welch_interval(Values{121, 118, 110}, Values{34, 12, 22}, 0.9).value();
  EXPECT_NEAR(second.lower, 76.81283692048203, 1e-10);
  EXPECT_NEAR(second.upper, 110.52049641285129, 1e-10);
}

TEST(WelchInterval, IsNothingWithoutSpread) {
  EXPECT_FALSE(welch_interval(Values{1}, Values{1, 2}, 0.95));
  EXPECT_FALSE(welch_interval(Values{0.1, 0.1, 0.1}, Values{0.3, 0.3}, 0.95));
  EXPECT_TRUE(welch_interval(Values{0.1, 0.1, 0.1}, Values{0.3, 0.4}, 0.95));
}

// The squares of such spreads are no doubles any more.
TEST(WelchInterval, IsNothingBeyondTheRangeOfADouble) {
  for (const double scale : {1e200, 1e-200, 1e307})
    EXPECT_FALSE(welch_interval(Values{1 * scale, 2 * scale, 5 * scale}, Values{3 * scale, 4 * scale}, 0.95))
        << scale;
  // Recomputed: Welch's formula in SciPy 1.10 for 1, 2, 5 and 3, 4, scaled.
  const auto small = welch_interval(Values{1e-90, 2e-90, 5e-90}, Values{3e-90, 4e-90}, 0.95).value();
  EXPECT_NEAR(small.lower * 1e90, -5.364886057153562, 1e-9);
  EXPECT_NEAR(small.upper * 1e90, 3.6982193904868947, 1e-9);
}

TEST(MeanDifference, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] { mean_difference(Values{}, Values{1}); }),
            "number of x must be between 1 and 100000, got 0");
  EXPECT_EQ(refusal([] {
              mean_difference_test(Values{1}, Values{std::numeric_limits<double>::quiet_NaN()},
                                   Alternative::less);
            }),
            "y[0] must be a finite number, got nan");
  EXPECT_EQ(refusal([] { welch_interval(Values{1}, Values{1}, 95); }),
            "confidence must be strictly between 0 and 1, got 95 (write 0.95 for 95 %)");
}

}  // namespace
}  // namespace stats
