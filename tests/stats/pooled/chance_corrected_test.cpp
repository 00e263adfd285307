#include "stats/pooled/chance_corrected.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "stats/pooled/beta_binomial.h"
#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

std::vector<SubjectCount> chance_corrected_example() {
  std::vector<SubjectCount> subjects;
  for (const int correct : {3, 4, 5, 5, 5, 6, 6, 6, 7, 8, 9, 10}) subjects.push_back({correct, 10});
  return subjects;
}

// OD-4 (formula confirmed, citing Bi 2006 and Brockhoff 2003; recomputed).
TEST(ChanceCorrected, AgreesWithRecomputedValues) {
  const double expected[] = {.0552369231, .1807753846, .2782523077, .2802215385, .2055138462};
  const auto at = chance_corrected(4, 1.0 / 3, 0.4, 0.3);
  double mean = 0;
  for (std::size_t x = 0; x <= 4; ++x) {
    EXPECT_NEAR(at[x], expected[x], 5.1e-11);
    mean += double(x) * at[x];
  }
  EXPECT_NEAR(mean, 2.4, 1e-14);
}

// Recomputed: the sum over the trials heard in Python's decimals of 50 digits.
TEST(ChanceCorrected, AgreesWithLongNumbers) {
  EXPECT_NEAR(chance_corrected(50, 0.5, 0.3, 0.2)[30] / 6.34805885860993541e-02, 1, 1e-13);
  const auto at = chance_corrected(300, 0.5, 0.3, 0.2);
  EXPECT_NEAR(at[190] / 1.13467397797484514e-02, 1, 1e-12);
  EXPECT_NEAR(at[100] / 2.74609925457447801e-11, 1, 1e-12);
}

// OD-4: mean .216484, gamma .546165, log likelihood -24.217645; more digits and standard errors recomputed:
// likelihood in Python's decimals of 50 digits, Newton with differences of 1e-12.
TEST(FitChanceCorrected, AgreesWithRecomputedValues) {
  const auto fit = fit_chance_corrected(chance_corrected_example(), 0.5);
  EXPECT_NEAR(fit.mean, .216484, 5.1e-7);
  EXPECT_NEAR(fit.gamma.value(), .546165, 5.1e-7);
  EXPECT_NEAR(fit.log_likelihood, -24.217645, 5.1e-7);
  EXPECT_NEAR(fit.mean, .21648443764096, 5.1e-12);
  EXPECT_NEAR(fit.gamma.value(), .54616485295285, 5.1e-12);
  EXPECT_NEAR(fit.mean_error.value(), .12018897523070, 5.1e-12);
  EXPECT_NEAR(fit.gamma_error.value(), .29366485194757, 5.1e-12);
  const std::vector<SubjectCount> uneven{{2, 8},  {5, 10},  {6, 12}, {4, 10},
                                         {9, 12}, {12, 12}, {3, 9},  {7, 11}};
  const auto third = fit_chance_corrected(uneven, 1.0 / 3);
  EXPECT_NEAR(third.mean, .32424460889741, 5.1e-12);
  EXPECT_NEAR(third.gamma.value(), .46418152822691, 5.1e-12);
  EXPECT_NEAR(third.mean_error.value(), .13810689843066, 5.1e-12);
  EXPECT_NEAR(third.gamma_error.value(), .25828733692794, 5.1e-12);
  EXPECT_NEAR(third.log_likelihood, -17.41470080319322, 1e-12);
}

TEST(ChanceCorrected, WithoutGuessingIsTheBetaBinomial) {
  const auto corrected = chance_corrected(25, 0, 0.3, 0.1), plain = beta_binomial(25, 0.3, 0.1);
  for (std::size_t x = 0; x < plain.size(); ++x) EXPECT_NEAR(corrected[x], plain[x], 1e-15);
  const auto fit = fit_chance_corrected(chance_corrected_example(), 0);
  EXPECT_EQ(fit.mean, fit_beta_binomial(chance_corrected_example()).mean);
}

TEST(ChanceCorrected, WithoutSpreadIsTheBinomial) {
  const auto at = chance_corrected(20, 1.0 / 3, 0.4, 0);
  for (int correct = 0; correct <= 20; ++correct)
    EXPECT_NEAR(at[static_cast<std::size_t>(correct)] / chance_of_exactly(correct, 20, 0.6), 1, 1e-12);
  const auto guessing = chance_corrected(20, 1.0 / 3, 0, 0.7);
  EXPECT_NEAR(guessing[8] / chance_of_exactly(8, 20, 1.0 / 3), 1, 1e-13);
  const auto some_hear_all = chance_corrected(5, 0.5, 0.25, 1);
  EXPECT_NEAR(some_hear_all[5], 0.25 + 0.75 / 32, 1e-15);
  EXPECT_NEAR(some_hear_all[2], 0.75 * 10 / 32, 1e-15);
}

double chance_corrected_log(const std::vector<SubjectCount>& subjects, double chance, double mean,
                            double gamma) {
  double sum = 0;
  for (const auto [correct, trials] : subjects)
    sum += std::log(chance_corrected(trials, chance, mean, gamma)[static_cast<std::size_t>(correct)]);
  return sum;
}

TEST(ChanceCorrected, KeepsTenDigitsAtTenThousandTrials) {
  const auto at = chance_corrected(10'000, 0.5, 0.3, 0);
  for (const int correct : {6'000, 6'500, 6'900})
    EXPECT_NEAR(at[static_cast<std::size_t>(correct)] / chance_of_exactly(correct, 10'000, 0.65), 1, 1e-10);
}

TEST(FitChanceCorrected, IsTheHighestOnAGrid) {
  const std::vector<std::vector<SubjectCount>> cases{{{4, 10}, {6, 10}, {5, 9}, {9, 10}},
                                                     {{16, 16}, {8, 16}, {7, 16}, {9, 16}},
                                                     {{1, 8}, {8, 8}, {2, 9}, {3, 8}},
                                                     {{12, 16}, {12, 16}, {12, 16}},
                                                     {{3, 10}, {5, 10}, {4, 10}}};
  for (const auto& subjects : cases) {
    const auto fit = fit_chance_corrected(subjects, 0.5);
    EXPECT_NEAR(chance_corrected_log(subjects, 0.5, fit.mean, fit.gamma.value_or(0)), fit.log_likelihood,
                1e-12);
    for (int i = 0; i <= 30; ++i)
      for (int j = 0; j <= 30; ++j)
        EXPECT_LE(chance_corrected_log(subjects, 0.5, i / 30.0, j / 30.0), fit.log_likelihood + 1e-12);
  }
}

TEST(FitChanceCorrected, KeepsToTheBoundaries) {
  const auto below = fit_chance_corrected(std::vector<SubjectCount>{{3, 10}, {5, 10}, {4, 10}}, 0.5);
  EXPECT_EQ(below.mean, 0);
  EXPECT_FALSE(below.gamma);
  EXPECT_FALSE(below.mean_error);
  EXPECT_EQ(below.half_chi_square_p, 1);
  const auto alike = fit_chance_corrected(std::vector<SubjectCount>{{12, 16}, {12, 16}, {12, 16}}, 0.5);
  EXPECT_NEAR(alike.mean, 0.5, 1e-12);
  EXPECT_EQ(alike.gamma, 0.0);
  EXPECT_NEAR(alike.mean_error.value(), 2 * std::sqrt(0.75 * 0.25 / 48),
              1e-12);  // that of the share right, doubled
  const auto some_hear_all =
      fit_chance_corrected(std::vector<SubjectCount>{{16, 16}, {16, 16}, {7, 16}, {8, 16}}, 0.5);
  EXPECT_EQ(some_hear_all.gamma, 1.0);
  EXPECT_NEAR(some_hear_all.mean, 0.5, 1e-4);
  EXPECT_EQ(fit_chance_corrected(std::vector<SubjectCount>{{6, 6}, {8, 8}}, 0.5).mean, 1);
}

TEST(ChanceCorrected, RefusesBadArguments) {
  EXPECT_EQ(refusal([] { chance_corrected(10'001, 0.5, 0.5, 0.5); }),
            "trials must be between 1 and 10000, got 10001");
  EXPECT_EQ(refusal([] { chance_corrected(4, -0.1, 0.5, 0.5); }).substr(0, 22), "chance must be between");
  EXPECT_THROW(fit_chance_corrected(chance_corrected_example(), 1), std::domain_error);
  EXPECT_THROW(fit_chance_corrected(chance_corrected_example(), std::nan("")), std::domain_error);
  EXPECT_EQ(refusal([] { chance_corrected(4, 0.5, -1, 0.5); }), "mean must be between 0 and 1, got -1");
}

}  // namespace
}  // namespace stats
