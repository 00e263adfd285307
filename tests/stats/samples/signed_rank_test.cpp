#include "stats/samples/signed_rank.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

using Values = std::vector<double>;

TEST(SignedRank, CountsEverySign) {
  const auto found = signed_rank(Values{1.1, 2.2, 0.3, -0.1}, Alternative::greater);
  EXPECT_EQ(found.positive_sum, 9);
  EXPECT_TRUE(found.test.exact);
  EXPECT_EQ(found.test.p, 2.0 / 16);
  EXPECT_EQ(signed_rank(Values{1.1, 2.2, 0.3, -0.1}, Alternative::less).test.p, 15.0 / 16);
  EXPECT_EQ(signed_rank(Values{1.1, 2.2, 0.3, -0.1}, Alternative::two_sided).test.p, 4.0 / 16);
}

// Depression scores before and after, Hollander and Wolfe (R ?wilcox.test): V = 40, p = 0.01953 against greater.
TEST(SignedRank, AgreesWithHollanderAndWolfe) {
  const Values before{1.83, 0.50, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.30};
  const Values after{0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29};
  Values differences;
  for (std::size_t i = 0; i < before.size(); ++i) differences.push_back(before[i] - after[i]);
  const auto found = signed_rank(differences, Alternative::greater);
  EXPECT_EQ(found.positive_sum, 40);
  EXPECT_NEAR(found.test.p, 0.01953125, 1e-15);  // 10 of 512
}

// 0.3 - 0.2 and 0.2 - 0.1 differ by rounding alone, as do 0.1 + 0.2 - 0.3 and 0.
TEST(SignedRank, TakesRoundingForTies) {
  const auto found =
      signed_rank(Values{0.3 - 0.2, -(0.2 - 0.1), 0.1 + 0.2 - 0.3, 0, 0.7}, Alternative::greater);
  EXPECT_EQ(found.zeros, 2);
  EXPECT_EQ(found.used, 3);
  EXPECT_EQ(found.positive_sum, 4.5);
  EXPECT_EQ(found.test.p, 3.0 / 8);
}

TEST(SignedRank, OfNothingButZerosSaysNothing) {
  const auto found = signed_rank(Values{0, 0}, Alternative::two_sided);
  EXPECT_EQ(found.zeros, 2);
  EXPECT_EQ(found.test.p, 1);
}

TEST(SignedRank, AgreesWithEverySignForRandomTies) {
  Random random(9);
  for (int repeat = 0; repeat < 100; ++repeat) {
    Values differences;
    for (int i = 0; i < 9; ++i) differences.push_back(double(random.below(9)) - 4);
    const auto seen = signed_rank(differences, Alternative::greater);
    int reaching = 0;
    for (unsigned signs = 0; signs < 512; ++signs) {
      Values turned;
      for (unsigned i = 0; i < 9; ++i)
        turned.push_back((signs >> i & 1) ? std::abs(differences[i]) : -std::abs(differences[i]));
      reaching += signed_rank(turned, Alternative::greater, {.draws = 1}).positive_sum >= seen.positive_sum;
    }
    EXPECT_NEAR(seen.test.p, reaching / 512.0, 1e-14);
  }
}

// The sum of 600 is nearly normal: mean n(n + 1)/4, variance n(n + 1)(2n + 1)/24.
TEST(SignedRank, DrawsSignsOfMany) {
  Values differences(600);
  Random random(1);
  for (std::size_t i = 0; i < 600; ++i) differences[i] = double(i + 1) * (random.below(100) < 54 ? 1 : -1);
  const auto found = signed_rank(differences, Alternative::greater);
  EXPECT_FALSE(found.test.exact);
  const double z = (found.positive_sum - 0.5 - 600 * 601 / 4.0) / std::sqrt(600 * 601 * 1201 / 24.0);
  EXPECT_NEAR(found.test.p, std::erfc(z / std::sqrt(2)) / 2, 4 * found.test.standard_error + 1e-4);
}

TEST(SignedRank, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] { signed_rank({}, Alternative::less); }),
            "number of differences must be between 1 and 100000, got 0");
  EXPECT_EQ(refusal([] { signed_rank(Values{std::numeric_limits<double>::infinity()}, Alternative::less); }),
            "difference[0] must be a finite number, got inf");
}

}  // namespace
}  // namespace stats
