#include "stats/evidence/hedged_capital.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "stats/evidence/betting.h"
#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

// The 16 answers of SEQ-8 on a grid of 1e-5. Recomputed: NumPy, cumulative products and their running maximum.
// Smaller than the set of SEQ-8, .40953 to .98127, which holds what the last capital alone excludes.
TEST(HedgedSurvivors, AreTheRecomputedSet) {
  const std::vector<double> answers{1, 1, 0, 1, 1, 1, 0, 1, 1, 1, 1, 0, 1, 1, 0, 1};
  std::vector<double> grid;
  for (int i = 0; i <= 100'000; ++i) grid.push_back(i / 1e5);
  const auto survivors = hedged_survivors(answers, grid, 0.05).back();
  EXPECT_EQ(survivors.first, 41'744);
  EXPECT_EQ(survivors.last, 98'067);
}

/// The plain way: every candidate alone, by logarithms, without relying on there being no gaps.
std::vector<std::vector<bool>> plain_survivors(const std::vector<double>& observations,
                                               const std::vector<double>& candidates, double level,
                                               double cap) {
  std::vector<std::vector<bool>> alive(observations.size(), std::vector<bool>(candidates.size()));
  for (std::size_t c = 0; c < candidates.size(); ++c) {
    bool survives = true;
    const auto capital = log_hedged_capital(observations, candidates[c], level, cap);
    for (std::size_t t = 0; t < observations.size(); ++t) {
      survives = survives && capital[t] < -std::log(level);
      alive[t][c] = survives;
    }
  }
  return alive;
}

void expect_plain(const std::vector<double>& observations, double level, double cap) {
  const auto candidates = candidate_midpoints(101);
  const auto plain = plain_survivors(observations, candidates, level, cap);
  const auto fast = hedged_survivors(observations, candidates, level, cap);
  for (std::size_t t = 0; t < observations.size(); ++t)
    for (int c = 0; c < 101; ++c)
      ASSERT_EQ(c >= fast[t].first && c <= fast[t].last, plain[t][static_cast<std::size_t>(c)])
          << t << " " << c;
}

TEST(HedgedSurvivors, AreThoseOfThePlainWay) {
  Random random(9);
  const auto uniform = [&] { return random.below(1'000'001) / 1e6; };
  for (double level : {0.001, 0.05, 0.5})
    for (double cap : {0.3, 0.5, 0.9}) {
      std::vector<double> answers, ratings, small, shifting;
      for (int t = 0; t < 800; ++t) {
        answers.push_back(uniform() < 0.55);
        ratings.push_back(uniform());
        small.push_back(0.02 * uniform());
        shifting.push_back(t < 300 ? uniform() < 0.1 : uniform() < 0.9);
      }
      for (const auto& observations : {answers, ratings, small, shifting})
        expect_plain(observations, level, cap);
    }
}

// A mean that moves leaves no survivor, and none comes back.
TEST(HedgedSurvivors, AreNoneWhereThereIsNotOneMean) {
  std::vector<double> observations(500, 0);
  observations.insert(observations.end(), 2'000, 1);
  const auto candidates = candidate_midpoints(100);
  const auto survivors = hedged_survivors(observations, candidates, 0.05);
  EXPECT_FALSE(survivors[499].none());
  EXPECT_TRUE(survivors.back().none());
  for (std::size_t t = 1; t < survivors.size(); ++t) {
    EXPECT_GE(survivors[t].first, survivors[t - 1].first);
    EXPECT_LE(survivors[t].last, survivors[t - 1].last);
    EXPECT_LE(survivors[t].first, survivors[t].last + 1);
  }
  const auto [lower, upper] = interval_around(survivors.back(), candidates);
  EXPECT_NEAR(upper - lower, 0.01, 1e-12);
}

// Half the capital falls below the smallest double in the first part, and must still grow in the second.
TEST(HedgedSurvivors, AreNotStuckWhereProductsUnderflow) {
  std::vector<double> observations;
  for (int t = 0; t < 10'000; ++t) observations.push_back(t % 2);
  const std::vector<double> half{0.5};
  const double level = 1e-300;
  const auto lowest = log_hedged_capital(observations, 0.5, level, 0.99).back();
  EXPECT_LT(lowest, std::log(1e-300) - 60);  // both halves: below every double
  EXPECT_FALSE(hedged_survivors(observations, half, level, 0.99).back().none());
  observations.insert(observations.end(), 200'000, 1);
  EXPECT_TRUE(hedged_survivors(observations, half, level, 0.99).back().none());
}

// Ville's bound, by every sequence of 14 answers: the true mean, a candidate, is lost in at most `level` of them.
TEST(HedgedSurvivors, KeepTheTrueMean) {
  const std::vector<double> candidates{0.1, 0.3, 0.5, 0.6};
  for (std::size_t truth = 0; truth < candidates.size(); ++truth)
    for (double level : {0.05, 0.3}) {
      double lost = 0;
      for (unsigned bits = 0; bits < 1u << 14; ++bits) {
        std::vector<double> answers;
        double probability = 1;
        for (int i = 0; i < 14; ++i) {
          answers.push_back((bits >> i) & 1);
          probability *= (bits >> i) & 1 ? candidates[truth] : 1 - candidates[truth];
        }
        const auto last = hedged_survivors(answers, candidates, level).back();
        const auto place = static_cast<int>(truth);
        if (place < last.first || place > last.last) lost += probability;
      }
      EXPECT_LE(lost, level);
    }
}

TEST(IntervalAround, ReachesToTheCandidatesExcluded) {
  std::vector<double> tenths;
  for (int i = 0; i <= 10; ++i) tenths.push_back(i / 10.0);
  const auto around = [&](int first, int last) {
    const auto [lower, upper] = interval_around({first, last}, tenths);
    return std::pair(lower, upper);
  };
  EXPECT_EQ(around(0, 10), std::pair(0.0, 1.0));
  EXPECT_EQ(around(4, 9), std::pair(0.3, 1.0));
  EXPECT_EQ(around(1, 1), std::pair(0.0, 0.2));
  EXPECT_EQ(around(6, 5), std::pair(0.5, 0.6));
  EXPECT_EQ(around(0, -1), std::pair(0.0, 0.0));
  EXPECT_EQ(around(11, 10), std::pair(1.0, 1.0));
}

TEST(HedgedSurvivors, RefuseImpossibleArguments) {
  const std::vector<double> x{0, 1};
  const auto survivors = [&](std::vector<double> candidates, double level, double cap) {
    return refusal([&] { hedged_survivors(x, candidates, level, cap); });
  };
  EXPECT_EQ(survivors({}, 0.05, 0.5), "number of candidates must be between 1 and 1000000, got 0");
  EXPECT_EQ(survivors({-0.1}, 0.05, 0.5), "candidate must be between 0 and 1, got -0.1");
  EXPECT_NE(survivors({0.5, 0.5}, 0.05, 0.5), "(not refused)");
  EXPECT_NE(survivors({1, 0.5}, 0.05, 0.5), "(not refused)");
  EXPECT_EQ(survivors({0, 1}, 0.05, 0.5), "(not refused)");
  EXPECT_EQ(survivors({0.5}, 5, 0.5), "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
  EXPECT_EQ(survivors({0.5}, 0.05, 1), "cap must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { hedged_survivors({}, std::vector{0.5}, 0.05); }),
            "number of observations must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] {
              interval_around({0, 3}, std::vector{0.5});
            }),
            "last must be between -1 and 0, got 3");
  EXPECT_EQ(refusal([] { candidate_midpoints(0); }), "count must be between 1 and 1000000, got 0");
}

TEST(CandidateMidpoints, AreTheMiddlesOfEqualCells) {
  EXPECT_EQ(candidate_midpoints(4), (std::vector{0.125, 0.375, 0.625, 0.875}));
}

}  // namespace
}  // namespace stats
