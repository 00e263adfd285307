#include "stats/discrimination/answer_bias.h"

#include <gtest/gtest.h>

#include "stats/refusal.h"

namespace stats {
namespace {

// BIN-4 and CI-2, recomputed: R binom.test(12, 16).
TEST(AnswerBias, AgreesWithRecomputedValues) {
  const AnswerBias bias = answer_bias(12, 16, 0.95);
  EXPECT_EQ(bias.share, 0.75);
  EXPECT_NEAR(bias.p, .07681274414, 5.1e-12);
  EXPECT_NEAR(bias.limits.lower, .47622918, 5.1e-9);
  EXPECT_NEAR(bias.limits.upper, .92733796, 5.1e-9);
}

TEST(AnswerBias, DoesNotCareWhichAnswerIsA) {
  for (int answers_a = 0; answers_a <= 20; ++answers_a) {
    const AnswerBias one = answer_bias(answers_a, 20, 0.9), other = answer_bias(20 - answers_a, 20, 0.9);
    EXPECT_NEAR(one.p, other.p, 1e-15);
    EXPECT_NEAR(one.limits.lower, 1 - other.limits.upper, 1e-14);
  }
  EXPECT_EQ(answer_bias(10, 20, 0.9).p, 1);
}

TEST(AnswerBias, Refuses) {
  EXPECT_EQ(refusal([] { answer_bias(17, 16, 0.95); }), "answers_a must be between 0 and 16, got 17");
  EXPECT_EQ(refusal([] { answer_bias(0, 0, 0.95); }), "answers must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { answer_bias(16, 16, 1); }), "confidence must be strictly between 0 and 1, got 1");
}

}  // namespace
}  // namespace stats
