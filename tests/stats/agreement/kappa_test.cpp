#include "stats/agreement/kappa.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>

#include "stats/csv.h"
#include "stats/refusal.h"

namespace stats {
namespace {

// AG-1: Cohen, Educ. Psychol. Meas. 20 (1960) 37, table 1 as counts (memory; printed .492); standard errors
// recomputed: R vcd::Kappa, and the null formula of Fleiss, Cohen and Everitt (1969).
TEST(CohenKappa, AgreesWithCohensTable) {
  const auto kappa = cohen_kappa({{88, 10, 2}, {14, 40, 6}, {18, 10, 12}}).value();
  EXPECT_NEAR(kappa.kappa, .4915254237, 5.1e-11);
  EXPECT_DOUBLE_EQ(kappa.observed_agreement, .70);
  EXPECT_DOUBLE_EQ(kappa.expected_agreement, .41);
  EXPECT_NEAR(kappa.standard_error, .05100181558, 5.1e-12);
  EXPECT_NEAR(kappa.null_standard_error, .05197893636, 5.1e-12);
  EXPECT_NEAR(kappa.kappa / kappa.null_standard_error, 9.456242436, 5.1e-10);
  EXPECT_EQ(kappa.things, 200);
  EXPECT_NEAR(kappa.largest_kappa, .8305084746, 5.1e-11);  // printed .831
}

// AG-2: R package vcd, data SexualFun (confirmed from the package's output; recomputed). The unweighted row
// only.
TEST(CohenKappa, AgreesWithVcd) {
  const auto kappa = cohen_kappa({{7, 7, 2, 3}, {2, 8, 3, 7}, {1, 5, 4, 9}, {2, 8, 9, 14}}).value();
  EXPECT_NEAR(kappa.kappa, .1293303, 5.1e-8);
  EXPECT_NEAR(kappa.standard_error, .06859853, 5.1e-9);
}

// AG-5: Gwet's table (confirmed from a review; recomputed): high raw agreement with a kappa below 0.
TEST(CohenKappa, FallsBelowZeroWhenNearlyAllIsInOneCategory) {
  const auto kappa = cohen_kappa({{118, 5}, {2, 0}}).value();
  EXPECT_DOUBLE_EQ(kappa.observed_agreement, .944);
  EXPECT_NEAR(kappa.kappa, -.0233918129, 5.1e-11);
  EXPECT_NEAR(cohen_kappa({{95, 4}, {1, 0}}).value().kappa, -.0162601626, 5.1e-11);
}

// AG-5, degenerate tables (mathematics).
TEST(CohenKappa, IsNothingWhenAllIsInOneCategoryAndZeroWhenOneRaterHasOne) {
  EXPECT_FALSE(cohen_kappa({{10, 0}, {0, 0}}));
  EXPECT_EQ(cohen_kappa({{6, 0}, {4, 0}}).value().kappa, 0.0);
  EXPECT_EQ(cohen_kappa({{0, 10}, {0, 0}}).value().kappa, 0.0);
}

TEST(CohenKappa, IsOneForTheSameAndSymmetricInTheRaters) {
  const auto same = cohen_kappa({{7, 0, 0}, {0, 2, 0}, {0, 0, 5}}).value();
  EXPECT_EQ(same.kappa, 1.0);
  EXPECT_NEAR(same.standard_error, 0, 1e-15);
  const auto one = cohen_kappa({{5, 1, 2}, {0, 8, 3}, {4, 2, 9}}).value();
  const auto turned = cohen_kappa({{5, 0, 4}, {1, 8, 2}, {2, 3, 9}}).value();
  EXPECT_EQ(one.kappa, turned.kappa);
  EXPECT_NEAR(one.standard_error, turned.standard_error, 1e-15);
  EXPECT_NEAR(one.null_standard_error, turned.null_standard_error, 1e-15);
}

// AG-3: Fleiss, Psychol. Bull. 76 (1971) 378 (data confirmed; kappa printed .430); null standard error after
// Fleiss, Nee and Landis (1979), recomputed.
TEST(FleissKappa, AgreesWithFleissTable) {
  CountTable counts;
  for (const CsvRow& row : check_values("fleiss1971.csv"))
    counts.push_back({row.whole("Depression"), row.whole("PersonalityDisorder"), row.whole("Schizophrenia"),
                      row.whole("Neurosis"), row.whole("Other")});
  const auto kappa = fleiss_kappa(counts).value();
  EXPECT_NEAR(kappa.kappa, .4302445201, 5.1e-11);
  EXPECT_NEAR(kappa.observed_agreement, .5555555556, 5.1e-11);
  EXPECT_NEAR(kappa.expected_agreement, .2199382716, 5.1e-11);
  EXPECT_NEAR(kappa.null_standard_error, .0243739321, 5.1e-11);
}

// AG-3: per category, standard error recomputed after Fleiss, Nee and Landis (1979); kappas recomputed:
// NumPy, 1 - sum n_ij (m - n_ij) / (N m (m - 1) p_j q_j).
TEST(FleissCategoryKappas, AgreeWithFleissTable) {
  CountTable counts;
  for (const CsvRow& row : check_values("fleiss1971.csv"))
    counts.push_back({row.whole("Depression"), row.whole("PersonalityDisorder"), row.whole("Schizophrenia"),
                      row.whole("Neurosis"), row.whole("Other")});
  const auto kappas = fleiss_category_kappas(counts);
  const double expected[] = {.2447552448, .2447552448, .52, .4711272727, .5661178068};
  ASSERT_EQ(kappas.size(), 5);
  for (std::size_t j = 0; j < 5; ++j) {
    EXPECT_NEAR(kappas[j].kappa.value(), expected[j], 5.1e-11);
    EXPECT_NEAR(kappas[j].null_standard_error, .04714045208, 5.1e-12);
  }
}

TEST(FleissCategoryKappas, HaveFleissKappaAsTheirMeanWeightedByVariance) {
  const CountTable counts{{3, 1, 0, 0}, {0, 2, 2, 0}, {4, 0, 0, 0}, {1, 1, 2, 0}, {0, 4, 0, 0}};
  const double shares[] = {8. / 20, 8. / 20, 4. / 20, 0};
  double sum = 0, weights = 0;
  const auto kappas = fleiss_category_kappas(counts);
  for (std::size_t j = 0; j < 3; ++j) {
    sum += shares[j] * (1 - shares[j]) * kappas[j].kappa.value();
    weights += shares[j] * (1 - shares[j]);
  }
  EXPECT_NEAR(sum / weights, fleiss_kappa(counts).value().kappa, 1e-15);
  EXPECT_FALSE(kappas[3].kappa);
  EXPECT_FALSE(fleiss_category_kappas({{0, 3}, {0, 3}})[1].kappa);
}

// AG-3: Conger (1980), the exact kappa of these 30 subjects with each one's answers in the order of the
// categories, as package irr holds them (recomputed).
TEST(CongerKappa, AgreesWithRecomputedValue) {
  Ratings ratings;
  for (const CsvRow& row : check_values("fleiss1971.csv")) {
    auto& subject = ratings.emplace_back();
    int category = 0;
    for (const char* column : {"Depression", "PersonalityDisorder", "Schizophrenia", "Neurosis", "Other"}) {
      subject.insert(subject.end(), static_cast<std::size_t>(row.whole(column)), category);
      ++category;
    }
  }
  const auto kappa = conger_kappa(ratings).value();
  EXPECT_NEAR(kappa.kappa, .4418085403, 5.1e-11);
  EXPECT_NEAR(kappa.observed_agreement, .5555555556, 5.1e-11);
  EXPECT_NEAR(kappa.expected_agreement, .2037777778,
              5.1e-11);  // recomputed: NumPy, mean over pairs of raters
}

TEST(CongerKappa, IsCohensForTwoRatersAndNeverBelowFleiss) {
  const Ratings two{{1, 1}, {1, 2}, {2, 2}, {3, 2}, {3, 3}, {1, 3}, {1, 1}};
  const auto conger = conger_kappa(two).value();
  const auto cohen = cohen_kappa({{2, 1, 1}, {0, 1, 0}, {0, 1, 1}}).value();
  EXPECT_NEAR(conger.kappa, cohen.kappa, 1e-15);
  EXPECT_NEAR(conger.expected_agreement, cohen.expected_agreement, 1e-15);
  EXPECT_GT(conger.kappa, fleiss_kappa(count_ratings(two, std::array{1., 2., 3.})).value().kappa);
  EXPECT_FALSE(conger_kappa({{4, 4}, {4, 4}}));
  EXPECT_EQ(refusal([] {
              conger_kappa({{1, 2}, {1, std::nullopt}});
            }),
            "answers of a subject's rater must be between 1 and 1, got 0");
}

// Rows of 5 and 8, columns of 7 and 6: all six tables with these shares (mathematics).
TEST(CohenKappa, LargestIsThatOfTheBestTableWithTheseShares) {
  double best = -1;
  for (int both_first = 0; both_first <= 5; ++both_first)
    best = std::max(
        best, cohen_kappa({{both_first, 5 - both_first}, {7 - both_first, 1 + both_first}}).value().kappa);
  EXPECT_NEAR(cohen_kappa({{2, 3}, {5, 3}}).value().largest_kappa, best, 1e-15);
}

// AG-3: the textbook table of 14 raters (counts from memory; printed .210, kappa recomputed .2099307044).
TEST(FleissKappa, AgreesWithTheTextbookTable) {
  const CountTable counts{{0, 0, 0, 0, 14}, {0, 2, 6, 4, 2}, {0, 0, 3, 5, 6}, {0, 3, 9, 2, 0},
                          {2, 2, 8, 1, 1},  {7, 7, 0, 0, 0}, {3, 2, 6, 3, 0}, {2, 5, 3, 2, 2},
                          {6, 5, 2, 1, 0},  {0, 2, 2, 3, 7}};
  EXPECT_NEAR(fleiss_kappa(counts).value().kappa, .2099307044, 5.1e-11);
}

// AG-5: Scott's pi of Gwet's table (confirmed from a review; recomputed).
TEST(FleissKappa, IsScottsPiForTwoRaters) {
  EXPECT_NEAR(fleiss_kappa(by_subject({{118, 5}, {2, 0}})).value().kappa, -.0288065844, 5.1e-11);
}

TEST(FleissKappa, IsNothingWhenAllIsInOneCategory) {
  EXPECT_FALSE(fleiss_kappa({{0, 3}, {0, 3}}));
  EXPECT_DOUBLE_EQ(fleiss_kappa({{3, 0}, {0, 3}}).value().kappa, 1.0);
}

TEST(Kappa, RefusesImpossibleTables) {
  EXPECT_EQ(refusal([] {
              cohen_kappa({{1, 2}, {3, 4}, {5, 6}});
            }),
            "rows of a square table must be between 2 and 2, got 3");
  EXPECT_EQ(refusal([] {
              cohen_kappa({{1, 2}, {3}});
            }),
            "columns of a row of counts must be between 2 and 2, got 1");
  EXPECT_EQ(refusal([] { cohen_kappa({{1, 2}, {3, -4}}); }), "count must be between 0 and 1000000, got -4");
  EXPECT_EQ(refusal([] {
              cohen_kappa({{0, 0}, {0, 0}});
            }),
            "sum of counts must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] {
              fleiss_kappa({{2, 1}, {2, 2}});
            }),
            "raters of a subject must be between 3 and 3, got 4");
  EXPECT_EQ(refusal([] {
              fleiss_kappa({{1, 0}});
            }),
            "raters of a subject must be between 2 and 1000000, got 1");
  EXPECT_THROW(fleiss_kappa({}), std::domain_error);
}

}  // namespace
}  // namespace stats
