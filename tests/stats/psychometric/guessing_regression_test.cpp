#include "stats/psychometric/guessing_regression.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/csv.h"
#include "stats/refusal.h"

namespace stats {
namespace {

/// Of the letters seen: intercept, contrast and, if all are taken, size, task and their products.
std::vector<GuessingRow> letters(const std::string& task, double size) {
  std::vector<GuessingRow> rows;
  for (const CsvRow& row : check_values("ecc2.csv")) {
    const double contrast = row.number("Contr"), of_size = row.number("Size"),
                 id = row.cells.at("task") == "ID";
    const int right = row.whole("Correct"), trials = right + row.whole("Incorrect");
    if (task.empty())
      rows.push_back({{1, contrast, of_size, id, contrast * of_size, contrast * id, of_size * id,
                       contrast * of_size * id},
                      right,
                      trials});
    else if (row.cells.at("task") == task && of_size == size)
      rows.push_back({{1, contrast}, right, trials});
  }
  return rows;
}

void expect_fit(const std::optional<GuessingRegression>& fit, const std::vector<double>& coefficients,
                const std::vector<double>& errors, double deviance) {
  ASSERT_TRUE(fit);
  for (std::size_t i = 0; i < coefficients.size(); ++i) {
    EXPECT_NEAR(fit->coefficients[i] / coefficients[i], 1, 1e-6) << i;
    EXPECT_NEAR(std::sqrt(fit->expected_covariance[i][i]) / errors[i], 1, 2e-5) << i;
  }
  EXPECT_NEAR(fit->deviance, deviance, 1e-7);
}

// PF-2: Yssaad-Fesselier and Knoblauch (2006) (data confirmed: R package psyphy), recomputed: glm with mafc.probit(4) or
// mafc.logit(4) until the deviance stands still; at its default epsilon, as usually printed, the slopes are off in the sixth
// digit.
TEST(GuessingRegressions, OfLettersSeen) {
  const auto all = fit_guessing_regression(letters("", 0), {CurveLink::probit, 0.25, 0});
  expect_fit(all,
             {-2.543243007, -12.494064703, -.0195957964, .5685705544, 2.698100634, 2.0126191376, .0084777283,
              -1.2973434302},
             {.1798672225, 1.9852875318, .0033095449, .2323179535, .1589946029, 2.179391011, .0041347403,
              .1761799278},
             58.1965190192);
  EXPECT_NEAR(all->log_likelihood, -124.377743827, 5.1e-10);
  EXPECT_EQ(all->degrees_of_freedom, 40);
  expect_fit(fit_guessing_regression(letters("DET", 20.6), {CurveLink::probit, 0.25, 0}),
             {-3.3758713, 50.5721041}, {.36983154, 5.08946745}, 3.0381263218);
  expect_fit(fit_guessing_regression(letters("ID", 41.3), {CurveLink::logit, 0.25, 0}),
             {-4.2720736, 84.5239769}, {.53044743, 9.27070123}, 1.1550944074);
}

// PF-3: Bliss (1935), beetles (data from memory; coefficients agree with textbooks), recomputed: R, glm, epsilon 1e-15.
TEST(GuessingRegressions, OfBeetles) {
  const std::vector<double> dose{1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.8610, 1.8839};
  const int of[] = {59, 60, 62, 56, 63, 59, 62, 60}, killed[] = {6, 13, 18, 28, 52, 53, 61, 60};
  std::vector<GuessingRow> rows;
  for (std::size_t i = 0; i < dose.size(); ++i) rows.push_back({{1, dose[i]}, killed[i], of[i]});
  expect_fit(fit_guessing_regression(rows, {CurveLink::logit, 0, 0}), {-60.717455, 34.270326},
             {5.180701, 2.912134}, 11.2322311);
  expect_fit(fit_guessing_regression(rows, {CurveLink::probit, 0, 0}), {-34.9352589, 19.7279342},
             {2.6479178, 1.4872350}, 10.11975811);
  expect_fit(fit_guessing_regression(rows, {CurveLink::cloglog, 0, 0}), {-39.5723106, 22.0411698},
             {3.2402726, 1.7993552}, 3.446438733);
}

// Without guesses the logit is canonical: both informations are the same.
TEST(GuessingRegressions, NameTheirInformation) {
  const std::vector<GuessingRow> rows{{{1, 0}, 3, 10}, {{1, 1}, 6, 10}, {{1, 2}, 8, 10}};
  const auto plain = fit_guessing_regression(rows, {CurveLink::logit, 0, 0}).value();
  EXPECT_NEAR(plain.expected_covariance[1][1], plain.observed_covariance[1][1], 1e-12);
  const auto guessed = fit_guessing_regression(rows, {CurveLink::logit, 0.2, 0}).value();
  EXPECT_GT(std::abs(guessed.expected_covariance[1][1] / guessed.observed_covariance[1][1] - 1), 1e-3);
}

TEST(GuessingRegressions, OfOneRowIsTheShare) {
  const auto fit =
      fit_guessing_regression(std::vector<GuessingRow>{{{1}, 9, 16}}, {CurveLink::logit, 0.5, 0}).value();
  EXPECT_NEAR(fit.coefficients[0], std::log(1 / 7.), 1e-9);
  EXPECT_NEAR(fit.deviance, 0, 1e-12);
  // With a twentieth lapsed 0.5 + 0.45 F = 9/16.
  const auto lapsed =
      fit_guessing_regression(std::vector<GuessingRow>{{{1}, 9, 16}}, {CurveLink::logit, 0.5, 0.05}).value();
  EXPECT_NEAR(lapsed.coefficients[0], std::log(.0625 / (.45 - .0625)), 1e-9);
}

TEST(GuessingRegressions, SayNothingOrRefuse) {
  EXPECT_FALSE(fit_guessing_regression(std::vector<GuessingRow>{{{1, 2}, 3, 9}, {{1, 2}, 4, 9}},
                                       {CurveLink::logit, 0, 0}));
  EXPECT_FALSE(fit_guessing_regression(std::vector<GuessingRow>{{{1}, 9, 9}}, {CurveLink::logit, 0, 0}));
  const auto refused = [](std::vector<GuessingRow> rows, GuessingModel model) {
    return refusal([&] { fit_guessing_regression(rows, model); });
  };
  EXPECT_EQ(refused({{{1}, 3, 2}}, {}), "right of row 1 must be between 0 and 2, got 3");
  EXPECT_EQ(refused({{{1}, 1, 2}, {{}, 1, 2}}, {}),
            "number of predictors of row 2 must be between 1 and 1, got 0");
  EXPECT_EQ(refused({{{1}, 0, 0}}, {}), "no trial was given: all counts are 0");
  EXPECT_EQ(refused({{{1}, 1, 2}}, {CurveLink::logit, 1, 0}), "chance must be between 0 and 0.99, got 1");
  EXPECT_EQ(refused({{{1}, 1, 2}}, {CurveLink::logit, 0.6, 0.45}),
            "chance and lapse together must be below 1");
}

}  // namespace
}  // namespace stats
