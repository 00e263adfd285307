#include "plan/requirement.h"

#include <gtest/gtest.h>

#include "plan/sample_plan.h"
#include "refusal.h"

namespace plan {
namespace {

// How many of 16 trials must be right at the family's first step: 12 for one comparison, 14 for 7, 15 for 31.
// Recomputed: Python, the smallest k with sum(comb(16, i) for i in range(k, 17)) / 2**16 <= .05 / m.
TEST(Requirements, SixteenTrialsAtTheFirstStepOfTheFamily) {
  const struct { int comparisons, needed; } rows[] = {{1, 12}, {7, 14}, {31, 15}};
  for (const auto& row : rows) {
    const auto list = requirements(sample_plan("abx", row.comparisons));
    ASSERT_EQ(list.size(), static_cast<std::size_t>(row.comparisons));
    for (const Requirement& requirement : list) {
      EXPECT_EQ(requirement.trials, 16);
      EXPECT_EQ(requirement.answers, 48);
      EXPECT_EQ(requirement.needed_trials, row.needed) << row.comparisons;
      EXPECT_DOUBLE_EQ(requirement.level, 0.05 / row.comparisons);
    }
  }
}

// Recomputed: Python, 2 * sum(comb(16, i) for i in range(k, 17)) / 2**16 is .0213 for 13 and .0768 for 12.
TEST(Requirements, PreferenceIsTestedBothWays) {
  EXPECT_EQ(requirements(sample_plan("preference", 1)).front().needed_trials, 13);
}

TEST(Requirements, ControlsAreInNoFamily) {
  Plan plan = sample_plan("abx", 8);
  plan.comparisons.back().kind = Kind::known_difference;
  EXPECT_EQ(family_size(plan), 7);
  const auto list = requirements(plan);
  EXPECT_EQ(list.front().needed_trials, 14);
  EXPECT_DOUBLE_EQ(list.back().level, 0.05);
  EXPECT_EQ(list.back().needed_trials, 12);
}

TEST(Requirements, SeveralSittingsAddUpAndOneListenersTestCountsOnlyWhereTheyAttend) {
  Plan plan = sample_plan("abx", 1, 8);
  plan.sittings.push_back({{0}, 10, {1, 2}});
  EXPECT_EQ(requirements(plan).front().trials, 18);
  EXPECT_EQ(requirements(plan).front().answers, 8 * 3 + 10 * 2);
  plan.primary_test = "ann";
  EXPECT_EQ(requirements(plan).front().trials, 8);
  EXPECT_EQ(requirements(plan).front().answers, 8);
  EXPECT_EQ(requirements(plan).front().needed_trials, 7);  // recomputed: Python, (8 + 1) / 2**8 = .0352
}

TEST(Requirements, APlanThatCouldNeverSucceedIsRefused) {
  EXPECT_EQ(
      refusal([] { refuse_hopeless(sample_plan("abx", 1, 4)); }),
      "plan: heavy-pair / cable-1 could not be supported with every answer right: 4 trials cannot reach the "
      "level "
      "0.0500 that the family's first step needs\ngive it at least 5 trials, or plan fewer comparisons");
  EXPECT_EQ(refusal([] { refuse_hopeless(sample_plan("preference", 7, 7)); }),
            "plan: heavy-pair / cable-1 could not be supported with every answer for one cable: 7 trials "
            "cannot reach "
            "the level 0.00714 that the family's first step needs\ngive it at least 9 trials, or plan fewer "
            "comparisons");
  Plan control = sample_plan("abx", 2, 5);
  control.comparisons[0].kind = Kind::known_difference;
  control.sittings = {{{0}, 3, {0}}, {{1}, 5, {0}}};
  EXPECT_EQ(refusal([&] { refuse_hopeless(control); }),
            "plan: heavy-pair / cable-1 could not be supported with every answer right: 3 trials cannot "
            "reach the level "
            "0.0500 of a control\ngive it at least 5 trials");
  EXPECT_NO_THROW(refuse_hopeless(sample_plan("abx", 1, 5)));
  EXPECT_NO_THROW(refuse_hopeless(sample_plan("preference", 7, 9)));
}

TEST(Requirements, OfAListenerWhoNeverAttendsAreRefused) {
  Plan plan = sample_plan();
  plan.primary_test = "cid";
  plan.sittings[0].listeners = {0, 1};
  EXPECT_EQ(requirements(plan).front().trials, 0);
  EXPECT_THROW(refuse_hopeless(plan), std::exception);
}

TEST(Requirements, LevelsAreNumbersWithinZeroAndOne) {
  Plan plan = sample_plan();
  plan.level = "5 %";
  EXPECT_EQ(refusal([&] { requirements(plan); }), "level must be a number above 0 and below 1, got \"5 %\"");
}

TEST(Minutes, CountPresentationsAndTheBreaksBetweenBlocks) {
  Plan plan = sample_plan("abx", 2, 16);  // 32 trials, 3 presentations, 45 s; breaks after 12 and 24
  EXPECT_DOUBLE_EQ(minutes_of(plan, 1), 32 * 3 * 45 / 60.0 + 20);
  plan.block_trials = 32;
  EXPECT_DOUBLE_EQ(minutes_of(plan, 1), 72);
  EXPECT_DOUBLE_EQ(minutes_of(sample_plan("preference", 1, 12), 1), 12 * 2 * 45 / 60.0);
  EXPECT_EQ(refusal([&] { minutes_of(plan, 2); }), "sitting must be 1 to 1, got 2");
}

// 31 comparisons of 16 ABX trials at 90 s a presentation: 37 hours of playing. By hand: 31 * 16 * 3 * 90 / 3600 = 37.2.
TEST(Minutes, OfAWholeCampaign) {
  Plan plan = sample_plan("abx", 31, 16);
  plan.presentation_seconds = 60;
  plan.break_minutes = 0;
  EXPECT_DOUBLE_EQ(minutes_of(plan, 1) / 60, 37.2);
}

}  // namespace
}  // namespace plan
