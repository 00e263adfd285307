#include "stats/agreement/gwet.h"

#include <gtest/gtest.h>

#include "stats/agreement/kappa.h"
#include "stats/csv.h"
#include "stats/refusal.h"

namespace stats {
namespace {

CountTable counts_of_columns(const std::string& file, const std::vector<std::string>& columns) {
  CountTable counts;
  for (const CsvRow& row : check_values(file)) {
    auto& subject = counts.emplace_back();
    for (const std::string& column : columns) subject.push_back(row.whole(column));
  }
  return counts;
}

/// Krippendorff's 12 units, 4 observers, categories 1 to 5.
CountTable counts_of_four_observers() {
  CountTable counts(12, std::vector<int>(5));
  for (const CsvRow& row : check_values("krippendorff2011.csv"))
    for (std::size_t unit = 0; unit < 12; ++unit)
      if (const auto category = row.find_whole("u" + std::to_string(unit + 1)))
        ++counts[unit][static_cast<std::size_t>(*category - 1)];
  return counts;
}

// AG-5: Gwet (2008) (confirmed from a review; recomputed). Standard errors recomputed: NumPy, the formula of
// the paper's section 5 with n - 1.
TEST(GwetAc1, AgreesWithGwetsTables) {
  const auto gwet = gwet_ac1(by_subject({{118, 5}, {2, 0}})).value();
  EXPECT_NEAR(gwet.coefficient, .9407763376, 5.1e-11);
  EXPECT_NEAR(gwet.observed_agreement, .944, 1e-14);
  EXPECT_NEAR(gwet.expected_agreement, .054432, 1e-14);
  EXPECT_NEAR(gwet.standard_error.value(), .0230569643, 5.1e-11);
  EXPECT_EQ(gwet.subjects, 125);
  EXPECT_NEAR(gwet_ac1(by_subject({{95, 4}, {1, 0}})).value().coefficient, .9474375821, 5.1e-11);
}

// AG-3: Fleiss (1971) (recomputed); standard error recomputed as above.
TEST(GwetAc1, AgreesWithFleissTable) {
  const auto gwet = gwet_ac1(counts_of_columns("fleiss1971.csv", {"Depression", "PersonalityDisorder",
                                                                  "Schizophrenia", "Neurosis", "Other"}))
                        .value();
  EXPECT_NEAR(gwet.coefficient, .4478845158, 5.1e-11);
  EXPECT_NEAR(gwet.standard_error.value(), .0556621417, 5.1e-11);
}

// R package irrCAC, its own output on these answers with some missing: .77544, standard error .14295
// (memory); digits and AC2 recomputed: NumPy.
TEST(GwetAc1, AgreesWithIrrCacWhereAnswersAreMissing) {
  const auto counts = counts_of_four_observers();
  const auto gwet = gwet_ac1(counts).value();
  EXPECT_NEAR(gwet.coefficient, .7754440681, 5.1e-11);
  EXPECT_NEAR(gwet.standard_error.value(), .1429499506, 5.1e-11);
  EXPECT_NEAR(gwet.observed_agreement, .8181818182, 5.1e-11);
  EXPECT_EQ(gwet.subjects, 12);
  const auto quadratic = gwet_ac2(counts, quadratic_weights(5)).value();
  EXPECT_NEAR(quadratic.coefficient, .9140007236, 5.1e-11);
  EXPECT_NEAR(quadratic.standard_error.value(), .1039622446, 5.1e-11);
  const auto linear = gwet_ac2(counts, linear_weights(5)).value();
  EXPECT_NEAR(linear.coefficient, .8587391364, 5.1e-11);
  EXPECT_NEAR(linear.standard_error.value(), .1173290219, 5.1e-11);
}

// irrCAC's table of 3 categories, two raters; recomputed: NumPy.
TEST(GwetAc2, AgreesWithRecomputedValuesForTwoRaters) {
  const auto counts = by_subject({{13, 0, 0}, {0, 20, 7}, {0, 4, 56}});
  EXPECT_NEAR(gwet_ac1(counts).value().coefficient, .8493305482, 5.1e-11);
  EXPECT_NEAR(gwet_ac1(counts).value().standard_error.value(), .0434351891, 5.1e-11);
  EXPECT_NEAR(gwet_ac2(counts, quadratic_weights(3)).value().coefficient, .9402368793, 5.1e-11);
  EXPECT_NEAR(gwet_ac2(counts, quadratic_weights(3)).value().standard_error.value(), .0180104671, 5.1e-11);
}

TEST(GwetAc2, IsAc1WithIdentityWeights) {
  const auto counts = counts_of_four_observers();
  EXPECT_EQ(gwet_ac2(counts, identity_weights(5)).value().coefficient, gwet_ac1(counts).value().coefficient);
}

// AG-5, degenerate table: kappa is 0/0, AC1 is 1.
TEST(GwetAc1, IsOneWhenAllIsInOneCategory) {
  const auto gwet = gwet_ac1(by_subject({{10, 0}, {0, 0}})).value();
  EXPECT_EQ(gwet.coefficient, 1);
  EXPECT_EQ(gwet.standard_error.value(), 0);
}

TEST(GwetAc1, LeavesOutSubjectsWithoutAnswersAndNeedsAPair) {
  const auto with = gwet_ac1({{2, 1}, {0, 0}, {0, 3}}).value();
  const auto without = gwet_ac1({{2, 1}, {0, 3}}).value();
  EXPECT_EQ(with.coefficient, without.coefficient);
  EXPECT_EQ(with.standard_error, without.standard_error);
  EXPECT_EQ(with.subjects, 2);
  EXPECT_FALSE(gwet_ac1({{1, 0}, {0, 1}}));
  EXPECT_FALSE(gwet_ac1({{2, 0}}).value().standard_error);
  EXPECT_FALSE(gwet_ac2({{1, 1}}, {{1, 1}, {1, 1}}));
}

TEST(GwetAc1, RefusesImpossibleTables) {
  EXPECT_EQ(refusal([] { gwet_ac1({{1}}); }), "columns of counts must be between 2 and 1000, got 1");
  EXPECT_EQ(refusal([] { gwet_ac1({{1, -1}}); }), "count must be between 0 and 1000000, got -1");
  EXPECT_EQ(refusal([] { gwet_ac1({{0, 0}}); }), "sum of counts must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] {
              gwet_ac2({{1, 1}}, identity_weights(3));
            }),
            "rows of weights must be between 2 and 2, got 3");
  EXPECT_THROW(gwet_ac1({}), std::domain_error);
}

TEST(BySubject, WritesEveryPairOfAnswersAsARow) {
  EXPECT_EQ(by_subject({{1, 2}, {0, 0}}), (CountTable{{2, 0}, {1, 1}, {1, 1}}));
  EXPECT_EQ(refusal([] { by_subject({{1, 2}}); }), "rows of a square table must be between 2 and 2, got 1");
}

}  // namespace
}  // namespace stats
