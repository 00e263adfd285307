#include "stats/pooled/beta_binomial.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

#include "stats/csv.h"
#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

std::vector<SubjectCount> beta_binomial_example() {
  std::vector<SubjectCount> subjects;
  for (const int correct : {3, 4, 5, 5, 5, 6, 6, 6, 7, 8, 9, 10}) subjects.push_back({correct, 10});
  return subjects;
}

// OD-4: n = 10, a = 2, b = 3 (recomputed).
TEST(BetaBinomial, AgreesWithRecomputedValues) {
  const double expected[] = {.0659340659, .1098901099, .1348651349, .1438561439, .1398601399, .1258741259,
                             .1048951049, .0799200799, .0539460539, .0299700300, .0109890110};
  const auto at = beta_binomial(10, 0.4, 1.0 / 6);
  ASSERT_EQ(at.size(), 11u);
  for (std::size_t x = 0; x <= 10; ++x) EXPECT_NEAR(at[x], expected[x], 5.1e-11);
}

// Recomputed: products of 20,000 factors in Python's decimals of 50 digits.
TEST(BetaBinomial, KeepsElevenDigitsAtTenThousandTrials) {
  const auto close = [](double mean, double gamma, std::size_t correct, double expected) {
    EXPECT_NEAR(beta_binomial(10'000, mean, gamma)[correct] / expected, 1, 1e-11);
  };
  close(0.6, 0.05, 6'000, 3.49736161428690416e-04);
  close(0.6, 0.05, 9'990, 3.66847779437216930e-18);
  close(0.6, 0.5, 0, 1.79474192647921071e-03);
  close(0.5, 1e-4, 5'000, 5.64154320684954070e-03);
  close(0.5, 1e-6, 5'300, 1.43203276509578992e-10);
  close(0.3, 0.01, 10, 7.19423261299166097e-54);
}

// OD-2, recomputed afresh: the likelihood in Python's decimals of 50 digits, Newton with differences of
// 1e-12. The check values mu .6185307759, gamma .0766535601, standard errors .0576580669 and .0702230596
// agree with these to 8, 7, 4 and 4 digits; its log likelihoods and moment to all.
TEST(FitBetaBinomial, AgreesWithRecomputedValues) {
  const auto fit = fit_beta_binomial(beta_binomial_example());
  EXPECT_NEAR(fit.mean, .61853078400980, 5.1e-13);
  EXPECT_NEAR(fit.gamma.value(), .07665357699989, 5.1e-13);
  EXPECT_NEAR(fit.mean_error.value(), .05765721873671, 5.1e-12);
  EXPECT_NEAR(fit.gamma_error.value(), .07022698053683, 5.1e-12);
  EXPECT_NEAR(fit.log_likelihood, -25.1925585053, 5.1e-11);
  EXPECT_NEAR(fit.binomial_log_likelihood, -26.2197395445, 5.1e-11);
  EXPECT_NEAR(fit.likelihood_ratio, 2.0543620785, 5.1e-10);
  // Recomputed: R pchisq(2.0543620785, 1, lower=FALSE)/2.
  EXPECT_NEAR(fit.half_chi_square_p, .075885404, 5.1e-10);
  EXPECT_NEAR(moment_gamma(beta_binomial_example()).value(), .0840247362, 5.1e-11);
}

// OD-3: Weil (1970), control group (counts memory), recomputed afresh as above; the check value of gamma,
// .0201964366, agrees to 7 digits.
TEST(FitBetaBinomial, AgreesWithWeil) {
  std::vector<SubjectCount> subjects;
  for (const CsvRow& row : check_values("weil1970.csv")) subjects.push_back({row.whole("x"), row.whole("n")});
  const auto fit = fit_beta_binomial(subjects);
  EXPECT_NEAR(fit.mean, .89797596145431, 5.1e-12);
  EXPECT_NEAR(fit.gamma.value(), .02019644825152, 5.1e-12);
  EXPECT_NEAR(fit.mean_error.value(), .02636165113699, 5.1e-12);
  EXPECT_NEAR(fit.gamma_error.value(), .04854268678543, 5.1e-12);
  EXPECT_NEAR(fit.log_likelihood, -21.25352798, 5.1e-9);
}

TEST(BetaBinomial, WithoutSpreadIsTheBinomialAndWithAllOfItAllOrNothing) {
  const auto alike = beta_binomial(30, 0.3, 0);
  for (int correct = 0; correct <= 30; ++correct)
    EXPECT_NEAR(alike[static_cast<std::size_t>(correct)] / chance_of_exactly(correct, 30, 0.3), 1, 1e-12);
  EXPECT_EQ(beta_binomial(3, 0.25, 1), (TotalDistribution{0.75, 0, 0, 0.25}));
  EXPECT_EQ(beta_binomial(3, 0, 0.5), (TotalDistribution{1, 0, 0, 0}));
  EXPECT_EQ(beta_binomial(3, 1, 0.5), (TotalDistribution{0, 0, 0, 1}));
  for (const double share : beta_binomial(9, 0.5, 1.0 / 3))
    EXPECT_NEAR(share, 0.1, 1e-15);  // a = b = 1: uniform
}

TEST(BetaBinomial, HasItsMeanAndVariance) {
  for (const double mean : {0.1, 0.6})
    for (const double gamma : {0.001, 0.2, 0.9}) {
      double first = 0, second = 0;
      const auto at = beta_binomial(40, mean, gamma);
      for (std::size_t x = 0; x < at.size(); ++x) first += double(x) * at[x], second += double(x * x) * at[x];
      EXPECT_NEAR(first, 40 * mean, 1e-11);
      EXPECT_NEAR(second - first * first, 40 * mean * (1 - mean) * (1 + 39 * gamma), 1e-10);
    }
}

TEST(FitBetaBinomial, IsTheBinomialWhereSubjectsDifferTooLittle) {
  const std::vector<SubjectCount> subjects{{5, 10}, {6, 10}, {5, 10}, {4, 8}};
  const auto fit = fit_beta_binomial(subjects);
  EXPECT_NEAR(fit.mean, 20.0 / 38, 1e-13);
  EXPECT_EQ(fit.gamma, 0.0);
  EXPECT_NEAR(fit.mean_error.value(), std::sqrt(20.0 / 38 * 18 / 38 / 38), 1e-12);
  EXPECT_FALSE(fit.gamma_error);
  EXPECT_EQ(fit.likelihood_ratio, 0);
  EXPECT_EQ(fit.half_chi_square_p, 1);
  EXPECT_LT(moment_gamma(subjects).value(), 0);
}

TEST(FitBetaBinomial, IsAllOrNothingWhereSubjectsAre) {
  const auto fit = fit_beta_binomial(std::vector<SubjectCount>{{7, 7}, {0, 5}, {9, 9}, {4, 4}});
  EXPECT_NEAR(fit.mean, 0.75, 1e-13);
  EXPECT_EQ(fit.gamma, 1.0);
  EXPECT_NEAR(fit.mean_error.value(), std::sqrt(0.75 * 0.25 / 4), 1e-12);
  EXPECT_NEAR(fit.log_likelihood, 3 * std::log(0.75) + std::log(0.25), 1e-12);
}

TEST(FitBetaBinomial, IsTheHighestOnAGrid) {
  const std::vector<std::vector<SubjectCount>> cases{{{1, 9}, {8, 9}, {5, 6}, {0, 3}},
                                                     {{10, 10}, {9, 10}, {3, 10}},
                                                     {{16, 16}, {0, 16}, {1, 16}},
                                                     {{2, 3}, {0, 3}}};
  for (const auto& subjects : cases) {
    const auto fit = fit_beta_binomial(subjects);
    for (int i = 1; i < 40; ++i)
      for (int j = 0; j <= 40; ++j) {
        double log_likelihood = 0;
        for (const auto [correct, trials] : subjects)
          log_likelihood +=
              std::log(beta_binomial(trials, i / 40.0, j / 40.0)[static_cast<std::size_t>(correct)]);
        EXPECT_LE(log_likelihood, fit.log_likelihood + 1e-12);
      }
    double at_fit = 0;
    for (const auto [correct, trials] : subjects)
      at_fit += std::log(beta_binomial(trials, fit.mean, *fit.gamma)[static_cast<std::size_t>(correct)]);
    EXPECT_NEAR(at_fit, fit.log_likelihood, 1e-12);
  }
}

// Recomputed: all 495 tables of 4 subjects of 8 trials, each maximised by SciPy's minimize_scalar, nested.
TEST(FitBetaBinomial, HasTheSizeStated) {
  double at_half = 0, at_seven_tenths = 0;
  for (int a = 0; a <= 8; ++a)
    for (int b = a; b <= 8; ++b)
      for (int c = b; c <= 8; ++c)
        for (int d = c; d <= 8; ++d) {
          const int counts[] = {a, b, c, d};
          if (fit_beta_binomial(std::vector<SubjectCount>{{a, 8}, {b, 8}, {c, 8}, {d, 8}}).half_chi_square_p >
              0.05)
            continue;
          double orders = 24, half = 1, seven_tenths = 1;
          int run = 1;
          for (int i = 0; i < 4; ++i) {
            run = i > 0 && counts[i] == counts[i - 1] ? run + 1 : 1;
            orders /= run;
            half *= chance_of_exactly(counts[i], 8, 0.5);
            seven_tenths *= chance_of_exactly(counts[i], 8, 0.7);
          }
          at_half += orders * half;
          at_seven_tenths += orders * seven_tenths;
        }
  EXPECT_NEAR(at_half, .020612541120499372, 1e-14);
  EXPECT_NEAR(at_seven_tenths, .018323441936784368, 1e-14);
}

TEST(FitBetaBinomial, HasNoGammaWhereNothingCanBeSaidOfIt) {
  const auto everything = fit_beta_binomial(std::vector<SubjectCount>{{4, 4}, {7, 7}});
  EXPECT_EQ(everything.mean, 1);
  EXPECT_FALSE(everything.gamma);
  EXPECT_FALSE(everything.mean_error);
  EXPECT_EQ(everything.log_likelihood, 0);
  EXPECT_EQ(everything.half_chi_square_p, 1);
  EXPECT_EQ(fit_beta_binomial(std::vector<SubjectCount>{{0, 4}, {0, 7}}).mean, 0);
  const auto single = fit_beta_binomial(std::vector<SubjectCount>{{3, 4}});
  EXPECT_NEAR(single.mean, 0.75, 1e-13);
  EXPECT_FALSE(single.gamma);
  EXPECT_NEAR(single.mean_error.value(), std::sqrt(0.75 * 0.25 / 4), 1e-12);
  EXPECT_FALSE(fit_beta_binomial(std::vector<SubjectCount>{{1, 1}, {0, 1}, {1, 1}}).gamma);
  EXPECT_FALSE(moment_gamma(std::vector<SubjectCount>{{1, 1}, {0, 1}, {1, 1}}));
}

TEST(BetaBinomial, RefusesBadArguments) {
  EXPECT_EQ(refusal([] { beta_binomial(0, 0.5, 0.1); }), "trials must be between 1 and 100000, got 0");
  EXPECT_EQ(refusal([] { beta_binomial(4, 1.1, 1); }), "mean must be between 0 and 1, got 1.1");
  EXPECT_EQ(refusal([] { beta_binomial(4, 0.5, std::numeric_limits<double>::quiet_NaN()); }),
            "gamma must be between 0 and 1, got nan");
  EXPECT_EQ(refusal([] { fit_beta_binomial({}); }), "number of subjects must be between 1 and 10000, got 0");
  EXPECT_EQ(refusal([] {
              fit_beta_binomial(std::vector<SubjectCount>{{1, 20'000}});
            }),
            "trials must be between 1 and 10000, got 20000");
}

}  // namespace
}  // namespace stats
