#include "stats/agreement/kappa.h"

#include <gtest/gtest.h>

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

// AG-3: the textbook table of 14 raters (counts from memory; printed .210, kappa recomputed .2099307044).
TEST(FleissKappa, AgreesWithTheTextbookTable) {
  const CountTable counts{{0, 0, 0, 0, 14}, {0, 2, 6, 4, 2}, {0, 0, 3, 5, 6}, {0, 3, 9, 2, 0},
                          {2, 2, 8, 1, 1},  {7, 7, 0, 0, 0}, {3, 2, 6, 3, 0}, {2, 5, 3, 2, 2},
                          {6, 5, 2, 1, 0},  {0, 2, 2, 3, 7}};
  EXPECT_NEAR(fleiss_kappa(counts).value().kappa, .2099307044, 5.1e-11);
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
