#include "findings/scale/scale.h"

#include <gtest/gtest.h>

#include <cmath>

#include "findings/evidence_builder.h"

namespace findings {
namespace {

using State = PreferenceScale::State;

/// Eight trials in each order; of each, so many answers for the comparison's first cable.
void prefer(Builder& builder, int claim, int for_first_when_first, int for_first_when_second) {
  for (int i = 0; i < 16; ++i) {
    const bool is_second = i % 2 == 1;
    const int scoring = is_second ? for_first_when_second : for_first_when_first;
    TrialEvidence& trial = builder.trial(claim, {i / 2 < scoring});
    trial.sides = {trial.coin, 1 - trial.coin};
    trial.started_s.resize(2);
  }
}

Builder star(int first, int second) {
  Builder builder({"Ada"}, "preference");
  builder.plan().baseline = "thin";
  prefer(builder, builder.claim("thick", "thin"), first, first);
  prefer(builder, builder.claim("thin", "long"), second, second);
  return builder;
}

// With the same preferences in both orders there is no effect of the order, and worths are log odds: 12 to 4 for the thick
// one, 10 to 6 against the long one.
TEST(PreferenceScales, AreLogOddsAgainstTheBaseline) {
  const auto scale = star(6, 5).findings().preference_scale.value();
  EXPECT_EQ(scale.state, State::estimated);
  EXPECT_EQ(scale.answers, 32);
  ASSERT_EQ(scale.cables.size(), 3u);
  EXPECT_EQ(scale.cables[0].title, "thin");
  EXPECT_EQ(scale.cables[0].worth, 0);
  EXPECT_EQ(scale.cables[0].quasi_error, 0);
  EXPECT_EQ(scale.cables[1].title, "thick");
  EXPECT_NEAR(scale.cables[1].worth, std::log(3), 1e-10);
  EXPECT_NEAR(scale.cables[1].standard_error, std::sqrt(1 / 12. + 1 / 4.), 1e-10);
  EXPECT_NEAR(scale.cables[1].quasi_error.value(), std::sqrt(1 / 12. + 1 / 4.), 1e-6);
  EXPECT_NEAR(scale.cables[2].worth, std::log(6 / 10.), 1e-10);
  EXPECT_NEAR(scale.order_effect, 0, 1e-10);
  ASSERT_EQ(scale.pairs.size(), 3u);
  EXPECT_NEAR(scale.pairs[0].difference, -std::log(3), 1e-10);
  EXPECT_GT(scale.fit_p.value(), 0.9);
  EXPECT_NE(scale.sentence.find("No two cables are told apart by it."), std::string::npos);
  EXPECT_NE(scale.sentence.find("in 50 % of trials"), std::string::npos);
}

// Whoever is played first wins: 8 of 8 when first, 4 of 8 when second, in both comparisons.
TEST(PreferenceScales, SeeAnEffectOfTheOrder) {
  Builder builder({"Ada"}, "preference");
  builder.plan().baseline = "thin";
  prefer(builder, builder.claim("thin", "thick"), 7, 1);
  prefer(builder, builder.claim("thin", "long"), 7, 1);
  const auto scale = builder.findings().preference_scale.value();
  EXPECT_NEAR(scale.cables[1].worth, 0, 1e-10);
  EXPECT_NEAR(scale.order_effect, std::log(7), 1e-9);
  EXPECT_NEAR(scale.order_error, std::sqrt((1 / 28. + 1 / 4.)), 1e-9);
  EXPECT_NE(scale.sentence.find("in 88 % of trials"), std::string::npos);
}

TEST(PreferenceScales, AreCorrectedWhereNobodyPreferredOne) {
  const auto scale = star(8, 5).findings().preference_scale.value();
  EXPECT_EQ(scale.state, State::corrected);
  EXPECT_GT(scale.cables[1].worth, 2);
  EXPECT_LT(scale.cables[1].worth, 5);
  EXPECT_TRUE(scale.pairs.empty());
  EXPECT_FALSE(scale.fit_p);
  EXPECT_NE(scale.sentence.find("corrected for bias"), std::string::npos);
}

TEST(PreferenceScales, AreNoneForCablesNeverCompared) {
  Builder builder({"Ada", "Ben"}, "preference");
  for (const auto& [first, second] : {std::pair("thin", "thick"), std::pair("long", "short")})
    builder.trials(builder.claim(first, second), 12, 16);
  const auto scale = builder.findings().preference_scale.value();
  EXPECT_EQ(scale.state, State::apart);
  EXPECT_EQ(scale.groups, (std::vector<std::vector<std::string>>{{"thin", "thick"}, {"long", "short"}}));
  EXPECT_TRUE(scale.cables.empty());
  EXPECT_EQ(scale.sentence,
            "There is no one scale: these groups were never compared with each other: (thin and thick) and "
            "(long and short).");
}

// Not for ABX, not of one claim; controls and cables without answers have no place.
TEST(PreferenceScales, TakeClaimsWithAnswersOnly) {
  EXPECT_FALSE(seven_of(8).findings().preference_scale);
  Builder one({"Ada"}, "preference");
  one.trials(one.claim("thin", "thick"), 9, 16);
  EXPECT_FALSE(one.findings().preference_scale);
  Builder builder = star(6, 5);
  prefer(builder,
         builder.comparison(Builder::specimen("thin"), Builder::specimen("thin"), plan::Kind::identical_pair),
         4, 4);
  builder.claim("thin", "silent");
  const auto scale = builder.findings().preference_scale.value();
  EXPECT_EQ(scale.cables.size(), 3u);
  EXPECT_EQ(scale.answers, 32);
}

}  // namespace
}  // namespace findings
