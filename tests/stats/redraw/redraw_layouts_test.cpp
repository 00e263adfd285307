#include "stats/redraw/redraw_layouts.h"

#include <gtest/gtest.h>

#include <vector>

#include "stats/random.h"
#include "stats/redraw/redraw.h"
#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

// 12 triangles of three raters who always answer alike: 24 of 36 right is 8 of 12 at 1/3. Recomputed:
// Python's fractions.
TEST(RedrawLayouts, OfAnswersAlwaysAlikeIsTheBinomialOfTrials) {
  const auto at = redraw_layouts(std::vector<Layouts>(12, {3, 0, 0}));
  EXPECT_NEAR(total_at_least(at, 24), .01875843226247128, 1e-16);
  for (int correct = 0; correct <= 12; ++correct)
    EXPECT_NEAR(total_at_least(at, 3 * correct) / chance_of_at_least(correct, 12, 1.0 / 3), 1, 1e-13);
}

std::vector<Layouts> random_layouts(Random& random, std::uint32_t kinds) {
  std::vector<Layouts> trials;
  for (int trial = 0; trial < 7; ++trial) {
    Layouts layouts;
    for (std::uint32_t i = 0; i <= random.below(kinds); ++i)
      layouts.push_back(static_cast<int>(random.below(5)));
    trials.push_back(layouts);
  }
  return trials;
}

/// Counts every combination of layouts; the last trial runs fastest.
std::vector<double> by_every_layout(const std::vector<Layouts>& trials, std::size_t places) {
  std::vector<std::int64_t> counts(places);
  std::vector<std::size_t> at(trials.size());
  std::int64_t all = 0;
  for (bool more = true; more;) {
    std::size_t total = 0;
    for (std::size_t i = 0; i < trials.size(); ++i) total += static_cast<std::size_t>(trials[i][at[i]]);
    ++counts[total];
    ++all;
    more = false;
    for (std::size_t i = trials.size(); i-- > 0 && !more;) {
      at[i] = (at[i] + 1) % trials[i].size();
      more = at[i] != 0;
    }
  }
  std::vector<double> shares;
  for (const std::int64_t count : counts) shares.push_back(double(count) / double(all));
  return shares;
}

TEST(RedrawLayouts, AgreesWithEveryCombination) {
  Random random(31);
  for (int repeat = 0; repeat < 30; ++repeat) {
    const auto trials = random_layouts(random, 5);
    const auto at = redraw_layouts(trials);
    const auto exact = by_every_layout(trials, at.size());
    for (std::size_t total = 0; total < at.size(); ++total) EXPECT_NEAR(at[total], exact[total], 1e-15);
  }
}

TEST(RedrawLayouts, OfTwoLayoutsIsTheRedrawOfCoins) {
  Random random(32);
  for (int repeat = 0; repeat < 30; ++repeat) {
    std::vector<Layouts> trials;
    std::vector<Split> splits;
    for (int trial = 0; trial < 12; ++trial) {
      splits.push_back({static_cast<int>(random.below(6)), static_cast<int>(random.below(6))});
      trials.push_back({splits.back().one, splits.back().other});
    }
    const auto coins = redraw_distribution(splits);
    auto at = redraw_layouts(trials);
    EXPECT_EQ(total_minimum(at, 0.05), redraw_minimum(splits, 0.05));
    for (int total = 0; total < static_cast<int>(at.size()); ++total) {
      EXPECT_EQ(at[static_cast<std::size_t>(total)], coins[static_cast<std::size_t>(total)]);
      if (at[static_cast<std::size_t>(total)] == 0) continue;
      EXPECT_EQ(total_at_least(at, total), redraw_at_least(splits, total));
      EXPECT_EQ(total_two_sided_by_distance(at, total), redraw_two_sided(splits, total));
    }
    at.resize(coins.size());
    EXPECT_EQ(at, coins);
  }
}

// Six orders of a triangle, two for each place of the odd one, are as three places.
TEST(RedrawLayouts, MayListALayoutTwice) {
  const std::vector<Layouts> places{{4, 1, 0}, {2, 2, 1}, {0, 5, 0}};
  const std::vector<Layouts> orders{{4, 1, 0, 4, 1, 0}, {2, 2, 2, 2, 1, 1}, {0, 0, 0, 0, 5, 5}};
  const auto three = redraw_layouts(places), six = redraw_layouts(orders);
  ASSERT_EQ(three.size(), six.size());
  for (std::size_t i = 0; i < three.size(); ++i) EXPECT_NEAR(three[i], six[i], 1e-16);
}

TEST(RedrawLayouts, OfNothingIsCertainAndBadArgumentsAreRefused) {
  EXPECT_EQ(redraw_layouts({}), TotalDistribution{1.0});
  EXPECT_EQ(redraw_layouts(std::vector<Layouts>{{2}}), (TotalDistribution{0, 0, 1}));
  EXPECT_EQ(refusal([] {
              redraw_layouts(std::vector<Layouts>{{1, 0}, {}});
            }),
            "layouts of a trial must be between 1 and 24, got 0");
  EXPECT_EQ(refusal([] { redraw_layouts(std::vector<Layouts>{Layouts(25, 0)}); }),
            "layouts of a trial must be between 1 and 24, got 25");
  EXPECT_EQ(refusal([] {
              redraw_layouts(std::vector<Layouts>{{1, -1}});
            }),
            "right answers of a layout must be between 0 and 1000000, got -1");
  EXPECT_EQ(refusal([] {
              redraw_layouts(std::vector<Layouts>(3, {400'000, 0}));
            }),
            "sum of the largest of each trial must be between 0 and 1000000, got 1200000");
  EXPECT_EQ(refusal([] {
              redraw_layouts(std::vector<Layouts>(100'000, {9, 0}));
            }),
            "steps of the work must be between 0 and 10000000000, got 180000000000");
}

}  // namespace
}  // namespace stats
