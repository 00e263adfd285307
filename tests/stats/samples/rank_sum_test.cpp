#include "stats/samples/rank_sum.h"

#include <gtest/gtest.h>

#include <vector>

#include "stats/refusal.h"

namespace stats {
namespace {

using Numbers = std::vector<double>;

// CO-7: ASAT of two groups (data: R package exactRankTests, data set ASAT; recomputed there by wilcox.exact).
TEST(RankSums, OfASAT) {
  const Numbers compound{1.53, 1.75, 2.12, 2.83, 2.58, 2.37, 2.92, 2.08,
                         3.01, 2.67, 2.08, 2.25, 3.08, 2.01, 1.58},
      control{1.33, 1.78, 1.53, 1.95, 1.83, 1.47, 1.87, 1.55, 2.58, 2.17,
              1.97, 1.62, 2.25, 3.53, 2.92, 1.78, 2.22, 2.55, 2.75};
  const auto found = rank_sum(compound, control, Alternative::two_sided);
  EXPECT_EQ(found.pairs_won, 185);
  EXPECT_NEAR(found.test.p, .1442443, 5.1e-8);
  EXPECT_TRUE(found.test.exact);
  EXPECT_EQ(rank_sum(control, compound, Alternative::two_sided).pairs_won, 15 * 19 - 185);
}

TEST(RankSums, CountPairsWon) {
  const auto found = rank_sum(Numbers{12, 15, 18, 20}, Numbers{21, 25, 28}, Alternative::less);
  EXPECT_EQ(found.pairs_won, 0);
  EXPECT_DOUBLE_EQ(found.test.p, 1 / 35.);
  EXPECT_EQ(rank_sum(Numbers{1, 2}, Numbers{2, 2}, Alternative::less).pairs_won, 1);
  EXPECT_EQ(rank_sum(Numbers{5, 5}, Numbers{5}, Alternative::two_sided).test.p, 1);
  EXPECT_EQ(refusal([] { rank_sum(Numbers{}, Numbers{1}, Alternative::less); }),
            "number of x must be between 1 and 100000, got 0");
}

}  // namespace
}  // namespace stats
