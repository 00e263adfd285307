#include "stats/worth/pairwise_tests.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/refusal.h"
#include "stats/worth/published_preferences.h"

namespace stats {
namespace {

// Two items: the likelihood ratio of a binomial against 1/2.
TEST(PairwiseTests, OfTwoItemsAreTheBinomials) {
  const auto tests = pairwise_tests(2, std::vector<PairCount>{{0, 1, 3, 0, 12}}).value();
  ASSERT_EQ(tests.size(), 1u);
  const double ratio = 2 * (3 * std::log(3 / 7.5) + 12 * std::log(12 / 7.5));
  EXPECT_NEAR(tests[0].difference, -std::log(4), 1e-12);
  EXPECT_NEAR(tests[0].likelihood_ratio, ratio, 1e-12);
  EXPECT_NEAR(tests[0].p, .016187951271, 5.1e-12);  // R: pchisq(ratio, 1, lower.tail = FALSE)
  EXPECT_EQ(tests[0].adjusted_p, tests[0].p);
}

TEST(PairwiseTests, OfFlutesAreSymmetric) {
  const auto tests = pairwise_tests(8, flutes()).value();
  ASSERT_EQ(tests.size(), 28u);
  double least = 1;
  for (const PairwiseTest& test : tests) {
    EXPECT_GE(test.adjusted_p, test.p);
    EXPECT_LE(test.adjusted_p, 28 * test.p + 1e-15);
    least = std::min(least, test.adjusted_p);
  }
  // 010 and 101 have the same answers in sum (PC-7: both 1.855803).
  const auto& same = tests[15];
  EXPECT_EQ(same.first, 2);
  EXPECT_EQ(same.second, 5);
  EXPECT_NEAR(same.difference, 0, 1e-9);
  EXPECT_NEAR(same.p, 1, 1e-4);
  EXPECT_LT(least, 0.001);
}

TEST(PairwiseTests, SayNothingOrRefuse) {
  const std::vector<PairCount> ranked{{0, 1, 3, 0, 0}, {0, 2, 3, 0, 0}, {1, 2, 3, 0, 0}};
  EXPECT_FALSE(pairwise_tests(3, ranked));
  EXPECT_EQ(refusal([&] { pairwise_tests(3, ranked, {.bias_reduced = true}); }),
            "tests of pairs need a fit without bias reduction");
}

}  // namespace
}  // namespace stats
