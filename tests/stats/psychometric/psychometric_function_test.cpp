#include "stats/psychometric/psychometric_function.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/csv.h"
#include "stats/refusal.h"

namespace stats {
namespace {

std::vector<LevelCount> synthetic() {
  std::vector<LevelCount> counts;
  for (const CsvRow& row : check_values("psychometric_2afc_synthetic.csv"))
    counts.push_back({row.number("level"), row.whole("correct"), row.whole("n")});
  return counts;
}

// PF-1, recomputed: R, glm(cbind(k, 40 - k) ~ x, binomial(psyphy::mafc.probit(2))), epsilon 1e-14.
TEST(PsychometricFunctions, OfSyntheticAnswers) {
  const auto found = psychometric_function(synthetic(), {.link = CurveLink::probit});
  ASSERT_EQ(found.state, CurveState::found);
  EXPECT_NEAR(found.intercept.value(), -.5256690391, 2e-9);  // R's last step is off by 1e-9
  EXPECT_NEAR(found.slope.value(), .8738364508, 2e-9);
  EXPECT_NEAR(found.expected_error->intercept, .3100493757, 5e-9);
  EXPECT_NEAR(found.expected_error->slope, .2031458806, 5e-9);
  EXPECT_NEAR(found.expected_error->covariance, -.04795442153, 5e-9);
  EXPECT_NEAR(found.observed_error->intercept, .3249158376811, 2e-9);  // R, by the second derivatives
  EXPECT_NEAR(found.observed_error->slope, .2145054495255, 2e-9);
  EXPECT_NEAR(found.deviance.value(), 1.0774156822, 5.1e-11);
  EXPECT_EQ(found.degrees_of_freedom, 4);
  EXPECT_NEAR(found.log_likelihood, -9.9808027609, 5.1e-11);
  EXPECT_NEAR(found.pearson.value(), .7439583529, 2e-9);
  EXPECT_NEAR(found.threshold.value(), .6015645589, 2e-9);
  EXPECT_NEAR(found.expected_error->threshold, .2643723454, 5e-9);
  ASSERT_TRUE(found.threshold_interval);
  // By other searches: tests/reference/psychometric.R.
  EXPECT_NEAR(found.threshold_interval->lower, .03439844, 2e-8);
  EXPECT_NEAR(found.threshold_interval->upper, 1.11495968, 2e-8);
  EXPECT_NEAR(found.slope_lower.value(), .53812001, 2e-8);
  EXPECT_GT(found.slope_upper.value(), 1.2);
  EXPECT_FALSE(found.threshold_beyond_levels);
  EXPECT_LT(found.flat_p, 1e-10);
}

// With guesses the likelihood may have several peaks: here at slopes of -1.42 and -3.59. Source: R, the best of
// optim's searches from 30 places, tests/reference/psychometric.R.
TEST(PsychometricFunctions, AreTheHighestOfTwoPeaks) {
  const std::vector<LevelCount> counts{{-1.7547, 17, 17}, {-1.3946, 17, 17}, {-.3776, 16, 17},
                                       {-.0684, 13, 17},  {1.0559, 11, 17},  {2.3832, 7, 17},
                                       {3.2442, 7, 17}};
  const auto found = psychometric_function(counts, {.link = CurveLink::probit});
  EXPECT_NEAR(found.threshold.value(), -.04760981, 2e-7);
  EXPECT_NEAR(found.log_likelihood, -8.64606419644, 1e-9);
}

TEST(PsychometricFunctions, DoNotDependOnUnitsOrDirection) {
  const auto one = psychometric_function(synthetic());
  auto counts = synthetic();
  for (LevelCount& count : counts) count.level = 1000 - 0.001 * count.level;
  const auto other = psychometric_function(counts);
  EXPECT_NEAR(other.threshold.value(), 1000 - 0.001 * *one.threshold, 1e-9);
  EXPECT_NEAR(other.threshold_interval->upper, 1000 - 0.001 * one.threshold_interval->lower, 1e-9);
  EXPECT_NEAR(other.slope.value(), -1000 * *one.slope, 1e-4);
  EXPECT_NEAR(other.slope_lower.value(), -1000 * *one.slope_upper, 0.01);
  EXPECT_NEAR(other.slope_upper.value(), -1000 * *one.slope_lower, 0.01);
  EXPECT_NEAR(other.log_likelihood, one.log_likelihood, 1e-9);
}

// Another share right at the threshold moves it along the same curve.
TEST(PsychometricFunctions, TakeAnyShareAsTheThreshold) {
  const auto half = psychometric_function(synthetic(), {.target_right = 0.75});
  EXPECT_NEAR(half.threshold.value(), psychometric_function(synthetic()).threshold.value(), 1e-12);
  const auto higher = psychometric_function(synthetic(), {.target_right = 0.9});
  const double noticed = (0.9 - 0.5) / 0.5;
  EXPECT_NEAR(*higher.intercept + *higher.slope * *higher.threshold, std::log(noticed / (1 - noticed)), 1e-9);
  EXPECT_GT(higher.threshold_interval->lower, half.threshold_interval->lower);
}

// No threshold where the share right may be the same at all levels, whatever the fit.
TEST(PsychometricFunctions, HaveNoThresholdWithoutASlope) {
  const std::vector<LevelCount> counts{{0.1, 9, 16}, {0.2, 8, 16}, {0.3, 10, 16}, {0.5, 9, 16}};
  const auto found = psychometric_function(counts);
  EXPECT_EQ(found.state, CurveState::flat);
  EXPECT_FALSE(found.threshold);
  EXPECT_FALSE(found.threshold_interval);
  EXPECT_GT(found.flat_p, 0.05);
  // Everything at chance or below, and everything right.
  EXPECT_EQ(psychometric_function(std::vector<LevelCount>{{1, 4, 16}, {2, 8, 16}}).state, CurveState::flat);
  EXPECT_EQ(psychometric_function(std::vector<LevelCount>{{1, 16, 16}, {2, 16, 16}}).state, CurveState::flat);
  // One level that could be a step, of too few answers to show one.
  EXPECT_EQ(psychometric_function(std::vector<LevelCount>{{1, 1, 2}, {2, 2, 2}}).state, CurveState::flat);
}

TEST(PsychometricFunctions, NameTheLevelsBetweenWhichTheyJump) {
  const std::vector<LevelCount> counts{{1, 10, 20}, {2, 9, 20}, {3, 20, 20}, {4, 20, 20}};
  const auto found = psychometric_function(counts);
  EXPECT_EQ(found.state, CurveState::step);
  EXPECT_FALSE(found.slope);
  EXPECT_FALSE(found.threshold);
  EXPECT_EQ(found.jump->lower, 2);
  EXPECT_EQ(found.jump->upper, 3);
  // With a level between chance and all right it is at that level.
  const std::vector<LevelCount> at{{1, 0, 20}, {2, 12, 20}, {3, 20, 20}};
  const auto jump = psychometric_function(at, {.chance = 0}).jump.value();
  EXPECT_EQ(jump.lower, 2);
  EXPECT_EQ(jump.upper, 2);
  const std::vector<LevelCount> down{{1, 20, 20}, {2, 20, 20}, {3, 10, 20}, {4, 10, 20}};
  EXPECT_EQ(psychometric_function(down).jump->lower, 2);
  EXPECT_EQ(psychometric_function(down).jump->upper, 3);
}

// A slip at the strongest level pulls a curve without lapses down; a lapse takes it.
TEST(PsychometricFunctions, FitALapse) {
  const std::vector<LevelCount> counts{{-2, 52, 100}, {-1, 60, 100}, {0, 76, 100},
                                       {1, 92, 100},  {2, 96, 100},  {6, 96, 100}};
  const auto plain = psychometric_function(counts),
             lapsed = psychometric_function(counts, {.most_lapse = 0.1});
  EXPECT_EQ(plain.lapse, 0);
  EXPECT_NEAR(lapsed.lapse, 0.04, 0.02);
  EXPECT_GT(lapsed.log_likelihood, plain.log_likelihood + 1);
  EXPECT_GT(*lapsed.slope, *plain.slope);
  EXPECT_EQ(lapsed.degrees_of_freedom, 3);
  const auto held = psychometric_function(counts, {.lapse = lapsed.lapse});
  EXPECT_NEAR(held.log_likelihood, lapsed.log_likelihood, 1e-9);
  EXPECT_LE(lapsed.threshold_interval->lower, held.threshold_interval->lower + 1e-6);
  EXPECT_GE(lapsed.threshold_interval->upper, held.threshold_interval->upper - 1e-6);
}

// Four listeners, the same curve shifted by -1, 0, 0 and 1 units of the normal deviate: as R's lme4 fits it
// (tests/reference/psychometric.R does the same for random answers).
TEST(PsychometricFunctions, ShiftListeners) {
  std::vector<LevelCount> counts;
  const int right[4][5] = {
      {1, 3, 10, 17, 20}, {3, 10, 17, 20, 20}, {3, 10, 17, 20, 20}, {10, 17, 20, 20, 20}};
  for (int listener = 0; listener < 4; ++listener)
    for (int level = 0; level < 5; ++level)
      counts.push_back({level - 2.0, right[listener][level], 20, listener});
  const auto pooled = psychometric_function(counts, {.link = CurveLink::probit, .chance = 0});
  const auto apart =
      psychometric_function(counts, {.link = CurveLink::probit, .chance = 0, .listeners_differ = true});
  EXPECT_NEAR(apart.intercept.value(), 1.10143079835, 2e-6);
  EXPECT_NEAR(apart.slope.value(), 1.06577257024, 2e-6);
  EXPECT_NEAR(apart.listener_spread.value(), .712946191952, 2e-6);
  EXPECT_GT(*apart.slope, *pooled.slope);
  EXPECT_LT(apart.listener_p.value(), 0.001);
  EXPECT_FALSE(apart.deviance);
  EXPECT_FALSE(apart.expected_error);
  EXPECT_LT(apart.threshold_interval->lower, pooled.threshold_interval->lower);
  EXPECT_GT(apart.threshold_interval->upper, pooled.threshold_interval->upper);
  // Listeners alike: no spread, and the pooled curve.
  for (LevelCount& count : counts) count.right = right[1][int(count.level) + 2];
  const auto same =
      psychometric_function(counts, {.link = CurveLink::probit, .chance = 0, .listeners_differ = true});
  EXPECT_NEAR(same.listener_spread.value(), 0, 1e-3);
  EXPECT_NEAR(same.listener_p.value(), 0.5, 1e-3);
  EXPECT_NEAR(same.threshold.value(),
              psychometric_function(counts, {.link = CurveLink::probit, .chance = 0}).threshold.value(),
              1e-6);
}

TEST(PsychometricFunctions, RefuseImpossibleArguments) {
  const auto refused = [](std::vector<LevelCount> counts, PsychometricOptions options) {
    return refusal([&] { psychometric_function(counts, options); });
  };
  EXPECT_EQ(refused({{1, 2, 4}}, {}), "two different levels with trials are needed");
  EXPECT_EQ(refused({{1, 2, 4}, {2, 0, 0}}, {}), "two different levels with trials are needed");
  EXPECT_EQ(refused({{1, 5, 4}}, {}), "right must be between 0 and 4, got 5");
  const std::vector<LevelCount> two{{1, 2, 4}, {2, 3, 4}};
  EXPECT_EQ(refused(two, {.target_right = 0.4}),
            "the share right at the threshold must lie between chance and 1 - lapse");
  EXPECT_EQ(refused(two, {.lapse = 0.2, .most_lapse = 0.1}),
            "the most lapse must be between 0.2 and 0.5, got 0.1");
  EXPECT_EQ(refused(two, {.most_lapse = 0.1, .listeners_differ = true}),
            "the lapse cannot be fitted where listeners differ: give it as a number");
  EXPECT_EQ(refused(two, {.confidence = 95}).substr(0, 30), "confidence must be strictly be");
}

}  // namespace
}  // namespace stats
