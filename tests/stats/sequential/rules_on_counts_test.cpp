#include "stats/sequential/rules_on_counts.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

#include "stats/csv.h"
#include "stats/evidence/e_process.h"
#include "stats/refusal.h"
#include "stats/sequential/group_sequential.h"
#include "stats/share/binomial.h"
#include "stats/share/power.h"

namespace stats {
namespace {

double false_alarms(const StoppingRule& rule) { return operate(rule, 0.5).support; }

/// Unadjusted looks after every trial at both sides: below as far as above.
StoppingRule two_sided_unadjusted(int trials) {
  StoppingRule rule;
  for (int n = 1; n <= trials; ++n) {
    const auto needed = minimum_correct_two_sided(n, 0.05);
    rule.looks.push_back(needed ? Look{*needed, n - *needed} : Look{});
  }
  return rule;
}

// SEQ-5, recomputed: exact recursion. File optional_stopping.csv, 10 digits and 5.
TEST(UnadjustedRule, GivesTheRecomputedFalseAlarms) {
  for (const CsvRow& row : check_values("optional_stopping.csv")) {
    const int trials = row.whole("N");
    EXPECT_NEAR(false_alarms(unadjusted_rule(trials, 0.05, 0.5)), row.number("one_sided"), 5.1e-11) << trials;
    EXPECT_NEAR(false_alarms(unadjusted_rule(trials, 0.05, 0.5, 10)), row.number("one_sided_from10"),
                5.1e-11);
    if (!row.find("two_sided")) continue;
    const auto both = operate(two_sided_unadjusted(trials), 0.5);
    EXPECT_NEAR(both.support + both.give_up, row.number("two_sided"), 5.1e-6) << trials;
  }
  const auto both = operate(two_sided_unadjusted(150), 0.5);
  EXPECT_NEAR(both.support + both.give_up, .26109, 5.1e-6);  // SEQ-5
}

StoppingRule mixture_rule(int trials, bool one_sided) {
  return e_process_rule(trials, 0.05, [=](int correct, int n) {
    return one_sided ? log_upper_beta_mixture(correct, n, 0.5, 1, 1)
                     : log_beta_mixture(correct, n, 0.5, 1, 1);
  });
}

StoppingRule likelihood_rule(int trials) {
  return e_process_rule(trials, 0.05,
                        [](int correct, int n) { return log_likelihood_ratio(correct, n, 0.5, 0.75); });
}

// SEQ-6, recomputed: probability of ever reaching 20 by N when every answer is a guess, and at share .75.
TEST(EProcessRule, GivesTheRecomputedFalseAlarmsAndPower) {
  const struct {
    int trials;
    double likelihood, two_sided, one_sided;
  } rows[] = {{16, .01824951, .01354980, .01422119},
              {50, .03759043, .02330768, .02496914},
              {200, .04115807, .03087653, .03194727}};
  for (const auto& row : rows) {
    EXPECT_NEAR(false_alarms(likelihood_rule(row.trials)), row.likelihood, 5.1e-9);
    EXPECT_NEAR(false_alarms(mixture_rule(row.trials, true)), row.one_sided, 5.1e-9);
    const auto both = operate(mixture_rule(row.trials, false), 0.5);
    EXPECT_NEAR(both.support + both.give_up, row.two_sided, 5.1e-9);
  }
  EXPECT_NEAR(operate(likelihood_rule(25), 0.75).support, .67304905, 5.1e-9);
  EXPECT_NEAR(operate(likelihood_rule(50), 0.75).support, .91577483, 5.1e-9);
  EXPECT_NEAR(operate(mixture_rule(25, true), 0.75).support, .55144537, 5.1e-9);
  EXPECT_NEAR(operate(mixture_rule(50, true), 0.75).support, .86359208, 5.1e-9);
}

// Ville's inequality, exactly, also for long tests, other levels and other chances.
TEST(EProcessRule, HoldsItsLevel) {
  for (double level : {0.01, 0.05, 0.2})
    for (double chance : {1.0 / 3, 0.5, 0.8}) {
      const LogEProcess processes[] = {
          [=](int k, int n) { return log_likelihood_ratio(k, n, chance, (1 + chance) / 2); },
          [=](int k, int n) { return log_beta_mixture(k, n, chance, 0.5, 0.5); },
          [=](int k, int n) { return log_beta_mixture(k, n, chance, 1, 1); },
          [=](int k, int n) { return log_upper_beta_mixture(k, n, chance, 0.5, 0.5); },
          [=](int k, int n) { return log_upper_beta_mixture(k, n, chance, 2, 1); }};
      for (const auto& process : processes) {
        const auto result = operate(e_process_rule(1'000, level, process), chance);
        EXPECT_LE(result.support + result.give_up, level);
        EXPECT_GT(result.support + result.give_up, level / 4);
      }
    }
}

TEST(EProcessRule, BoundsTheCountsThatReachTheLevel) {
  const auto log_e = [](int k, int n) { return log_beta_mixture(k, n, 0.3, 1, 1); };
  const auto rule = e_process_rule(80, 0.05, log_e);
  for (int n = 1; n <= 80; ++n)
    for (int k = 0; k <= n; ++k) {
      const auto [support, give_up] = rule.looks[static_cast<std::size_t>(n) - 1];
      const bool stops = (support && k >= *support) || (give_up && k <= *give_up);
      EXPECT_EQ(stops, log_e(k, n) >= std::log(20)) << k << " of " << n;
    }
}

TEST(EProcessRule, AsksForTheCountsOfItsExample) {
  const auto looks = likelihood_rule(16).looks;
  EXPECT_EQ(looks[6].support, std::nullopt);
  EXPECT_EQ(looks[7].support, 8);
  EXPECT_EQ(looks[13].support, 12);
  EXPECT_EQ(looks[15].support, 13);
}

// 2^n of n right: e is exactly 1/level after 5 trials at 1/32.
TEST(EProcessRule, CountsAValueThatEqualsItsBoundAsReached) {
  const auto looks =
      e_process_rule(6, 1.0 / 32, [](int k, int n) { return k < n ? -INFINITY : n * std::log(2); }).looks;
  EXPECT_EQ(looks[3].support, std::nullopt);
  EXPECT_EQ(looks[4].support, 5);
  EXPECT_EQ(looks[5].support, 6);
}

TEST(FixedRule, IsTheExactTest) {
  for (int trials : {3, 16, 100})
    for (double chance : {1.0 / 3, 0.5}) {
      const auto test = power_of_trials(0.8, trials, 0.05, chance);
      EXPECT_NEAR(operate(fixed_rule(trials, 0.05, chance), 0.8).support, test.power, 1e-13);
      EXPECT_NEAR(operate(fixed_rule(trials, 0.05, chance), chance).support, test.size, 1e-13);
    }
}

TEST(UnadjustedRule, LooksWhereItIsTold) {
  const auto rule = unadjusted_rule(std::vector{8, 16}, 0.05, 0.5);
  ASSERT_EQ(rule.looks.size(), 16u);
  for (std::size_t i = 0; i < 16; ++i) {
    if (i != 7 && i != 15) {
      EXPECT_EQ(rule.looks[i].support, std::nullopt);
    }
  }
  EXPECT_EQ(rule.looks[7].support, 7);
  EXPECT_EQ(rule.looks[15].support, 12);
}

// The header's examples. 20 trials at 1.645: 14 needed, P = .0577 (BIN-4: 14/20 .057659149170).
TEST(ScoreRule, HoldsTheLevelOnlyNearly) {
  EXPECT_NEAR(false_alarms(score_rule(std::vector{20}, std::vector{1.6449}, 0.5)), .057659149170, 5.1e-13);
  const std::vector<double> pocock(4, pocock_constant(4, 0.05, Sides::one));
  EXPECT_NEAR(false_alarms(score_rule(std::vector{16, 32, 48, 64}, pocock, 0.5)), .0437, 5e-5);
}

TEST(ScoreRule, CountsAScoreOnTheBoundary) {
  const auto needed = [](double boundary) {
    return score_rule(std::vector{16}, std::vector{boundary}, 0.5).looks.back().support;
  };
  EXPECT_EQ(needed(2), 12);  // (12 - 8)/2
  EXPECT_EQ(needed(2.0001), 13);
  EXPECT_EQ(needed(4.1), std::nullopt);
  EXPECT_EQ(needed(INFINITY), std::nullopt);
  EXPECT_EQ(needed(-INFINITY), 0);
}

TEST(RulesOnCounts, RefuseImpossibleArguments) {
  EXPECT_EQ(refusal([] { fixed_rule(0, 0.05, 0.5); }), "trials must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { fixed_rule(16, 5, 0.5); }),
            "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
  EXPECT_EQ(refusal([] { unadjusted_rule(16, 0.05, 1); }), "chance must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { unadjusted_rule(16, 0.05, 0.5, 17); }),
            "first_look must be between 1 and 16, got 17");
  EXPECT_EQ(refusal([] {
              unadjusted_rule(std::vector{8, 8}, 0.05, 0.5);
            }),
            "look must be between 9 and 1000000, got 8");
  EXPECT_EQ(refusal([] {
              score_rule(std::vector{8}, std::vector{1.0, 2.0}, 0.5);
            }),
            "number of boundaries must be between 1 and 1, got 2");
  EXPECT_EQ(refusal([] { score_rule(std::vector{8}, std::vector{std::nan("")}, 0.5); }),
            "boundary must be between -inf and inf, got nan");
  EXPECT_EQ(refusal([] { e_process_rule(0, 0.05, [](int, int) { return 0.0; }); }),
            "trials must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { e_process_rule(5, 1, [](int, int) { return 0.0; }); }),
            "level must be strictly between 0 and 1, got 1");
}

}  // namespace
}  // namespace stats
