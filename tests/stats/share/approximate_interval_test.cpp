#include "stats/share/approximate_interval.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

struct ApproximateRow {
  int correct, trials;
  Interval jeffreys;
  Interval mid_p;
};

// CI-1: Newcombe, Statist. Med. 17 (1998) 857-872, table I (memory, 4 digits); CI-2. Recomputed: R
// qbeta(.025, x+.5, n-x+.5), qbeta(.975, x+.5, n-x+.5); mid-p by uniroot on pbinom(x, n, p, lower=FALSE) +
// dbinom(x, n, p)/2 - .025.
constexpr ApproximateRow kApproximateRows[] = {
    {81, 263, {.25452193, .36564750}, {.25440210, .36577347}},
    {0, 20, {0, .11663898}, {0, .13910834}},
    {12, 16, {.50927101, .90917180}, {.50106968, .91508158}},
    {5, 10, {.22352867, .77647133}, {.21200851, .78799149}},
    {10, 10, {.78280373, 1}, {.74113445, 1}},
    {7, 20, {.17227621, .56776609}, {.16773474, .57304872}},
    {60, 100, {.50225674, .69204770}, {.50176153, .69252337}},
};

TEST(ApproximateIntervals, AgreeWithRecomputedValues) {
  for (const ApproximateRow& row : kApproximateRows) {
    const Interval beta = jeffreys(row.correct, row.trials, 0.95);
    EXPECT_NEAR(beta.lower, row.jeffreys.lower, 5.1e-9) << row.correct << " of " << row.trials;
    EXPECT_NEAR(beta.upper, row.jeffreys.upper, 5.1e-9) << row.correct << " of " << row.trials;
    const Interval half = mid_p(row.correct, row.trials, 0.95);
    EXPECT_NEAR(half.lower, row.mid_p.lower, 5.1e-9) << row.correct << " of " << row.trials;
    EXPECT_NEAR(half.upper, row.mid_p.upper, 5.1e-9) << row.correct << " of " << row.trials;
  }
}

// Recomputed: R uniroot on 2 (x log(x/n/p) + (n-x) log((n-x)/n/(1-p))) - qchisq(.95, 1), tol 1e-15.
TEST(LikelihoodInterval, AgreesWithRecomputedValues) {
  EXPECT_NEAR(likelihood_interval(12, 16, 0.95).lower, .511007037693, 5.1e-13);
  EXPECT_NEAR(likelihood_interval(12, 16, 0.95).upper, .914755010428, 5.1e-13);
  EXPECT_NEAR(likelihood_interval(60, 100, 0.95).lower, .502348099517, 5.1e-13);
  EXPECT_NEAR(likelihood_interval(60, 100, 0.95).upper, .692588948743, 5.1e-13);
  EXPECT_NEAR(likelihood_interval(7, 20, 0.95).lower, .168302823226, 5.1e-13);
  EXPECT_NEAR(likelihood_interval(7, 20, 0.95).upper, .567940289595, 5.1e-13);
}

TEST(MidPLimits, CountHalfOfWhatWasSeen) {
  for (int trials : {1, 16, 100, 3'000})
    for (int correct = 0; correct <= trials; correct += 1 + trials / 16)
      for (double confidence : {0.6, 0.9, 0.95, 0.999}) {
        const double lower = mid_p_lower(correct, trials, confidence);
        const double upper = mid_p_upper(correct, trials, confidence);
        const auto half = [=](double share) { return chance_of_exactly(correct, trials, share) / 2; };
        if (lower > 0) {
          EXPECT_NEAR(chance_of_at_least(correct, trials, lower) - half(lower), 1 - confidence, 1e-11);
        }
        if (upper < 1) {
          EXPECT_NEAR(chance_of_at_most(correct, trials, upper) - half(upper), 1 - confidence, 1e-11);
        }
        EXPECT_EQ(lower == 0, correct == 0);
        EXPECT_EQ(upper == 1, correct == trials);
      }
}

// (1 - confidence) solves 1 - (1 - p)^n/2 with nothing right, and p^n/2 never reaches 0.7.
TEST(MidPLimits, BelowAConfidenceOfOneHalfReachInward) {
  EXPECT_NEAR(mid_p_lower(0, 10, 0.3), 1 - std::pow(0.6, 0.1), 1e-14);
  EXPECT_EQ(mid_p_lower(10, 10, 0.3), 1);
  EXPECT_NEAR(mid_p_upper(10, 10, 0.3), std::pow(0.6, 0.1), 1e-14);
  EXPECT_EQ(mid_p_upper(0, 10, 0.3), 0);
}

// Closed forms: with nothing right (1 - p)^n is 1 - confidence for mid-p (CI-1), exp(-chi-square/2) for the
// likelihood; 1.9599639845400545 is the normal quantile at .975.
TEST(ApproximateIntervals, EndExactlyAtNothingAndEverything) {
  for (int trials : {1, 3, 16, 263}) {
    const double log_lost = 1.9599639845400545 * 1.9599639845400545 / 2;
    EXPECT_NEAR(mid_p(0, trials, 0.95).upper, 1 - std::pow(0.05, 1.0 / trials), 1e-13);
    EXPECT_NEAR(likelihood_interval(0, trials, 0.95).upper, -std::expm1(-log_lost / trials), 1e-13);
    for (const auto method : {mid_p, jeffreys, likelihood_interval}) {
      EXPECT_EQ(method(0, trials, 0.95).lower, 0.0);
      EXPECT_EQ(method(trials, trials, 0.95).upper, 1.0);
    }
  }
}

TEST(ApproximateIntervals, MirrorEachOtherAndHoldTheOneSidedLimits) {
  for (int correct = 0; correct <= 16; ++correct) {
    for (const auto method : {mid_p, jeffreys, likelihood_interval}) {
      const Interval seen = method(correct, 16, 0.9);
      EXPECT_NEAR(seen.lower, 1 - method(16 - correct, 16, 0.9).upper, 1e-14);
      EXPECT_LE(seen.lower, correct / 16.0);
      EXPECT_GE(seen.upper, correct / 16.0);
    }
    EXPECT_NEAR(mid_p(correct, 16, 0.9).lower, mid_p_lower(correct, 16, 0.95), 1e-13);
    EXPECT_NEAR(mid_p(correct, 16, 0.9).upper, mid_p_upper(correct, 16, 0.95), 1e-13);
    EXPECT_NEAR(jeffreys(correct, 16, 0.9).lower, jeffreys_lower(correct, 16, 0.95), 1e-13);
    EXPECT_NEAR(jeffreys(correct, 16, 0.9).upper, jeffreys_upper(correct, 16, 0.95), 1e-13);
  }
}

TEST(MidP, LiesWithinTheExactInterval) {
  for (int correct = 0; correct <= 30; ++correct) {
    const Interval exact = clopper_pearson(correct, 30, 0.95);
    const Interval half = mid_p(correct, 30, 0.95);
    EXPECT_GE(half.lower, exact.lower);
    EXPECT_LE(half.upper, exact.upper);
  }
}

TEST(ApproximateIntervals, WorkWithAMillionTrialsAndNearCertainty) {
  for (const auto method : {mid_p, jeffreys, likelihood_interval})
    for (int correct : {0, 1, 500'000, 999'999, 1'000'000}) {
      const Interval seen = method(correct, 1'000'000, 1 - 1e-12);
      EXPECT_LE(seen.lower, correct * 1e-6);
      EXPECT_GE(seen.upper, correct * 1e-6);
      EXPECT_LT(seen.upper - seen.lower, 0.0075);  // 7.13 standard errors each way at 1/2
    }
}

TEST(ApproximateIntervals, Refuse) {
  EXPECT_EQ(refusal([] { mid_p(17, 16, 0.95); }), "correct must be between 0 and 16, got 17");
  EXPECT_EQ(refusal([] { likelihood_interval(0, 0, 0.95); }), "trials must be between 1 and 1000000, got 0");
  for (int correct : {0, 16}) {
    EXPECT_EQ(refusal([=] { jeffreys(correct, 16, 95); }),
              "confidence must be strictly between 0 and 1, got 95 (write 0.95 for 95 %)");
    EXPECT_EQ(refusal([=] { mid_p_lower(correct, 16, 0); }),
              "confidence must be strictly between 0 and 1, got 0");
    EXPECT_EQ(refusal([=] { mid_p_upper(correct, 16, 1); }),
              "confidence must be strictly between 0 and 1, got 1");
    EXPECT_EQ(refusal([=] { jeffreys_lower(correct, 16, -0.95); }),
              "confidence must be strictly between 0 and 1, got -0.95");
    EXPECT_EQ(refusal([=] { jeffreys_upper(correct, 16, std::numeric_limits<double>::quiet_NaN()); }),
              "confidence must be strictly between 0 and 1, got nan");
    EXPECT_THROW(likelihood_interval(correct, 16, 1), std::domain_error);
  }
}

}  // namespace
}  // namespace stats
