#include "protocols/draw.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>

namespace protocols {
namespace {

TEST(Engine, GivesTheOutputThatTheStandardRequires) {
  // C++ standard, [rand.predef]: the 10000th output of a default-seeded mt19937_64.
  boost::random::mt19937_64 engine;
  engine.discard(9999);
  EXPECT_EQ(engine(), 9981545732273789042ULL);
}

TEST(Draw, IsTheStandardEngineSeededThroughTheStandardSeedSequence) {
  Seed seed{};
  for (std::size_t i = 0; i < seed.size(); ++i) seed[i] = static_cast<unsigned char>(7 * i + 1);
  std::vector<std::uint32_t> words(8);
  for (std::size_t i = 0; i < seed.size(); ++i)
    words[i / 4] += static_cast<std::uint32_t>(seed[i]) << (8 * (i % 4));
  std::seed_seq sequence(words.begin(), words.end());
  std::mt19937_64 expected(sequence);
  Draw draw(seed);
  for (int i = 0; i < 1000; ++i) ASSERT_EQ(draw.word(), expected());
}

// Golden vectors: a released draw never changes. First run on Debian 12, g++ 12 and Boost 1.74; the Python program
// under tests/independent derives whole orders to the same bits.
TEST(Draw, GoldenWords) {
  Draw draw(Seed{});
  const std::uint64_t expected[] = {12755971370500816620ULL, 9759324141504608797ULL, 15586071274741539571ULL,
                                    10879588327684050678ULL};
  for (const std::uint64_t word : expected) EXPECT_EQ(draw.word(), word);
}

TEST(Draw, BoundedDrawsStayBelowAndHitEverything) {
  Draw draw(Seed{1});
  std::map<std::uint64_t, int> seen;
  for (int i = 0; i < 6000; ++i) ++seen[draw.below(6)];
  EXPECT_EQ(seen.size(), 6u);
  EXPECT_LT(seen.rbegin()->first, 6u);
  // 6000 draws of 1/6: expected 1000, standard deviation 28.9; five of them.
  for (const auto& [value, count] : seen) EXPECT_NEAR(count, 1000, 145) << value;
  EXPECT_EQ(draw.below(1), 0u);
  EXPECT_THROW(draw.below(0), std::domain_error);
}

TEST(Draw, ShufflesReachEveryOrderAlike) {
  Draw draw(Seed{2});
  std::map<std::vector<int>, int> seen;
  for (int i = 0; i < 6000; ++i) {
    std::vector<int> values = {0, 1, 2};
    draw.shuffle(values);
    ++seen[values];
  }
  EXPECT_EQ(seen.size(), 6u);
  for (const auto& [order, count] : seen) EXPECT_NEAR(count, 1000, 145);
}

TEST(Draw, TheCoinIsFair) {
  Draw draw(Seed{3});
  int heads = 0;
  for (int i = 0; i < 10000; ++i) heads += draw.coin();
  EXPECT_NEAR(heads, 5000, 250);  // five standard deviations of 50
}

}  // namespace
}  // namespace protocols
