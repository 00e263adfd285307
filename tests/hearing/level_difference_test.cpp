#include "hearing/level_difference.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "electrical/csv_rows.h"
#include "electrical/golden_cases.h"
#include "electrical/refusal.h"
#include "hearing/deviation.h"
#include "hearing/residual.h"

using hearing::LevelCurve;

namespace {

LevelCurve curve_of(const std::string& name) {
  const auto& [source, cable, load] = golden_cases().at(name);
  return hearing::predicted_curve(source, cable, load);
}

/// The rows of the file that are this folder's weightings; the others weight 31 bands.
const std::map<std::string, std::string> kWeightingOfRow{{"pink20-20k_flat_integral", "pink"},
                                                         {"pink_K48k_integral", "pink-k"},
                                                         {"pink_A_integral", "pink-a"},
                                                         {"IEC60268-1_interp_integral", "programme"},
                                                         {"tone_1kHz", "1khz"}};

}  // namespace

// L1. recomputed: trapezoid on 400001 log-spaced points; nine printed digits.
TEST(LevelDifference, AgreesWithEveryPairAndWeighting) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("hearing/data/level_differences.csv")) {
    const auto known = kWeightingOfRow.find(row.text("weighting"));
    if (known == kWeightingOfRow.end()) continue;
    SCOPED_TRACE(row.text("pair") + " " + row.text("weighting"));
    ++rows;
    const LevelCurve first = curve_of(row.text("pair").substr(0, 2));
    const LevelCurve second = curve_of(row.text("pair").substr(3, 2));
    const auto level = hearing::level_difference(hearing::find(known->second), first, second);
    // Half the last printed digit; the kinks of the programme's spectrum cost Simpson's rule 4e-9 dB more.
    const double tolerance = known->second == "programme" ? 5e-9 : 6e-10;
    EXPECT_NEAR(level.difference_db, row.number("level_difference_dB"), tolerance);
    EXPECT_EQ(level.band.low_hz, 20);
    EXPECT_EQ(level.band.high_hz, 20000);

    const auto left = hearing::residual(first, second, level.difference_db);
    EXPECT_NEAR(left.minimum_db, row.number("residual_min_dB"), tolerance + 6e-10);
    EXPECT_NEAR(left.maximum_db, row.number("residual_max_dB"), tolerance + 6e-10);
  }
  EXPECT_EQ(rows, 15);
}

// L1: the raw difference of A2 and A1 and of A3 and A2. recomputed.
TEST(Residual, OfNoTrimIsTheRawDifference) {
  const auto raw = hearing::residual(curve_of("A2"), curve_of("A1"), 0);
  EXPECT_NEAR(raw.maximum_db, 1.318955162, 5.1e-10);
  EXPECT_NEAR(raw.frequency_of_largest_hz, 240.411, 5e-3);  // the source's grid is 4e-3 Hz wide there
  EXPECT_EQ(raw.largest_db, raw.maximum_db);
  EXPECT_NEAR(raw.minimum_db, 0.120747886, 5.1e-10);
  const auto inductive = hearing::residual(curve_of("A3"), curve_of("A2"), 0);
  EXPECT_NEAR(inductive.minimum_db, -0.032537422 + 0.015561667, 1.1e-9);  // the file's residual and its trim
  EXPECT_NEAR(inductive.maximum_db, 0.110731806, 5.1e-10);
  EXPECT_NEAR(inductive.frequency_of_largest_hz, 20000, 1e-6);  // rounding of the level
}

// A difference of s dB per ln f about 632.46 Hz, the band's middle: rms = s ln(1000) / sqrt(12), exactly.
TEST(Residual, RmsIsOverLogFrequency) {
  const double middle = std::sqrt(20 * 20000.0);
  const LevelCurve tilt([=](double f) { return 0.1 * std::log(f / middle); }, electrical::kEveryFrequency);
  const LevelCurve flat([](double) { return -3.0; }, electrical::kEveryFrequency);
  const auto left = hearing::residual(tilt, flat, 3);
  EXPECT_NEAR(left.rms_db, 0.1 * std::log(1000.0) / std::sqrt(12.0), 1e-14);
  EXPECT_NEAR(left.minimum_db, -0.05 * std::log(1000.0), 1e-14);
  EXPECT_NEAR(left.maximum_db, 0.05 * std::log(1000.0), 1e-14);
  EXPECT_NEAR(hearing::residual(tilt, flat, 2).rms_db, std::sqrt(1 + std::pow(left.rms_db, 2)), 1e-14);
}

// |H|^2 = f/f0 under pink noise: the mean of f over ln f is (f2 - f1) / ln(f2/f1).
TEST(WeightedLevel, OfARisingResponseIsTheIntegral) {
  const LevelCurve rising([](double f) { return 10 * std::log10(f / 1000); }, electrical::kEveryFrequency);
  const double expected = 10 * std::log10(19980 / std::log(1000.0) / 1000);
  EXPECT_NEAR(hearing::weighted_level_db(hearing::find("pink"), rising, electrical::kAudioBand), expected,
              1e-10);
}

TEST(WeightedLevel, OfAConstantIsTheConstantUnderEveryWeighting) {
  const LevelCurve constant([](double) { return -1.25; }, electrical::kEveryFrequency);
  for (const auto& weighting : hearing::catalogue()) {
    EXPECT_NEAR(hearing::weighted_level_db(weighting, constant, {30, 15000}), -1.25, 1e-13) << weighting.name;
  }
}

TEST(MeasuredCurve, AgreesWithThePredictionItSamples) {
  // 961 points, 1/96 octave: interpolation is within h^2/8 of the curvature, 1e-4 dB at LS1's resonances.
  const auto frequency_hz = electrical::log_spaced(electrical::kAudioBand, 961);
  const auto sampled = [&](const LevelCurve& curve) {
    std::vector<double> level_db;
    for (const double f : frequency_hz) level_db.push_back(curve.level_db(f));
    return LevelCurve(frequency_hz, level_db);
  };
  const LevelCurve a1 = curve_of("A1"), a2 = curve_of("A2");
  for (const auto& weighting : hearing::catalogue()) {
    const double predicted = hearing::level_difference(weighting, a2, a1).difference_db;
    const double measured = hearing::level_difference(weighting, sampled(a2), sampled(a1)).difference_db;
    EXPECT_NEAR(measured, predicted, 1e-4) << weighting.name;
  }
}

TEST(MeasuredCurve, IsTakenOverTheCommonBandAndSaysSo) {
  const LevelCurve first({30, 100, 15000}, {1, 1, 1});
  const LevelCurve second({10, 50, 40000}, {0.5, 0.5, 0.5});
  const auto level = hearing::level_difference(hearing::find("pink"), first, second);
  EXPECT_NEAR(level.difference_db, 0.5, 1e-12);  // rounding of 2001 terms
  EXPECT_EQ(level.band.low_hz, 30);
  EXPECT_EQ(level.band.high_hz, 15000);
  EXPECT_EQ(hearing::residual(first, second, 0.5).band.high_hz, 15000);
}

TEST(MeasuredCurve, IsLinearInLogFrequencyAndMissesNoPoint) {
  const LevelCurve curve({100, 400, 6400}, {0, 1, -3});
  EXPECT_NEAR(curve.level_db(200), 0.5, 1e-15);
  EXPECT_NEAR(curve.level_db(1600), -1, 1e-15);
  EXPECT_EQ(curve.level_db(6400), -3);
  const LevelCurve spike({20, 999.99, 1000, 1000.01, 20000}, {0, 0, 2, 0, 0});
  const LevelCurve flat({20, 20000}, {0, 0});
  EXPECT_NEAR(hearing::residual(spike, flat, 0).maximum_db, 2, 1e-12);
  EXPECT_NEAR(hearing::residual(flat, spike, 0).largest_db, -2, 1e-12);
}

TEST(Deviation, FromTheBaselineIsSignedAndUntrimmed) {
  const auto deviation = hearing::deviation(curve_of("A1"), curve_of("A2"), hearing::find("pink"));
  EXPECT_NEAR(deviation.largest_db, -1.318955162, 5.1e-10);       // L1
  EXPECT_NEAR(deviation.frequency_of_largest_hz, 240.411, 5e-3);  // L1
  EXPECT_NEAR(deviation.weighted_level_db, -0.616238909, 6e-10);  // L1
  // Bounds of any root mean square about a mean near the weighted level.
  EXPECT_GT(deviation.rms_db, 0.6);
  EXPECT_LT(deviation.rms_db, 1.319);
  const auto itself = hearing::deviation(curve_of("A1"), curve_of("A1"), hearing::find("pink"));
  EXPECT_EQ(itself.largest_db, 0);
  EXPECT_EQ(itself.rms_db, 0);
  EXPECT_EQ(itself.weighted_level_db, 0);
}

TEST(LevelDifference, RefusesCurvesThatDoNotMeet) {
  const LevelCurve low({20, 100}, {0, 0});
  const LevelCurve high({200, 5000}, {0, 0});
  EXPECT_EQ(refusal([&] { hearing::level_difference(hearing::find("pink"), low, high); }),
            "two bands must overlap, got 20 to 100 Hz and 200 to 5000 Hz");
  EXPECT_EQ(refusal([&] { hearing::level_difference(hearing::find("1khz"), low, low); }),
            "frequency of the weighting's tone must be from 20 to 100, got 1000");
  EXPECT_EQ(refusal([&] { low.level_db(101); }),
            "frequency_hz of a response must be from 20 to 100, got 101");
  EXPECT_EQ(refusal([&] { hearing::residual(low, low, NAN); }),
            "trim_db must be from -1000 to 1000, got nan");
}

TEST(MeasuredCurve, RefusesWhatIsNoResponse) {
  EXPECT_EQ(refusal([] { LevelCurve({20}, std::vector<double>{0}); }),
            "a response must have at least 2 frequencies and a level for each, got 1 and 1");
  EXPECT_EQ(refusal([] { LevelCurve({20, 20}, {0, 0}); }), "frequency_hz must rise, got 20 after 20");
  EXPECT_EQ(refusal([] {
              LevelCurve({-20, 20}, {0, 0});
            }),
            "frequency_hz must be a finite number above 0, got -20");
  EXPECT_EQ(refusal([] {
              LevelCurve({20, 30}, {0, NAN});
            }),
            "level_db at 30 Hz must be a finite number, got nan");
}
