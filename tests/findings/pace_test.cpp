#include <gtest/gtest.h>

#include "findings/evidence_builder.h"

namespace {

/// Trials A B X whose X follows B by so many seconds, with the same cable again or not.
void add(Builder& builder, int claim, bool same, const std::vector<double>& seconds) {
  for (const double after : seconds) {
    auto& trial = builder.trial(claim, {true});
    trial.sides = {0, 1, same ? 1 : 0};
    trial.started_s = {0.0, 40.0, 40.0 + after};
  }
}

TEST(Pace, ComparesTheSameCableAgainWithAChange) {
  Builder builder;
  const int claim = builder.claim("thin", "thick");
  add(builder, claim, true, {12, 15, 18, 20});
  add(builder, claim, false, {21, 25, 28});
  const auto all = builder.findings();
  EXPECT_TRUE(all.pace.recorded);
  EXPECT_EQ(all.pace.same, 4);
  EXPECT_EQ(all.pace.changed, 3);  // B after A always changes and is not compared
  EXPECT_DOUBLE_EQ(all.pace.mean_same_s, 16.25);
  EXPECT_NEAR(all.pace.mean_changed_s, 74.0 / 3, 1e-12);
  EXPECT_NEAR(*all.pace.difference_s, 8.416666666666668, 1e-12);
  EXPECT_NEAR(*all.pace.p, 2.0 / 35, 1e-12);  // CO-7
  // recomputed: Welch's formula in SciPy 1.10, scipy.stats.t.ppf(.975, df)
  EXPECT_NEAR(*all.pace.lower_s, 1.2650095892460786, 1e-9);
  EXPECT_NEAR(*all.pace.upper_s, 15.568323744087257, 1e-9);
  EXPECT_FALSE(says(all.cautions, "the pace may have told them"));  // p above .05
}

TEST(Pace, ThatTellsIsACaution) {
  Builder builder;
  const int claim = builder.claim("thin", "thick");
  add(builder, claim, true, {12, 15, 18, 20});
  add(builder, claim, false, {21, 25, 28, 29});  // complete separation: 2/70
  EXPECT_TRUE(says(builder.findings().cautions,
                   "a change of cable took 9.5 s longer than the same cable again (p 0.0286): the pace may "
                   "have told them"));
}

TEST(Pace, OverrunsAreCounted) {
  Builder builder;
  const int claim = builder.claim("thin", "thick");
  add(builder, claim, true, {48, 49});  // the plan allows 30 s + 15 s, and 3 s for reading a clock
  const auto all = builder.findings();
  EXPECT_EQ(all.pace.overruns, 1);
  EXPECT_FALSE(all.pace.p);
  EXPECT_TRUE(says(all.cautions, "1 presentation began later than the plan's pace allows"));
}

TEST(Pace, WithoutTimesIsNotRecorded) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 8, 16);
  EXPECT_FALSE(says(builder.findings().cautions, "pace not recorded"));
  for (auto& trial : builder.evidence.trials[0]) trial.started_s.assign(3, std::nullopt);
  const auto all = builder.findings();
  EXPECT_FALSE(all.pace.recorded);
  EXPECT_TRUE(says(all.cautions, "sitting 1: pace not recorded"));
  EXPECT_TRUE(says(all.conditions, "Sitting 1: pace not recorded."));
}

}  // namespace
