#include "stats/evidence/e_process.h"

#include <gtest/gtest.h>

#include <boost/math/quadrature/tanh_sinh.hpp>
#include <cmath>
#include <limits>

#include "stats/csv.h"
#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

// SEQ-6, file eprocess_12of16.csv, recomputed, to 13 digits: the last of its 15 carry rounding errors (for
// n = 8 it has .773437499999999 where 99/128 is exact).
TEST(EProcess, AgreesWithTheRecomputedSequence) {
  for (const CsvRow& row : check_values("eprocess_12of16.csv")) {
    const int n = row.whole("n");
    const int k = row.whole("k");
    const auto expect = [&](double log_e, const std::string& column) {
      if (const auto e = row.find(column)) {
        EXPECT_NEAR(std::exp(log_e) / *e, 1, 5.1e-14) << column << n;
      }
    };
    expect(log_likelihood_ratio(k, n, 0.5, 0.75), "LR75");
    expect(log_beta_mixture(k, n, 0.5, 0.5, 0.5), "KT");
    expect(log_beta_mixture(k, n, 0.5, 1, 1), "uniform");
    expect(log_upper_beta_mixture(k, n, 0.5, 1, 1), "uniform_onesided");
    expect(log_upper_beta_mixture(k, n, 0.5, 0.5, 0.5), "KT_onesided");
  }
}

// SEQ-6, recomputed: the values printed in the text.
TEST(EProcess, AgreesWithTheRecomputedValues) {
  EXPECT_NEAR(std::exp(log_likelihood_ratio(3, 4, 0.5, 0.75)), 1.6875, 1e-14);
  EXPECT_NEAR(std::exp(log_likelihood_ratio(9, 11, 0.5, 0.75)), 9.610839844, 5.1e-10);
  EXPECT_NEAR(std::exp(log_likelihood_ratio(11, 14, 0.5, 0.75)), 10.812194824, 5.1e-10);
  EXPECT_NEAR(std::exp(log_likelihood_ratio(12, 16, 0.5, 0.75)), 8.109146118, 5.1e-10);
  EXPECT_NEAR(std::exp(log_beta_mixture(12, 16, 0.5, 0.5, 0.5)), 1.587005615, 5.1e-10);
  EXPECT_NEAR(std::exp(log_beta_mixture(12, 16, 0.5, 1, 1)), 2.118164189, 5.1e-10);
  EXPECT_NEAR(std::exp(log_upper_beta_mixture(3, 4, 0.5, 1, 1)), 1.3, 1e-14);
  EXPECT_NEAR(std::exp(log_upper_beta_mixture(12, 16, 0.5, 1, 1)), 4.1324499030, 5.1e-11);
  EXPECT_NEAR(std::exp(log_upper_beta_mixture(12, 16, 0.5, 0.5, 0.5)), 3.1073743272, 5.1e-11);
}

// SEQ-9, recomputed.
TEST(Calibrators, AgreeWithTheRecomputedValues) {
  EXPECT_NEAR(calibrated_e(.05, .5), 2.2360679775, 5.1e-11);
  EXPECT_NEAR(calibrated_e(.01, .5), 5, 1e-14);
  EXPECT_NEAR(calibrated_e(.001, .5), 15.8113883008, 5.1e-11);
  EXPECT_NEAR(vovk_sellke_bound(.05), .407162230107, 5.1e-13);
  EXPECT_NEAR(vovk_sellke_bound(.01), .125181504335, 5.1e-13);
  EXPECT_NEAR(vovk_sellke_bound(.001), .0187772256503, 5.1e-14);
}

// Long sequences. Recomputed: Python, exact whole numbers (comb, and for one side the sum of comb(n + 1, i)
// for i to k), logarithm by decimal with 40 digits.
TEST(EProcess, KeepsItsAccuracyInLongSequences) {
  EXPECT_NEAR(log_beta_mixture(600, 1'000, 0.5, 1, 1), 16.88628065508473, 1e-11);
  EXPECT_NEAR(log_upper_beta_mixture(600, 1'000, 0.5, 1, 1), 17.57942783553142, 1e-11);
  EXPECT_NEAR(log_upper_beta_mixture(300, 1'000, 0.5, 1, 1), -5.99763182866569, 1e-11);
  EXPECT_NEAR(log_beta_mixture(100, 10'000, 0.5, 1, 1), 6365.46335355700558, 1e-10);
  EXPECT_NEAR(log_upper_beta_mixture(100, 10'000, 0.5, 1, 1), -9.19024178166205, 1e-10);
  EXPECT_NEAR(log_beta_mixture(6'000, 10'000, 0.5, 1, 1), 196.95527207017375, 1e-10);
}

// Both sides of the change from the incomplete beta function to its series, against integrals over the prior.
TEST(UpperBetaMixture, IsTheMeanLikelihoodRatioAboveChance) {
  boost::math::quadrature::tanh_sinh<double> integrator;
  for (double chance : {0.2, 0.5, 0.7})
    for (const auto& [a, b] : {std::pair(1.0, 1.0), {0.5, 0.5}, {3.0, 2.0}})
      for (int correct = 0; correct <= 30; correct += 3) {
        const auto prior = [a = a, b = b](double p, double rest) {
          return std::pow(p, a - 1) * std::pow(rest, b - 1);
        };
        const auto of = [&](auto value) {
          return integrator.integrate(
              [&](double p, double distance) {
                const double rest = distance > 0 ? distance : 1 - p;  // 1 - p exactly near 1
                return value(p, rest) * prior(p, rest);
              },
              chance, 1.0);
        };
        const double mean = of([&](double p, double rest) {
          return std::pow(p / chance, correct) * std::pow(rest / (1 - chance), 30 - correct);
        });
        const double mass = of([](double, double) { return 1.0; });
        EXPECT_NEAR(std::exp(log_upper_beta_mixture(correct, 30, chance, a, b)) * mass / mean, 1, 1e-12)
            << chance << " " << a << " " << correct;
      }
}

// SEQ-6: betting on (k + 1/2)/(n + 1) is the mixture over Beta(1/2, 1/2) at every n; at any chance.
TEST(BetaMixture, IsBettingOnTheEstimate) {
  for (double chance : {1.0 / 3, 0.5}) {
    double product = 1;
    int k = 0;
    for (int n = 0; n < 16; ++n) {
      const double estimate = (k + 0.5) / (n + 1);
      const bool right = "1101110111101101"[n] == '1';
      product *= right ? estimate / chance : (1 - estimate) / (1 - chance);
      k += right;
      EXPECT_NEAR(std::exp(log_beta_mixture(k, n + 1, chance, 0.5, 0.5)) / product, 1, 1e-13);
    }
  }
}

// A test martingale: the mean of the next value is the present one, at any chance.
TEST(EProcess, StaysFairFromTrialToTrial) {
  for (double chance : {0.1, 1.0 / 3, 0.5, 0.9})
    for (int n : {1, 7, 60})
      for (int k = 0; k <= n; ++k) {
        const auto fair = [&](auto log_e) {
          const double next =
              chance * std::exp(log_e(k + 1, n + 1)) + (1 - chance) * std::exp(log_e(k, n + 1));
          return next / std::exp(log_e(k, n));
        };
        EXPECT_NEAR(fair([&](int x, int m) { return log_likelihood_ratio(x, m, chance, 0.6); }), 1, 1e-12);
        EXPECT_NEAR(fair([&](int x, int m) { return log_beta_mixture(x, m, chance, 2, 0.7); }), 1, 1e-12);
        EXPECT_NEAR(fair([&](int x, int m) { return log_upper_beta_mixture(x, m, chance, 2, 0.7); }), 1,
                    1e-12);
      }
}

TEST(EProcess, StartsAtOne) {
  for (double chance : {0.2, 0.5}) {
    const auto first = [&](auto log_e) {
      return chance * std::exp(log_e(1, 1)) + (1 - chance) * std::exp(log_e(0, 1));
    };
    EXPECT_NEAR(first([&](int k, int n) { return log_beta_mixture(k, n, chance, 1, 1); }), 1, 1e-14);
    EXPECT_NEAR(first([&](int k, int n) { return log_upper_beta_mixture(k, n, chance, 0.5, 3); }), 1, 1e-14);
  }
}

TEST(EProcess, DoesNotOverflow) {
  EXPECT_NEAR(log_likelihood_ratio(1'000'000, 1'000'000, 0.5, 0.75), 1e6 * std::log(1.5), 1e-8);
  EXPECT_NEAR(log_beta_mixture(1'000'000, 1'000'000, 0.5, 1, 1), 1e6 * std::log(2) - std::log(1'000'001),
              1e-8);
  EXPECT_NEAR(log_upper_beta_mixture(1'000'000, 1'000'000, 0.5, 1, 1),
              1e6 * std::log(2) - std::log(1'000'001) + std::log(2), 1e-8);
  EXPECT_NEAR(log_upper_beta_mixture(0, 1'000'000, 0.5, 1, 1), -std::log(1'000'001), 1e-10);  // by hand
}

TEST(Calibrators, AreEValues) {
  boost::math::quadrature::tanh_sinh<double> integrator;
  for (double kappa : {0.2, 0.5, 0.9})
    EXPECT_NEAR(integrator.integrate([=](double p) { return calibrated_e(p, kappa); }, 0.0, 1.0), 1, 1e-9);
  EXPECT_EQ(calibrated_e(0, 0.5), std::numeric_limits<double>::infinity());
  EXPECT_EQ(calibrated_e(1, 0.5), 0.5);
  EXPECT_EQ(vovk_sellke_bound(0), 0);
  EXPECT_EQ(vovk_sellke_bound(0.5), 1);
  EXPECT_NEAR(vovk_sellke_bound(std::exp(-1) * (1 - 1e-12)), 1, 1e-12);
  double largest = 0;
  for (double kappa = 0.001; kappa < 1; kappa += 0.001)
    largest = std::max(largest, calibrated_e(0.05, kappa));
  EXPECT_NEAR(1 / largest, vovk_sellke_bound(0.05), 1e-5);
}

TEST(EProcess, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] { log_likelihood_ratio(17, 16, 0.5, 0.7); }),
            "correct must be between 0 and 16, got 17");
  EXPECT_EQ(refusal([] { log_likelihood_ratio(0, 0, 0.5, 0.7); }),
            "trials must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { log_likelihood_ratio(1, 2, 0, 0.7); }),
            "chance must be strictly between 0 and 1, got 0");
  EXPECT_EQ(refusal([] { log_likelihood_ratio(1, 2, 0.5, 1); }),
            "alternative must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { log_beta_mixture(1, 2, 0.5, 0, 1); }), "a must be between 0.001 and 10000, got 0");
  EXPECT_EQ(refusal([] { log_upper_beta_mixture(1, 2, 0.5, 1, INFINITY); }),
            "b must be between 0.001 and 10000, got inf");
  EXPECT_EQ(refusal([] { calibrated_e(1.5, 0.5); }), "p must be between 0 and 1, got 1.5");
  EXPECT_EQ(refusal([] { calibrated_e(0, 1); }), "kappa must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { vovk_sellke_bound(std::nan("")); }), "p must be between 0 and 1, got nan");
}

}  // namespace
}  // namespace stats
