#include "stats/share/binomial.h"

#include <gtest/gtest.h>

#include <boost/multiprecision/cpp_bin_float.hpp>
#include <cmath>
#include <limits>

#include "stats/csv.h"
#include "stats/level.h"
#include "stats/refusal.h"

namespace stats {
namespace {

void expect_minimum_table(const std::string& file, double chance,
                          std::map<std::string, double> level_of_column) {
  for (const CsvRow& row : check_values(file))
    for (const auto& [column, level] : level_of_column)
      EXPECT_EQ(minimum_correct(row.whole("n"), level, chance), row.find_whole(column))
          << file << " n " << row.whole("n") << " level " << level;
}

// BIN-1. FAO sensory guide, appendix A, triangle test: critical number (minimum) of correct answers
// (confirmed).
TEST(MinimumCorrect, AgreesWithThePrintedTriangleTable) {
  expect_minimum_table("triangle_table_fao_read.csv", 1.0 / 3,
                       {{"alpha0.1", 0.1}, {"alpha0.05", 0.05}, {"alpha0.01", 0.01}, {"alpha0.001", 0.001}});
}

// BIN-2. GOST ISO 10399-2015 table A.1, identical adoption of ISO 10399:2004 (confirmed from a
// secondary copy).
TEST(MinimumCorrect, AgreesWithThePrintedDuoTrioTable) {
  expect_minimum_table("duotrio_table_iso10399_read.csv", 0.5,
                       {{"alpha0.2", 0.2},
                        {"alpha0.1", 0.1},
                        {"alpha0.05", 0.05},
                        {"alpha0.01", 0.01},
                        {"alpha0.001", 0.001}});
}

// BIN-1, BIN-2, recomputed: R k <- 0:n; min(k[pbinom(k-1, n, p0, lower.tail=FALSE) <= alpha]).
TEST(MinimumCorrect, AgreesWithTheRecomputedTables) {
  const std::map<std::string, double> columns = {
      {"a0.2", 0.2}, {"a0.1", 0.1}, {"a0.05", 0.05}, {"a0.01", 0.01}, {"a0.001", 0.001}};
  expect_minimum_table("mincorrect_guess_third.csv", 1.0 / 3, columns);
  expect_minimum_table("mincorrect_guess_half_onesided.csv", 0.5, columns);
}

// BIN-3, recomputed: R, min(1, 2 P(X >= x)) <= alpha, the rule of ISO 5495 (not read).
TEST(MinimumCorrect, AgreesWithTheRecomputedTwoSidedTable) {
  const std::map<std::string, double> columns = {
      {"alpha0.05", 0.05}, {"alpha0.01", 0.01}, {"alpha0.001", 0.001}};
  for (const CsvRow& row : check_values("mincorrect_guess_half_twosided.csv"))
    for (const auto& [column, level] : columns)
      EXPECT_EQ(minimum_correct_two_sided(row.whole("n"), level), row.find_whole(column))
          << "n " << row.whole("n") << " level " << level;
}

// Holm's first step, recomputed from the rule of BIN-2: 16 trials need 12 alone, 14 in a family of 7, 15 in
// one of 31.
TEST(MinimumCorrect, GrowsWithTheFamily) {
  EXPECT_EQ(minimum_correct(16, 0.05, 0.5), 12);
  EXPECT_EQ(minimum_correct(16, 0.05 / 7, 0.5), 14);
  EXPECT_EQ(minimum_correct(16, 0.05 / 31, 0.5), 15);
}

// The rule of the tables is "level or less": a tail of exactly the level is enough (mathematics).
TEST(MinimumCorrect, CountsATailThatEqualsTheLevel) {
  EXPECT_EQ(minimum_correct(16, 2517.0 / 65536, 0.5), 12);
  EXPECT_EQ(minimum_correct(5, 0.03125, 0.5), 5);
  EXPECT_EQ(minimum_correct(4, 1.0 / 81, 1.0 / 3), 4);
  EXPECT_EQ(minimum_correct(3, 0.001, 0.1), 3);  // though 0.1 * 0.1 * 0.1 > 0.001 in binary
  EXPECT_EQ(minimum_correct_two_sided(5, 0.0625), 5);
  EXPECT_EQ(minimum_correct(5, 0.03125 * (1 - 1e-9), 0.5), std::nullopt);
}

TEST(MinimumCorrect, IsTheSmallestThatReachesTheLevel) {
  for (int trials = 1; trials <= 60; ++trials)
    for (double chance : {0.1, 1.0 / 3, 0.5, 0.9})
      for (double level : {0.001, 0.05, 0.3, 0.999}) {
        const int smallest = minimum_correct(trials, level, chance).value_or(trials + 1);
        EXPECT_FALSE(reaches(chance_of_at_least(smallest - 1, trials, chance), level));
        if (smallest <= trials) {
          EXPECT_TRUE(reaches(chance_of_at_least(smallest, trials, chance), level));
        }
      }
}

// BIN-4, recomputed: R pbinom(x-1, n, .5, lower.tail=FALSE).
TEST(Tails, AgreeWithRecomputedValues) {
  struct Row {
    int correct, trials;
    double tail;
  };
  for (const auto& [correct, trials, tail] : {Row{5, 5, .03125},
                                              {7, 7, .0078125},
                                              {7, 8, .03515625},
                                              {8, 10, .0546875},
                                              {9, 10, .0107421875},
                                              {12, 16, 2517.0 / 65536},
                                              {13, 16, .010635375977},
                                              {14, 16, .002090454102},
                                              {14, 20, .057659149170},
                                              {15, 20, .020694732666},
                                              {18, 25, .02164262533},
                                              {60, 100, .02844396682},
                                              {61, 100, .01760010011}})
    EXPECT_NEAR(chance_of_at_least(correct, trials, 0.5), tail, 6e-12) << correct << " of " << trials;
}

// LEV-1, LEV-2: Leventhal, J. Audio Eng. Soc. 34 (1986) 437-453 (N = 15); published correspondence 1985
// (other N). Printed to 4 digits (confirmed from quotations).
TEST(Tails, AgreeWithLeventhalsErrorProbabilities) {
  for (const CsvRow& row : check_values("leventhal1986.csv")) {
    const int n = row.whole("N");
    const int r = row.whole("r");
    const std::string place = std::to_string(r) + " of " + std::to_string(n);
    if (const auto type_1 = row.find("type1")) {
      EXPECT_NEAR(chance_of_at_least(r, n, 0.5), *type_1, 5.1e-5) << place;
    }
    const std::map<std::string, double> columns = {
        {"type2_p06", 0.6}, {"type2_p07", 0.7}, {"type2_p075", 0.75}, {"type2_p08", 0.8}};
    for (const auto& [column, share] : columns)
      if (const auto type_2 = row.find(column)) {
        EXPECT_NEAR(chance_of_at_most(r - 1, n, share), *type_2, 5.1e-5) << place;
      }
  }
}

// LEV-2 and LEV-3, recomputed: R pbinom.
TEST(Tails, AgreeWithLeventhalsDesignsRecomputed) {
  EXPECT_NEAR(chance_of_at_most(11, 16, 0.6), .8334326156, 5.1e-11);
  EXPECT_NEAR(chance_of_at_least(9, 16, 0.5), .4018096924, 5.1e-11);
  EXPECT_NEAR(chance_of_at_most(8, 16, 0.6), .2839366473, 5.1e-11);
  EXPECT_NEAR(chance_of_at_least(32, 50, 0.5), .03245432354, 5.1e-12);
  EXPECT_NEAR(chance_of_at_most(31, 50, 0.6), .6643867364, 5.1e-11);
  EXPECT_EQ(minimum_correct(100, 0.05, 0.5), 59);
  EXPECT_NEAR(chance_of_at_least(59, 100, 0.5), .04431304006, 5.1e-12);
  EXPECT_NEAR(chance_of_at_most(58, 100, 0.6), .3774673239, 5.1e-11);
  EXPECT_NEAR(chance_of_at_most(11, 16, 0.7), .5500958802, 5.1e-11);
  EXPECT_NEAR(chance_of_at_most(11, 16, 0.75), .3698138248, 5.1e-11);
  EXPECT_NEAR(chance_of_at_most(11, 16, 0.8), .2017545582, 5.1e-11);
  EXPECT_NEAR(chance_of_at_most(11, 16, 0.9), .01700399828, 5.1e-12);
}

// RA-3, recomputed: R dbinom and pbinom.
TEST(Tails, AgreeForTheMiddleOfSixteen) {
  EXPECT_NEAR(chance_of_exactly(8, 16, 0.5), .1963806152, 5.1e-11);
  EXPECT_NEAR(chance_of_at_most(10, 16, 0.5) - chance_of_at_most(5, 16, 0.5), .7898864746, 5.1e-11);
}

// BIN-4: R binom.test; Mendel's 682 of 925 (Conover, ?binom.test) is confirmed, the others recomputed
// (9 of 14 and 3 of 10: scipy.stats.binomtest).
TEST(TwoSided, AgreesWithRecomputedValues) {
  EXPECT_NEAR(two_sided(12, 16, 0.5), .07681274414, 5.1e-12);
  EXPECT_NEAR(two_sided(7, 20, 0.3), .6294979667, 5.1e-11);
  EXPECT_NEAR(two_sided(682, 925, 0.75), .3824916, 5.1e-8);
  EXPECT_NEAR(two_sided(9, 14, 0.4), 0.09811052609536, 1e-13);
  EXPECT_NEAR(two_sided(3, 10, 0.6), 0.10111928319999999, 1e-13);
  EXPECT_EQ(two_sided(8, 16, 0.5), 1.0);
}

TEST(TwoSided, IsTheSameFromBothSides) {
  for (int trials : {1, 7, 20})
    for (int correct = 0; correct <= trials; ++correct) {
      EXPECT_DOUBLE_EQ(two_sided(correct, trials, 0.5), two_sided(trials - correct, trials, 0.5));
      EXPECT_NEAR(two_sided(correct, trials, 0.25), two_sided(trials - correct, trials, 0.75), 1e-14);
    }
}

TEST(Tails, OverlapInOnePoint) {
  for (int trials : {1, 2, 16, 97})
    for (double chance : {0.01, 1.0 / 3, 0.5, 0.8})
      for (int correct = 0; correct <= trials; ++correct)
        EXPECT_NEAR(chance_of_at_least(correct, trials, chance) + chance_of_at_most(correct, trials, chance),
                    1 + chance_of_exactly(correct, trials, chance), 1e-13);
}

TEST(Tails, MirrorEachOther) {
  for (int correct = 0; correct <= 33; ++correct)
    EXPECT_NEAR(chance_of_at_least(correct, 33, 0.25), chance_of_at_most(33 - correct, 33, 0.75), 1e-14);
}

TEST(Tails, AreExactAtTheEnds) {
  EXPECT_EQ(chance_of_at_least(0, 16, 0.3), 1.0);
  EXPECT_EQ(chance_of_at_most(16, 16, 0.3), 1.0);
  EXPECT_DOUBLE_EQ(chance_of_at_least(16, 16, 0.5), 1.0 / 65536);
  EXPECT_EQ(chance_of_at_least(10'000, 10'000, 0.5), 0.0);  // 2^-10000: too small for a double, as documented
}

// Mathematics as the judge: the sum of the terms in 100 digits.
TEST(Tails, HaveTwelveDigitsUpToTenThousandTrials) {
  using Exact = boost::multiprecision::cpp_bin_float_100;
  for (int trials : {16, 53, 500, 3'000, 10'000})
    for (double chance : {1.0 / 3, 0.5, 0.7}) {
      const Exact odds = Exact(chance) / (1 - Exact(chance));
      Exact term = pow(Exact(chance), trials);
      Exact tail = term;
      for (int correct = trials; correct > 0; --correct) {
        const double value = tail.convert_to<double>();
        if (value > 1e-290 && (correct % (1 + trials / 50) == 0 || trials < 60)) {
          EXPECT_NEAR(chance_of_at_least(correct, trials, chance) / value, 1.0, 1e-12)
              << correct << " of " << trials << " at " << chance;
        }
        term *= correct / (odds * (trials - correct + 1));
        tail += term;
      }
    }
}

TEST(Binomial, RefusesWithTheArgumentItsRangeAndItsValue) {
  EXPECT_EQ(refusal([] { chance_of_at_least(17, 16, 0.5); }), "correct must be between 0 and 16, got 17");
  EXPECT_EQ(refusal([] { chance_of_at_most(-1, 16, 0.5); }), "correct must be between 0 and 16, got -1");
  EXPECT_EQ(refusal([] { chance_of_exactly(0, 0, 0.5); }), "trials must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { two_sided(0, 16, 1.0); }), "chance must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { minimum_correct(16, 5, 0.5); }),
            "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
  EXPECT_EQ(refusal([] { minimum_correct(16, 0, 0.5); }), "level must be strictly between 0 and 1, got 0");
  EXPECT_EQ(refusal([] { minimum_correct_two_sided(1'000'001, 0.05); }),
            "trials must be between 1 and 1000000, got 1000001");
}

TEST(Binomial, RefusesAnImpossibleChanceAlsoWithNothingOrEverythingRight) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (double chance : {-0.5, 0.0, 1.0, 50.0, nan}) {
    EXPECT_THROW(chance_of_at_least(0, 16, chance), std::domain_error);
    EXPECT_THROW(chance_of_at_most(16, 16, chance), std::domain_error);
    EXPECT_THROW(two_sided(0, 16, chance), std::domain_error);
    EXPECT_THROW(minimum_correct(16, 0.05, chance), std::domain_error);
  }
  EXPECT_THROW(minimum_correct(16, nan, 0.5), std::domain_error);
  EXPECT_THROW(minimum_correct_two_sided(1, 1.5), std::domain_error);
}

}  // namespace
}  // namespace stats
