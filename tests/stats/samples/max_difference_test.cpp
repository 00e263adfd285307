#include "stats/samples/max_difference.h"

#include <gtest/gtest.h>

#include "stats/random.h"
#include "stats/refusal.h"
#include "stats/samples/mean_difference.h"

namespace stats {
namespace {

using CurveGroup = std::vector<std::vector<double>>;

// With one band it is the test of the difference of means. Source: that test, tests/reference (coin).
TEST(MaxDifferences, OfOneBandAreThoseOfTheMeans) {
  const std::vector<double> x{12, 15, 18, 20}, y{21, 25, 28};
  CurveGroup first, second;
  for (const double one : x) first.push_back({one});
  for (const double one : y) second.push_back({one});
  for (const auto alternative : {Alternative::two_sided, Alternative::greater, Alternative::less}) {
    const auto found = max_difference_test(first, second, alternative);
    EXPECT_NEAR(found.test.p, mean_difference_test(x, y, alternative).p, 1e-12);
    EXPECT_TRUE(found.test.exact);
    EXPECT_NEAR(found.difference[0], mean_difference(x, y), 1e-12);
  }
}

// By hand: 20 divisions of three and three; in a stated direction the seen one alone, in both its exchange as well.
TEST(MaxDifferences, OfThreeAgainstThreeCannotBeRarer) {
  const CurveGroup on{{1.0, 0}, {1.1, 5}, {1.2, 1}}, off{{0, 9}, {0.1, 3}, {0.2, 14}};
  const auto directed = max_difference_test(on, off, Alternative::greater);
  EXPECT_EQ(directed.smallest_p, 1 / 20.);
  EXPECT_NEAR(directed.test.p, 1 / 20., 1e-12);
  EXPECT_EQ(directed.place, 0u);
  const auto either = max_difference_test(on, off, Alternative::two_sided);
  EXPECT_EQ(either.smallest_p, 1 / 10.);
  EXPECT_NEAR(either.test.p, 1 / 10., 1e-12);
  EXPECT_GT(either.adjusted_p[1], 0.1);
  EXPECT_NEAR(max_difference_test({{1}, {2}}, {{5}, {6}, {7}}, Alternative::two_sided).smallest_p, 1 / 10.,
              1e-15);
}

// Bands that repeat each other change no p; ten independent ones make a chance difference likelier.
TEST(MaxDifferences, KnowHowTheBandsHangTogether) {
  const CurveGroup first{{3.0}, {2.5}, {2.8}, {1.0}}, second{{1.5}, {1.2}, {2.0}, {0.9}};
  CurveGroup first_twice = first, second_twice = second;
  for (auto& curve : first_twice) curve.push_back(10 * curve[0] + 1);
  for (auto& curve : second_twice) curve.push_back(10 * curve[0] + 1);
  const double one = max_difference_test(first, second, Alternative::two_sided).test.p;
  EXPECT_EQ(max_difference_test(first_twice, second_twice, Alternative::two_sided).test.p, one);
  Random random(5);
  for (int band = 0; band < 10; ++band) {
    for (auto& curve : first_twice) curve.push_back(double(random.below(1'000'000)));
    for (auto& curve : second_twice) curve.push_back(double(random.below(1'000'000)));
  }
  EXPECT_GT(max_difference_test(first_twice, second_twice, Alternative::two_sided).adjusted_p[0], one);
}

TEST(MaxDifferences, OfEqualCurvesAreNothing) {
  const CurveGroup same{{1, 2}, {1, 2}};
  const auto found = max_difference_test(same, same, Alternative::two_sided);
  EXPECT_EQ(found.test.p, 1);
  EXPECT_EQ(found.difference, (std::vector<double>{0, 0}));
}

// Drawn divisions are near those that are all counted: within five standard errors.
TEST(MaxDifferences, AreDrawnWhereThereAreTooMany) {
  Random random(9);
  CurveGroup first, second;
  for (int i = 0; i < 24; ++i)
    (i < 12 ? first : second).push_back({double(random.below(100)) + (i < 12 ? 20 : 0)});
  std::vector<double> x, y;
  for (const auto& curve : first) x.push_back(curve[0]);
  for (const auto& curve : second) y.push_back(curve[0]);
  const auto found = max_difference_test(first, second, Alternative::two_sided, {.seed = 3, .draws = 40'000});
  EXPECT_FALSE(found.test.exact);
  EXPECT_NEAR(found.test.p, mean_difference_test(x, y, Alternative::two_sided).p,
              5 * found.test.standard_error);
}

// The chance of a false alarm over twelve bands stays at the level: 3,000 simulated studies of five and five, p at most 0.05
// (6 of 252 divisions in each direction: 12/252 = 0.0476), within four standard errors above it.
TEST(MaxDifferences, HoldTheirLevelOverAllBands) {
  Random random(17);
  int alarms = 0;
  for (int study = 0; study < 3'000; ++study) {
    CurveGroup first, second;
    for (int i = 0; i < 10; ++i) {
      std::vector<double> curve;
      const double common = double(random.below(1'000));
      for (int band = 0; band < 12; ++band) curve.push_back(common + double(random.below(2'000)));
      (i < 5 ? first : second).push_back(curve);
    }
    alarms += max_difference_test(first, second, Alternative::two_sided).test.p <= 0.05;
  }
  EXPECT_LT(alarms / 3'000., 0.0476 + 4 * 0.0039);
  EXPECT_GT(alarms / 3'000., 0.0476 - 4 * 0.0039);
}

TEST(MaxDifferences, RefuseImpossibleArguments) {
  const CurveGroup two{{1}, {2}};
  EXPECT_EQ(refusal([&] { max_difference_test({}, two, Alternative::greater); }),
            "number of first curves must be between 1 and 1000, got 0");
  EXPECT_EQ(refusal([&] { max_difference_test({{1}}, {{2}}, Alternative::greater); }),
            "number of curves in all must be between 3 and 2000, got 2");
  EXPECT_EQ(refusal([&] {
              max_difference_test(two, {{1, 2}}, Alternative::greater);
            }),
            "number of bands of a curve must be between 1 and 1, got 2");
  EXPECT_NE(refusal([&] { max_difference_test(two, {{0. / 0.}}, Alternative::greater); }), "accepted");
  EXPECT_NE(refusal([&] { max_difference_test(two, two, Alternative::greater, {.draws = 0}); }), "accepted");
}

}  // namespace
}  // namespace stats
