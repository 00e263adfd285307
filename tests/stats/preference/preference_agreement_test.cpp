#include "stats/preference/preference_agreement.h"

#include <gtest/gtest.h>

#include "stats/csv.h"
#include "stats/refusal.h"

namespace stats {
namespace {

/// All pairs compared by `listeners`, and `wins` of each pair for the first, pair after pair.
PreferenceTable table_of(int items, int listeners, const std::vector<int>& wins) {
  const auto n = static_cast<std::size_t>(items);
  PreferenceTable table(n, std::vector<int>(n));
  for (std::size_t i = 0, pair = 0; i < n; ++i)
    for (std::size_t j = i + 1; j < n; ++j, ++pair) {
      table[i][j] = wins[pair];
      table[j][i] = listeners - wins[pair];
    }
  return table;
}

// PC-3: Kendall and Babington Smith (1940), 21 boys and 13 school subjects (data confirmed: R package eba; recomputed).
TEST(PreferenceAgreement, OfTheBoysIsThatPrinted) {
  PreferenceTable table;
  for (const CsvRow& row : check_values("kbs1940_boys.csv")) {
    table.emplace_back();
    for (const char* subject : {"wood", "gymn", "art", "sci", "hist", "geog", "arit", "reli", "lit", "comm",
                                "alge", "gram", "geom"})
      table.back().push_back(row.whole(subject));
  }
  const auto found = preference_agreement(table);
  EXPECT_EQ(found.agreements, 9718);
  EXPECT_NEAR(found.u, .1865689866, 5.1e-11);
  EXPECT_NEAR(found.chi_square.value(), 412.4321330, 5.1e-8);
  EXPECT_NEAR(found.degrees_of_freedom.value(), 90.74792244, 5.1e-9);
  EXPECT_TRUE(found.test.exact);
  EXPECT_LT(found.test.p, 1e-20);
}

// PC-3: exact tails (recomputed). The wins are any that have so many agreements.
TEST(PreferenceAgreement, HasTheExactTails) {
  const struct {
    int listeners, items;
    std::vector<int> wins;
    std::int64_t agreements;
    double p, error;
  } cases[] = {
      {3, 3, {3, 0, 3}, 9, .015625, 1e-15},
      {3, 3, {3, 3, 1}, 7, .15625, 1e-15},
      {3, 3, {3, 2, 1}, 5, .578125, 1e-15},
      {3, 4, {3, 3, 3, 0, 0, 0}, 18, .000244140625, 1e-15},
      {3, 4, {3, 3, 3, 0, 0, 1}, 16, .004638671875, 1e-15},
      {3, 4, {3, 3, 3, 0, 1, 2}, 14, .03759765625, 1e-15},
      {3, 4, {3, 3, 3, 1, 1, 2}, 12, .16943359375, 1e-15},
      {4, 3, {4, 0, 4}, 18, .001953125, 1e-15},
      {4, 3, {4, 4, 1}, 15, .025390625, 1e-15},
      {4, 3, {4, 4, 2}, 14, .04296875, 1e-15},
      {4, 3, {4, 3, 1}, 12, .13671875, 1e-15},
      {3, 5, {3, 3, 3, 3, 3, 3, 3, 3, 3, 3}, 30, 9.536743e-07, 5.1e-14},
      {3, 5, {3, 3, 3, 3, 3, 3, 1, 1, 1, 1}, 22, .01972770691, 5.1e-12},
      {3, 5, {3, 3, 3, 3, 3, 1, 1, 1, 1, 1}, 20, .07812690735, 5.1e-12},
  };
  for (const auto& one : cases) {
    const auto found = preference_agreement(table_of(one.items, one.listeners, one.wins));
    EXPECT_EQ(found.agreements, one.agreements);
    EXPECT_TRUE(found.test.exact);
    EXPECT_NEAR(found.test.p, one.p, one.error) << one.listeners << ' ' << one.items << ' ' << one.agreements;
  }
}

// PC-3: the lowest u is -1/(m - 1) of an even and -1/m of an odd number of listeners.
TEST(PreferenceAgreement, IsLowestWhereListenersAreDivided) {
  for (const int listeners : {2, 3, 4, 5, 8}) {
    const int half = listeners / 2;
    const auto found = preference_agreement(table_of(3, listeners, {half, half, half}));
    EXPECT_NEAR(found.u, found.lowest_u, 1e-15) << listeners;
    EXPECT_NEAR(found.lowest_u, -1.0 / (listeners % 2 == 0 ? listeners - 1 : listeners), 1e-15);
    EXPECT_NEAR(found.test.p, 1, 1e-12);
  }
}

TEST(PreferenceAgreement, OfTwoListenersHasNoChiSquare) {
  const auto found = preference_agreement(table_of(3, 2, {2, 2, 1}));
  EXPECT_EQ(found.chi_square, std::nullopt);
  EXPECT_DOUBLE_EQ(found.test.p, 0.5);  // two or three of three coins
}

// The number of agreements is so far from its mean that the null's tail is known to be less than one in the draws.
TEST(PreferenceAgreement, IsDrawnWhereThereIsTooMuchToCount) {
  const std::vector<int> split(32 * 31 / 2, 50);
  const auto found = preference_agreement(table_of(32, 100, split), {.seed = 1, .draws = 199});
  EXPECT_FALSE(found.test.exact);
  EXPECT_EQ(found.test.p, 1);
  const std::vector<int> one_mind(32 * 31 / 2, 100);
  EXPECT_EQ(preference_agreement(table_of(32, 100, one_mind), {.seed = 1, .draws = 199}).test.p, 1.0 / 200);
}

TEST(PreferenceAgreement, RefusesOtherTables) {
  EXPECT_EQ(refusal([] { preference_agreement(table_of(2, 1, {1})); }),
            "number of listeners must be between 2 and 1000, got 1");
  EXPECT_EQ(refusal([] { preference_agreement({{0}}); }), "number of items must be between 2 and 100, got 1");
  EXPECT_EQ(refusal([] {
              preference_agreement({{0, -1}, {3, 0}});
            }),
            "row 1, column 2 must be between 0 and 1000000, got -1");
}

}  // namespace
}  // namespace stats
