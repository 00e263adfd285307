// Findings of a plan that looks at the answers as they come. Values recomputed: recursions and bisection in plain Python,
// for looks after 8, 16 and 24 trials with Pocock spending of 0.05, whose bounds are 8, 13 and 17.
#include <gtest/gtest.h>

#include "findings/evidence_builder.h"
#include "findings/listening/tally.h"
#include "plan/looks.h"

namespace {

Builder looked_at(std::vector<std::string> listeners = {"Ada"}) {
  Builder builder(std::move(listeners));
  builder.plan().stopping_rule = plan::rule_text({{8, 16, 24}, stats::Spending::pocock});
  builder.plan().sittings.front().trials_each = 24;
  return builder;
}

TEST(LookedAtFindings, AreSupportedWhereALookStoppedThem) {
  Builder builder = looked_at();
  builder.trials(builder.claim("thin", "thick"), 13, 16);
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_EQ(finding.verdict, findings::Verdict::supported);
  EXPECT_EQ(finding.stopped_after, 16);
  EXPECT_NEAR(finding.primary.p, 860.0 / 65536, 1e-15);
  EXPECT_NEAR(finding.limits.lower, .5762361230, 5.1e-9);
  EXPECT_NEAR(finding.limits.upper, .9448278601, 5.1e-9);
  EXPECT_NE(finding.sentence.find("A look stopped it after 16 of 24 trials"), std::string::npos)
      << finding.sentence;
}

// What sittings like these would have caught is a matter of the design, not of where a look happened to stop them.
TEST(LookedAtFindings, CatchAsPlannedWhereverTheyStopped) {
  Builder builder = looked_at();
  builder.trials(builder.claim("thin", "thick"), 13, 16);
  const auto caught = builder.findings().comparisons.at(0).would_have_been_caught;
  EXPECT_EQ(caught.trials, 24);
  EXPECT_EQ(caught.answers, 24);
  EXPECT_EQ(caught.needed, 17);
  EXPECT_NEAR(*caught.share, .7574908302, 5.1e-9);
  ASSERT_EQ(caught.at_looks.size(), 3u);
  const int trials[] = {8, 16, 24}, needed[] = {8, 13, 17};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(caught.at_looks[i].trials, trials[i]);
    EXPECT_EQ(caught.at_looks[i].answers, trials[i]);
    EXPECT_EQ(caught.at_looks[i].needed, needed[i]);
  }
}

// One listener of a pooled plan gave the answers that were looked at, so their own p pays for the looks too.
TEST(LookedAtFindings, PayForTheLooksOfAnOnlyListenerToo) {
  Builder builder = looked_at();
  builder.plan().primary_test = "pooled";
  builder.trials(builder.claim("thin", "thick"), 16, 24);
  const auto finding = builder.findings().comparisons.at(0);
  ASSERT_EQ(finding.listeners.size(), 1u);
  EXPECT_NEAR(finding.primary.p, .0785257220, 5.1e-11);
  EXPECT_NEAR(finding.listeners.front().tested.p, .0785257220, 5.1e-11);
}

TEST(LookedAtFindings, PayForTheLooksAtTheEnd) {
  Builder builder = looked_at();
  builder.trials(builder.claim("thin", "thick"), 16, 24);
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_EQ(finding.stopped_after, std::nullopt);
  EXPECT_NEAR(finding.primary.p, .0785257220, 5.1e-11);  // 16 of 24 alone: 0.0758
  EXPECT_EQ(finding.would_have_been_caught.needed, 17);
  EXPECT_NEAR(*finding.would_have_been_caught.share, .7574908302, 5.1e-9);
}

// Two who always agree are one listener; the limits take their answers for independent ones and say so.
TEST(LookedAtFindings, PoolByTheRedraw) {
  Builder builder = looked_at({"Ada", "Ben"});
  builder.trials(builder.claim("thin", "thick"), 13, 16);
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_NEAR(finding.primary.p, 860.0 / 65536, 1e-15);
  EXPECT_TRUE(finding.limits.treats_answers_as_independent);
  EXPECT_GT(finding.limits.lower, .5762361230) << "twice the answers";
}

TEST(LookedAtFindings, LeaveControlsAsTheyAre) {
  Builder builder = looked_at();
  const int control = builder.comparison(Builder::specimen("thin"), Builder::specimen("thin", "0.22"),
                                         plan::Kind::known_difference);
  builder.trials(control, 16, 24);
  builder.trials(builder.claim("thin", "thick"), 13, 16);
  const auto finding = builder.findings().comparisons.at(0);
  EXPECT_NEAR(finding.primary.p, .0757948160, 5.1e-11);  // pbinom(15, 24, .5, lower.tail = FALSE)
  EXPECT_EQ(finding.stopped_after, std::nullopt);
}

}  // namespace
