#include "stats/evidence/confidence_sequence.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/evidence/e_process.h"
#include "stats/refusal.h"
#include "stats/sequential/rules_on_counts.h"

namespace stats {
namespace {

// SEQ-7, recomputed, 10 decimals: uniform, then Beta(1/2, 1/2).
TEST(ConfidenceSequence, AgreesWithRecomputedValues) {
  const struct {
    int correct, trials;
    Interval uniform, halves;
  } rows[] = {{12, 16, {.3875720766, .9596574117}, {.3760068650, .9628371882}},
              {5, 10, {.1292190124, .8707809876}, {.1175629241, .8824370759}},
              {75, 100, {.5962485432, .8700569514}, {.5915445994, .8728646060}}};
  for (const auto& row : rows) {
    const auto uniform = beta_confidence_sequence(row.correct, row.trials, 0.95);
    const auto halves = beta_confidence_sequence(row.correct, row.trials, 0.95, 0.5, 0.5);
    EXPECT_NEAR(uniform.lower, row.uniform.lower, 5.1e-11);
    EXPECT_NEAR(uniform.upper, row.uniform.upper, 5.1e-11);
    EXPECT_NEAR(halves.lower, row.halves.lower, 5.1e-11);
    EXPECT_NEAR(halves.upper, row.halves.upper, 5.1e-11);
  }
}

/// Probability that the interval covers `share` after every one of the first 200 trials, by the recursion.
double coverage_of_200(double share, double a, double b) {
  StoppingRule misses;
  for (int n = 1; n <= 200; ++n) {
    Look look;
    for (int k = 0; k <= n; ++k) {
      const auto [lower, upper] = beta_confidence_sequence(k, n, 0.95, a, b);
      if (lower > share && !look.support) look.support = k;
      if (upper < share) look.give_up = k;
    }
    misses.looks.push_back(look);
  }
  return operate(misses, share).undecided;
}

// The coverages that the header states, exact by the recursion, and never less than the confidence.
TEST(ConfidenceSequence, CoversAtAllTrialsAtOnce) {
  EXPECT_NEAR(coverage_of_200(0.5, 1, 1), .969123, 5.1e-7);
  EXPECT_NEAR(coverage_of_200(0.75, 1, 1), .972382, 5.1e-7);
  EXPECT_NEAR(coverage_of_200(0.9, 1, 1), .971461, 5.1e-7);
  EXPECT_NEAR(coverage_of_200(0.95, 1, 1), .982091, 5.1e-7);
  EXPECT_NEAR(coverage_of_200(0.75, 0.5, 0.5), .961041, 5.1e-7);
  for (double share : {0.02, 0.3, 0.6, 0.99}) EXPECT_GE(coverage_of_200(share, 1, 1), 0.95);
  EXPECT_GE(coverage_of_200(0.5, 20, 20), 0.95);
}

// The same coverage from the e-process at the share itself.
TEST(ConfidenceSequence, CoversWhatTheEProcessDoesNotReject) {
  for (double share : {0.3, 0.75}) {
    const auto rejects = operate(
        e_process_rule(200, 0.05, [=](int k, int n) { return log_beta_mixture(k, n, share, 1, 1); }), share);
    EXPECT_NEAR(coverage_of_200(share, 1, 1), 1 - rejects.support - rejects.give_up, 1e-13);
  }
}

TEST(ConfidenceSequence, EndsWhereTheMixtureReachesItsBound) {
  for (int trials : {1, 16, 300, 10'000})
    for (double confidence : {0.5, 0.95, 0.9999})
      for (double a : {0.5, 1.0, 30.0})
        for (int correct : {0, trials / 3, trials / 2, trials}) {
          const auto [lower, upper] = beta_confidence_sequence(correct, trials, confidence, a, 2);
          const double bound = -std::log1p(-confidence);
          const double slack = 1e-10 * trials;  // of log e, which is steep at the ends
          if (correct > 0) {
            EXPECT_NEAR(log_beta_mixture(correct, trials, lower, a, 2), bound, slack);
          }
          if (correct < trials) {
            EXPECT_NEAR(log_beta_mixture(correct, trials, upper, a, 2), bound, slack);
          }
          EXPECT_LE(lower, double(correct) / trials);
          EXPECT_GE(upper, double(correct) / trials);
        }
}

TEST(ConfidenceSequence, EndsExactlyAtNothingAndEverything) {
  for (int trials : {1, 16, 1'000'000}) {
    EXPECT_EQ(beta_confidence_sequence(0, trials, 0.95).lower, 0.0);
    EXPECT_EQ(beta_confidence_sequence(trials, trials, 0.95).upper, 1.0);
    // By hand for everything right: p^n (n + 1) = 1/20.
    EXPECT_NEAR(beta_confidence_sequence(trials, trials, 0.95).lower,
                std::pow(0.05 / (trials + 1.0), 1.0 / trials), 1e-13);
  }
}

TEST(ConfidenceSequence, Mirrors) {
  for (int correct = 0; correct <= 16; ++correct) {
    const auto one = beta_confidence_sequence(correct, 16, 0.9, 0.7, 3);
    const auto other = beta_confidence_sequence(16 - correct, 16, 0.9, 3, 0.7);
    EXPECT_NEAR(one.lower, 1 - other.upper, 1e-13);
    EXPECT_NEAR(one.upper, 1 - other.lower, 1e-13);
  }
}

TEST(ConfidenceSequence, StandsAnExtremePrior) {
  const auto [lower, upper] = beta_confidence_sequence(1, 1'000'000, 0.95, 1e4, 0.001);
  EXPECT_EQ(lower, 0);  // below the smallest double
  EXPECT_NEAR(log_beta_mixture(1, 1'000'000, upper, 1e4, 0.001), std::log(20), 1e-6);
}

TEST(ConfidenceSequence, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] { beta_confidence_sequence(0, 16, 95); }),
            "confidence must be strictly between 0 and 1, got 95 (write 0.95 for 95 %)");
  EXPECT_EQ(refusal([] { beta_confidence_sequence(17, 16, 0.95); }),
            "correct must be between 0 and 16, got 17");
  EXPECT_EQ(refusal([] { beta_confidence_sequence(0, 0, 0.95); }),
            "trials must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { beta_confidence_sequence(0, 16, 0.95, 0, 1); }),
            "a must be between 0.001 and 10000, got 0");
  EXPECT_EQ(refusal([] { beta_confidence_sequence(0, 16, 0.95, 1, std::nan("")); }),
            "b must be between 0.001 and 10000, got nan");
}

}  // namespace
}  // namespace stats
