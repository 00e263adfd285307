#include "stats/random.h"

#include <gtest/gtest.h>

#include <array>
#include <numeric>
#include <vector>

namespace stats {
namespace {

// C++ standard, [rand.predef]: the 10,000th word of mt19937_64 with its default seed 5489.
TEST(Random, IsTheStandardEngine) {
  Random random(5489);
  for (int i = 1; i < 10'000; ++i) random.word();
  EXPECT_EQ(random.word(), 9981545732273789042u);
}

// Golden vectors, recomputed by a Python implementation of the engine and of the two rules.
TEST(Random, DrawsAndShufflesByItsRules) {
  Random dice(42);
  for (std::uint32_t expected : {4, 3, 4, 0, 5, 0, 3, 2, 1, 2, 0, 3, 4, 3, 4, 5})
    EXPECT_EQ(dice.below(6), expected);

  Random wide(42);  // a quarter of the words are thrown away, here the tenth
  for (std::uint32_t expected : {2432526237u, 2058464202u, 2422829279u, 438965039u, 2909633002u, 303015241u,
                                 1850820498u, 1201155355u, 882210232u, 39887697u, 1686973782u, 2207413323u})
    EXPECT_EQ(wide.below(3u << 30), expected);

  Random cards(7);
  std::vector<int> values(10);
  std::iota(values.begin(), values.end(), 0);
  cards.shuffle(std::span(values));
  EXPECT_EQ(values, (std::vector{1, 4, 2, 3, 5, 9, 6, 0, 8, 7}));
}

// Each of 24 orders 10,000 times in 240,000: within five standard deviations of 97.9.
TEST(Random, GivesEveryOrderAlike) {
  Random random(1);
  std::array<int, 256> counts{};
  for (int i = 0; i < 240'000; ++i) {
    std::array<int, 4> values{0, 1, 2, 3};
    random.shuffle(std::span<int>(values));
    ++counts[static_cast<std::size_t>(values[0] + 4 * values[1] + 16 * values[2] + 64 * values[3])];
  }
  int orders = 0;
  for (int count : counts) {
    if (count == 0) continue;
    ++orders;
    EXPECT_NEAR(count, 10'000, 490);
  }
  EXPECT_EQ(orders, 24);
}

// The first words for the seed 1234567 (memory: a widely published test vector; recomputed in plain Python).
TEST(QuickRandom, HasThePublishedWords) {
  QuickRandom random(1234567);
  for (const std::uint64_t word : {6457827717110365317u, 3203168211198807973u, 9817491932198370423u,
                                   4593380528125082431u, 16408922859458223821u})
    EXPECT_EQ(random.word(), word);
}

// Chi-square of each number and of each two that follow each other, below its limit but once in 10,000 (SciPy, chi2.isf).
TEST(Random, SeveralNumbersOfAWordAreIndependent) {
  QuickRandom random(5);
  std::vector<double> pairs(49);
  int last = -1;
  double drawn = 0;
  random.each_below(7, 490'001, [&](std::uint32_t number) {
    ASSERT_LT(number, 7u);
    if (last >= 0) ++pairs[std::size_t(last) * 7 + number];
    last = int(number);
    ++drawn;
  });
  EXPECT_EQ(drawn, 490'001);
  double chi_square = 0;
  for (const double seen : pairs) chi_square += (seen - 10'000) * (seen - 10'000) / 10'000;
  EXPECT_LT(chi_square, 93.2);  // 48 degrees of freedom
}

TEST(Random, NumbersOfAWordMayHaveAnyBound) {
  QuickRandom random(6);
  int ones = 0;
  random.each_below(1, 100, [&](std::uint32_t number) { ones += number == 0; });
  EXPECT_EQ(ones, 100);
  double sum = 0;
  random.each_below(4'294'967'295u, 10'000, [&](std::uint32_t number) { sum += number; });
  EXPECT_NEAR(sum / 10'000 / 4'294'967'295.0, 0.5, 0.012);
}

}  // namespace
}  // namespace stats
