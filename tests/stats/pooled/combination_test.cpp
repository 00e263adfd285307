#include "stats/pooled/combination.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

// CO-6, recomputed: SciPy stats.combine_pvalues; the second triple is Sokal and Rohlf's (memory).
TEST(Combination, AgreesWithRecomputedValues) {
  const std::vector<double> one{.01, .2, .3}, other{.145, .263, .087};
  EXPECT_NEAR(fisher_combination(one).statistic, 14.83716181, 5.1e-9);
  EXPECT_NEAR(fisher_combination(one).p, .02156175132, 5.1e-12);
  EXPECT_NEAR(stouffer_combination(one).statistic, 2.131790594, 5.1e-10);
  EXPECT_NEAR(stouffer_combination(one).p, .01651203261, 5.1e-12);
  EXPECT_NEAR(fisher_combination(other).statistic, 11.41693989, 5.1e-9);
  EXPECT_NEAR(fisher_combination(other).p, .07631405549, 5.1e-12);
  EXPECT_NEAR(stouffer_combination(other).statistic, 1.761904557, 5.1e-10);
  EXPECT_NEAR(stouffer_combination(other).p, .03904271224, 5.1e-12);
}

TEST(Combination, OfOnePIsItself) {
  for (const double p : {1e-300, 1e-12, 0.03, 0.5, 0.999, 1.0}) {
    EXPECT_NEAR(fisher_combination(std::vector{p}).p / p, 1, 1e-12);
    EXPECT_NEAR(stouffer_combination(std::vector{p}).p / p, 1, 1e-11);
    EXPECT_NEAR(stouffer_combination(std::vector{p}, std::vector{3.0}).p / p, 1, 1e-11);
  }
}

TEST(Combination, WeighsInProportion) {
  const std::vector<double> p{.01, .2, .3};
  EXPECT_NEAR(stouffer_combination(p, std::vector{2.0, 2.0, 2.0}).p, stouffer_combination(p).p, 1e-15);
  EXPECT_NEAR(stouffer_combination(p, std::vector{1e6, 1e-6, 1e-6}).p, .01, 1e-9);
  EXPECT_NEAR(stouffer_combination(std::vector{.1, .4}, std::vector{3.0, 4.0}).statistic,
              (3 * 1.2815515655446004 + 4 * .2533471031357997) / 5, 1e-12);  // R qnorm(.9), qnorm(.6)
}

// Recomputed: every quadruple of counts in Python, SciPy's chi2 and norm.
TEST(Combination, IsConservativeForCounts) {
  double fisher = 0, stouffer = 0;
  std::vector<double> p, probability;
  for (int correct = 0; correct <= 16; ++correct) {
    p.push_back(chance_of_at_least(correct, 16, 0.5));
    probability.push_back(chance_of_exactly(correct, 16, 0.5));
  }
  std::vector<double> log_p, z;
  for (const double value : p) {
    log_p.push_back(std::log(value));
    z.push_back(stouffer_combination(std::vector{value}).statistic);
  }
  for (std::size_t a = 0; a < 17; ++a)
    for (std::size_t b = 0; b < 17; ++b)
      for (std::size_t c = 0; c < 17; ++c)
        for (std::size_t d = 0; d < 17; ++d) {
          const double weight = probability[a] * probability[b] * probability[c] * probability[d];
          if (-2 * (log_p[a] + log_p[b] + log_p[c] + log_p[d]) >= 15.507313055865453)
            fisher += weight;                                                             // R qchisq
          if ((z[a] + z[b] + z[c] + z[d]) / 2 >= 1.6448536269514722) stouffer += weight;  // R qnorm
        }
  EXPECT_NEAR(fisher, .018514163554165776, 1e-14);
  EXPECT_NEAR(stouffer, .01638995950793782, 1e-14);
}

TEST(Combination, OfOneAmongOthers) {
  const auto with_one = stouffer_combination(std::vector{1e-9, 1.0});
  EXPECT_EQ(with_one.statistic, -std::numeric_limits<double>::infinity());
  EXPECT_EQ(with_one.p, 1);
  EXPECT_EQ(fisher_combination(std::vector{1.0, 1.0}).p, 1);
}

TEST(Combination, RefusesWhatCannotBeCombined) {
  EXPECT_EQ(refusal([] { fisher_combination({}); }), "number of p must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] {
              fisher_combination(std::vector{0.1, 0.0});
            }),
            "p[1] must be between 2.2250738585072014e-308 and 1, got 0");
  EXPECT_EQ(refusal([] { stouffer_combination(std::vector{std::nan("")}); }),
            "p[0] must be between 2.2250738585072014e-308 and 1, got nan");
  EXPECT_EQ(refusal([] {
              stouffer_combination(std::vector{0.1, 0.2}, std::vector{1.0});
            }),
            "number of weights must be between 2 and 2, got 1");
  EXPECT_THROW(stouffer_combination(std::vector{0.1}, std::vector{0.0}), std::domain_error);
  EXPECT_THROW(stouffer_combination(std::vector{0.1}, std::vector{std::nan("")}), std::domain_error);
}

}  // namespace
}  // namespace stats
