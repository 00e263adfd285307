#include "stats/association/kendall.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <numeric>

#include "stats/association/score_distribution.h"
#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

using Values = std::vector<double>;

/// P(S >= score) of n untied pairs.
double tail(int n, int score) {
  const std::vector<int> singles(static_cast<std::size_t>(n), 1);
  const auto distribution = score_distribution(singles, singles).value();
  double p = 0;
  for (std::size_t i = 0; i < distribution.probability.size(); ++i)
    if (static_cast<std::int64_t>(i) - distribution.most >= score) p += distribution.probability[i];
  return p;
}

// CO-2, recomputed by exact recursion: the smallest S that reaches each one-tailed level, with its p.
TEST(Kendall, AgreesWithTheCriticalScores) {
  for (const CsvRow& row : check_values("kendall_exact_critical.csv")) {
    const int n = row.whole("n"), most = n * (n - 1) / 2;
    const double level = row.number("alpha1");
    const std::string place = "n " + row.cells.at("n") + " level " + row.cells.at("alpha1");
    if (const auto score = row.find_whole("S")) {
      EXPECT_NEAR(tail(n, *score) / row.number("p"), 1, 1e-12) << place;
      EXPECT_LE(tail(n, *score), level) << place;
      EXPECT_GT(tail(n, *score - 2), level) << place;
    } else {
      EXPECT_GT(tail(n, most), level) << place;
    }
  }
}

// CO-3: Tuna, Hollander and Wolfe (R ?cor.test, confirmed).
TEST(Kendall, AgreesWithTuna) {
  const Values x{44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1};
  const Values y{2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8};
  const auto found = kendall(x, y, Alternative::greater).value();
  EXPECT_EQ((found.score + 36) / 2, 26);  // T, the concordant of 36 pairs
  EXPECT_NEAR(found.tau_b, .4444444444, 5.1e-11);
  EXPECT_TRUE(found.test.exact);
  EXPECT_NEAR(found.test.p, .05971947, 5.1e-9);
}

// CO-9: Zimmer, Ellermeier and Schmid (2004), magnitude against metrics (data confirmed: R package eba; recomputed).
TEST(Kendall, AgreesWithSoundsAgainstMetrics) {
  Values magnitude, sharpness, loudness, fluctuation;
  for (const CsvRow& row : check_values("envirosound_covariates.csv")) {
    magnitude.push_back(row.number("magnitude"));
    sharpness.push_back(row.number("sharpness"));
    loudness.push_back(row.number("loudness.m"));
    fluctuation.push_back(row.number("fluctuation"));
  }
  const auto found = kendall(sharpness, magnitude, Alternative::two_sided).value();
  EXPECT_NEAR(found.tau_b, .36363636, 5.1e-9);
  EXPECT_NEAR(found.test.p, .115951, 5.1e-7);
  EXPECT_NEAR(kendall(loudness, magnitude, Alternative::two_sided)->tau_b, .39393939, 5.1e-9);
  EXPECT_NEAR(kendall(fluctuation, magnitude, Alternative::two_sided)->tau_b, -.12712835, 5.1e-9);
}

// CO-8: the cloud seeding data of Hollander and Wolfe (memory; recomputed).
TEST(Kendall, AgreesWithCloudSeeding) {
  EXPECT_EQ(kendall(Values{1, 2, 3, 4, 5}, Values{1.26, 1.27, 1.12, 1.16, 1.03}, Alternative::less)->score,
            -6);
}

TEST(Kendall, AgreesWithEnumerationForRandomTies) {
  Random random(6);
  for (int repeat = 0; repeat < 200; ++repeat) {
    Values x, y;
    const std::uint32_t kinds = 2 + random.below(6);
    for (int i = 0; i < 7; ++i) {
      x.push_back(random.below(kinds));
      y.push_back(repeat % 3 == 0 ? i : random.below(4));
    }
    const auto found = kendall(x, y, Alternative::two_sided);
    if (!found) continue;
    std::vector<std::size_t> order(x.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    int greater = 0, less = 0, two_sided = 0;
    do {
      std::int64_t score = 0;
      for (std::size_t i = 0; i < x.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
          const double product = (x[i] - x[j]) * (y[order[i]] - y[order[j]]);
          score += (product > 0) - (product < 0);
        }
      greater += score >= found->score;
      less += score <= found->score;
      two_sided += std::abs(score) >= std::abs(found->score);
    } while (std::next_permutation(order.begin(), order.end()));
    EXPECT_TRUE(found->test.exact);
    EXPECT_NEAR(found->test.p, two_sided / 5040.0, 1e-13);
    EXPECT_NEAR(kendall(x, y, Alternative::greater)->test.p, greater / 5040.0, 1e-13);
    EXPECT_NEAR(kendall(x, y, Alternative::less)->test.p, less / 5040.0, 1e-13);
  }
}

// Of two grades each, P(S) is that of the count which has both: hypergeometric, here by whole numbers of choices.
TEST(Kendall, OfTwoGradesIsExactForManyPairs) {
  Values x(40), y(40);
  for (std::size_t i = 0; i < 40; ++i) {
    x[i] = i < 15;
    y[i] = i < 10 || (i >= 15 && i < 21);
  }
  const auto found = kendall(x, y, Alternative::greater).value();
  EXPECT_TRUE(found.test.exact);
  const auto choose = [](int n, int k) {
    double ways = 1;
    for (int i = 1; i <= k; ++i) ways = ways * (n - k + i) / i;
    return ways;
  };
  double p = 0;
  for (int both = 10; both <= 15; ++both) p += choose(16, both) * choose(24, 15 - both) / choose(40, 15);
  EXPECT_NEAR(found.test.p / p, 1, 1e-12);
}

// To as many pairs as the header says.
TEST(Kendall, IsExactAsFarAsItSays) {
  Random random(8);
  const auto exact = [&](int pairs, std::uint32_t x_kinds, std::uint32_t y_kinds) {
    Values x, y;
    for (int i = 0; i < pairs; ++i) {
      x.push_back(x_kinds == 0 ? i : random.below(x_kinds));
      y.push_back(y_kinds == 0 ? i : random.below(y_kinds));
    }
    return kendall(x, y, Alternative::greater, {.draws = 1})->test.exact;
  };
  EXPECT_TRUE(exact(160, 0, 0));
  EXPECT_TRUE(exact(100, 0, 5));
  for (const std::uint32_t kinds : {3u, 5u, 8u}) EXPECT_TRUE(exact(15, kinds, kinds)) << kinds;
  EXPECT_TRUE(exact(50, 2, 5));
  EXPECT_TRUE(exact(50, 2, 2));
}

TEST(Kendall, DrawsWhereThereIsTooMuchToCount) {
  Random random(2);
  Values x, y;
  for (int i = 0; i < 60; ++i) {
    x.push_back(random.below(30));
    y.push_back(random.below(30));
  }
  const auto found = kendall(x, y, Alternative::two_sided, {.seed = 3, .draws = 1'999}).value();
  EXPECT_FALSE(found.test.exact);
  EXPECT_EQ(found.test.draws, 1'999);
  EXPECT_EQ(kendall(x, x, Alternative::greater, {.seed = 3, .draws = 199})->test.p, 1.0 / 200);
  EXPECT_DOUBLE_EQ(kendall(x, x, Alternative::greater, {.seed = 3, .draws = 1})->tau_b, 1);
}

TEST(Kendall, IsNothingForConstantsAndRefusesImpossibleArguments) {
  EXPECT_FALSE(kendall(Values{1, 1, 1}, Values{1, 2, 3}, Alternative::greater));
  EXPECT_EQ(refusal([] {
              kendall(Values{1, 2}, Values{1}, Alternative::greater);
            }),
            "number of y must be between 2 and 2, got 1");
  EXPECT_EQ(
      refusal([] {
        kendall(Values{1, std::numeric_limits<double>::quiet_NaN()}, Values{1, 2}, Alternative::greater);
      }),
      "x[1] must be a finite number, got nan");
}

// The smallest p is that of some pairing: every one of them tried.
TEST(SmallestKendallP, IsThatOfTheBestPairing) {
  for (const auto& [x, y] :
       {std::pair(std::vector<double>{1, 2, 3, 4}, std::vector<double>{1, 2, 3, 4}),
        std::pair(std::vector<double>{1, 1, 2}, std::vector<double>{1, 2, 2}),
        std::pair(std::vector<double>{1, 1, 2, 3, 3}, std::vector<double>{4, 4, 4, 5, 6}),
        std::pair(std::vector<double>{1, 2, 2, 2, 3, 4}, std::vector<double>{1, 1, 2, 2, 2, 2})})
    for (const auto alternative : {Alternative::greater, Alternative::less, Alternative::two_sided}) {
      auto order = y;
      std::sort(order.begin(), order.end());
      double least = 1;
      do least = std::min(least, kendall(x, order, alternative)->test.p);
      while (std::next_permutation(order.begin(), order.end()));
      EXPECT_NEAR(smallest_attainable_kendall_p(x, y, alternative).value(), least, 1e-12);
    }
  EXPECT_FALSE(
      smallest_attainable_kendall_p(std::vector<double>{1, 1}, std::vector<double>{1, 2}, Alternative::less));
}

}  // namespace
}  // namespace stats
