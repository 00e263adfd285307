#include "sitting/simulated/simulated_listener.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "refusal.h"

namespace sitting {
namespace {

constexpr int trials = 20000;

/// The answers of one listener to trials whose coins fall by `coins`.
std::vector<int> answers_of(SimulatedListener& listener, stats::Random coins,
                            std::vector<int>* truth = nullptr, int count = trials) {
  std::vector<int> answers;
  for (int trial = 1; trial <= count; ++trial) {
    const int coin = static_cast<int>(coins.below(2));
    if (truth) truth->push_back(coin);
    listener.hear(coin);
    answers.push_back(listener.answer({trial, answers}));
  }
  return answers;
}

int agreements(const std::vector<int>& one, const std::vector<int>& other) {
  int agreed = 0;
  for (std::size_t i = 0; i < one.size(); ++i) agreed += one[i] == other[i];
  return agreed;
}

/// A count of 20,000 is within 4.5 standard deviations of its share: wrong once in 150,000 seeds.
void expect_share(int count, double share) {
  EXPECT_NEAR(count, trials * share, 4.5 * std::sqrt(trials * share * (1 - share))) << "share " << share;
}

TEST(SimulatedListeners, GuessersAreRightHalfOfTheTimeAndAlikeWithOneSeed) {
  Guesser one(1), same(1), other(2);
  std::vector<int> truth;
  const auto answers = answers_of(one, stats::Random(9), &truth);
  expect_share(agreements(answers, truth), 0.5);
  EXPECT_EQ(answers_of(same, stats::Random(8)), answers);
  expect_share(agreements(answers, answers_of(other, stats::Random(9))), 0.5);
}

TEST(SimulatedListeners, HearersAreRightInTheirShareAndHalfOfTheRest) {
  for (const double share : {0.0, 0.4, 1.0}) {
    Hearer hearer(1, share);
    std::vector<int> truth;
    const auto answers = answers_of(hearer, stats::Random(9), &truth);
    if (share < 1) expect_share(agreements(answers, truth), share + (1 - share) / 2);
    if (share == 1) {
      EXPECT_EQ(answers, truth);
    }
  }
}

TEST(SimulatedListeners, FollowersOfOneImpressionAgreeButNotWithTheTruth) {
  ImpressionFollower one(5, 1, 0.8), other(5, 2, 0.8), elsewhere(6, 2, 0.8);
  std::vector<int> truth;
  const auto answers = answers_of(one, stats::Random(9), &truth);
  expect_share(agreements(answers, truth), 0.5);
  expect_share(agreements(answers, answers_of(other, stats::Random(9))), 0.8 * 0.8 + (1 - 0.8 * 0.8) / 2);
  expect_share(agreements(answers, answers_of(elsewhere, stats::Random(9))), 0.5);
}

TEST(SimulatedListeners, ExploitersKeepTheirAnswersLevelOrTheirRunsShort) {
  BalanceExploiter balancer(1);
  const auto level = answers_of(balancer, stats::Random(9), nullptr, 2000);
  for (std::size_t i = 0; i + 1 < level.size(); i += 2) ASSERT_NE(level[i], level[i + 1]);
  RunBreaker breaker(1, 2);
  const auto short_runs = answers_of(breaker, stats::Random(9));
  for (std::size_t i = 0; i + 2 < short_runs.size(); ++i)
    ASSERT_FALSE(short_runs[i] == short_runs[i + 1] && short_runs[i] == short_runs[i + 2]);
}

TEST(SimulatedListeners, RefuseImpossibleShares) {
  EXPECT_EQ(refusal([] { Hearer(1, 1.5); }), "share must be 0 to 1, got 1.5");
  EXPECT_EQ(refusal([] { Hearer(1, std::nan("")); }), "share must be 0 to 1, got nan");
  EXPECT_EQ(refusal([] { ImpressionFollower(1, 1, -0.1); }), "share must be 0 to 1, got -0.1");
  EXPECT_EQ(refusal([] { RunBreaker(1, 0); }), "longest must be 1 or more, got 0");
}

}  // namespace
}  // namespace sitting
