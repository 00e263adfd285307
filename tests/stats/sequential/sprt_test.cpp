#include "stats/sequential/sprt.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "stats/refusal.h"

namespace stats {
namespace {

constexpr Sprt kInspection{.1, .3, .02, .03};
constexpr Sprt kEvenErrors{.5, .7, .05, .05};
constexpr Sprt kUnevenErrors{.5, .75, .05, .10};

// SEQ-1: Wald's example of sampling inspection (inputs: memory; values recomputed; the printed .186, 2.58,
// 2.88: memory).
TEST(Sprt, HasTheLinesOfWaldsExample) {
  const SprtLines lines = sprt_lines(kInspection);
  EXPECT_NEAR(lines.log_upper, 3.8815637979, 5.1e-11);
  EXPECT_NEAR(lines.log_lower, -3.4863551900, 5.1e-11);
  EXPECT_NEAR(lines.slope, .1861689417, 5.1e-11);
  EXPECT_NEAR(lines.lower_intercept, -2.5826255205, 5.1e-11);
  EXPECT_NEAR(lines.upper_intercept, 2.8753885298, 5.1e-11);
  EXPECT_NEAR(lines.slope, .186, 5.1e-4);
  EXPECT_NEAR(lines.lower_intercept, -2.58, 5.1e-3);
  EXPECT_NEAR(lines.upper_intercept, 2.88, 5.1e-3);
}

// SEQ-2, recomputed.
TEST(Sprt, HasTheRecomputedLinesForListening) {
  EXPECT_NEAR(sprt_lines(kEvenErrors).slope, .6028878953, 5.1e-11);
  EXPECT_NEAR(sprt_lines(kEvenErrors).lower_intercept, -3.4750931365, 5.1e-11);
  EXPECT_NEAR(sprt_lines(kEvenErrors).upper_intercept, 3.4750931365, 5.1e-11);
  EXPECT_NEAR(sprt_lines(kUnevenErrors).slope, .6309297536, 5.1e-11);
  EXPECT_NEAR(sprt_lines(kUnevenErrors).lower_intercept, -2.0492141057, 5.1e-11);
  EXPECT_NEAR(sprt_lines(kUnevenErrors).upper_intercept, 2.6309297536, 5.1e-11);
}

// SEQ-1 and SEQ-2, recomputed: forward recursion until less than 1e-14 remains.
TEST(Sprt, HasTheRecomputedExactErrorsAndTrials) {
  const struct {
    Sprt test;
    double support, trials_at_chance, give_up, trials_at_alternative;
  } rows[] = {{kInspection, .0136921602, 29.90180831, .0274236038, 26.60220687},
              {kEvenErrors, .0440114971, 33.29201102, .0402921477, 34.45428360},
              {kUnevenErrors, .0432414655, 16.22581976, .0740910560, 20.29993762}};
  for (const auto& row : rows) {
    const auto rule = sprt_rule(row.test, 3'000);
    const auto at_chance = operate(rule, row.test.chance);
    const auto at_alternative = operate(rule, row.test.alternative);
    EXPECT_NEAR(at_chance.support, row.support, 5.1e-11);
    EXPECT_NEAR(at_chance.expected_trials, row.trials_at_chance, 5.1e-9);
    EXPECT_NEAR(at_alternative.give_up, row.give_up, 5.1e-11);
    EXPECT_NEAR(at_alternative.expected_trials, row.trials_at_alternative, 5.1e-9);
    EXPECT_LT(at_chance.undecided, 1e-14);
    EXPECT_LT(at_alternative.undecided, 1e-14);
  }
}

// SEQ-1 and SEQ-2, recomputed from Wald's formulas.
TEST(SprtWald, AgreesWithTheRecomputedApproximations) {
  const double slope = sprt_lines(kInspection).slope;
  EXPECT_NEAR(sprt_expected_trials_wald(kInspection, .1), 28.70483483, 5.1e-9);
  EXPECT_NEAR(sprt_expected_trials_wald(kInspection, .3), 23.82168934, 5.1e-9);
  EXPECT_NEAR(sprt_expected_trials_wald(kInspection, slope), 49.01358670, 5.1e-9);
  EXPECT_NEAR(sprt_expected_trials_wald(kInspection, 0), 13.87248322, 5.1e-9);
  EXPECT_NEAR(sprt_expected_trials_wald(kInspection, 1), 3.53315163, 5.1e-9);
  EXPECT_NEAR(sprt_give_up_wald(kInspection, slope), .526819554, 5.1e-10);
  EXPECT_NEAR(sprt_expected_trials_wald(kEvenErrors, .5), 30.39797649, 5.1e-9);
  EXPECT_NEAR(sprt_expected_trials_wald(kEvenErrors, .7), 32.20591123, 5.1e-9);
  EXPECT_NEAR(sprt_expected_trials_wald(kUnevenErrors, .5), 13.86397563, 5.1e-9);
  EXPECT_NEAR(sprt_expected_trials_wald(kUnevenErrors, .75), 18.16503646, 5.1e-9);
  EXPECT_NEAR(sprt_give_up_wald(kEvenErrors, .551621858588), .813394503137, 5.1e-12);
  EXPECT_NEAR(sprt_give_up_wald(kEvenErrors, .4), .997237569061, 5.1e-13);
}

// SEQ-2, recomputed: ceilings and floors of the lines.
TEST(SprtLook, HasTheRecomputedCounts) {
  const Sprt test{.5, .8, .05, .2};
  const int support[] = {4, 5, 6, 6, 7, 8, 8, 9, 10, 10};  // 3 to 12 trials
  const int give_up[] = {0, 0, 1, 2, 2, 3, 4, 4, 5};       // 2 to 10 trials
  for (int n = 3; n <= 12; ++n) EXPECT_EQ(sprt_look(test, n).support, support[n - 3]) << n;
  for (int n = 2; n <= 10; ++n) EXPECT_EQ(sprt_look(test, n).give_up, give_up[n - 2]) << n;
  EXPECT_EQ(sprt_look(test, 1).give_up, std::nullopt);
  EXPECT_NEAR(sprt_lines(test).upper_intercept, 2, 1e-14);
}

// A right answer multiplies the ratio by 3, a wrong one divides it; the bounds are 9 and 1/9: exactly at
// right - wrong = 2 and -2.
TEST(SprtLook, CountsALineThatIsHitAsReached) {
  for (int n = 1; n <= 10'000; ++n) {
    const auto [support, give_up] = sprt_look({.25, .75, .1, .1}, n);
    EXPECT_EQ(support, n / 2 + 1 + n % 2);
    EXPECT_EQ(give_up, n < 2 ? std::nullopt : std::optional(n / 2 - 1));
  }
}

// Likewise where decimals are rounded: with both errors equal to chance and the alternative its complement, the
// bounds are one answer away, right - wrong = 1 and -1.
TEST(SprtLook, CountsALineThatIsHitAsReachedAlsoWithRoundedDecimals) {
  for (double chance : {.1, .15, .2, .3, .35, .4, .45})
    for (int n = 1; n <= 10'000; ++n) {
      const auto [support, give_up] = sprt_look({chance, 1 - chance, chance, chance}, n);
      ASSERT_EQ(support, n / 2 + 1) << chance << " " << n;
      ASSERT_EQ(give_up, (n - 1) / 2) << chance << " " << n;
    }
}

// The counts are those at which the likelihood ratio reaches its bounds; no ties here.
TEST(SprtLook, IsTheLikelihoodRatioAtItsBounds) {
  for (const Sprt& test : {kInspection, kEvenErrors, kUnevenErrors})
    for (int n = 1; n <= 200; ++n)
      for (int k = 0; k <= n; ++k) {
        const double ratio = std::pow(test.alternative / test.chance, k) *
                             std::pow((1 - test.alternative) / (1 - test.chance), n - k);
        const auto [support, give_up] = sprt_look(test, n);
        EXPECT_EQ(k >= *support, ratio >= (1 - test.beta) / test.alpha);
        EXPECT_EQ(give_up && k <= *give_up, ratio <= test.beta / (1 - test.alpha));
      }
}

// By construction, and without a jump where h = 0.
TEST(SprtWald, MeetsTheWantedErrorsAndIsSmooth) {
  for (const Sprt& test : {kInspection, kEvenErrors, kUnevenErrors}) {
    EXPECT_NEAR(sprt_give_up_wald(test, test.chance), 1 - test.alpha, 1e-13);
    EXPECT_NEAR(sprt_give_up_wald(test, test.alternative), test.beta, 1e-13);
    EXPECT_EQ(sprt_give_up_wald(test, 0), 1);
    EXPECT_EQ(sprt_give_up_wald(test, 1), 0);
    EXPECT_NEAR(sprt_expected_trials_wald(test, 1e-12), sprt_expected_trials_wald(test, 0), 1e-6);
    EXPECT_NEAR(sprt_expected_trials_wald(test, 1 - 1e-12), sprt_expected_trials_wald(test, 1), 1e-6);
    const double slope = sprt_lines(test).slope;
    for (double share = 0.02; share < 0.98; share += 0.001) {
      const double step = 1e-6;
      const double before = sprt_expected_trials_wald(test, share - step);
      const double after = sprt_expected_trials_wald(test, share + step);
      EXPECT_NEAR(sprt_expected_trials_wald(test, share), (before + after) / 2, 2e-6);
    }
    for (double near : {1e-3, 1e-6, 1e-9, 1e-12, 1e-15})
      EXPECT_NEAR(sprt_expected_trials_wald(test, slope + near), sprt_expected_trials_wald(test, slope),
                  2e3 * near + 1e-9);
  }
}

// The header's examples.
TEST(Sprt, EndedEarlySupportsLess) {
  const double whole = operate(sprt_rule(kEvenErrors, 3'000), .5).support;
  EXPECT_NEAR(operate(sprt_rule(kEvenErrors, 100), .5).support, .0431, 5e-5);
  EXPECT_NEAR(operate(sprt_rule(kEvenErrors, 3'000), .4).give_up, .9979, 5e-5);
  double before = 0;
  for (int trials : {5, 10, 20, 50, 100, 200}) {
    const double support = operate(sprt_rule(kEvenErrors, trials), .5).support;
    EXPECT_GE(support, before);
    EXPECT_LT(support, whole + 1e-15);
    before = support;
  }
}

// Wald's bounds of the errors, proved for every test.
TEST(Sprt, KeepsWaldsBounds) {
  for (double chance : {1.0 / 3, 0.5})
    for (double alternative : {0.6, 0.75, 0.9})
      for (double alpha : {0.01, 0.05, 0.2})
        for (double beta : {0.05, 0.3}) {
          const auto rule = sprt_rule({chance, alternative, alpha, beta}, 1'000);
          EXPECT_LE(operate(rule, chance).support, alpha / (1 - beta));
          EXPECT_LE(operate(rule, alternative).give_up, beta / (1 - alpha));
        }
}

TEST(Sprt, DecidesAGivenSequence) {
  const auto rule = sprt_rule({.5, .8, .05, .2}, 50);
  const auto six = follow(rule, std::vector{1, 1, 1, 1, 1, 1});
  EXPECT_EQ(six.decision, StoppingDecision::support);
  EXPECT_EQ(six.trials, 6);
  const auto wrong = follow(rule, std::vector{0, 0, 1});
  EXPECT_EQ(wrong.decision, StoppingDecision::give_up);
  EXPECT_EQ(wrong.trials, 2);
}

TEST(Sprt, RefusesImpossibleTests) {
  const auto lines = [](Sprt test) { return refusal([=] { sprt_lines(test); }); };
  EXPECT_EQ(lines({0, .7, .05, .05}), "chance must be strictly between 0 and 1, got 0");
  EXPECT_EQ(lines({.5, 1, .05, .05}), "alternative must be strictly between 0 and 1, got 1");
  EXPECT_EQ(lines({.5, .5, .05, .05}), "alternative - chance must be strictly between 0 and 1, got 0");
  EXPECT_EQ(lines({.5, .25, .05, .05}), "alternative - chance must be strictly between 0 and 1, got -0.25");
  EXPECT_EQ(lines({.5, .7, 5, .05}), "alpha must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
  EXPECT_EQ(lines({.5, .7, .05, std::nan("")}), "beta must be strictly between 0 and 1, got nan");
  EXPECT_EQ(lines({.5, .7, .5, .5}), "alpha + beta must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { sprt_rule(kEvenErrors, 0); }), "trials must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { sprt_look(kEvenErrors, -1); }), "trials must be between 1 and 1000000, got -1");
  EXPECT_EQ(refusal([] { sprt_give_up_wald(kEvenErrors, 1.5); }), "share must be between 0 and 1, got 1.5");
  EXPECT_EQ(refusal([] { sprt_expected_trials_wald(kEvenErrors, -1); }),
            "share must be between 0 and 1, got -1");
  EXPECT_EQ(sprt_look({.5, .5 + 1e-15, .05, .05}, 10).support,
            1'000'000);  // far out of reach, but no overflow
}

}  // namespace
}  // namespace stats
