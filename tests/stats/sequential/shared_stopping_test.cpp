#include "stats/sequential/shared_stopping.h"

#include <gtest/gtest.h>

#include <cstddef>
#include <vector>

#include "stats/random.h"
#include "stats/refusal.h"
#include "stats/sequential/rules_on_counts.h"
#include "stats/sequential/spending_rule.h"

namespace stats {
namespace {

std::vector<Split> splits_of_four_raters(Random& random, int trials) {
  std::vector<Split> splits;
  for (int trial = 0; trial < trials; ++trial) {
    const int one = static_cast<int>(random.below(5));
    splits.push_back({one, 4 - one});
  }
  return splits;
}

/// Every fall of the coins, one after the other: the share that ends in support.
double support_by_every_coin(const StoppingRule& rule, const std::vector<Split>& splits) {
  int supported = 0;
  for (unsigned coins = 0; coins < 1u << splits.size(); ++coins) {
    int total = 0;
    for (std::size_t i = 0; i < splits.size(); ++i) {
      total += (coins >> i) & 1 ? splits[i].one : splits[i].other;
      const auto [support, give_up] = rule.looks[i];
      if (support && total >= *support) {
        ++supported;
        break;
      }
      if (give_up && total <= *give_up) break;
    }
  }
  return supported / double(1u << splits.size());
}

TEST(SharedStopping, AgreesWithEveryFallOfTheCoins) {
  Random random(4);
  for (int repeat = 0; repeat < 30; ++repeat) {
    const auto splits = splits_of_four_raters(random, 10);
    auto rule = unadjusted_shared_rule(splits, 0.2);
    EXPECT_EQ(operate_shared(rule, splits).support, support_by_every_coin(rule, splits));
    for (std::size_t i = 4; i < 10; ++i) rule.looks[i].give_up = static_cast<int>(i);
    EXPECT_EQ(operate_shared(rule, splits).support, support_by_every_coin(rule, splits));
  }
}

// One rater, or raters always alike: the rules on counts.
TEST(SharedStopping, OfRatersAlwaysAlikeIsThatOfOne) {
  for (int raters : {1, 3}) {
    const std::vector<Split> splits(16, {raters, 0});
    const auto unadjusted = unadjusted_shared_rule(splits, 0.05);
    EXPECT_NEAR(operate_shared(unadjusted, splits).support, .0875549316, 5.1e-11);  // SEQ-5, recomputed
    const std::vector looks{5, 10, 16};
    const std::vector spent{.02, .03, .05};
    const auto shared = shared_spending_rule(splits, looks, spent);
    const auto counts = spending_rule(looks, spent, 0.5);
    for (std::size_t i = 0; i < 16; ++i) {
      ASSERT_EQ(shared.looks[i].support.has_value(), counts.looks[i].support.has_value());
      if (counts.looks[i].support) {
        EXPECT_EQ(*shared.looks[i].support, raters * *counts.looks[i].support);
      }
    }
  }
}

TEST(SharedSpendingRule, AsksForTheTotalsOfItsExample) {
  const std::vector<Split> splits(24, {3, 0});
  const auto looks = shared_spending_rule(splits, std::vector{8, 16, 24}, std::vector{.01, .02, .05}).looks;
  EXPECT_EQ(looks[7].support, 24);
  EXPECT_EQ(looks[15].support, 39);
  EXPECT_EQ(looks[23].support, 51);
}

TEST(SharedSpendingRule, HoldsTheLevelWhateverTheSplits) {
  Random random(5);
  for (int repeat = 0; repeat < 100; ++repeat) {
    const auto splits = splits_of_four_raters(random, 30);
    const auto rule = shared_spending_rule(splits, std::vector{10, 20, 30}, std::vector{.01, .03, .05});
    const auto result = operate_shared(rule, splits);
    EXPECT_LE(result.support, .05);
    EXPECT_LE(result.support_after[9] + result.support_after[19], .03);
    EXPECT_GT(result.support, .025);
  }
}

// The bounds up to a look do not depend on later trials.
TEST(SharedSpendingRule, CanBeFollowedAsTheTrialsComeIn) {
  Random random(6);
  const auto splits = splits_of_four_raters(random, 30);
  const auto whole = shared_spending_rule(splits, std::vector{10, 20, 30}, std::vector{.01, .03, .05});
  const auto part =
      shared_spending_rule(std::span(splits).first(20), std::vector{10, 20}, std::vector{.01, .03});
  for (std::size_t i = 0; i < 20; ++i) EXPECT_EQ(whole.looks[i].support, part.looks[i].support);
}

TEST(SharedStopping, RefusesImpossibleArguments) {
  const std::vector<Split> splits(4, {3, 0});
  EXPECT_EQ(refusal([&] {
              operate_shared({{{1, {}}}}, splits);
            }),
            "number of gains must be between 1 and 1, got 4");
  EXPECT_EQ(refusal([] { unadjusted_shared_rule({}, 0.05); }),
            "number of splits must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([&] { unadjusted_shared_rule(splits, 5); }),
            "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
  EXPECT_EQ(refusal([&] { shared_spending_rule(splits, std::vector{5}, std::vector{.05}); }),
            "look must be between 1 and 4, got 5");
  EXPECT_EQ(refusal([] {
              operate_shared({{{1, {}}}}, std::vector<Split>{{-1, 2}});
            }),
            "one must be between 0 and 1000000, got -1");
}

}  // namespace
}  // namespace stats
