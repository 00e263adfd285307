#include "stats/agreement/concordance.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "stats/association/spearman.h"
#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

using Rankings = std::vector<std::vector<double>>;

Rankings rows_as_rankings(const std::string& file, const std::vector<std::string>& columns) {
  Rankings raters;
  for (const CsvRow& row : check_values(file)) {
    auto& rater = raters.emplace_back();
    for (const std::string& column : columns) rater.push_back(row.number(column));
  }
  return raters;
}

/// All orders of every rater but the first, one inside the other.
template <typename Visit>
void for_each_order(Rankings& raters, std::size_t next, const Visit& visit) {
  if (next == raters.size()) return visit(raters);
  const auto kept = raters[next];
  std::sort(raters[next].begin(), raters[next].end());
  do for_each_order(raters, next + 1, visit);
  while (std::next_permutation(raters[next].begin(), raters[next].end()));
  raters[next] = kept;
}

double rankings_by_brute_force(Rankings raters) {
  const double seen = concordance(raters).value().sum_of_squares;
  double reaching = 0, all = 0;
  for_each_order(raters, 1, [&](const Rankings& arranged) {
    reaching += concordance(arranged).value().sum_of_squares >= seen;
    ++all;
  });
  return reaching / all;
}

Rankings untied(std::size_t raters, std::size_t items) {
  std::vector<double> ranks;
  for (std::size_t item = 0; item < items; ++item) ranks.push_back(double(item + 1));
  return Rankings(raters, ranks);
}

// AG-7 (a): Siegel (1956), 3 raters of 6 (printed .16, memory; recomputed). p recomputed: plain Python, all
// 518,400 arrangements.
TEST(Concordance, AgreesWithSiegel) {
  const auto result =
      concordance(Rankings{{1, 6, 3, 2, 5, 4}, {1, 5, 6, 4, 2, 3}, {6, 3, 2, 5, 4, 1}}).value();
  EXPECT_EQ(result.sum_of_squares, 25.5);
  EXPECT_NEAR(result.w, .1619047619, 5.1e-11);
  EXPECT_TRUE(result.permutation.exact);
  EXPECT_NEAR(result.permutation.p, .836296296296, 5.1e-13);
}

// AG-7 (c): R package irr, data anxiety (data confirmed; recomputed). Uncorrected for ties W is .5019214703.
TEST(Concordance, AgreesWithIrr) {
  const auto result = concordance(Rankings{{3, 3, 3, 4, 5, 5, 2, 3, 5, 2, 2, 6, 1, 5, 2, 2, 1, 2, 4, 3},
                                           {3, 6, 4, 6, 2, 4, 2, 4, 3, 3, 2, 3, 3, 3, 2, 2, 1, 3, 3, 4},
                                           {2, 1, 4, 4, 3, 2, 1, 6, 1, 1, 1, 2, 3, 3, 1, 1, 3, 3, 2, 2}},
                                  {.seed = 1, .draws = 9'999})
                          .value();
  EXPECT_NEAR(result.w, .5396568760, 5.1e-11);
  EXPECT_NEAR(12 * result.sum_of_squares / (9 * (8000 - 20)), .5019214703, 5.1e-11);
  EXPECT_NEAR(result.chi_square, 30.76044193, 5.1e-9);
  EXPECT_EQ(result.freedom, 19);
  EXPECT_NEAR(result.chi_square_p, .04288347, 5.1e-9);
  EXPECT_FALSE(result.permutation.exact);
  EXPECT_EQ(result.permutation.draws, 9'999);
}

// AG-8: Hollander and Wolfe (1973), R's friedman.test (confirmed; recomputed).
TEST(Concordance, IsFriedmansTest) {
  const auto result =
      concordance(rows_as_rankings("rounding_times.csv", {"RoundOut", "NarrowAngle", "WideAngle"})).value();
  EXPECT_EQ(result.rank_sums, (std::vector{53., 47., 32.}));
  EXPECT_NEAR(result.chi_square, 11.14285714, 5.1e-9);
  EXPECT_EQ(result.freedom, 2);
  EXPECT_NEAR(result.chi_square_p, .003805040776, 5.1e-13);
  EXPECT_NEAR(result.w, .2532467532, 5.1e-11);
}

// AG-9 (a): Siegel (1956) (memory; recomputed): Cochran's Q is Friedman's chi-square of answers 0 and 1.
TEST(Concordance, IsCochransQ) {
  const auto result = concordance(rows_as_rankings("cochran_q_siegel.csv", {"i1", "i2", "i3"})).value();
  EXPECT_NEAR(result.chi_square, 16.66666667, 5.1e-9);
  EXPECT_NEAR(result.chi_square_p, .0002403694764, 5.1e-14);
  EXPECT_TRUE(result.permutation.exact);
  EXPECT_NEAR(result.permutation.p, .0000903204683, 5.1e-14);
}

struct ExactTail {
  Rankings raters;
  double sum_of_squares, p;
};

// Printed in Kendall's and Friedman's tables to three digits (.028, .0046, .042, .0017, .033; memory);
// recomputed: plain Python, all arrangements.
TEST(Concordance, AgreesWithTheExactTables) {
  const std::vector<ExactTail> tails = {
      {{{1, 2, 3}, {1, 2, 3}, {1, 2, 3}}, 18, .027777777778},
      {{{1, 2, 3}, {1, 2, 3}, {1, 3, 2}}, 14, .194444444444},
      {{{1, 2, 3}, {1, 2, 3}, {1, 2, 3}, {1, 2, 3}}, 32, .004629629630},
      {{{1, 2, 3}, {1, 2, 3}, {1, 2, 3}, {1, 3, 2}}, 26, .041666666667},
      {{{1, 2, 3, 4}, {1, 2, 3, 4}, {1, 2, 3, 4}}, 45, .001736111111},
      {{{1, 2, 3, 4}, {1, 2, 3, 4}, {2, 1, 4, 3}}, 37, .032986111111},
  };
  for (const auto& [raters, sum_of_squares, p] : tails) {
    const auto result = concordance(raters).value();
    EXPECT_EQ(result.sum_of_squares, sum_of_squares);
    EXPECT_NEAR(result.permutation.p, p, 5.1e-13);
  }
}

TEST(Concordance, AgreesWithBruteForce) {
  const std::vector<Rankings> cases = {
      {{1, 2, 3, 4}, {2, 1, 3, 4}},
      {{1, 1, 2, 3}, {2, 2, 2, 5}, {4, 1, 1, 9}},
      {{1, 2, 2}, {1, 1, 1}, {3, 1, 3}, {1, 2, 3}},
      {{0, 1, 1, 0}, {1, 1, 0, 0}, {0, 1, 0, 0}},
  };
  for (const auto& raters : cases) {
    const auto result = concordance(raters).value();
    EXPECT_TRUE(result.permutation.exact);
    EXPECT_NEAR(result.permutation.p, rankings_by_brute_force(raters), 1e-14);
  }
}

// True size of the chi-square approximation at 0.05, over all arrangements. Recomputed: plain Python,
// .0173611111 for three raters of four items, .0694444444 for four raters of three.
TEST(Concordance, ChiSquareHasTheSizeThatIsSaid) {
  const auto size = [](Rankings raters) {
    double reaching = 0, all = 0;
    for_each_order(raters, 1, [&](const Rankings& arranged) {
      reaching += concordance(arranged).value().chi_square_p <= 0.05;
      ++all;
    });
    return reaching / all;
  };
  EXPECT_NEAR(size(untied(3, 4)), .0173611111, 5.1e-11);
  EXPECT_NEAR(size(untied(4, 3)), .0694444444, 5.1e-11);
}

TEST(Concordance, IsSpearmansCorrelationForTwoRaters) {
  const std::vector<double> one{1, 2, 3, 4, 5, 6}, other{2, 1, 4, 6, 3, 5};
  const auto result = concordance(Rankings{one, other}).value();
  const auto correlation = spearman(one, other, Alternative::greater).value();
  EXPECT_NEAR(correlation.rho, 2 * result.w - 1, 1e-15);
  EXPECT_NEAR(correlation.test.p, result.permutation.p, 1e-14);
}

// Two raters of eleven items: drawn here, counted by Spearman's test.
TEST(Concordance, DrawnLiesWithinItsErrorOfTheExact) {
  const MonteCarlo monte_carlo{.seed = 1, .draws = 9'999};
  const Rankings raters{{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}, {3, 1, 7, 6, 10, 11, 5, 4, 8, 9, 2}};
  const auto drawn = concordance(raters, monte_carlo).value().permutation;
  const auto counted = spearman(raters[0], raters[1], Alternative::greater).value().test;
  ASSERT_FALSE(drawn.exact);
  ASSERT_TRUE(counted.exact);
  EXPECT_NEAR(drawn.p, counted.p, 4 * drawn.standard_error);
  EXPECT_EQ(drawn.p, concordance(raters, monte_carlo).value().permutation.p);
  EXPECT_NE(drawn.p, concordance(raters, {.seed = 2, .draws = 9'999}).value().permutation.p);
}

TEST(Concordance, AtTheEdges) {
  const auto same = concordance(untied(5, 4)).value();
  EXPECT_EQ(same.w, 1);
  EXPECT_NEAR(same.permutation.p, std::pow(24., -4), 1e-18);
  const auto opposite = concordance(Rankings{{1, 2, 3}, {3, 2, 1}}).value();
  EXPECT_EQ(opposite.w, 0);
  EXPECT_EQ(opposite.chi_square_p, 1);
  EXPECT_EQ(opposite.permutation.p, 1);
  EXPECT_FALSE(concordance(Rankings{{1, 1, 1}, {2, 2, 2}}));
}

TEST(Concordance, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] {
              concordance(Rankings{{1, 2}});
            }),
            "number of raters must be between 2 and 1000, got 1");
  EXPECT_EQ(refusal([] {
              concordance(Rankings{{1}, {1}});
            }),
            "number of items must be between 2 and 1000, got 1");
  EXPECT_EQ(refusal([] {
              concordance(Rankings{{1, 2}, {1, 2, 3}});
            }),
            "values of a rater must be between 2 and 2, got 3");
  EXPECT_EQ(refusal([] {
              concordance(Rankings{{1, 2}, {1, std::numeric_limits<double>::infinity()}});
            }),
            "values[1] must be a finite number, got inf");
  EXPECT_EQ(refusal([] { concordance(untied(2, 3), {.draws = 0}); }),
            "draws must be between 1 and 100000000, got 0");
}

}  // namespace
}  // namespace stats
