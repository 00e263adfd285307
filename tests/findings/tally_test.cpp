#include <gtest/gtest.h>

#include "findings/evidence_builder.h"
#include "refusal.h"

namespace {

using findings::Fate;

TEST(Tally, OneListenersTestIsTheBinomial) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_EQ(finding.primary.tally.score, 12);
  EXPECT_EQ(finding.primary.tally.answers, 16);
  EXPECT_EQ(finding.primary.tally.trials, 16);
  EXPECT_NEAR(finding.primary.p, k12Of16, 1e-15);
  // CI-2: qbeta(.05, 12, 5).
  EXPECT_NEAR(finding.limits.lower, .515603578906, 1e-12);
  EXPECT_FALSE(finding.limits.treats_answers_as_independent);
}

TEST(Tally, ThreeListenersAlwaysAlikeAreOneListener) {
  Builder builder({"Ada", "Ben", "Cleo"});
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_EQ(finding.primary.tally.score, 36);
  EXPECT_EQ(finding.primary.tally.answers, 48);
  EXPECT_EQ(finding.primary.tally.trials, 16);
  EXPECT_NEAR(finding.primary.p, k12Of16,
              1e-15);  // the method's example; the binomial of 36 of 48 would be .0004
  // recomputed: scipy.stats.beta.ppf(.05, 36, 13)
  EXPECT_NEAR(finding.limits.lower, .6266435265701702, 1e-9);
  EXPECT_TRUE(finding.limits.treats_answers_as_independent);
  EXPECT_TRUE(says(finding.cautions, "as if all answers were independent"));
}

/// Eight trials of two listeners, one of them answered by one alone: 12 of 15 answers score.
void add_mixed_trials(Builder& builder, int comparison) {
  for (int i = 0; i < 5; ++i) builder.trial(comparison, {true, true});
  builder.trial(comparison, {true, false});
  builder.trial(comparison, {false, true});
  builder.trial(comparison, {false});
}

TEST(Tally, ListenersWhoDifferAreRedrawnTogether) {
  Builder builder({"Ada", "Ben"});
  add_mixed_trials(builder, builder.claim("thin", "thick"));
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_EQ(finding.primary.tally.score, 12);
  EXPECT_EQ(finding.primary.tally.answers, 15);
  // recomputed: all 2^8 falls of the coins counted in Python for (2,0) or (0,2) five times, (1,1) twice,
  // (0,1).
  EXPECT_DOUBLE_EQ(finding.primary.p, .03125);
}

TEST(Tally, PreferenceIsTwoSidedAndCountsTheFirstCable) {
  Builder builder({"Ada", "Ben"}, "preference");
  add_mixed_trials(builder, builder.claim("thin", "thick"));
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_EQ(finding.primary.tally.score, 12);
  EXPECT_DOUBLE_EQ(finding.primary.p, .0625);  // recomputed as above, two-sided
}

// The two-sided interval contains 1/2 where the two-sided p is above the level.
TEST(Tally, PreferenceHasTheTwoSidedInterval) {
  Builder builder({"Ada"}, "preference");
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  const auto finding = builder.findings().comparisons.at(0);
  // recomputed: SciPy 1.10, scipy.stats.beta.ppf(.025, 12, 5) and beta.ppf(.975, 13, 4)
  for (const findings::Limits& limits : {finding.limits, finding.listeners.at(0).limits}) {
    EXPECT_NEAR(limits.lower, .4762291801038724, 1e-12);
    EXPECT_NEAR(limits.upper, .9273379617471178, 1e-12);
  }
}

TEST(Tally, TheMeaningOfAnAnswerFollowsTheCoin) {
  Builder builder;
  const int claim = builder.claim("thin", "thick");
  auto& first = builder.trial(claim, {true});
  first.coin = 1;
  first.answers = {{0, 1}};
  auto& second = builder.trial(claim, {true});
  second.coin = 1;
  second.answers = {{0, 0}};
  EXPECT_EQ(builder.findings().comparisons.at(0).primary.tally.score, 1);
}

TEST(Tally, OneListenersPrimaryTestLeavesTheOthersOut) {
  Builder builder({"Ada", "Ben"});
  builder.plan().primary_test = "Ben";
  add_mixed_trials(builder, builder.claim("thin", "thick"));
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_EQ(finding.primary.tally.score, 6);
  EXPECT_EQ(finding.primary.tally.answers, 7);
  EXPECT_DOUBLE_EQ(finding.primary.p, 8.0 / 128);  // P(X >= 6 | 7, 1/2) = (7 + 1)/128
  EXPECT_FALSE(finding.limits.treats_answers_as_independent);
}

TEST(Tally, SpoiledTrialsAreLeftOutAndLateOnesCount) {
  Builder builder;
  const int claim = builder.claim("thin", "thick");
  builder.trials(claim, 12, 16);
  auto& trials = builder.evidence.trials.at(0);
  trials[0].fate = Fate::spoiled;        // right
  trials[15].fate = Fate::late_spoiled;  // wrong
  builder.trial(claim, {true}).fate = Fate::not_played;
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_EQ(finding.primary.tally.score, 11);
  EXPECT_EQ(finding.primary.tally.answers, 15);
  EXPECT_EQ(finding.with_spoiled.tally.score, 12);
  EXPECT_EQ(finding.with_spoiled.tally.answers, 16);
  EXPECT_NEAR(finding.with_spoiled.p, k12Of16, 1e-15);
  EXPECT_EQ(finding.without_spoiled.tally.score, 11);
  EXPECT_EQ(finding.without_spoiled.tally.answers, 14);
  EXPECT_EQ(finding.spoiled, 1);
  EXPECT_EQ(finding.late_spoiled, 1);
  EXPECT_TRUE(
      says(finding.cautions, "1 spoiled trial left out; with the answers given in them: 12 of 16, p 0.0384"));
  EXPECT_TRUE(
      says(finding.cautions, "1 trial spoiled too late, counted as answered; without them: 11 of 14"));
}

TEST(Tally, FirstAnswersAreShownOnlyWhenACorrectionChangedOne) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  EXPECT_FALSE(builder.findings().comparisons.at(0).first_answers);

  auto& corrected = builder.evidence.trials.at(0).at(0);
  corrected.first_answers.at(0) = 1 - corrected.answers.at(0);
  const auto finding = builder.findings().comparisons.at(0);
  ASSERT_TRUE(finding.first_answers);
  EXPECT_EQ(finding.first_answers->tally.score, 11);
  EXPECT_EQ(finding.primary.tally.score, 12);
  EXPECT_TRUE(says(finding.cautions, "from the first answers: 11 of 16"));
}

TEST(Tally, AWithdrawnAnswerIsACorrection) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  auto& withdrawn = builder.evidence.trials.at(0).at(0);
  withdrawn.answers.clear();
  withdrawn.missing = {0};
  withdrawn.corrections = {{0, "misheard the number"}};
  const auto all = builder.findings();
  const auto& finding = all.comparisons.at(0);
  ASSERT_TRUE(finding.first_answers);
  EXPECT_EQ(finding.first_answers->tally.answers, 16);
  EXPECT_EQ(finding.first_answers->tally.score, 12);
  EXPECT_EQ(finding.primary.tally.answers, 15);
  EXPECT_EQ(finding.primary.tally.score, 11);
  EXPECT_TRUE(says(all.conditions, "trial 1: answer of Ada withdrawn."));
  EXPECT_FALSE(says(all.conditions, "trial 1: no answer by Ada"));
  EXPECT_TRUE(says(all.conditions, "1 answer corrected before the next trial"));
}

TEST(Tally, MissingAnswersAreCountedAndLeftOut) {
  Builder builder;
  const int claim = builder.claim("thin", "thick");
  builder.trials(claim, 12, 16);
  builder.trial(claim, {}).missing = {0};
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_EQ(finding.primary.tally.answers, 16);
  EXPECT_EQ(finding.missing, 1);
  EXPECT_TRUE(says(finding.cautions, "1 missing answer left out"));
}

TEST(Tally, ASittingThatWasNotHeldDoesNotCount) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  builder.sitting().held = false;
  const auto all = builder.findings();
  EXPECT_EQ(all.comparisons.at(0).primary.tally.answers, 0);
  EXPECT_EQ(all.comparisons.at(0).primary.p, 1);
  EXPECT_TRUE(says(all.cautions, "sitting 1: not held"));
}

TEST(Tally, FarBelowChanceIsACautionAndNoFinding) {
  Builder builder;
  const int claim = builder.claim("thin", "thick");
  builder.trials(claim, 2, 16);  // BIN-4 by symmetry: P(X <= 2) = P(X >= 14) = .00209
  const auto finding = builder.findings().comparisons.at(claim);
  EXPECT_EQ(finding.verdict, findings::Verdict::not_shown);
  EXPECT_TRUE(says(finding.cautions,
                   "far below chance (p 0.0021 of so few right): check whether A and B were exchanged"));

  Builder ordinary;
  ordinary.trials(ordinary.claim("thin", "thick"), 4, 16);  // P(X <= 4) = .0384
  EXPECT_FALSE(says(ordinary.findings().comparisons.at(0).cautions, "far below chance"));
}

TEST(Evidence, ThatContradictsItsPlanIsRefused) {
  const auto refused = [](auto change) {
    Builder builder;
    builder.trials(builder.claim("thin", "thick"), 12, 16);
    change(builder.evidence);
    return refusal([&] { findings::findings_of(builder.evidence); });
  };
  EXPECT_EQ(refused([](auto& evidence) { evidence.trials[0][0].answers[3] = 0; }),
            "evidence: trial 1 of sitting 1: listener must be between 0 and 1 - 1, got 3");
  EXPECT_EQ(refused([](auto& evidence) { evidence.trials[0][0].answers[0] = 2; }),
            "evidence: trial 1 of sitting 1: answer must be between 0 and 2 - 1, got 2");
  EXPECT_EQ(refused([](auto& evidence) { evidence.trials[0][0].corrections[7] = "slip"; }),
            "evidence: trial 1 of sitting 1: corrected listener must be between 0 and 1 - 1, got 7");
  EXPECT_EQ(refused([](auto& evidence) { evidence.trials[0][0].coin = -1; }),
            "evidence: trial 1 of sitting 1: coin must be between 0 and 2 - 1, got -1");
  EXPECT_EQ(refused([](auto& evidence) { evidence.trials[0][0].sitting = 2; }),
            "evidence: trial 1 of sitting 2 belongs to no sitting");
  EXPECT_EQ(refused([](auto& evidence) { evidence.trials.clear(); }),
            "evidence: trials must be given for each of 1 comparisons, got 0");
  EXPECT_EQ(refused([](auto& evidence) { evidence.plan.level = "5 %"; }),
            "level must be a number above 0 and below 1, got \"5 %\"");
  EXPECT_EQ(refused([](auto& evidence) { evidence.plan.primary_test = "Zoe"; }),
            "primary test must be \"pooled\" or a listener's name, got \"Zoe\"");
  EXPECT_EQ(refused([](auto& evidence) { evidence.plan.level_tolerance_db = "tight"; }),
            "level_tolerance_db must be a number, got \"tight\"");
  EXPECT_EQ(refused([](auto& evidence) {
              evidence.levels.push_back({1, 9, "mono", "start", 0});
            }),
            "evidence: specimen of a terminal level must be between 0 and 2 - 1, got 9");
}

}  // namespace
