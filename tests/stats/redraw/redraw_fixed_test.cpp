#include "stats/redraw/redraw_fixed.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <vector>

#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

/// One rater: so many trials called the one, the rest the other.
std::vector<Split> one_rater(int calls_one, int calls_other) {
  std::vector<Split> splits(static_cast<std::size_t>(calls_one), {1, 0});
  splits.insert(splits.end(), static_cast<std::size_t>(calls_other), {0, 1});
  return splits;
}

// BIN-8: R. A. Fisher (1935), 8 cups, 4 of each (memory; recomputed: fisher.test(alternative="greater") and
// two-sided).
TEST(RedrawFixed, AgreesWithTheTeaTasting) {
  const auto at = redraw_fixed(one_rater(4, 4), 4);
  EXPECT_NEAR(total_at_least(at, 8), .0142857142857, 5.1e-14);
  EXPECT_NEAR(total_at_least(at, 8), 1.0 / 70, 1e-16);
  EXPECT_NEAR(total_at_least(at, 6), .2428571428571, 5.1e-14);
  EXPECT_NEAR(total_at_least(at, 6), 17.0 / 70, 1e-15);
  EXPECT_NEAR(total_two_sided_by_distance(at, 6), .4857142857, 5.1e-11);
  EXPECT_NEAR(total_two_sided_by_probability(at, 6), .4857142857, 5.1e-11);
  EXPECT_EQ(at[7], 0);  // with fixed numbers errors come in pairs
}

// Recomputed: R fisher.test(matrix(c(7, 3, 2, 9), 2)), greater and two-sided: of 10 of the one 7 are called
// it, of 11 of the other 2.
TEST(RedrawFixed, OfOneRaterIsFishersExactTest) {
  const auto at = redraw_fixed(one_rater(9, 12), 10);
  EXPECT_NEAR(total_at_least(at, 16), .0241724220052393, 5.1e-16);
  EXPECT_NEAR(total_two_sided_by_probability(at, 16), .0299731228523798, 5.1e-16);
}

TEST(RedrawFixed, AgreesWithEveryArrangement) {
  Random random(41);
  for (int repeat = 0; repeat < 20; ++repeat) {
    std::vector<Split> splits;
    for (int trial = 0; trial < 9; ++trial)
      splits.push_back({static_cast<int>(random.below(5)), static_cast<int>(random.below(5))});
    for (int ones = 0; ones <= 9; ++ones) {
      const auto at = redraw_fixed(splits, ones);
      std::vector<double> counts(at.size());
      std::vector<char> truth(9);
      std::fill_n(truth.begin(), ones, char{1});
      double all = 0;
      do {
        std::size_t total = 0;
        for (std::size_t i = 0; i < 9; ++i)
          total += static_cast<std::size_t>(truth[i] ? splits[i].one : splits[i].other);
        ++counts.at(total);
        ++all;
      } while (std::prev_permutation(truth.begin(), truth.end()));
      for (std::size_t total = 0; total < at.size(); ++total)
        EXPECT_NEAR(at[total], counts[total] / all, 1e-14 * counts[total] / all);
    }
  }
}

TEST(RedrawFixed, DoesNotCareWhichTruthIsOne) {
  const std::vector<Split> splits{{3, 0}, {2, 1}, {0, 3}, {1, 2}, {3, 0}};
  const std::vector<Split> turned{{0, 3}, {1, 2}, {3, 0}, {2, 1}, {0, 3}};
  const auto one = redraw_fixed(splits, 2), other = redraw_fixed(turned, 3);
  ASSERT_EQ(one.size(), other.size());
  for (std::size_t i = 0; i < one.size(); ++i) EXPECT_NEAR(one[i], other[i], 1e-16);
}

// Mixed over a binomial number of ones, it is the re-draw of free coins.
TEST(RedrawFixed, MixedOverTheNumberIsTheRedrawOfCoins) {
  const std::vector<Split> splits{{3, 0}, {2, 1}, {0, 3}, {1, 2}, {3, 0}, {4, 1}};
  const auto coins = redraw_distribution(splits);
  std::vector<double> mixed(coins.size());
  const double ways[] = {1, 6, 15, 20, 15, 6, 1};
  for (int ones = 0; ones <= 6; ++ones) {
    const auto at = redraw_fixed(splits, ones);
    for (std::size_t i = 0; i < at.size(); ++i) mixed[i] += at[i] * ways[ones] / 64;
  }
  for (std::size_t i = 0; i < coins.size(); ++i) EXPECT_NEAR(mixed[i], coins[i], 1e-15);
}

TEST(RedrawFixed, OfNothingIsCertainAndBadArgumentsAreRefused) {
  EXPECT_EQ(redraw_fixed({}, 0), TotalDistribution{1.0});
  EXPECT_EQ(redraw_fixed(one_rater(2, 1), 0), (TotalDistribution{0, 1, 0, 0}));
  EXPECT_EQ(refusal([] { redraw_fixed(one_rater(4, 4), 9); }), "ones must be between 0 and 8, got 9");
  EXPECT_EQ(refusal([] { redraw_fixed({}, -1); }), "ones must be between 0 and 0, got -1");
  EXPECT_EQ(refusal([] {
              redraw_fixed(std::vector<Split>{{1, -2}}, 0);
            }),
            "other must be between 0 and 1000000, got -2");
  EXPECT_EQ(refusal([] {
              redraw_fixed(std::vector<Split>(2, {900'000, 0}), 1);
            }),
            "sum of all counts must be between 0 and 1000000, got 1800000");
  EXPECT_EQ(refusal([] { redraw_fixed(one_rater(5'000, 5'000), 5'000); }).substr(0, 48),
            "steps of the work must be between 0 and 2e+09, g");
}

}  // namespace
}  // namespace stats
