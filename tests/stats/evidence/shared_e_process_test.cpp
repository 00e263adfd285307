#include "stats/evidence/shared_e_process.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "stats/evidence/e_process.h"
#include "stats/random.h"
#include "stats/redraw/redraw.h"
#include "stats/refusal.h"

namespace stats {
namespace {

/// Mean of e over all falls of the coins, and the share of them in which e ever reaches 20.
struct CoinMeans {
  double value;
  double reaching;
};

/// `split_of(trial, coins)` may look at the coins of earlier trials: raters who are told the truth each time.
template <typename SplitOf>
CoinMeans over_all_coins(const SharedEProcess& start, int trials, SplitOf split_of) {
  double value = 0;
  int reaching = 0;
  for (unsigned coins = 0; coins < 1u << trials; ++coins) {
    SharedEProcess process = start;
    double largest = 0;
    for (int trial = 0; trial < trials; ++trial) {
      const auto [one, other] = split_of(trial, coins & ((1u << trial) - 1));
      const bool one_is_right = (coins >> trial) & 1;
      process.add(one_is_right ? one : other, one_is_right ? other : one);
      largest = std::max(largest, std::exp(process.log_value()));
    }
    value += std::exp(process.log_value());
    reaching += largest >= 20;
  }
  return {value / (1u << trials), reaching / double(1u << trials)};
}

TEST(SharedEProcess, HasMeanOneOverTheCoinsWhateverTheAnswers) {
  Random random(7);
  for (int repeat = 0; repeat < 5; ++repeat) {
    std::vector<Split> splits;
    for (int i = 0; i < 10; ++i) splits.push_back({int(random.below(4)), int(random.below(4))});
    for (const auto& start :
         {SharedEProcess(), SharedEProcess(1), SharedEProcess(0.5), SharedEProcess(-0.7)}) {
      const auto means =
          over_all_coins(start, 10, [&](int trial, unsigned) { return splits[std::size_t(trial)]; });
      EXPECT_NEAR(means.value, 1, 1e-13);
      EXPECT_LE(means.reaching, 0.05);
    }
  }
}

// Raters who follow the truth of earlier trials: all answer as the last coin fell, fewer if it changed. A
// re-draw given all answers would not be valid here; the e-process is.
TEST(SharedEProcess, HasMeanOneAlsoWithFeedback) {
  const auto follow_the_last = [](int trial, unsigned past) {
    const unsigned last = trial > 0 ? (past >> (trial - 1)) & 1 : 0;
    const unsigned before = trial > 1 ? (past >> (trial - 2)) & 1 : 0;
    const int weight = last == before ? 5 : 2;
    return last ? Split{weight, 0} : Split{0, weight};
  };
  for (const auto& start : {SharedEProcess(), SharedEProcess(0.9)}) {
    const auto means = over_all_coins(start, 12, follow_the_last);
    EXPECT_NEAR(means.value, 1, 1e-13);
    EXPECT_LE(means.reaching, 0.05);
  }
}

// SEQ-6 by another way: one rater and a fixed bet is the likelihood ratio, all bets are the one-sided uniform
// mixture.
TEST(SharedEProcess, OfOneRaterIsTheEProcessOfACount) {
  Random random(8);
  SharedEProcess half(0.5), all;
  int correct = 0;
  for (int n = 1; n <= 119; ++n) {
    const int right = random.below(100) < 65;
    correct += right;
    half.add(right, 1 - right);
    all.add(right, 1 - right);
    EXPECT_NEAR(half.log_value(), log_likelihood_ratio(correct, n, 0.5, 0.75), 1e-12);
    EXPECT_NEAR(all.log_value(), log_upper_beta_mixture(correct, n, 0.5, 1, 1), 1e-12);
  }
}

TEST(SharedEProcess, OfRatersAlwaysAlikeIsThatOfOne) {
  SharedEProcess one, eight;
  for (int right : {1, 0, 1, 1, 1}) {
    one.add(right, 1 - right);
    eight.add(8 * right, 8 - 8 * right);
  }
  EXPECT_EQ(one.log_value(), eight.log_value());
}

TEST(SharedEProcess, IsTheProductOfItsFactors) {
  SharedEProcess process(0.5);
  EXPECT_EQ(process.log_value(), 0);
  process.add(3, 1);
  EXPECT_NEAR(std::exp(process.log_value()), 1.25, 1e-15);
  process.add(2, 2);
  process.add(0, 0);
  EXPECT_NEAR(std::exp(process.log_value()), 1.25, 1e-15);
  process.add(0, 4);
  EXPECT_NEAR(std::exp(process.log_value()), 0.625, 1e-15);
  EXPECT_EQ(shared_bet_factor(3, 1, 0.5), 1.25);
  EXPECT_EQ(shared_bet_factor(1, 3, 0.5), 0.75);
  EXPECT_EQ(shared_bet_factor(0, 0, 0.5), 1);
}

TEST(SharedEProcess, CanLoseEverythingOnlyAtTheFullBet) {
  SharedEProcess full(1), all;
  full.add(0, 3);
  full.add(3, 0);
  EXPECT_EQ(full.log_value(), -INFINITY);
  for (int i = 0; i < 100'000; ++i) all.add(0, 3);
  EXPECT_GT(all.log_value(), -100);
  for (int i = 0; i < 100'000; ++i) all.add(3, 0);
  EXPECT_GT(all.log_value(), -100);
}

TEST(SharedEProcess, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] { SharedEProcess(1.5); }), "bet must be between -1 and 1, got 1.5");
  EXPECT_EQ(refusal([] { SharedEProcess().add(-1, 0); }), "right must be between 0 and 1000000, got -1");
  EXPECT_EQ(refusal([] { SharedEProcess().add(0, 1'000'001); }),
            "wrong must be between 0 and 1000000, got 1000001");
  EXPECT_EQ(refusal([] { shared_bet_factor(1, 0, std::nan("")); }), "bet must be between -1 and 1, got nan");
  EXPECT_EQ(refusal([] { shared_bet_factor(1, -2, 0); }), "wrong must be between 0 and 1000000, got -2");
}

}  // namespace
}  // namespace stats
