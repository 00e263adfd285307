#include <gtest/gtest.h>

#include <cmath>

#include "findings/circuit/level.h"
#include "findings/golden_evidence.h"

namespace {

TEST(PredictedLevel, OfTheGoldenCables) {
  const auto finding = first_of(golden());
  ASSERT_TRUE(finding.level.predicted_db);
  EXPECT_NEAR(*finding.level.predicted_db, kA2LessA1Db, 2e-9);
  EXPECT_EQ(finding.level.trim_db, 0);
  EXPECT_EQ(finding.level.state, "predicted only");
  EXPECT_EQ(finding.level.weighting, "pink noise, K-weighted, 20 Hz to 20 kHz");
  EXPECT_NEAR(*finding.loop_resistance_first_ohm, .6, 1e-12);  // 3 m of 0.2 ohm/m
  EXPECT_NEAR(*finding.loop_resistance_second_ohm, 3 * .01596, 1e-12);
  EXPECT_TRUE(says(finding.cautions, "the levels were predicted only"));
}

TEST(PredictedLevel, UnderTheWeightingOfThePlan) {
  auto builder = golden();
  builder.plan().trim_weighting = "1khz";
  EXPECT_NEAR(*first_of(builder).level.predicted_db, 0.433773320, 2e-9);  // the same file, tone_1kHz
  builder.plan().trim_weighting = "pink-a";
  EXPECT_NEAR(*first_of(builder).level.predicted_db, 0.604722026, 2e-9);  // pink_A_integral
  builder.plan().trim_weighting = "";
  EXPECT_NEAR(*first_of(builder).level.predicted_db, kA2LessA1Db, 2e-9);
}

TEST(PredictedLevel, WithTheTrimsAsSet) {
  const auto one_step = first_of(golden(1));
  EXPECT_DOUBLE_EQ(one_step.level.trim_db, .5);
  EXPECT_NEAR(*one_step.level.predicted_as_set_db, kA2LessA1Db - .5, 2e-9);
  EXPECT_NEAR(*one_step.level.predicted_db, kA2LessA1Db, 2e-9);

  auto as_connected = golden(1);
  as_connected.plan().levels = "as connected";
  EXPECT_EQ(first_of(as_connected).level.trim_db, 0);
  EXPECT_FALSE(says(first_of(as_connected).cautions, "the levels were predicted only"));

  auto decimal_comma = golden(2, "0,25");
  EXPECT_DOUBLE_EQ(first_of(decimal_comma).level.trim_db, .5);
}

TEST(PredictedResidual, IsWhatTheFileSaysWhenTheStepTakesTheDifferenceAway) {
  const auto finding = first_of(golden(1, "0.617051104"));
  ASSERT_TRUE(finding.predicted_residual);
  EXPECT_NEAR(finding.predicted_residual->minimum_db, kResidualMinimumDb, 3e-9);
  EXPECT_NEAR(finding.predicted_residual->maximum_db, kResidualMaximumDb, 3e-9);
  EXPECT_NEAR(finding.predicted_residual->largest_db, kResidualMaximumDb, 3e-9);
  // The least impedance of LS1 lies at 237.3 Hz (tests/electrical/data/loudspeaker_LS1.csv): there the
  // resistance costs most.
  EXPECT_NEAR(finding.predicted_residual->frequency_of_largest_hz, 237, 8);
  EXPECT_EQ(finding.predicted_residual->low_hz, 20);
  EXPECT_EQ(finding.predicted_residual->high_hz, 20000);
  EXPECT_NE(finding.response_sentence.find("the response still differs by up to +0.70 dB at 2"),
            std::string::npos)
      << finding.response_sentence;
}

TEST(PredictedCurve, IsSecondLessFirstWithNothingTrimmed) {
  const auto curve = first_of(golden(1, "0.617051104")).predicted_curve;
  ASSERT_TRUE(curve);
  ASSERT_EQ(curve->frequency_hz.size(), 200U);
  EXPECT_EQ(curve->frequency_hz.front(), 20);
  EXPECT_EQ(curve->frequency_hz.back(), 20000);
  double least = 1e9, greatest = -1e9;
  for (const double db : curve->difference_db) {
    least = std::min(least, db);
    greatest = std::max(greatest, db);
  }
  // 200 points need not meet the extremes of the file exactly.
  EXPECT_NEAR(least, kResidualMinimumDb + kA2LessA1Db, 2e-3);
  EXPECT_NEAR(greatest, kResidualMaximumDb + kA2LessA1Db, 2e-3);
}

TEST(PredictedLevel, OfAStatedResistorBehindAResistiveLoad) {
  Builder builder;
  builder.evidence.rig.source = electrical::Source{.resistance_ohm = 0.1};
  builder.evidence.rig.load = electrical::Resistor{8};
  builder.evidence.cables["thin"].line = electrical::Cable{.resistance_ohm_per_m = 0.2, .length_m = 3};
  builder.trials(builder.comparison(builder.specimen("thin"), builder.specimen("thin", "0,22"),
                                    plan::Kind::known_difference),
                 16, 16);
  const auto finding = first_of(builder);
  const double divider_db = 20 * std::log10((0.1 + 0.6 + 8) / (0.1 + 0.6 + 8 + 0.22));  // a voltage divider
  EXPECT_NEAR(*finding.level.predicted_db, divider_db, 1e-9);
  EXPECT_NEAR(*finding.loop_resistance_second_ohm - *finding.loop_resistance_first_ohm, .22, 1e-12);
  EXPECT_EQ(finding.title, "thin / thin + 0,22 ohm");
}

TEST(PredictedLevel, NeedsSourceLoadAndBothCables) {
  for (const auto& change : std::vector<std::function<void(Builder&)>>{
           [](Builder& builder) { builder.evidence.rig.source.reset(); },
           [](Builder& builder) { builder.evidence.rig.load.reset(); },
           [](Builder& builder) { builder.evidence.cables["A2"].line.reset(); },
           [](Builder& builder) { builder.evidence.cables.erase("A1"); }}) {
    auto builder = golden();
    change(builder);
    const auto finding = first_of(builder);
    EXPECT_FALSE(finding.level.predicted_db);
    EXPECT_FALSE(finding.predicted_residual);
    EXPECT_EQ(finding.level.state, "not verified");
    EXPECT_TRUE(says(finding.cautions, "the levels were neither measured nor predicted"));
  }
}

TEST(PredictedLevel, KeepsToTheBandInWhichTheLoadIsKnown) {
  auto builder = golden();
  builder.evidence.rig.load = electrical::ImpedanceTable({100, 10000}, {{8, 0}, {8, 0}});
  const auto finding = first_of(builder);
  ASSERT_TRUE(finding.predicted_residual);
  EXPECT_EQ(finding.predicted_residual->low_hz, 100);
  EXPECT_EQ(finding.predicted_residual->high_hz, 10000);

  builder.evidence.rig.load = electrical::ImpedanceTable({2000, 10000}, {{8, 0}, {8, 0}});
  builder.plan().trim_weighting = "1khz";
  EXPECT_EQ(first_of(builder).level.state, "not verified");
  builder.plan().trim_weighting = "pink";
  builder.evidence.rig.load = electrical::ImpedanceTable({30000, 50000}, {{8, 0}, {8, 0}});
  EXPECT_EQ(first_of(builder).level.state, "not verified");
}

TEST(Level, IsMatchedWhenEverythingIsMeasuredAndWithinTheTolerance) {
  auto builder = golden(1);
  builder.terminal_levels(0, 9.00, 9.01);
  builder.terminal_levels(1, 9.10, 9.05);
  const auto finding = first_of(builder);
  EXPECT_EQ(finding.level.state, "matched");
  EXPECT_NEAR(*finding.level.measured_db, .07, 1e-12);
  EXPECT_NEAR(*finding.level.largest_measured_db, .10, 1e-12);  // exactly the tolerance
  EXPECT_NEAR(*finding.level.drift_db, -.05, 1e-12);
  EXPECT_TRUE(finding.level.measured_completely);
  EXPECT_NE(finding.level_sentence.find("Level matched within 0.10 dB"), std::string::npos);
  EXPECT_FALSE(says(finding.cautions, "level")) << all_of(finding.cautions);
}

TEST(Level, OfAStereoSittingNeedsBothChannels) {
  auto builder = golden();
  builder.terminal_levels(0, 9, 9, "left");
  builder.terminal_levels(1, 9, 9, "left");
  builder.terminal_levels(0, 9, 9, "right");
  auto finding = first_of(builder);
  EXPECT_EQ(finding.level.state, "measured, not matched");
  EXPECT_FALSE(finding.level.measured_completely);
  EXPECT_NE(finding.level_sentence.find("not every channel was measured at start and end"),
            std::string::npos);
  builder.terminal_levels(1, 9, 9, "right");
  EXPECT_EQ(first_of(builder).level.state, "matched");
}

TEST(Level, MeasuredOnceOnlyIsNotMatched) {
  auto builder = golden();
  builder.evidence.levels = {{1, 0, "mono", "start", 9}, {1, 1, "mono", "start", 9}};
  const auto finding = first_of(builder);
  EXPECT_EQ(finding.level.state, "measured, not matched");
  EXPECT_FALSE(finding.level.drift_db);
}

TEST(Level, BeyondTheToleranceAtOneMomentIsNotMatched) {
  auto builder = golden();
  builder.terminal_levels(0, 9, 9);
  builder.terminal_levels(1, 9, 9.11);
  const auto finding = first_of(builder);
  EXPECT_EQ(finding.level.state, "measured, not matched");
  EXPECT_NEAR(*finding.level.largest_measured_db, .11, 1e-12);
  EXPECT_TRUE(says(finding.cautions, "the levels were measured and not matched"));
  EXPECT_TRUE(says(finding.cautions, "drifted by +0.11 dB from start to end"));

  builder.plan().level_tolerance_db = "0.2";
  EXPECT_EQ(first_of(builder).level.state, "matched");
  EXPECT_FALSE(says(first_of(builder).cautions, "drifted"));
}

// In binary 80.2 - 80.1 is more than 0.1.
TEST(Level, AtTheToleranceIsNotBeyondIt) {
  auto builder = golden();
  builder.terminal_levels(0, 80.1, 80.2);
  builder.terminal_levels(1, 80.1, 80.2);
  const auto finding = first_of(builder);
  EXPECT_GT(*finding.level.drift_db, .1);
  EXPECT_FALSE(says(finding.cautions, "drifted"));

  EXPECT_FALSE(findings::is_beyond(80.2 - 80.1, .1));
  EXPECT_TRUE(findings::is_beyond(-.1001, .1));
}

TEST(Level, MeasuredGovernsAndStandingApartFromThePredictionIsACaution) {
  auto builder = golden();
  builder.terminal_levels(0, 9, 9);
  builder.terminal_levels(1, 9, 9);
  const auto finding = first_of(builder);
  EXPECT_EQ(finding.level.state, "matched");
  EXPECT_TRUE(
      says(finding.cautions, "measured and predicted level are 0.62 dB apart; the measured one governs"));
}

TEST(Level, IsReadInTheSittingsInWhichTheComparisonWasPlayed) {
  auto builder = golden();
  builder.terminal_levels(0, 9, 9);
  builder.terminal_levels(1, 9, 9);
  builder.add_sitting();  // nothing of the comparison is played in it
  builder.terminal_levels(0, 3, 3);
  builder.terminal_levels(1, 4, 4);
  EXPECT_EQ(first_of(builder).level.state, "matched");
  builder.trials(0, 1, 1);  // now it is
  EXPECT_EQ(first_of(builder).level.state, "measured, not matched");
  EXPECT_NEAR(*first_of(builder).level.measured_db, .5, 1e-12);
  builder.evidence.levels.resize(4);  // and nothing was measured in it
  EXPECT_EQ(first_of(builder).level.state, "measured, not matched");
}

TEST(Level, APredictionThatMovedSinceTheSealIsACaution) {
  auto builder = golden();
  builder.plan().comparisons[0].predicted_difference_db = "0.62";
  EXPECT_FALSE(says(first_of(builder).cautions, "sealed with"));
  builder.plan().comparisons[0].predicted_difference_db = "0.45";
  EXPECT_TRUE(
      says(first_of(builder).cautions,
           "the plan was sealed with a predicted difference of +0.45 dB; the readings now give +0.62 dB"));
}

TEST(LoopResistance, WithinTheSpreadOfItsRepeatsIsACaution) {
  auto builder = golden();
  builder.evidence.cables["A1"].loop_resistance_spread_ohm = .002;
  builder.evidence.cables["A2"].loop_resistance_spread_ohm = .001;
  EXPECT_EQ(first_of(builder).loop_resistance_spread_ohm, .002);
  EXPECT_FALSE(says(first_of(builder).cautions, "loop resistances"));
  builder.evidence.cables["A2"].loop_resistance_spread_ohm = .7;
  EXPECT_TRUE(
      says(first_of(builder).cautions,
           "the loop resistances differ by 552.1 mohm, less than the repeats of one cable (700.0 mohm)"));
}

}  // namespace
