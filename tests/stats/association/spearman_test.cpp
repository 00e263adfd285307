#include "stats/association/spearman.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <set>

#include "stats/association/drawn_pairings.h"
#include "stats/association/ranks.h"
#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

using Values = std::vector<double>;

Values first_numbers(int n) {
  Values values(static_cast<std::size_t>(n));
  std::iota(values.begin(), values.end(), 1.0);
  return values;
}

TEST(DoubledMidranks, ShareTheMeanRankOfTies) {
  EXPECT_EQ(doubled_midranks(Values{10, 30, 10}), (std::vector<std::int64_t>{3, 6, 3}));
  EXPECT_EQ(doubled_midranks(Values{2, 2, 2, 2}), (std::vector<std::int64_t>{5, 5, 5, 5}));
  EXPECT_EQ(doubled_midranks(Values{0.5, -1, 7}), (std::vector<std::int64_t>{4, 2, 6}));
  EXPECT_TRUE(doubled_midranks({}).empty());
}

// CO-1, recomputed by enumeration: counts of pairings by S = sum d^2 = 0, 2, ..., from rho 1 down to -1.
TEST(PairingSums, AgreeWithTheCountsOfSmallN) {
  const std::vector<std::vector<double>> counts = {
      {1, 3, 1, 4, 2, 2, 2, 4, 1, 3, 1},
      {1, 4, 3, 6, 7, 6, 4, 10, 6, 10, 6, 10, 6, 10, 4, 6, 7, 6, 3, 4, 1},
      {1,  5,  6,  9,  16, 12, 14, 24, 20, 21, 23, 28, 24, 34, 20, 32, 42, 29,
       29, 42, 32, 20, 34, 24, 28, 23, 21, 20, 24, 14, 12, 16, 9,  6,  5,  1}};
  for (int n = 4; n <= 6; ++n) {
    std::vector<std::int64_t> ranks(static_cast<std::size_t>(n));
    std::iota(ranks.begin(), ranks.end(), std::int64_t{1});
    std::vector<double> found;
    const PairingSums sums(ranks, ranks);
    for (const auto& point : sums.points()) found.push_back(point.pairings);
    std::reverse(found.begin(), found.end());
    EXPECT_EQ(found, counts[static_cast<std::size_t>(n - 4)]);
  }
}

// CO-1, recomputed by enumeration; the tables of Zar and Ramsey agree (memory). Level one-tailed, so twice
// that here.
TEST(SmallestSignificantRho, AgreesWithTheCriticalValues) {
  for (const CsvRow& row : check_values("spearman_exact_critical.csv")) {
    const auto smallest = smallest_significant_rho(row.whole("n"), 2 * row.number("alpha1"));
    const std::string place = "n " + row.cells.at("n") + " level " + row.cells.at("alpha1");
    const auto rho = row.find("rho");
    ASSERT_EQ(smallest.has_value(), rho.has_value()) << place;
    if (!rho) continue;
    EXPECT_TRUE(smallest->exact);
    EXPECT_NEAR(smallest->rho, *rho, 1e-14) << place;
  }
}

/// p of a list whose ranks have the sum of squared differences S against 1 to n.
double p_at_critical_value(int n, double rho) {
  std::vector<std::int64_t> ranks(static_cast<std::size_t>(n));
  std::iota(ranks.begin(), ranks.end(), std::int64_t{1});
  const auto variance = rank_moments(ranks, ranks).x_variance;
  const auto covariance = static_cast<std::int64_t>(std::llround(rho * double(variance)));
  return PairingSums(ranks, ranks).share(covariance, Alternative::greater);
}

TEST(PairingSums, AgreeWithThePOfTheCriticalValues) {
  for (const CsvRow& row : check_values("spearman_exact_critical.csv"))
    if (const auto p = row.find("p")) {
      EXPECT_NEAR(p_at_critical_value(row.whole("n"), row.number("rho")), *p, 1e-14) << row.whole("n");
    }
}

// Recomputed from CO-1: 7 comparisons need .786 alone and .964 at the first of ten Holm steps; 4 comparisons
// can reach no smaller two-sided p than .083.
TEST(SmallestSignificantRho, SaysWhatAFamilyCanReach) {
  EXPECT_NEAR(smallest_significant_rho(7, 0.05).value().rho, .786, 5e-4);
  EXPECT_NEAR(smallest_significant_rho(7, 0.05 / 10).value().rho, .964, 5e-4);
  EXPECT_EQ(smallest_significant_rho(4, 0.05), std::nullopt);
  EXPECT_NEAR(smallest_attainable_p(first_numbers(4), first_numbers(4), Alternative::two_sided).value(), .083,
              5e-4);
}

// Recomputed: scipy, rho^2 = 1 - betaincinv((n - 2)/2, 1/2, .05), the square of t/sqrt(n - 2 + t^2).
// (scipy.stats.t.ppf differs from it in the twelfth digit.)
TEST(SmallestSignificantRho, IsApproximateForMorePairsAndSaysSo) {
  EXPECT_FALSE(smallest_significant_rho(13, 0.05).value().exact);
  EXPECT_NEAR(smallest_significant_rho(13, 0.05).value().rho, 0.5529426594945895, 1e-14);
  EXPECT_NEAR(smallest_significant_rho(31, 0.05).value().rho, 0.35504588917776797, 1e-14);
}

// CO-3: Tuna, Hollander and Wolfe (R ?cor.test, confirmed).
TEST(Spearman, AgreesWithTuna) {
  const Values x{44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1};
  const Values y{2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8};
  const auto found = spearman(x, y, Alternative::two_sided).value();
  EXPECT_DOUBLE_EQ(found.rho, .6);
  EXPECT_TRUE(found.test.exact);
  EXPECT_NEAR(found.test.p, .09679784, 5.1e-9);
}

// CO-9: Zimmer, Ellermeier and Schmid (2004), magnitude against metrics (data confirmed: R package eba;
// recomputed).
TEST(Spearman, AgreesWithSoundsAgainstMetrics) {
  Values magnitude, sharpness, loudness, fluctuation;
  for (const CsvRow& row : check_values("envirosound_covariates.csv")) {
    magnitude.push_back(row.number("magnitude"));
    sharpness.push_back(row.number("sharpness"));
    loudness.push_back(row.number("loudness.m"));
    fluctuation.push_back(row.number("fluctuation"));
  }
  const auto with_loudness = spearman(loudness, magnitude, Alternative::two_sided).value();
  EXPECT_NEAR(with_loudness.rho, .52447552, 5.1e-9);
  EXPECT_TRUE(with_loudness.test.exact);
  EXPECT_NEAR(with_loudness.test.p, .0839386967, 5.1e-11);
  EXPECT_NEAR(spearman(sharpness, magnitude, Alternative::two_sided).value().rho, .46153846, 5.1e-9);
  EXPECT_NEAR(spearman(fluctuation, magnitude, Alternative::two_sided).value().rho, -.20643838, 5.1e-9);
}

// Recomputed: Python itertools.permutations over scipy.stats.rankdata.
TEST(Spearman, AgreesWithEnumerationWithTies) {
  const Values x{1, 2, 2, 3, 5, 5, 5, 8};
  const Values y{2, 1, 4, 4, 6, 7, 7, 3};
  const auto greater = spearman(x, y, Alternative::greater).value();
  EXPECT_NEAR(greater.rho, 0.5404665063240887, 1e-14);
  EXPECT_EQ(greater.test.p, 3420.0 / 40320);
  EXPECT_EQ(spearman(x, y, Alternative::less).value().test.p, 37116.0 / 40320);
  EXPECT_EQ(spearman(x, y, Alternative::two_sided).value().test.p, 6816.0 / 40320);
}

TEST(Spearman, AgreesWithEnumerationForRandomTies) {
  Random random(5);
  for (int repeat = 0; repeat < 40; ++repeat) {
    Values x, y;
    for (int i = 0; i < 6; ++i) {
      x.push_back(random.below(5));
      y.push_back(random.below(4));
    }
    const auto found = spearman(x, y, Alternative::two_sided);
    const auto x_ranks = doubled_midranks(x);
    auto y_ranks = doubled_midranks(y);
    const auto seen = rank_moments(x_ranks, y_ranks).covariance;
    ASSERT_EQ(found.has_value(),
              std::set(x.begin(), x.end()).size() > 1 && std::set(y.begin(), y.end()).size() > 1);
    if (!found) continue;
    std::vector<std::size_t> order(6);
    std::iota(order.begin(), order.end(), std::size_t{0});
    int greater = 0, less = 0, two_sided = 0;
    std::int64_t highest = 0;
    std::map<std::int64_t, int> counts;
    do {
      std::vector<std::int64_t> arranged;
      for (std::size_t place : order) arranged.push_back(y_ranks[place]);
      const auto covariance = rank_moments(x_ranks, arranged).covariance;
      ++counts[covariance];
      highest = std::max(highest, std::abs(covariance));
      greater += covariance >= seen;
      less += covariance <= seen;
      two_sided += std::abs(covariance) >= std::abs(seen);
    } while (std::next_permutation(order.begin(), order.end()));
    EXPECT_EQ(found->test.p, two_sided / 720.0);
    EXPECT_EQ(spearman(x, y, Alternative::greater)->test.p, greater / 720.0);
    EXPECT_EQ(spearman(x, y, Alternative::less)->test.p, less / 720.0);
    EXPECT_NEAR(*smallest_attainable_p(x, y, Alternative::greater), counts.rbegin()->second / 720.0, 1e-14);
    EXPECT_NEAR(*smallest_attainable_p(x, y, Alternative::less), counts.begin()->second / 720.0, 1e-14);
    EXPECT_NEAR(*smallest_attainable_p(x, y, Alternative::two_sided),
                (counts[highest] + counts[-highest]) / 720.0, 1e-14);
  }
}

TEST(Spearman, TurnsWithTheSign) {
  const Values x{3, 1, 4, 1, 5, 9, 2};
  const Values y{2, 7, 1, 8, 2, 8, 1};
  Values minus;
  for (double value : y) minus.push_back(-value);
  const auto one = spearman(x, y, Alternative::greater).value();
  const auto other = spearman(x, minus, Alternative::less).value();
  EXPECT_DOUBLE_EQ(one.rho, -other.rho);
  EXPECT_EQ(one.test.p, other.test.p);
}

TEST(Spearman, DrawsBeyondTwelvePairs) {
  const Values x = first_numbers(13);
  EXPECT_TRUE(spearman(first_numbers(12), first_numbers(12), Alternative::greater)->test.exact);
  const auto found = spearman(x, x, Alternative::greater, {.seed = 9, .draws = 1'999}).value();
  EXPECT_FALSE(found.test.exact);
  EXPECT_EQ(found.test.draws, 1'999);
  EXPECT_EQ(found.test.p, 1.0 / 2'000);
  EXPECT_NEAR(found.test.standard_error, std::sqrt(found.test.p * (1 - found.test.p) / 1'999), 1e-15);
}

// The t approximation is good for this many untied pairs, and independent of the drawing.
TEST(Spearman, DrawnAgreesWithTheCriticalValueOfManyPairs) {
  const Values x = first_numbers(30);
  Values y = x;
  Random random(8);
  std::optional<RankCorrelation> found;
  do {
    random.shuffle(std::span(y));
    found = spearman(x, y, Alternative::two_sided, {.seed = 2, .draws = 99});
  } while (std::abs(found->rho - smallest_significant_rho(30, 0.1)->rho) > 0.002);
  EXPECT_NEAR(spearman(x, y, Alternative::two_sided)->test.p, 0.1, 0.005);
}

TEST(Spearman, DrawnIsTheSameForEveryNumberOfThreads) {
  Values x = first_numbers(40), y = x;
  Random random(3);
  random.shuffle(std::span(y));
  const auto one = spearman(x, y, Alternative::less, {.seed = 5, .draws = 30'001});
  for (const int threads : {2, 3, 16})
    EXPECT_EQ(spearman(x, y, Alternative::less, {.seed = 5, .draws = 30'001}, threads)->test.p, one->test.p);
  EXPECT_EQ(refusal([&] { spearman(x, y, Alternative::less, {}, 0); }),
            "threads must be between 1 and 256, got 0");
}

// Pairings drawn of few pairs are as often against the null as those counted; of the most pairs there is no overflow.
TEST(DrawnPairings, ComeAsOftenAsThoseCounted) {
  for (const std::vector<std::int64_t>& y : {std::vector<std::int64_t>{2, 4, 6, 8, 10}, {3, 3, 7, 7, 10}}) {
    const std::vector<std::int64_t> x{4, 4, 4, 9, 9};
    const PairingSums sums(x, y);
    for (const auto& point : sums.points())
      for (const auto alternative : {Alternative::greater, Alternative::less, Alternative::two_sided}) {
        const double share = sums.share(point.covariance, alternative);
        const auto drawn =
            drawn_pairings_against(x, y, point.covariance, alternative, {.seed = 7, .draws = 100'000}, 2);
        EXPECT_NEAR(double(drawn) / 1e5, share, 4.5 * std::sqrt(share * (1 - share) / 1e5))
            << point.covariance;
      }
  }
}

TEST(DrawnPairings, OfTheMostPairsDoNotOverflow) {
  const Values x = first_numbers(10'000);
  EXPECT_EQ(spearman(x, x, Alternative::greater, {.seed = 1, .draws = 9})->test.p, 0.1);
  EXPECT_EQ(spearman(x, x, Alternative::less, {.seed = 1, .draws = 9})->test.p, 1);
}

// Every order of five is drawn equally often: chi-square with 119 degrees of freedom, below 188.9 but once in 20,000.
TEST(DrawnPairings, AreEveryOrderEquallyOften) {
  const std::vector<std::int64_t> places{1, 100, 10'000, 20'000, 3}, y{2, 5, 11, 23, 47};
  const PairingSums sums(places, y);
  const double orders = 120, draws = 120'000;
  double chi_square = 0;
  for (const auto& point : sums.points()) {
    const auto at_least = [&](std::int64_t covariance) {
      return double(drawn_pairings_against(places, y, covariance, Alternative::greater,
                                           {.seed = 2, .draws = 120'000}, 1));
    };
    const double expected = point.pairings * draws / orders;
    const double seen = at_least(point.covariance) - at_least(point.covariance + 1);
    chi_square += (seen - expected) * (seen - expected) / expected;
  }
  EXPECT_GT(sums.points().size(), 100u);
  EXPECT_LT(chi_square, 188.9);
}

TEST(Spearman, IsNothingForConstants) {
  EXPECT_EQ(spearman(Values{1, 1, 1}, Values{1, 2, 3}, Alternative::greater).has_value(), false);
  EXPECT_EQ(smallest_attainable_p(Values{1, 2, 3}, Values{2, 2, 2}, Alternative::greater), std::nullopt);
}

TEST(Spearman, RefusesImpossibleArguments) {
  const double infinity = std::numeric_limits<double>::infinity();
  EXPECT_EQ(refusal([] {
              spearman(Values{1, 2}, Values{1}, Alternative::greater);
            }),
            "number of y must be between 2 and 2, got 1");
  EXPECT_EQ(refusal([] { spearman(Values{1}, Values{1}, Alternative::greater); }),
            "number of x must be between 2 and 10000, got 1");
  EXPECT_EQ(refusal([=] {
              spearman(Values{1, infinity}, Values{1, 2}, Alternative::greater);
            }),
            "x[1] must be a finite number, got inf");
  EXPECT_EQ(refusal([] {
              spearman(Values{1, 2}, Values{1, 2}, Alternative::less, {.draws = -1});
            }),
            "draws must be between 1 and 100000000, got -1");
  EXPECT_EQ(refusal([] { smallest_significant_rho(1, 0.05); }), "n must be between 2 and 10000, got 1");
  EXPECT_EQ(refusal([] { smallest_significant_rho(31, 5); }),
            "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
}

}  // namespace
}  // namespace stats
