#include "stats/worth/estimability.h"

#include <gtest/gtest.h>

namespace stats {
namespace {

using Counts = std::vector<PairCount>;

Estimability of(int items, const Counts& counts, bool order_effect = false) {
  return estimable_worths(items, counts, order_effect).estimability;
}

// Ford (1957): finite just when in every division of the items in two some item of each is preferred to one of the other.
TEST(Estimability, NeedsPreferencesRoundInACircle) {
  EXPECT_EQ(of(3, Counts{{0, 1, 1, 0, 0}, {1, 2, 1, 0, 0}, {2, 0, 1, 0, 0}}), Estimability::finite);
  const auto ranked = estimable_worths(3, Counts{{0, 1, 2, 0, 0}, {1, 2, 1, 0, 2}}, false);
  EXPECT_EQ(ranked.estimability, Estimability::separated);
  EXPECT_EQ(ranked.groups, (std::vector<int>{0, 1, 1}));
  const auto apart = estimable_worths(4, Counts{{0, 2, 1, 0, 1}, {1, 3, 1, 0, 1}}, false);
  EXPECT_EQ(apart.estimability, Estimability::disconnected);
  EXPECT_EQ(apart.groups, (std::vector<int>{0, 1, 0, 1}));
}

// Where neighbours tie and all others are ranked, ties and worths go to infinity together.
TEST(Estimability, NeedsMoreThanTiesOfNeighbours) {
  EXPECT_EQ(of(3, Counts{{0, 1, 0, 2, 0}, {1, 2, 0, 2, 0}, {0, 2, 3, 0, 0}}), Estimability::separated);
  EXPECT_EQ(of(3, Counts{{0, 1, 0, 2, 1}, {1, 2, 0, 2, 0}, {0, 2, 3, 0, 0}}), Estimability::finite);
  EXPECT_EQ(of(2, Counts{{0, 1, 0, 5, 0}}), Estimability::separated);
  EXPECT_EQ(of(2, Counts{{0, 1, 1, 5, 0}}), Estimability::separated);
  EXPECT_EQ(of(2, Counts{{0, 1, 1, 5, 1}}), Estimability::finite);
}

TEST(Estimability, NeedsBothOrdersForAnOrderEffect) {
  // Always the first: order alone explains it.
  EXPECT_EQ(of(2, Counts{{0, 1, 4, 0, 0}, {1, 0, 4, 0, 0}}), Estimability::finite);
  EXPECT_EQ(of(2, Counts{{0, 1, 4, 0, 0}, {1, 0, 4, 0, 0}}, true), Estimability::separated);
  // One order only: worth and order cannot be told apart.
  EXPECT_EQ(of(2, Counts{{0, 1, 4, 0, 3}}, true), Estimability::separated);
  EXPECT_EQ(of(2, Counts{{0, 1, 4, 0, 3}, {1, 0, 4, 0, 1}}, true), Estimability::finite);
  // A tie of one pair as good as fixes the other pairs' order effect.
  EXPECT_EQ(of(2, Counts{{0, 1, 0, 2, 0}, {1, 0, 3, 0, 0}}, true), Estimability::separated);
}

}  // namespace
}  // namespace stats
