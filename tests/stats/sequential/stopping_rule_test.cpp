#include "stats/sequential/stopping_rule.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "stats/random.h"
#include "stats/refusal.h"
#include "stats/share/power.h"

namespace stats {
namespace {

StoppingRule random_rule(Random& random, int trials) {
  StoppingRule rule;
  for (int n = 1; n <= trials; ++n) {
    Look look;
    if (random.below(2)) look.support = n / 2 + 1 + static_cast<int>(random.below(3));
    if (random.below(2)) look.give_up = n / 2 - static_cast<int>(random.below(3));
    if (look.give_up && *look.give_up < 0) look.give_up.reset();
    rule.looks.push_back(look);
  }
  return rule;
}

std::vector<int> answers_of(unsigned bits, std::size_t trials) {
  std::vector<int> answers;
  for (std::size_t i = 0; i < trials; ++i) answers.push_back(static_cast<int>((bits >> i) & 1));
  return answers;
}

/// Every sequence of answers, one after the other, followed along the rule.
Operation operate_by_brute_force(const StoppingRule& rule, double share) {
  const std::size_t trials = rule.looks.size();
  Operation result{};
  result.stop_after.resize(trials);
  for (unsigned bits = 0; bits < 1u << trials; ++bits) {
    const auto answers = answers_of(bits, trials);
    const double right = std::accumulate(answers.begin(), answers.end(), 0.0);
    const double probability = std::pow(share, right) * std::pow(1 - share, double(trials) - right);
    const auto [decision, stop] = follow(rule, answers);
    (decision == StoppingDecision::support   ? result.support
     : decision == StoppingDecision::give_up ? result.give_up
                                             : result.undecided) += probability;
    result.expected_trials += stop * probability;
    result.stop_after[static_cast<std::size_t>(stop) - 1] += probability;
  }
  return result;
}

TEST(Operate, AgreesWithEverySequenceOfAnswers) {
  Random random(1);
  for (int repeat = 0; repeat < 40; ++repeat) {
    const auto rule = random_rule(random, 10);
    for (double share : {0.0, 0.3, 0.5, 0.8, 1.0}) {
      const auto exact = operate(rule, share);
      const auto brute = operate_by_brute_force(rule, share);
      EXPECT_NEAR(exact.support, brute.support, 1e-14);
      EXPECT_NEAR(exact.give_up, brute.give_up, 1e-14);
      EXPECT_NEAR(exact.undecided, brute.undecided, 1e-14);
      EXPECT_NEAR(exact.expected_trials, brute.expected_trials, 1e-13);
      for (std::size_t i = 0; i < 10; ++i) EXPECT_NEAR(exact.stop_after[i], brute.stop_after[i], 1e-14);
    }
  }
}

TEST(Operate, AccountsForEveryPath) {
  Random random(2);
  const auto rule = random_rule(random, 400);
  for (double share : {0.2, 0.5, 0.66}) {
    const auto result = operate(rule, share);
    const auto sum = [](const std::vector<double>& values) {
      return std::accumulate(values.begin(), values.end(), 0.0);
    };
    EXPECT_NEAR(result.support + result.give_up + result.undecided, 1, 400 * 1e-15);
    EXPECT_NEAR(sum(result.stop_after), 1, 400 * 1e-15);
    EXPECT_NEAR(sum(result.support_after), result.support, 400 * 1e-15);
    EXPECT_NEAR(sum(result.give_up_after), result.give_up, 400 * 1e-15);
  }
}

TEST(Operate, OfAFixedTestIsItsPower) {
  for (int trials : {16, 53, 300}) {
    const auto test = power_of_trials(0.7, trials, 0.05, 0.5);
    StoppingRule rule{std::vector<Look>(static_cast<std::size_t>(trials))};
    rule.looks.back().support = test.minimum_correct;
    EXPECT_NEAR(operate(rule, 0.7).support / test.power, 1, 1e-12);
    EXPECT_NEAR(operate(rule, 0.5).support / test.size, 1, 1e-12);
    EXPECT_EQ(operate(rule, 0.5).expected_trials, trials);
  }
}

// At share 1/2 and up to 53 trials all probabilities are multiples of 2^-53: mirrored rules agree to the bit.
TEST(Operate, MirrorsExactly) {
  Random random(3);
  const auto rule = random_rule(random, 40);
  StoppingRule mirrored;
  for (int n = 1; n <= 40; ++n) {
    const auto [support, give_up] = rule.looks[static_cast<std::size_t>(n) - 1];
    Look look;
    if (give_up) look.support = n - *give_up;
    if (support && *support <= n) look.give_up = n - *support;
    mirrored.looks.push_back(look);
  }
  EXPECT_EQ(operate(rule, 0.5).support, operate(mirrored, 0.5).give_up);
  EXPECT_EQ(operate(rule, 0.5).give_up, operate(mirrored, 0.5).support);
  EXPECT_EQ(operate(rule, 0.5).expected_trials, operate(mirrored, 0.5).expected_trials);
}

// By hand: one trial at 1/3, one at 1/2, both right needed: 1/6; both wrong: 1/3.
TEST(Operate, TakesTrialsOfDifferentChances) {
  const StoppingRule rule{{{}, {2, 0}}};
  const std::vector<Gain> gains{{1, 0, 1.0 / 3}, {1, 0, 0.5}};
  EXPECT_NEAR(operate(rule, gains).support, 1.0 / 6, 1e-16);
  EXPECT_NEAR(operate(rule, gains).give_up, 1.0 / 3, 1e-16);
}

TEST(Follow, StopsAtTheFirstBound) {
  const StoppingRule rule{{{}, {2, 0}, {3, {}}}};
  const auto stop = [&](std::vector<int> answers) {
    const auto [decision, trials] = follow(rule, answers);
    return std::pair(decision, trials);
  };
  EXPECT_EQ(stop({}), std::pair(StoppingDecision::undecided, 0));
  EXPECT_EQ(stop({1}), std::pair(StoppingDecision::undecided, 1));
  EXPECT_EQ(stop({1, 1}), std::pair(StoppingDecision::support, 2));
  EXPECT_EQ(stop({1, 1, 0}), std::pair(StoppingDecision::support, 2));
  EXPECT_EQ(stop({0, 0, 1}), std::pair(StoppingDecision::give_up, 2));
  EXPECT_EQ(stop({0, 1, 1}), std::pair(StoppingDecision::undecided, 3));
}

TEST(StoppingRules, AreRefusedWhereImpossible) {
  EXPECT_EQ(refusal([] { operate(StoppingRule{}, 0.5); }), "looks must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { operate({{{3, 3}}}, 0.5); }), "give_up must be between 0 and 2, got 3");
  EXPECT_EQ(refusal([] { operate({{{-1, {}}}}, 0.5); }), "support must be between 0 and 1000000, got -1");
  EXPECT_EQ(refusal([] { operate({{{1, {}}}}, 1.5); }), "share must be between 0 and 1, got 1.5");
  EXPECT_EQ(refusal([] {
              operate({{{1, {}}}}, std::vector<Gain>{});
            }),
            "number of gains must be between 1 and 1, got 0");
  EXPECT_EQ(refusal([] { follow({{{1, {}}}}, std::vector{2}); }), "answer must be between 0 and 1, got 2");
  EXPECT_EQ(refusal([] {
              follow({{{1, {}}}}, std::vector{0, 0});
            }),
            "number of answers must be between 0 and 1, got 2");
}

TEST(Looks, RiseWithinTheTrials) {
  EXPECT_EQ(refusal([] { require_looks(std::vector<int>{}, 9); }),
            "number of looks must be between 1 and 9, got 0");
  EXPECT_EQ(refusal([] { require_looks(std::vector{3, 3}, 9); }), "look must be between 4 and 9, got 3");
  EXPECT_EQ(refusal([] { require_looks(std::vector{3, 10}, 9); }), "look must be between 4 and 9, got 10");
  EXPECT_EQ(refusal([] { require_looks(std::vector{1, 9}, 9); }), "(not refused)");
}

}  // namespace
}  // namespace stats
