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
  EXPECT_NEAR(of_first(all).spread->test.p, 34.0 / 70, 1e-14);
  // By hand: Ada's sum is 9 of 6 to 9, Ben's 4 of 1 to 4; 13 is the largest of 16 sums, 7 the smallest.
  EXPECT_TRUE(of_first(all).drift->late);
  EXPECT_NEAR(of_first(all).drift->test.p, 2.0 / 16, 1e-14);
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
}

// By hand: surest A twice where it was A, surest B twice where it was B: area 1, 2 of 6 divisions as extreme.
TEST(Exploration, RatesSurenessWhereItWasTold) {
  Builder builder;
  const int claim = builder.claim("thin", "thick");
  for (int i = 0; i < 4; ++i) builder.trial(claim, {true}).sureness[0] = i < 2 ? "certain" : "fairly sure";
  builder.trial(claim, {false});
  const auto all = builder.findings();
  const auto& sureness = of_first(all).listeners.at(0).sureness;
  ASSERT_TRUE(sureness);
  EXPECT_EQ(sureness->rated, 4);
  EXPECT_EQ(sureness->area, 1);
  EXPECT_NEAR(sureness->test.p, 2.0 / 6, 1e-14);
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
  EXPECT_EQ(listener.answers_a, 2);
  EXPECT_EQ(listener.bias_p, 1);
  EXPECT_EQ(listener.swap_time->difference_s, 10);
  EXPECT_NEAR(listener.swap_time->test.p, 2.0 / 6, 1e-14);
}

TEST(Exploration, OfAPreferenceIsItsAgreementAlone) {
  Builder builder({"Ada", "Ben"}, "preference");
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  const auto all = builder.findings();
  EXPECT_TRUE(of_first(all).listeners.empty());
  EXPECT_FALSE(of_first(all).spread);
  EXPECT_FALSE(of_first(all).drift);
  EXPECT_EQ(of_first(all).ac1, 1) << "both always agree";
}

}  // namespace
