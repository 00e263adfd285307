#include "stats/share/interval.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

struct Row {
  int correct, trials;
  Interval exact;
  Interval score;
};

// CI-1: Newcombe, Statist. Med. 17 (1998) 857-872, table I (memory, 4 digits), recomputed: R qbeta(.025, x,
// n-x+1), qbeta(.975, x+1, n-x); prop.test(x, n, correct=FALSE)$conf.int. CI-2 recomputed with the same
// calls.
constexpr Row kNinetyFivePerCent[] = {
    {81, 263, {.25273675, .36762192}, {.25528852, .36620958}},
    {0, 20, {0, .16843347}, {0, .16112516}},
    {12, 16, {.47622918, .92733796}, {.50501683, .89817933}},
    {5, 10, {.18708603, .81291397}, {.23659309, .76340691}},
    {10, 10, {.69150289, 1}, {.72246720, 1}},
    {7, 20, {.15390920, .59218853}, {.18119182, .56714572}},
    {60, 100, {.49720915, .69670523}, {.50200259, .69059871}},
};

TEST(ExactInterval, AgreesWithRecomputedValues) {
  for (const Row& row : kNinetyFivePerCent) {
    const Interval exact = clopper_pearson(row.correct, row.trials, 0.95);
    EXPECT_NEAR(exact.lower, row.exact.lower, 5.1e-9) << row.correct << " of " << row.trials;
    EXPECT_NEAR(exact.upper, row.exact.upper, 5.1e-9) << row.correct << " of " << row.trials;
  }
}

TEST(WilsonInterval, AgreesWithRecomputedValues) {
  for (const Row& row : kNinetyFivePerCent) {
    const Interval score = wilson(row.correct, row.trials, 0.95);
    EXPECT_NEAR(score.lower, row.score.lower, 5.1e-9) << row.correct << " of " << row.trials;
    EXPECT_NEAR(score.upper, row.score.upper, 5.1e-9) << row.correct << " of " << row.trials;
  }
}

// CI-2: one-sided 95 % lower limits, recomputed: R qbeta(.05, 12, 5).
TEST(OneSidedLimits, AgreeWithRecomputedValues) {
  EXPECT_NEAR(clopper_pearson_lower(12, 16, 0.95), .515603578906, 5.1e-13);
  EXPECT_NEAR(wilson_lower(12, 16, 0.95), .545236508832, 5.1e-13);
}

// BIN-4: Mendel's 682 of 925 (Conover, ?binom.test; confirmed).
TEST(ExactInterval, AgreesWithMendel) {
  const Interval exact = clopper_pearson(682, 925, 0.95);
  EXPECT_NEAR(exact.lower, .7076682641, 5.1e-11);
  EXPECT_NEAR(exact.upper, .7654065582, 5.1e-11);
}

// CI-3, recomputed: exact sums over x.
TEST(Intervals, CoverAsOftenAsRecomputed) {
  const auto coverage = [](auto interval, int trials, double share) {
    double covered = 0;
    for (int correct = 0; correct <= trials; ++correct) {
      const auto [lower, upper] = interval(correct, trials, 0.95);
      if (lower <= share && share <= upper) covered += chance_of_exactly(correct, trials, share);
    }
    return covered;
  };
  EXPECT_NEAR(coverage(wilson, 50, 0.2), .950701, 5.1e-7);
  EXPECT_NEAR(coverage(clopper_pearson, 16, 0.5), .978729, 5.1e-7);
  EXPECT_NEAR(coverage(clopper_pearson, 50, 0.2), .967062, 5.1e-7);
}

TEST(ExactLimits, InvertTheExactTest) {
  for (int trials : {1, 16, 100})
    for (int correct = 0; correct <= trials; ++correct)
      for (double confidence : {0.5, 0.9, 0.95, 0.999}) {
        const double lower = clopper_pearson_lower(correct, trials, confidence);
        const double upper = clopper_pearson_upper(correct, trials, confidence);
        if (correct > 0) {
          EXPECT_NEAR(chance_of_at_least(correct, trials, lower), 1 - confidence, 1e-11);
        }
        if (correct < trials) {
          EXPECT_NEAR(chance_of_at_most(correct, trials, upper), 1 - confidence, 1e-11);
        }
      }
}

TEST(ExactLimits, ExcludeChanceJustWhenTheTestSupports) {
  for (int trials = 1; trials <= 60; ++trials)
    for (int correct = 0; correct <= trials; ++correct)
      EXPECT_EQ(clopper_pearson_lower(correct, trials, 0.95) > 0.5,
                chance_of_at_least(correct, trials, 0.5) < 0.05);
}

TEST(Intervals, MirrorEachOtherAndHoldTheOneSidedLimits) {
  for (int correct = 0; correct <= 16; ++correct) {
    const Interval exact = clopper_pearson(correct, 16, 0.9);
    const Interval score = wilson(correct, 16, 0.9);
    EXPECT_NEAR(exact.lower, 1 - clopper_pearson(16 - correct, 16, 0.9).upper, 1e-14);
    EXPECT_NEAR(score.lower, 1 - wilson(16 - correct, 16, 0.9).upper, 1e-14);
    EXPECT_NEAR(exact.lower, clopper_pearson_lower(correct, 16, 0.95), 1e-13);
    EXPECT_NEAR(exact.upper, clopper_pearson_upper(correct, 16, 0.95), 1e-13);
    EXPECT_NEAR(score.lower, wilson_lower(correct, 16, 0.95), 1e-13);
    EXPECT_NEAR(score.upper, wilson_upper(correct, 16, 0.95), 1e-13);
  }
}

TEST(Intervals, EndExactlyAtNothingAndEverything) {
  for (int trials : {1, 3, 16, 263}) {
    EXPECT_EQ(clopper_pearson(0, trials, 0.95).lower, 0.0);
    EXPECT_EQ(clopper_pearson(trials, trials, 0.95).upper, 1.0);
    EXPECT_EQ(wilson(0, trials, 0.95).lower, 0.0);
    EXPECT_EQ(wilson(trials, trials, 0.95).upper, 1.0);
    // CI-1: closed form at x = 0, 1 - .025^(1/n).
    EXPECT_NEAR(clopper_pearson(0, trials, 0.95).upper, 1 - std::pow(0.025, 1.0 / trials), 1e-13);
  }
}

// Score limits solve (share seen - share)^2 = z^2 share (1 - share)/n; below 50 % they lie beyond the share
// seen.
TEST(WilsonLimits, SolveTheScoreEquation) {
  for (double confidence : {0.3, 0.8, 0.95}) {
    const double lower = wilson_lower(9, 12, confidence);
    const double upper = wilson_upper(9, 12, confidence);
    const double z_squared_lower = (0.75 - lower) * (0.75 - lower) * 12 / (lower * (1 - lower));
    const double z_squared_upper = (0.75 - upper) * (0.75 - upper) * 12 / (upper * (1 - upper));
    EXPECT_NEAR(z_squared_lower, z_squared_upper, 1e-12);
    EXPECT_EQ(lower<0.75, confidence> 0.5);
    EXPECT_EQ(upper > 0.75, confidence > 0.5);
  }
}

TEST(ExactInterval, RefusesAnImpossibleLevelAlsoWithNothingOrEverythingRight) {
  for (int correct : {0, 16}) {
    EXPECT_EQ(refusal([=] { clopper_pearson(correct, 16, 95); }),
              "confidence must be strictly between 0 and 1, got 95 (write 0.95 for 95 %)");
    EXPECT_EQ(refusal([=] { clopper_pearson_lower(correct, 16, 0); }),
              "confidence must be strictly between 0 and 1, got 0");
    EXPECT_EQ(refusal([=] { clopper_pearson_upper(correct, 16, 1); }),
              "confidence must be strictly between 0 and 1, got 1");
    EXPECT_EQ(refusal([=] { wilson(correct, 16, -0.95); }),
              "confidence must be strictly between 0 and 1, got -0.95");
    EXPECT_EQ(refusal([=] { wilson_lower(correct, 16, std::numeric_limits<double>::quiet_NaN()); }),
              "confidence must be strictly between 0 and 1, got nan");
    EXPECT_THROW(wilson_upper(correct, 16, 95), std::domain_error);
  }
}

TEST(Intervals, RefuseImpossibleCounts) {
  EXPECT_EQ(refusal([] { clopper_pearson(17, 16, 0.95); }), "correct must be between 0 and 16, got 17");
  EXPECT_EQ(refusal([] { wilson(0, 0, 0.95); }), "trials must be between 1 and 1000000, got 0");
}

}  // namespace
}  // namespace stats
