#include <gtest/gtest.h>

#include "findings/evidence_builder.h"

namespace {

TEST(WouldHaveBeenCaught, ComesFromTrialsAndTheFamilysFirstStep) {
  Builder builder;
  builder.claims({16, 3, 8, 8, 8, 8, 8});
  const auto all = builder.findings();
  for (const auto& finding : all.comparisons) {  // never from the share observed
    const auto& caught = finding.would_have_been_caught;
    EXPECT_EQ(caught.trials, 16);
    EXPECT_EQ(caught.answers, 16);
    EXPECT_DOUBLE_EQ(caught.level, .05 / 7);
    EXPECT_EQ(caught.needed, 14);  // the method's example, [R]
    // recomputed: scipy.optimize.brentq of binom.sf(13, 16, p) - .8, and binom.sf(13, 16, .9)
    EXPECT_NEAR(*caught.share, .9025358891022428, 1e-9);
    EXPECT_NEAR(*caught.hearing_share, 2 * .9025358891022428 - 1, 1e-9);
    EXPECT_NEAR(*caught.probability_at_effect, .7892493396961546, 1e-9);
  }
}

TEST(WouldHaveBeenCaught, CountsTheAnswersThatEachTrialHas) {
  Builder builder({"Ada", "Ben", "Cleo"});
  builder.plan().effect_share = "0.9";
  const int claim = builder.claim("thin", "thick");
  for (int i = 0; i < 8; ++i) builder.trial(claim, {true, true, true});
  for (int i = 0; i < 8; ++i) builder.trial(claim, {true});
  const auto caught = builder.findings().comparisons.at(0).would_have_been_caught;
  EXPECT_EQ(caught.trials, 16);
  EXPECT_EQ(caught.answers, 32);
  // recomputed: convolution in Python, in fractions at 1/2. Taken as 16 trials of 2 answers each the share
  // would be .8006.
  EXPECT_EQ(caught.needed, 24);
  EXPECT_NEAR(*caught.share, .8219809631241131, 1e-12);
  EXPECT_NEAR(*caught.probability_at_effect, .9562310615442279, 1e-12);
}

TEST(WouldHaveBeenCaught, WithTrialsAlikeIsThatOfTheTrials) {
  Builder builder({"Ada", "Ben"});
  builder.trials(builder.claim("thin", "thick"), 9, 16);
  const auto caught = builder.findings().comparisons.at(0).would_have_been_caught;
  EXPECT_EQ(caught.needed, 24);
  // recomputed: bisection of the binomial tail in Python, P(X >= 12 | 16) = .8
  EXPECT_NEAR(*caught.share, .8005856022582889, 1e-12);
}

// At such a level even a listener who is mostly wrong would be supported: nothing is heard then.
TEST(WouldHaveBeenCaught, BelowOneHalfSaysNothingOfHearing) {
  Builder builder;
  builder.plan().level = "0.9";
  builder.trials(builder.claim("thin", "thick"), 9, 16);
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_EQ(finding.would_have_been_caught.needed, 6);  // P(X >= 6) = .895, P(X >= 5) = .962 (Python, exact)
  EXPECT_LT(*finding.would_have_been_caught.share, .5);
  EXPECT_FALSE(finding.would_have_been_caught.hearing_share);
  EXPECT_EQ(finding.sentence.find("means hearing it"), std::string::npos) << finding.sentence;
}

TEST(WouldHaveBeenCaught, PreferenceIsTwoSided) {
  Builder builder({"Ada"}, "preference");
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  const auto caught = builder.findings().comparisons.at(0).would_have_been_caught;
  EXPECT_EQ(caught.needed, 13);  // BIN-3: n = 16 at .05
  // recomputed: scipy.optimize.brentq of binom.sf(12, 16, p) - .8
  EXPECT_NEAR(*caught.share, .8529181230568645, 1e-9);
  EXPECT_FALSE(caught.hearing_share);
}

}  // namespace
