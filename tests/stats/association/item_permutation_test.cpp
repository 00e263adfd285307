#include "stats/association/item_permutation.h"

#include <gtest/gtest.h>

#include <array>
#include <limits>
#include <vector>

#include "stats/refusal.h"

namespace stats {
namespace {

const std::vector<double> kValues{0.3, 1.0, 2.5, 0.6, 4.0, 3.1};
const std::vector<ItemPair> kPairs{{0, 1, .5}, {0, 2, .7},  {1, 3, .55}, {2, 4, .6},
                                   {3, 4, .9}, {4, 5, .45}, {0, 5, .8},  {1, 5, .6}};

// Recomputed: scipy.stats.spearmanr over itertools.permutations of the values, differences rounded to 9
// digits.
TEST(ItemPermutation, AgreesWithEnumeration) {
  const auto size = [](PairValue value, Alternative alternative) {
    return permute_by_item(kValues, kPairs, value, alternative).value();
  };
  const auto absolute = size(PairValue::absolute_difference, Alternative::greater);
  EXPECT_NEAR(absolute.rho, 0.8982196964349441, 1e-14);
  EXPECT_TRUE(absolute.test.exact);
  EXPECT_EQ(absolute.test.p, 4.0 / 720);
  EXPECT_EQ(size(PairValue::absolute_difference, Alternative::two_sided).test.p, 4.0 / 720);
  EXPECT_EQ(size(PairValue::absolute_difference, Alternative::less).test.p, 718.0 / 720);
  const auto as_signed = size(PairValue::signed_difference, Alternative::less);
  EXPECT_NEAR(as_signed.rho, -0.9700772721497397, 1e-14);
  EXPECT_EQ(as_signed.test.p, 2.0 / 720);
  EXPECT_EQ(size(PairValue::signed_difference, Alternative::two_sided).test.p, 2.0 / 720);
}

TEST(ItemPermutation, CountsItemsAndNotPairs) {
  // Three items, all three pairs: 6 orders of the values, so no p below 1/6 however the outcomes lie.
  const std::vector<double> values{1, 2, 4};
  const std::vector<ItemPair> pairs{{0, 1, .5}, {1, 2, .7}, {0, 2, .9}};
  const auto found =
      permute_by_item(values, pairs, PairValue::absolute_difference, Alternative::greater).value();
  EXPECT_DOUBLE_EQ(found.rho, 1);
  EXPECT_EQ(found.test.p, 1.0 / 6);
}

// Decimal differences that a binary computer does not see as equal: 0.3 - 0.2 and 0.2 - 0.1.
TEST(ItemPermutation, TiesDifferencesThatAreEqualInDecimals) {
  const std::vector<double> values{0.1, 0.2, 0.3};
  EXPECT_FALSE(permute_by_item(values, std::vector<ItemPair>{{0, 1, .5}, {1, 2, .7}},
                               PairValue::absolute_difference, Alternative::greater));
}

TEST(ItemPermutation, DrawsBeyondEightItems) {
  std::vector<double> values;
  std::vector<ItemPair> pairs;
  for (int i = 0; i < 9; ++i) {
    values.push_back(i * i);
    if (i > 0) pairs.push_back({i, i - 1, 2.0 * i - 1});
  }
  const MonteCarlo monte_carlo{.seed = 4, .draws = 1'999};
  const auto found =
      permute_by_item(values, pairs, PairValue::signed_difference, Alternative::greater, monte_carlo).value();
  EXPECT_DOUBLE_EQ(found.rho, 1);
  EXPECT_FALSE(found.test.exact);
  EXPECT_EQ(found.test.draws, 1'999);
  EXPECT_LT(found.test.p, 0.005);
  EXPECT_GE(found.test.p, 1.0 / 2'000);
}

// Three more items that no pair uses; exact p recomputed like the values above: 160 of the 60,480 ways to give six of
// the nine values to the six items.
TEST(ItemPermutation, DrawnLiesWithinItsErrorOfTheExact) {
  std::vector<double> values = kValues;
  values.insert(values.end(), {0.3, 2.5, 3.1});
  const auto found =
      permute_by_item(values, kPairs, PairValue::absolute_difference, Alternative::greater).value();
  EXPECT_FALSE(found.test.exact);
  EXPECT_NEAR(found.test.p, 160.0 / 60'480, 4 * found.test.standard_error);
}

// Recomputed like the values above.
TEST(ItemPermutation, SaysWhatCanBeReached) {
  const auto smallest = [](PairValue value, Alternative alternative) {
    return smallest_attainable_p_by_item(kValues, kPairs, value, alternative);
  };
  EXPECT_EQ(smallest(PairValue::absolute_difference, Alternative::greater), 1.0 / 720);
  EXPECT_EQ(smallest(PairValue::absolute_difference, Alternative::two_sided), 1.0 / 720);
  EXPECT_EQ(smallest(PairValue::signed_difference, Alternative::greater), 1.0 / 720);
  EXPECT_EQ(smallest(PairValue::signed_difference, Alternative::less), 2.0 / 720);
  EXPECT_EQ(smallest(PairValue::signed_difference, Alternative::two_sided), 2.0 / 720);
  EXPECT_EQ(refusal([] {
              smallest_attainable_p_by_item(std::vector<double>(9, 1.0), kPairs, PairValue::signed_difference,
                                            Alternative::less);
            }),
            "number of items must be between 2 and 8, got 9");
}

// Recomputed like the values above: the smallest |rho| that so few of the 720 orders reach.
TEST(ItemPermutation, SaysWhichRhoIsNeeded) {
  const auto needed = [](PairValue value, double level) {
    return smallest_significant_rho_by_item(kValues, kPairs, value, level);
  };
  EXPECT_NEAR(needed(PairValue::absolute_difference, 0.05).value(), 0.7530120481927711, 1e-12);
  EXPECT_NEAR(needed(PairValue::absolute_difference, 2.0 / 720).value(), 0.9341484842923421, 1e-12);
  EXPECT_NEAR(needed(PairValue::signed_difference, 0.01).value(), 0.9221722216732094, 1e-12);
  EXPECT_NEAR(needed(PairValue::signed_difference, 2.0 / 720).value(), 0.9700772721497398, 1e-12);
  EXPECT_EQ(needed(PairValue::signed_difference, 0.001), std::nullopt);
}

TEST(ItemPermutation, IsNothingForConstants) {
  EXPECT_FALSE(permute_by_item(std::array{2.0, 2.0, 2.0}, std::vector<ItemPair>{{0, 1, 1}, {1, 2, 3}},
                               PairValue::absolute_difference, Alternative::greater));
  EXPECT_FALSE(permute_by_item(std::array{1.0, 2.0, 4.0}, std::vector<ItemPair>{{0, 1, 1}, {1, 2, 1}},
                               PairValue::absolute_difference, Alternative::greater));
}

TEST(ItemPermutation, RefusesImpossibleArguments) {
  const auto with_pairs = [](std::vector<ItemPair> pairs) {
    return refusal(
        [=] { permute_by_item(kValues, pairs, PairValue::absolute_difference, Alternative::greater); });
  };
  EXPECT_EQ(with_pairs({{0, 1, 1}}), "number of pairs must be between 2 and 10000, got 1");
  EXPECT_EQ(with_pairs({{0, 1, 1}, {0, 6, 1}}), "second item of a pair must be between 0 and 5, got 6");
  EXPECT_EQ(with_pairs({{0, 1, 1}, {-1, 2, 1}}), "first item of a pair must be between 0 and 5, got -1");
  EXPECT_EQ(with_pairs({{0, 1, 1}, {3, 3, 1}}), "the items of a pair must be different, got 3 twice");
  EXPECT_EQ(with_pairs({{0, 1, 1}, {3, 4, std::numeric_limits<double>::quiet_NaN()}}),
            "outcome[0] must be a finite number, got nan");
}

}  // namespace
}  // namespace stats
