#include "stats/preference/circular_triads.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

PreferenceTable by_ranking(int items) {
  const auto n = static_cast<std::size_t>(items);
  PreferenceTable table(n, std::vector<int>(n));
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 1; j < n; ++j) table[i][j] = 1;
  return table;
}

void turn(PreferenceTable& table, std::size_t i, std::size_t j) { std::swap(table[i][j], table[j][i]); }

PreferenceTable guessed(Random& random, int items) {
  PreferenceTable table = by_ranking(items);
  for (std::size_t i = 0; i < table.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (random.below(2) == 1) turn(table, i, j);
  return table;
}

// PC-1: numbers of tournaments by circular triads, recomputed by dynamic programming and confirmed by the table in R's
// package eba; the tails are sums of them.
TEST(CircularTriads, ByChanceAreTheTournamentsCounted) {
  std::map<int, std::vector<double>> all;
  for (const CsvRow& row : check_values("circular_triads.csv")) {
    const int n = row.whole("n");
    if (n > kExactTournament) continue;
    if (!all.contains(n)) all[n] = circular_triads_by_chance(n);
    const auto d = static_cast<std::size_t>(row.whole("d"));
    ASSERT_LT(d, all[n].size());
    const double tournaments = std::ldexp(1.0, n * (n - 1) / 2);
    if (const auto count = row.find("count")) {
      EXPECT_NEAR(all[n][d] * tournaments / *count, 1, 1e-13) << n << ' ' << d;
    }
    double at_most = 0;
    for (std::size_t i = 0; i <= d; ++i) at_most += all[n][i];
    if (const auto p = row.find("P_le")) {
      EXPECT_NEAR(at_most / *p, 1, 1e-12) << n << ' ' << d;
    }
    if (const auto zeta = row.find("zeta")) {
      EXPECT_NEAR(1 - double(d) / double(all[n].size() - 1), *zeta, 1e-12) << n << ' ' << d;
    }
  }
  EXPECT_GE(all.size(), 5u);
}

// PC-1: mean C(n,3)/4 and variance 3 C(n,3)/16.
TEST(CircularTriads, ByChanceHaveTheKnownMeanAndVariance) {
  for (int n = 3; n <= kExactTournament; ++n) {
    const auto by_chance = circular_triads_by_chance(n);
    const double triads = n * (n - 1) * (n - 2) / 6.0;
    double mean = 0, squares = 0;
    for (std::size_t d = 0; d < by_chance.size(); ++d) {
      mean += by_chance[d] * double(d);
      squares += by_chance[d] * double(d) * double(d);
    }
    EXPECT_NEAR(mean, triads / 4, 1e-11) << n;
    EXPECT_NEAR(squares - mean * mean, 3 * triads / 16, 1e-9) << n;
  }
}

TEST(CircularTriads, OfARankingAreNone) {
  const auto found = circular_triads(by_ranking(4));
  EXPECT_EQ(found.triads, 0);
  EXPECT_EQ(found.zeta, 1);
  EXPECT_TRUE(found.test.exact);
  EXPECT_DOUBLE_EQ(found.test.p, 0.375);
}

/// Triads counted one by one.
int counted(const PreferenceTable& table) {
  int triads = 0;
  for (std::size_t i = 0; i < table.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      for (std::size_t k = 0; k < j; ++k) triads += table[i][j] == table[j][k] && table[j][k] == table[k][i];
  return triads;
}

TEST(CircularTriads, AreThoseCountedOneByOne) {
  Random random(3);
  for (int items = 3; items <= 20; ++items) {
    const PreferenceTable table = guessed(random, items);
    const auto found = circular_triads(table, {.seed = 1, .draws = 9});
    EXPECT_EQ(found.triads, counted(table));
    EXPECT_LE(found.triads, found.most);
  }
}

// The worst tournament of 7: each item is preferred to the next three.
TEST(CircularTriads, AreAtMostSoMany) {
  PreferenceTable table(7, std::vector<int>(7));
  for (std::size_t i = 0; i < 7; ++i)
    for (std::size_t step = 1; step <= 3; ++step) table[i][(i + step) % 7] = 1;
  const auto found = circular_triads(table);
  EXPECT_EQ(found.triads, 14);
  EXPECT_EQ(found.most, 14);
  EXPECT_EQ(found.zeta, 0);
  EXPECT_DOUBLE_EQ(found.test.p, 1);
}

// P(at most 60 circular triads of 13 items) recomputed: whole numbers in Python, as tests/reference/preference.py.
TEST(CircularTriads, AreDrawnForMoreItems) {
  Random random(4);
  PreferenceTable table = guessed(random, 13);
  while (counted(table) != 60) table = guessed(random, 13);
  const auto found = circular_triads(table);
  EXPECT_FALSE(found.test.exact);
  EXPECT_NEAR(found.test.p, 0.07979732006531132, 4 * found.test.standard_error);
  EXPECT_EQ(found.test.draws, 99'999);
}

TEST(CircularTriads, RefuseOtherTables) {
  EXPECT_EQ(refusal([] { circular_triads(by_ranking(2)); }),
            "number of items must be between 3 and 100, got 2");
  PreferenceTable table = by_ranking(3);
  table[0][1] = 0;
  EXPECT_EQ(refusal([&] { circular_triads(table); }),
            "every pair must be compared equally often without ties: items 1 and 2 were 0 times, items 1 and "
            "3 1 times");
  table = {{0, 2, 1}, {1, 0, 2}, {2, 1, 0}};
  EXPECT_EQ(refusal([&] { circular_triads(table); }),
            "comparisons of each pair must be between 1 and 1, got 3");
  table[1][1] = 1;
  EXPECT_EQ(refusal([&] { circular_triads(table); }), "row 2, column 2 must be between 0 and 0, got 1");
  table[1].pop_back();
  EXPECT_EQ(refusal([&] { circular_triads(table); }),
            "number of columns of row 2 must be between 3 and 3, got 2");
  EXPECT_EQ(refusal([] { circular_triads(by_ranking(3), {.draws = 0}); }),
            "draws must be between 1 and 100000000, got 0");
}

}  // namespace
}  // namespace stats
