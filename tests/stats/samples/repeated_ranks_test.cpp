#include "stats/samples/repeated_ranks.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

using Rows = std::vector<std::vector<double>>;

TEST(Friedman, OfListenersWhoRankAlike) {
  const auto found = friedman(Rows{{1, 2, 3}, {4, 5, 9}, {0, 1, 2}}).value();
  EXPECT_EQ(found.rank_sums, (std::vector<double>{3, 6, 9}));
  EXPECT_DOUBLE_EQ(found.chi_square, 6);
  EXPECT_DOUBLE_EQ(found.concordance, 1);
  EXPECT_TRUE(found.test.exact);
  EXPECT_NEAR(found.test.p, 1.0 / 36, 1e-15);
}

// Rounding first base, Hollander and Wolfe (R ?friedman.test): 22 players, chi-square 11.143.
TEST(Friedman, AgreesWithHollanderAndWolfe) {
  const Rows times{{5.40, 5.50, 5.55}, {5.85, 5.70, 5.75}, {5.20, 5.60, 5.50}, {5.55, 5.50, 5.40},
                   {5.90, 5.85, 5.70}, {5.45, 5.55, 5.60}, {5.40, 5.40, 5.35}, {5.45, 5.50, 5.35},
                   {5.25, 5.15, 5.00}, {5.85, 5.80, 5.70}, {5.25, 5.20, 5.10}, {5.65, 5.55, 5.45},
                   {5.60, 5.35, 5.45}, {5.05, 5.00, 4.95}, {5.50, 5.50, 5.40}, {5.45, 5.55, 5.50},
                   {5.55, 5.55, 5.35}, {5.45, 5.50, 5.55}, {5.50, 5.45, 5.25}, {5.65, 5.60, 5.40},
                   {5.70, 5.65, 5.55}, {6.30, 6.30, 6.25}};
  const auto found = friedman(times).value();
  EXPECT_NEAR(found.chi_square, 11.143, 5.1e-4);
  EXPECT_TRUE(found.test.exact);
  EXPECT_NEAR(found.test.p, 0.003805, 2e-3);  // printed by chi-square, which is not exact
}

TEST(Friedman, AgreesWithEveryOrderForRandomTies) {
  Random random(12);
  for (int repeat = 0; repeat < 20; ++repeat) {
    Rows rows(4, std::vector<double>(3));
    for (auto& row : rows)
      for (double& value : row) value = random.below(repeat % 2 ? 3 : 50);
    const auto seen = friedman(rows);
    if (!seen) continue;
    int reaching = 0, rising = 0, all = 0;
    const auto trend = page(rows).value();
    const int orders[6][3] = {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
    for (int one = 0; one < 1296; ++one) {
      Rows arranged = rows;
      for (std::size_t i = 0, code = std::size_t(one); i < 4; ++i, code /= 6)
        for (std::size_t j = 0; j < 3; ++j) arranged[i][j] = rows[i][std::size_t(orders[code % 6][j])];
      ++all;
      reaching += friedman(arranged)->chi_square >= seen->chi_square - 1e-9;
      rising += page(arranged)->statistic >= trend.statistic;
    }
    EXPECT_TRUE(seen->test.exact);
    EXPECT_NEAR(seen->test.p, double(reaching) / all, 1e-13);
    EXPECT_NEAR(trend.test.p, double(rising) / all, 1e-13);
  }
}

TEST(Page, OfTheOrderForeseen) {
  const auto found = page(Rows{{1, 2, 3}, {4, 5, 9}, {0, 1, 2}}).value();
  EXPECT_EQ(found.statistic, 42);
  EXPECT_EQ(found.expected, 36);
  EXPECT_NEAR(found.test.p, 1.0 / 216, 1e-16);
}

/// Some answers without ties whose L is `statistic`.
Rows answers_with(int statistic, int listeners, int items, Random& random) {
  for (;;) {
    Rows rows;
    int found = 0;
    for (int i = 0; i < listeners; ++i) {
      rows.emplace_back();
      for (int j = 1; j <= items; ++j) rows.back().push_back(j);
      if (random.below(3) > 0) random.shuffle(std::span(rows.back()));
      for (int j = 1; j <= items; ++j) found += j * int(rows.back()[std::size_t(j - 1)]);
    }
    if (found == statistic) return rows;
  }
}

// Page (1963), table 2, as in every handbook (memory): critical L at 0.05, 0.01 for k items and n listeners.
TEST(Page, AgreesWithTheCriticalValues) {
  const struct {
    int items, listeners, at_five, at_one;
  } rows[] = {{3, 4, 54, 55}, {3, 10, 128, 131}, {4, 5, 137, 141}, {5, 6, 291, 299}};
  Random random(6);
  for (const auto& row : rows)
    for (const auto& [critical, level] : {std::pair(row.at_five, 0.05), std::pair(row.at_one, 0.01)}) {
      EXPECT_LE(page(answers_with(critical, row.listeners, row.items, random))->test.p, level) << critical;
      EXPECT_GT(page(answers_with(critical - 1, row.listeners, row.items, random))->test.p, level) << critical;
    }
}

TEST(RepeatedRanks, AreDrawnWhereThereIsTooMuchToCount) {
  Random random(2);
  Rows rows(20, std::vector<double>(14));
  for (auto& row : rows)
    for (double& value : row) value = double(random.below(1'000));
  EXPECT_FALSE(friedman(rows, {.draws = 99})->test.exact);
  EXPECT_FALSE(page(rows, Alternative::greater, {.draws = 99})->test.exact);
  for (auto& row : rows)
    for (std::size_t j = 0; j < row.size(); ++j) row[j] = double(j);
  EXPECT_EQ(friedman(rows, {.draws = 99})->test.p, 0.01);
  EXPECT_EQ(page(rows, Alternative::greater, {.draws = 99})->test.p, 0.01);
}

TEST(RepeatedRanks, RefuseOtherTables) {
  EXPECT_FALSE(friedman(Rows{{1, 1}, {2, 2}}));
  EXPECT_FALSE(page(Rows{{1, 1}, {2, 2}}));
  EXPECT_EQ(refusal([] { friedman({}); }), "number of listeners must be between 1 and 1000, got 0");
  EXPECT_EQ(refusal([] { friedman(Rows{{1}}); }), "number of items must be between 2 and 100, got 1");
  EXPECT_EQ(refusal([] {
              page(Rows{{1, 2}, {1}});
            }),
            "number of items of listener 2 must be between 2 and 2, got 1");
  EXPECT_EQ(refusal([] { page(Rows{{1, std::nan("")}}); }), "listener 1[1] must be a finite number, got nan");
}

}  // namespace
}  // namespace stats
