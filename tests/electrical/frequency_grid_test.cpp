#include "electrical/frequency_grid.h"

#include <gtest/gtest.h>

#include <cmath>

#include "electrical/refusal.h"

using electrical::log_spaced;

TEST(LogSpaced, RisesInEqualRatiosAndHitsBothEndsExactly) {
  const auto grid = log_spaced(electrical::kAudioBand, 2001);
  ASSERT_EQ(grid.size(), 2001u);
  EXPECT_EQ(grid.front(), 20);
  EXPECT_EQ(grid.back(), 20000);
  for (std::size_t i = 1; i < grid.size(); ++i) {
    EXPECT_NEAR(grid[i] / grid[i - 1], std::pow(1000, 1.0 / 2000), 1e-14) << i;
  }
}

// The exact centres listed beside the weightings: 19.9526, 31.6228, 1000, 19952.6231. recomputed.
TEST(ThirdOctaves, StandAtTheExactCentres) {
  const auto centres = electrical::third_octave_centres_hz();
  ASSERT_EQ(centres.size(), 31u);
  EXPECT_NEAR(centres.front(), 19.9526, 5e-5);
  EXPECT_NEAR(centres[2], 31.6228, 5e-5);
  EXPECT_EQ(centres[17], 1000);
  EXPECT_NEAR(centres.back(), 19952.6231, 5e-5);
}

TEST(Overlap, IsTheCommonPart) {
  const auto common = electrical::overlap({30, 40000}, electrical::kAudioBand);
  EXPECT_EQ(common.low_hz, 30);
  EXPECT_EQ(common.high_hz, 20000);
  EXPECT_EQ(electrical::overlap(electrical::kEveryFrequency, {30, 50}).high_hz, 50);
  EXPECT_EQ(electrical::common_band({20, 40}, {30, 50})->low_hz, 30);
  EXPECT_FALSE(electrical::common_band({20, 30}, {30, 50}));
}

TEST(FrequencyGrid, RefusesImpossibleBandsAndNumbers) {
  EXPECT_EQ(refusal([] { log_spaced({0, 20000}, 10); }), "low_hz must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] {
              log_spaced({20, INFINITY}, 10);
            }),
            "high_hz must be a finite number above 0, got inf");
  EXPECT_EQ(refusal([] { log_spaced({20, 20}, 10); }), "a band must rise from low to high, got 20 to 20 Hz");
  EXPECT_EQ(refusal([] { log_spaced({20, 20000}, 1); }), "points must be from 2 to 1e+07, got 1");
  EXPECT_EQ(refusal([] {
              electrical::overlap({20, 30}, {30, 50});
            }),
            "two bands must overlap, got 20 to 30 Hz and 30 to 50 Hz");
  EXPECT_EQ(refusal([] { electrical::third_octave_centre_hz(31); }),
            "third-octave number must be from -30 to 30, got 31");
}
