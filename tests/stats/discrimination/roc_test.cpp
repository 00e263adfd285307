#include "stats/discrimination/roc.h"

#include <gtest/gtest.h>

#include <cstddef>
#include <optional>

#include "stats/refusal.h"

namespace stats {
namespace {

// J. A. Hanley and B. J. McNeil, Radiology 143 (1982) 29, 109 images rated in five categories (data and area
// .893: memory). Standard error of DeLong recomputed: R, variances of the row and column means of
// outer(x, y, (a > b) + (a == b)/2).
const RatedAnswers kRatedImages{{33, 11, 2, 2, 3}, {2, 11, 6, 6, 33}};

TEST(Roc, AgreesWithRatedImages) {
  const RocArea area = roc_area(kRatedImages);
  EXPECT_NEAR(area.area, .893, 5.1e-4);
  EXPECT_NEAR(area.area, .89317106152806, 1e-13);
  EXPECT_NEAR(area.standard_error.value(), .030724408379381, 1e-14);
}

// Recomputed likewise.
TEST(Roc, AgreesWithRecomputedValues) {
  const RocArea few = roc_area({{3, 1, 0}, {0, 1, 3}});
  EXPECT_NEAR(few.area, .96875, 1e-15);
  EXPECT_NEAR(few.standard_error.value(), .044194173824159, 1e-14);
  const RocArea more = roc_area({{5, 3, 2, 1}, {1, 2, 4, 6}});
  EXPECT_NEAR(more.area, .8006993006993, 1e-13);
  EXPECT_NEAR(more.standard_error.value(), .091650197759793, 1e-14);
}

// Recomputed: R, every one of combn(n, m) divisions of the mid-ranks.
TEST(RocTest, AgreesWithRecomputedValues) {
  const RatedAnswers few{{3, 1, 0}, {0, 1, 3}}, more{{4, 2, 1, 1}, {1, 1, 3, 3}};
  EXPECT_NEAR(roc_test(few, Alternative::greater).p, .028571428571429, 1e-14);
  EXPECT_NEAR(roc_test(few, Alternative::two_sided).p, .057142857142857, 1e-14);
  EXPECT_NEAR(roc_test(more, Alternative::greater).p, .048717948717949, 1e-14);
  EXPECT_NEAR(roc_test(more, Alternative::two_sided).p, .097435897435897, 1e-14);
  EXPECT_TRUE(roc_test(more, Alternative::greater).exact);
  EXPECT_TRUE(roc_test(kRatedImages, Alternative::greater).exact);
}

TEST(Roc, PointsAddUp) {
  const auto points = roc_points({{3, 1, 0}, {0, 1, 3}});
  const double hits[] = {0, .75, 1, 1}, false_alarms[] = {0, 0, .25, 1};
  ASSERT_EQ(points.size(), 4u);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_EQ(points[i].hit, hits[i]);
    EXPECT_EQ(points[i].false_alarm, false_alarms[i]);
  }
}

TEST(Roc, AreaLiesUnderThePoints) {
  const auto points = roc_points(kRatedImages);
  double area = 0;
  for (std::size_t i = 1; i < points.size(); ++i)
    area += (points[i].false_alarm - points[i - 1].false_alarm) * (points[i].hit + points[i - 1].hit) / 2;
  EXPECT_NEAR(roc_area(kRatedImages).area, area, 1e-15);
}

TEST(Roc, TurnsAroundWithTheTruth) {
  const RocArea area = roc_area({kRatedImages.noise, kRatedImages.signal});
  EXPECT_NEAR(area.area, 1 - .89317106152806, 1e-13);
  EXPECT_NEAR(area.standard_error.value(), .030724408379381, 1e-14);
  EXPECT_EQ(roc_test({{0, 1, 3}, {3, 1, 0}}, Alternative::less).p,
            roc_test({{3, 1, 0}, {0, 1, 3}}, Alternative::greater).p);
}

TEST(Roc, AtTheEdges) {
  EXPECT_EQ(roc_area({{5, 0}, {0, 7}}).area, 1);
  EXPECT_EQ(roc_area({{5, 0}, {0, 7}}).standard_error, 0);
  EXPECT_EQ(roc_area({{4, 0}, {9, 0}}).area, 0.5);
  EXPECT_EQ(roc_area({{1, 0}, {4, 5}}).standard_error, std::nullopt);
  EXPECT_EQ(roc_area({{2, 3}, {0, 1}}).standard_error, std::nullopt);
  EXPECT_EQ(roc_test({{4, 0}, {9, 0}}, Alternative::greater).p, 1);
  EXPECT_EQ(roc_area({{100'000, 0}, {0, 100'000}}).area, 1);
}

TEST(Roc, Refuses) {
  EXPECT_EQ(refusal([] { roc_area({{1}, {1}}); }), "categories of signal must be between 2 and 1000, got 1");
  EXPECT_EQ(refusal([] {
              roc_points({{1, 2}, {1, 2, 3}});
            }),
            "categories of noise must be between 2 and 2, got 3");
  EXPECT_EQ(refusal([] { roc_area({{1, -1}, {1, 1}}); }), "signal must be between 0 and 100000, got -1");
  EXPECT_EQ(refusal([] { roc_area({{1, 1}, {0, 0}}); }), "sum of noise must be between 1 and 100000, got 0");
  EXPECT_EQ(refusal([] {
              roc_test({{60'000, 60'000}, {1, 0}}, Alternative::greater);
            }),
            "sum of signal must be between 1 and 100000, got 120000");
  EXPECT_EQ(refusal([] {
              roc_test({{1, 0}, {1, 0}}, Alternative::greater, {1, 0});
            }),
            "draws must be between 1 and 100000000, got 0");
}

}  // namespace
}  // namespace stats
