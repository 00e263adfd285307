#include <gtest/gtest.h>

#include "findings/evidence_builder.h"

namespace {

/// Ada scores in the first `ada`, Ben in the first `ben` of 16.
void add_two(Builder& builder, int comparison, int ada, int ben) {
  for (int i = 0; i < 16; ++i) builder.trial(comparison, {i < ada, i < ben});
}

TEST(Listeners, EveryListenersTestOfEveryClaimIsOneFamily) {
  Builder builder({"Ada", "Ben"});
  add_two(builder, builder.claim("thin", "thick"), 14, 12);
  add_two(builder, builder.claim("flat", "thick"), 8, 8);
  const auto all = builder.findings();
  const auto& first = all.comparisons[0].listeners;
  ASSERT_EQ(first.size(), 2U);
  EXPECT_EQ(first[0].listener, 0);
  EXPECT_EQ(first[0].tested.tally.score, 14);
  EXPECT_NEAR(first[0].tested.p, k14Of16, 1e-15);
  EXPECT_NEAR(first[0].p_adjusted, 4 * k14Of16, 1e-14);  // Holm over four tests
  EXPECT_NEAR(first[1].p_adjusted, 3 * k12Of16, 1e-14);
  EXPECT_NEAR(first[1].limits.lower, .515603578906, 1e-12);  // CI-2
  EXPECT_FALSE(first[0].sign_test_p);
}

TEST(Listeners, ControlsStandOutsideTheirFamily) {
  Builder builder({"Ada", "Ben"});
  add_two(builder, builder.claim("thin", "thick"), 14, 8);
  const int control = builder.comparison(builder.specimen("thin"), builder.specimen("thin", "0.22"),
                                         plan::Kind::known_difference);
  add_two(builder, control, 12, 12);
  const auto all = builder.findings();
  EXPECT_NEAR(all.comparisons[0].listeners[0].p_adjusted, 2 * k14Of16, 1e-14);
  EXPECT_NEAR(all.comparisons[1].listeners[0].p_adjusted, k12Of16, 1e-15);
}

TEST(Listeners, WhoGaveNoAnswerCountsAsPOfOne) {
  Builder builder({"Ada", "Ben"});
  const int claim = builder.claim("thin", "thick");
  for (int i = 0; i < 16; ++i) builder.trial(claim, {i < 14});
  const auto listeners = builder.findings().comparisons[0].listeners;
  ASSERT_EQ(listeners.size(), 2U);
  EXPECT_EQ(listeners[1].tested.p, 1);
  EXPECT_NEAR(listeners[0].p_adjusted, 2 * k14Of16, 1e-14);
}

TEST(Listeners, PreferenceHasTheSignTestBeside) {
  Builder builder({"Ada"}, "preference");
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  const auto ada = builder.findings().comparisons[0].listeners.at(0);
  ASSERT_TRUE(ada.sign_test_p);
  EXPECT_NEAR(*ada.sign_test_p, 2 * k12Of16, 1e-14);
  EXPECT_NEAR(ada.tested.p, 2 * k12Of16, 1e-14);
}

TEST(Listeners, WhoSteadilyPreferOppositeCablesAreReported) {
  Builder builder({"Ada", "Ben"}, "preference");
  add_two(builder, builder.claim("thin", "thick"), 14, 2);
  const auto finding = builder.findings().comparisons[0];
  EXPECT_TRUE(finding.opposed);
  EXPECT_EQ(finding.primary.tally.score, 16);
  EXPECT_EQ(finding.primary.p, 1);
  EXPECT_TRUE(says(finding.cautions, "listeners steadily prefer opposite cables and cancel each other"));
  EXPECT_TRUE(says(finding.cautions, "Ada 14 of 16, p 0.0042 and Ben 2 of 16, p 0.0042"));

  Builder third({"Ada", "Ben", "Cleo"}, "preference");
  const int claim = third.claim("thin", "thick");
  for (int i = 0; i < 16; ++i) third.trial(claim, {i < 14, i < 2, i < 9});
  EXPECT_TRUE(says(third.findings().comparisons[0].cautions, "(for thin: Ada 14 of 16, p 0.0042 and Ben"));
  EXPECT_FALSE(says(third.findings().comparisons[0].cautions, "Cleo"));  // 9 of 16 leans nowhere
  third.plan().primary_test = "Ada";
  EXPECT_TRUE(
      says(third.findings().comparisons[0].cautions, "listeners steadily prefer opposite cables (for thin"));

  Builder alike({"Ada", "Ben"}, "preference");
  add_two(alike, alike.claim("thin", "thick"), 14, 4);  // two-sided 4 of 16: .0768
  EXPECT_FALSE(alike.findings().comparisons[0].opposed);

  Builder abx({"Ada", "Ben"});
  add_two(abx, abx.claim("thin", "thick"), 14, 2);
  EXPECT_FALSE(abx.findings().comparisons[0].opposed);
}

/// Ada is right in trials 1 to 4 of 8, Ben in 1 to 3 and 5.
void add_overlapping(Builder& builder) {
  const int claim = builder.claim("thin", "thick");
  for (int i = 0; i < 8; ++i) builder.trial(claim, {i < 4, i < 3 || i == 4});
}

TEST(Agreement, IsOnRightAndWrongBeyondTheListenersOwnShares) {
  Builder builder({"Ada", "Ben"});
  add_overlapping(builder);
  const auto agreement = builder.findings().comparisons[0].agreement;
  ASSERT_TRUE(agreement);
  EXPECT_EQ(agreement->trials, 8);
  EXPECT_EQ(agreement->pairs, 8);
  EXPECT_EQ(agreement->agreeing_pairs, 6);
  EXPECT_DOUBLE_EQ(agreement->raw, .75);
  EXPECT_NEAR(*agreement->p, 17.0 / 70,
              1e-12);  // recomputed: all C(8, 4) orders of Ben's marks counted in Python
  EXPECT_FALSE(agreement->p_standard_error);
  EXPECT_NEAR(*agreement->fleiss_kappa, .5, 1e-12);  // Fleiss 1971, its formula recomputed in NumPy
  EXPECT_EQ(agreement->counts[0], (std::vector<int>{2, 0}));
  EXPECT_EQ(agreement->counts[3], (std::vector<int>{1, 1}));
  EXPECT_EQ(agreement->counts[7], (std::vector<int>{0, 2}));
  EXPECT_FALSE(agreement->nearly_all_in_one);
  EXPECT_FALSE(agreement->together);
}

TEST(Agreement, FollowsTheCablePreferredNotThePosition) {
  Builder builder({"Ada", "Ben"}, "preference");
  add_overlapping(builder);
  const auto finding = builder.findings().comparisons[0];
  EXPECT_EQ(finding.agreement->agreeing_pairs, 6);
  EXPECT_NEAR(*finding.agreement->p, 17.0 / 70, 1e-12);
}

TEST(Agreement, WhereNearlyAllAnswersFallInOneCategoryHasNoKappa) {
  Builder builder({"Ada", "Ben"});
  const int claim = builder.claim("thin", "thick");
  for (int i = 0; i < 10; ++i) builder.trial(claim, {i != 0, i != 1});  // 18 of 20 right
  const auto agreement = builder.findings().comparisons[0].agreement;
  ASSERT_TRUE(agreement);
  EXPECT_TRUE(agreement->nearly_all_in_one);
  EXPECT_FALSE(agreement->fleiss_kappa);
  EXPECT_EQ(agreement->counts.size(), 10U);
  builder.trial(claim, {false, true});  // 19 of 22
  EXPECT_TRUE(builder.findings().comparisons[0].agreement->fleiss_kappa);
}

TEST(Agreement, OverTrialsThatTwoAnswered) {
  Builder builder({"Ada", "Ben", "Cleo"});
  const int claim = builder.claim("thin", "thick");
  builder.trial(claim, {true});
  builder.trial(claim, {true, false});
  builder.trial(claim, {false, false, true});
  const auto agreement = builder.findings().comparisons[0].agreement;
  ASSERT_TRUE(agreement);
  EXPECT_EQ(agreement->trials, 2);
  EXPECT_EQ(agreement->pairs, 4);  // one pair, and three
  EXPECT_EQ(agreement->agreeing_pairs, 1);
  EXPECT_FALSE(agreement->fleiss_kappa);  // Cleo left one out

  Builder alone;
  alone.trials(alone.claim("thin", "thick"), 8, 16);
  EXPECT_FALSE(alone.findings().comparisons[0].agreement);
}

TEST(Agreement, OfListenersTogetherIsNotIndependent) {
  Builder builder({"Ada", "Ben"});
  builder.plan().attendance = "together";
  add_overlapping(builder);
  const auto finding = builder.findings().comparisons[0];
  EXPECT_TRUE(finding.agreement->together);
  EXPECT_TRUE(says(finding.cautions, "not independent"));
}

}  // namespace
