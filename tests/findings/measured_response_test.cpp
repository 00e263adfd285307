#include <gtest/gtest.h>

#include "findings/golden_evidence.h"

namespace {

hearing::LevelCurve flat(double level_db, double low_hz = 20, double high_hz = 20000) {
  return hearing::LevelCurve({low_hz, high_hz}, {level_db, level_db});
}

TEST(MeasuredResponse, IsTheMeanOfTheRepeatsSecondLessFirst) {
  auto builder = golden();
  builder.evidence.cables["A1"].response.repeats = {flat(0, 10), flat(.2, 30)};
  builder.evidence.cables["A2"].response.repeats = {flat(.5)};
  const auto finding = first_of(builder);
  ASSERT_TRUE(finding.measured);
  EXPECT_NEAR(finding.measured->largest_db, .4, 1e-12);
  EXPECT_NEAR(finding.measured->rms_db, .4, 1e-12);
  EXPECT_NEAR(finding.measured->weighted_level_db, .4, 1e-9);
  EXPECT_NEAR(*finding.measured->repeatability_db, .2, 1e-12);
  EXPECT_EQ(finding.measured->low_hz, 30);
  EXPECT_EQ(finding.measured_curve->frequency_hz.size(), 200U);
  EXPECT_NEAR(finding.measured_curve->difference_db.at(77), .4, 1e-12);
}

TEST(MeasuredResponse, MeetsThePointsOfEveryRepeat) {
  // A narrow notch between the points of a scan must stay in the mean: -3 dB in one repeat of two is -1.5 dB.
  auto builder = golden();
  builder.evidence.cables["A1"].response.repeats = {flat(0)};
  builder.evidence.cables["A2"].response.repeats = {
      flat(0), hearing::LevelCurve({20, 999.9, 1000, 1000.1, 20000}, {0, 0, -3, 0, 0})};
  const auto finding = first_of(builder);
  EXPECT_NEAR(finding.measured->largest_db, -1.5, 1e-9);
  EXPECT_NEAR(finding.measured->frequency_of_largest_hz, 1000, 1e-3);
  EXPECT_NEAR(*finding.measured->repeatability_db, 3, 1e-9);
  EXPECT_TRUE(says(finding.cautions,
                   "the measured responses differ by less than the repeats of one cable (3.00 dB)"));
}

TEST(MeasuredResponse, IsNotThatOfACableWithAResistor) {
  Builder builder;
  builder.evidence.cables["thin"].response.repeats = {flat(0)};
  builder.trials(builder.comparison(builder.specimen("thin"), builder.specimen("thin", "0.22"),
                                    plan::Kind::known_difference),
                 16, 16);
  EXPECT_FALSE(first_of(builder).measured);
}

TEST(MeasuredResponse, MeasuredOnceHasNoRepeatability) {
  auto builder = golden();
  builder.evidence.cables["A1"].response.repeats = {flat(0)};
  builder.evidence.cables["A2"].response.repeats = {flat(.5)};
  const auto finding = first_of(builder);
  EXPECT_FALSE(finding.measured->repeatability_db);
  EXPECT_NE(finding.response_sentence.find("measured once, repeatability unknown"), std::string::npos);
  builder.evidence.cables["A2"].response.repeats = {flat(.5, 30000, 40000)};
  EXPECT_FALSE(first_of(builder).measured);
}

}  // namespace
