#include "stats/blinding/blinding_index.h"

#include <gtest/gtest.h>

#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "stats/csv.h"
#include "stats/refusal.h"

namespace stats {
namespace {

/// Guesses by what was given: of the treatment arm, of the placebo arm.
std::pair<Guesses, Guesses> guesses_of(const std::string& study) {
  std::pair<Guesses, Guesses> arms{};
  for (const CsvRow& row : check_values("blinding.csv")) {
    if (row.cells.at("study") != study) continue;
    const auto place = [&](Guesses& arm) -> int& {
      const std::string& guess = row.cells.at("guess");
      return guess == "treatment" ? arm.first : guess == "placebo" ? arm.second : arm.dont_know;
    };
    place(arms.first) = row.whole("treatment_arm");
    place(arms.second) = row.whole("placebo_arm");
  }
  return arms;
}

// BL-1: CRISP, Bang, Ni and Davis (2004), table 7 (counts confirmed from R package BI; recomputed; printed
// .21 (.15, .26) and .01 (-.07, .10), memory: the two one-sided limits).
TEST(BangIndex, AgreesWithCrisp) {
  const auto [treated, placebo] = guesses_of("CRISP");
  const auto first = bang_index(treated.first, treated.second, treated.dont_know, 0.95).value();
  EXPECT_NEAR(first.index, .2057761733, 5.1e-11);
  EXPECT_NEAR(first.standard_error, .0352370905, 5.1e-11);
  EXPECT_NEAR(first.lower, .1478163172, 5.1e-11);
  EXPECT_NEAR(first.upper, .2637360294, 5.1e-11);
  EXPECT_NEAR(first.two_sided.lower, .1367127450, 5.1e-11);
  EXPECT_NEAR(first.two_sided.upper, .2748396015, 5.1e-11);
  const auto second = bang_index(placebo.second, placebo.first, placebo.dont_know, 0.95).value();
  EXPECT_NEAR(second.index, .0143884892, 5.1e-11);
  EXPECT_NEAR(second.standard_error, .0538229625, 5.1e-11);
  EXPECT_NEAR(second.lower, -.0741424, 5.1e-8);
  EXPECT_NEAR(second.upper, .1029193842, 5.1e-11);
}

// BL-1: printed .75 (.71, .79) (memory); recomputed.
TEST(JamesIndex, AgreesWithCrisp) {
  const auto [treated, placebo] = guesses_of("CRISP");
  const auto james = james_index(treated, placebo, 0.95).value();
  EXPECT_NEAR(james.index, .7479275375, 5.1e-11);
  EXPECT_NEAR(james.standard_error, .0217373981, 5.1e-11);
  EXPECT_NEAR(james.two_sided.lower, .7053230200, 5.1e-11);
  EXPECT_NEAR(james.two_sided.upper, .7905320549, 5.1e-11);
}

// BL-2: Houweling et al. (2014), investigators (counts and .896 .011 .875 .918 / .115 .018 / .022 .019
// confirmed; recomputed).
TEST(BlindingIndices, AgreeWithHouweling) {
  const auto [treated, placebo] = guesses_of("Houweling_investigators");
  const auto james = james_index(treated, placebo, 0.95).value();
  EXPECT_NEAR(james.index, .8964143426, 5.1e-11);
  EXPECT_NEAR(james.standard_error, .0109175770, 5.1e-11);
  EXPECT_NEAR(james.two_sided.lower, .875, 5.1e-4);
  EXPECT_NEAR(james.two_sided.upper, .918, 5.1e-4);
  const auto first = bang_index(treated.first, treated.second, treated.dont_know, 0.95).value();
  EXPECT_NEAR(first.index, .1151832461, 5.1e-11);
  EXPECT_NEAR(first.standard_error, .0179337403, 5.1e-11);
  const auto second = bang_index(placebo.second, placebo.first, placebo.dont_know, 0.95).value();
  EXPECT_NEAR(second.index, .0215633423, 5.1e-11);
  EXPECT_NEAR(second.standard_error, .0194046669, 5.1e-11);
}

// Section 11, edge: only "don't know" gives James 1 with standard error 0, and nothing for Bang.
TEST(BlindingIndices, AtTheEdges) {
  const auto unknown = james_index({0, 0, 5}, {0, 0, 7}, 0.95).value();
  EXPECT_EQ(unknown.index, 1);
  EXPECT_EQ(unknown.standard_error, 0);
  EXPECT_EQ(unknown.two_sided.lower, 1);
  EXPECT_FALSE(bang_index(0, 0, 5, 0.95));
  EXPECT_FALSE(james_index({5, 0, 2}, {0, 0, 7}, 0.95));
  EXPECT_EQ(james_index({5, 0, 0}, {0, 7, 0}, 0.95).value().index, 0);
  EXPECT_EQ(bang_index(5, 0, 0, 0.95).value().index, 1);
  EXPECT_EQ(bang_index(5, 0, 0, 0.95).value().standard_error, 0);
  EXPECT_EQ(bang_index(0, 5, 0, 0.95).value().index, -1);
}

TEST(BlindingIndices, TurnWithTheGuesses) {
  const auto right = bang_index(7, 3, 5, 0.9).value(), wrong = bang_index(3, 7, 5, 0.9).value();
  EXPECT_EQ(right.index, -wrong.index);
  EXPECT_EQ(right.standard_error, wrong.standard_error);
  EXPECT_NEAR(right.lower, -wrong.upper, 1e-15);
  EXPECT_NEAR(bang_index(7, 3, 5, 0.95).value().lower, right.two_sided.lower, 1e-15);
  EXPECT_NEAR(james_index({7, 3, 5}, {2, 8, 4}, 0.95).value().index,
              james_index({8, 2, 4}, {3, 7, 5}, 0.95).value().index, 1e-15);
}

// Guesses as by chance, equally many of either kind: James is 1/2 without "don't know" (mathematics).
TEST(JamesIndex, IsAHalfWhenGuessesAreAsByChance) {
  EXPECT_NEAR(james_index({10, 10, 0}, {10, 10, 0}, 0.95).value().index, .5, 1e-15);
  EXPECT_NEAR(james_index({30, 10, 0}, {30, 10, 0}, 0.95).value().index, .5, 1e-15);
}

/// P of `right` right and `wrong` wrong of `n` who are right with probability .3, wrong with .3.
double guess_chance(int right, int wrong, int n) {
  const int unknown = n - right - wrong;
  return std::exp(boost::math::lgamma(n + 1) - boost::math::lgamma(right + 1) -
                  boost::math::lgamma(wrong + 1) - boost::math::lgamma(unknown + 1) +
                  (right + wrong) * std::log(.3) + unknown * std::log(.4));
}

// Recomputed: plain Python and NumPy, the same sums; James by slopes of finite differences.
TEST(BlindingIndices, CoverAsOftenAsIsSaid) {
  const int n = 30;
  double two_sided = 0, one_sided = 0, james = 0;
  std::vector<std::pair<Guesses, double>> arms;
  for (int right = 0; right <= n; ++right)
    for (int wrong = 0; right + wrong <= n; ++wrong) {
      arms.push_back({{right, wrong, n - right - wrong}, guess_chance(right, wrong, n)});
      const auto bang = bang_index(right, wrong, n - right - wrong, 0.95);
      if (!bang) continue;
      if (bang->two_sided.lower <= 0 && 0 <= bang->two_sided.upper) two_sided += arms.back().second;
      if (bang->lower <= 0) one_sided += arms.back().second;
    }
  for (const auto& [first, p] : arms)
    for (const auto& [second, q] : arms) {
      const auto index = james_index(first, {second.second, second.first, second.dont_know}, 0.95);
      if (index && index->two_sided.lower <= .7 && .7 <= index->two_sided.upper) james += p * q;
    }
  EXPECT_NEAR(two_sided, .935310, 5.1e-7);
  EXPECT_NEAR(one_sided, .940055, 5.1e-7);
  EXPECT_NEAR(james, .938569, 5.1e-7);
}

TEST(BlindingIndices, RefuseImpossibleArguments) {
  EXPECT_EQ(refusal([] { bang_index(-1, 2, 3, 0.95); }), "right must be between 0 and 1000000, got -1");
  EXPECT_EQ(refusal([] { bang_index(0, 0, 0, 0.95); }),
            "number of subjects must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { bang_index(0, 0, 5, 95); }),
            "confidence must be strictly between 0 and 1, got 95 (write 0.95 for 95 %)");
  EXPECT_EQ(refusal([] {
              james_index({1, 2, 3}, {4, 5, -6}, 0.95);
            }),
            "dont_know must be between 0 and 1000000, got -6");
  EXPECT_EQ(refusal([] {
              james_index({0, 0, 0}, {0, 0, 0}, 0.95);
            }),
            "number of subjects must be between 1 and 1000000, got 0");
}

}  // namespace
}  // namespace stats
