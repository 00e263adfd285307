// What else the answers show. Values recomputed: tests/independent/exploration.py, in plain Python, which computes them for
// the example's report as well.
#include <gtest/gtest.h>

#include <cmath>

#include "findings/evidence_builder.h"

namespace {

using findings::Exploration;

const Exploration& of_first(const findings::Findings& findings) {
  return findings.comparisons.at(0).exploration;
}

// DP-2, recomputed: psyphy; interval: profile likelihood, R uniroot.
TEST(Exploration, HasADPrimeForEachListener) {
  Builder builder({"Ada", "Ben"});
  const int claim = builder.claim("thin", "thick");
  for (int i = 0; i < 16; ++i) builder.trial(claim, {i < 12, true});
  const auto all = builder.findings();
  const auto& listeners = of_first(all).listeners;
  ASSERT_EQ(listeners.size(), 2u);
  EXPECT_NEAR(listeners[0].d_prime, 2.02003919, 5.1e-6);
  EXPECT_NEAR(listeners[0].d_prime_lower, 0.348438, 5.1e-7);
  EXPECT_NEAR(listeners[0].d_prime_upper, 3.45612, 5.1e-6);
  EXPECT_TRUE(std::isinf(listeners[1].d_prime));
  EXPECT_TRUE(std::isinf(listeners[1].d_prime_upper));
  EXPECT_GT(listeners[1].d_prime_lower, 3);
  EXPECT_EQ(listeners[0].d_prime_remark, "");
  EXPECT_EQ(listeners[1].d_prime_remark, "infinite: every answer was right");
}

// By hand: the upper likelihood limit of 0 of 16 is 1 - exp(-1.92/16), below chance.
TEST(Exploration, SaysWhereNoDPrimeFits) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 0, 16);
  const auto all = builder.findings();
  EXPECT_EQ(of_first(all).listeners.at(0).d_prime_remark, "0: so few right that no d' fits");
}

// By hand: 3 of 4 and 1 of 4: given 4 right of 8, (16 + 16 + 2) of 70 ways differ as much.
TEST(Exploration, SaysWhetherListenersDifferAndRightAnswersDrift) {
  Builder builder({"Ada", "Ben"});
  const int claim = builder.claim("thin", "thick");
  builder.trial(claim, {false, false});
  builder.trial(claim, {true, false});
  builder.trial(claim, {true, false});
  builder.trial(claim, {true, true});
  const auto all = builder.findings();
  EXPECT_NEAR(of_first(all).spread->test.value().p, 34.0 / 70, 1e-14);
  EXPECT_EQ(of_first(all).spread->sentence,
            "That the listeners differ is not shown; with so few of them that is no licence to pool.");
  // By hand: Ada's sum is 9 of 6 to 9, Ben's 4 of 1 to 4; 13 is the largest of 16 sums, 7 the smallest.
  EXPECT_EQ(of_first(all).drift->sum, 13);
  EXPECT_EQ(of_first(all).drift->expected, 10);
  EXPECT_NEAR(of_first(all).drift->test.p, 2.0 / 16, 1e-14);
}

// By hand: 2 of the 70 placements of 4 right among 8 are as far out, 2 of the 20 of 3 among 6.
TEST(Exploration, SaysOfADriftWhichWayOnlyWhereItIsShown) {
  const auto sentence = [](int wrong_first, int right_last, bool turned) {
    Builder builder;
    const int claim = builder.claim("thin", "thick");
    for (int i = 0; i < wrong_first + right_last; ++i) builder.trial(claim, {(i >= wrong_first) != turned});
    return of_first(builder.findings()).drift->sentence;
  };
  EXPECT_EQ(sentence(4, 4, false), "Right answers come later.");
  EXPECT_EQ(sentence(4, 4, true), "Right answers come earlier.");
  EXPECT_EQ(sentence(3, 3, false), "Fatigue or learning not shown.");
  EXPECT_EQ(sentence(0, 8, false), "Fatigue or learning not shown.");
}

// By hand: 16 and 0 of 16 differ as no other division of 16 right over 32 does; 16 and 16 cannot.
TEST(Exploration, SaysOfListenersThatTheyDifferOnlyWhereTheyDo) {
  const auto spread = [](bool second_right) {
    Builder builder({"Ada", "Ben"});
    const int claim = builder.claim("thin", "thick");
    for (int i = 0; i < 16; ++i) builder.trial(claim, {true, second_right});
    return of_first(builder.findings()).spread.value();
  };
  EXPECT_EQ(spread(false).sentence, "The listeners differ in their share right.");
  EXPECT_NEAR(spread(false).test.value().p, 2 / 601080390.0, 1e-20) << "of choose(32, 16) ways";
  EXPECT_FALSE(spread(true).test);
  EXPECT_EQ(spread(true).sentence, "Not computed: every answer was right, or every answer wrong.");
}

// Two who answer alike are one: taken for independent they would drift with a true size of .174 at .05.
TEST(Exploration, DoesNotTakeListenersWhoShareTrialsForIndependent) {
  Builder builder({"Ada", "Ben"});
  builder.plan().attendance = "together";
  builder.trials(builder.claim("thin", "thick"), 8, 16);
  const auto all = builder.findings();
  EXPECT_EQ(of_first(all).listeners.size(), 2u);
  EXPECT_FALSE(of_first(all).spread);
  EXPECT_FALSE(of_first(all).drift);
  EXPECT_TRUE(says(of_first(all).remarks, "shared their trials"));
}

// By hand: surest A twice where it was A, surest B twice where it was B: area 1, 2 of 6 divisions as extreme.
TEST(Exploration, RatesSurenessWhereItWasTold) {
  Builder builder;
  const int claim = builder.claim("thin", "thick");
  for (int i = 0; i < 4; ++i) builder.trial(claim, {true}).sureness[0] = i < 2 ? "certain" : "fairly sure";
  builder.trial(claim, {false});
  const auto all = builder.findings();
  const auto& listener = of_first(all).listeners.at(0);
  EXPECT_EQ(listener.rated, 4);
  ASSERT_TRUE(listener.roc);
  EXPECT_EQ(listener.roc->area, 1);
  EXPECT_NEAR(listener.roc->test.p, 2.0 / 6, 1e-14);
  EXPECT_FALSE(listener.surer_when_right) << "no wrong answer has a level";
  EXPECT_TRUE(says(of_first(all).remarks, "1 answer without a level left out"));
}

// By hand: right twice and certain, wrong twice and a guess: 2 of 6 divisions as extreme; all alike sure: area 1/2.
TEST(Exploration, AsksWhetherRightAnswersAreSurer) {
  const auto surer = [](const char* when_wrong) {
    Builder builder;
    const int claim = builder.claim("thin", "thick");
    for (int i = 0; i < 4; ++i) builder.trial(claim, {i < 2}).sureness[0] = i < 2 ? "certain" : when_wrong;
    return of_first(builder.findings()).listeners.at(0).surer_when_right.value();
  };
  EXPECT_EQ(surer("guess").area, 1);
  EXPECT_NEAR(surer("guess").test.p, 2.0 / 6, 1e-14);
  EXPECT_EQ(surer("certain").area, 0.5);
  EXPECT_EQ(surer("certain").test.p, 1);
}

TEST(Exploration, RefusesSurenessOfNobody) {
  Builder builder;
  builder.trial(builder.claim("thin", "thick"), {true}).sureness[1] = "guess";
  EXPECT_THROW(builder.findings(), std::domain_error);
}

// R: binom.test(13, 16)$p.value .02127075, = 2 * 697/65536; by comparison 8 of 8 and 5 of 8.
TEST(Exploration, AddsUpEachListenersOwnAnswersOverComparisons) {
  Builder builder({"Ada", "Ben"});
  for (int comparison = 0; comparison < 2; ++comparison) {
    const int claim = builder.claim("thin", "thick");
    for (int i = 0; i < 8; ++i) {
      auto& trial = builder.trial(claim, {true});  // Ben answers nothing
      trial.answers[0] = trial.first_answers[0] = comparison == 1 && i < 3;
    }
  }
  const auto all = builder.findings();
  ASSERT_EQ(all.answer_shares.size(), 1u);
  EXPECT_EQ(all.answer_shares[0].answers_a, 13);
  EXPECT_EQ(all.answer_shares[0].answers, 16);
  EXPECT_NEAR(all.answer_shares[0].p, 2 * 697.0 / 65536, 1e-15);
}

TEST(Exploration, SaysWhyThereIsNothing) {
  Builder builder;
  const int claim = builder.claim("thin", "thick");
  builder.claim("thin", "long");
  for (int i = 0; i < 4; ++i) builder.trial(claim, {true}).started_s.clear();
  const auto all = builder.findings();
  EXPECT_TRUE(says(of_first(all).remarks, "How sure listeners were was not recorded."));
  EXPECT_TRUE(says(of_first(all).remarks, "When presentations started was not recorded"));
  EXPECT_TRUE(says(all.comparisons.at(1).exploration.remarks, "Nobody answered."));
}

TEST(Exploration, ComparesTheTimeBeforeXByAnswer) {
  Builder builder;
  const int claim = builder.claim("thin", "thick");
  for (int i = 0; i < 4; ++i) {
    auto& trial = builder.trial(claim, {true});  // answers A, B, A, B
    trial.started_s = {0.0, 45.0, i % 2 == 0 ? 100.0 : 90.0};
  }
  const auto all = builder.findings();
  const auto& listener = of_first(all).listeners.at(0);
  EXPECT_EQ(listener.bias.answers_a, 2);
  EXPECT_EQ(listener.bias.p, 1);
  EXPECT_EQ(listener.timed, 4);
  EXPECT_EQ(listener.swap_time->mean_a_s, 55);
  EXPECT_EQ(listener.swap_time->mean_b_s, 45);
  EXPECT_EQ(listener.swap_time->difference_s, 10);
  EXPECT_NEAR(listener.swap_time->test.p, 2.0 / 6, 1e-14);
}

TEST(Exploration, OfAPreferenceIsItsAgreementAlone) {
  Builder builder({"Ada", "Ben"}, "preference");
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  const auto all = builder.findings();
  EXPECT_TRUE(all.answer_shares.empty());
  EXPECT_TRUE(of_first(all).listeners.empty());
  EXPECT_FALSE(of_first(all).spread);
  EXPECT_FALSE(of_first(all).drift);
  EXPECT_EQ(of_first(all).ac1, 1) << "both always agree";
}

}  // namespace
