#include "hearing/trim.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "electrical/refusal.h"
#include "hearing/exposure_limit.h"

using hearing::trims;

TEST(Trims, BringEveryCableDownToTheQuietest) {
  const double levels[] = {-0.7, -0.1, 0};
  const auto result = trims(levels, 0.5);
  ASSERT_EQ(result.size(), 3u);
  EXPECT_EQ(result[0].steps, 0);
  EXPECT_EQ(result[1].steps, 1);
  EXPECT_EQ(result[2].steps, 1);
  EXPECT_EQ(result[2].attenuation_db, 0.5);
  EXPECT_NEAR(result[1].level_db, -0.6, 1e-15);
  const auto pairs = hearing::remaining_differences(result);
  ASSERT_EQ(pairs.size(), 3u);
  EXPECT_NEAR(pairs[0].difference_db, -0.1, 1e-15);
  EXPECT_NEAR(pairs[1].difference_db, -0.2, 1e-15);
  EXPECT_EQ(pairs[2].first, 1u);
  EXPECT_EQ(pairs[2].second, 2u);
  EXPECT_NEAR(pairs[2].difference_db, -0.1, 1e-15);
}

TEST(Trims, TakeTheSmallerNumberAtAnExactHalf) {
  const double levels[] = {0, 0.25, 0.75};
  const auto result = trims(levels, 0.5);
  EXPECT_EQ(result[1].steps, 0);
  EXPECT_EQ(result[2].steps, 1);
}

TEST(Trims, NeverBoostAndLeaveAtMostHalfAStep) {
  for (const double step_db : {0.001, 0.1, 0.25, 0.5, 1.0, 3.0}) {
    std::vector<double> levels;
    for (int i = 0; i < 40; ++i) levels.push_back(-3 * std::abs(std::sin(i * 1.7)));
    const double quietest = *std::min_element(levels.begin(), levels.end());
    for (const auto& trim : trims(levels, step_db)) {
      EXPECT_GE(trim.steps, 0);
      EXPECT_LE(std::abs(trim.level_db - quietest), step_db / 2 + 1e-12);
    }
  }
}

TEST(Trims, AStepOfZeroLeavesEveryLevelAsItIs) {
  const double levels[] = {-0.7, -0.1};
  const auto result = trims(levels, 0);
  EXPECT_EQ(result[1].steps, 0);
  EXPECT_EQ(result[1].attenuation_db, 0);
  EXPECT_EQ(result[1].level_db, -0.1);
  EXPECT_NEAR(hearing::remaining_differences(result)[0].difference_db, -0.6, 1e-15);
}

TEST(Trims, RefuseImpossibleStepsAlsoForOneCable) {
  const double one[] = {-0.7};
  EXPECT_EQ(refusal([&] { trims(one, -0.5); }),
            "step_db (or 0, no trim possible) must be from 0.001 to 20, got -0.5");
  EXPECT_EQ(refusal([&] { trims(one, 1e-6); }),
            "step_db (or 0, no trim possible) must be from 0.001 to 20, got 1e-06");
  EXPECT_EQ(refusal([&] { trims(one, std::numeric_limits<double>::quiet_NaN()); }),
            "step_db (or 0, no trim possible) must be from 0.001 to 20, got nan");
  EXPECT_EQ(refusal([] { trims({}, 0.5); }), "trims need at least one level, got none");
  const double endless[] = {-0.7, std::numeric_limits<double>::infinity()};
  EXPECT_EQ(refusal([&] { trims(endless, 0.5); }), "level_db must be from -1000 to 1000, got inf");
}

// Y1: NIOSH REL (read); 103 dBA by the formula. recomputed.
TEST(ExposureLimit, ADayHalvesPerThreeDecibels) {
  struct Row {
    double dba, minutes;
  };
  constexpr Row kRows[] = {{85, 480}, {88, 240}, {91, 120}, {94, 60}, {97, 30}, {100, 15}, {103, 7.5}};
  for (const Row& row : kRows) EXPECT_DOUBLE_EQ(hearing::permitted_minutes_a_day(row.dba), row.minutes);
}

// Y2: ITU-T H.870 (read in a secondary copy); other levels by equal energy. recomputed.
TEST(ExposureLimit, AWeekIsOfEqualEnergy) {
  EXPECT_DOUBLE_EQ(hearing::permitted_hours_a_week(80), 40);
  EXPECT_NEAR(hearing::permitted_hours_a_week(85), 12.649111, 5.1e-7);
  EXPECT_NEAR(hearing::permitted_hours_a_week(90), 4, 1e-14);
  EXPECT_NEAR(hearing::permitted_hours_a_week(100), 0.4, 1e-15);
}

TEST(ExposureLimit, RefusesImpossibleLevels) {
  EXPECT_EQ(refusal([] { hearing::permitted_minutes_a_day(141); }),
            "level_dba must be from 0 to 140, got 141");
  EXPECT_EQ(refusal([] { hearing::permitted_hours_a_week(-1); }), "level_dba must be from 0 to 140, got -1");
}
