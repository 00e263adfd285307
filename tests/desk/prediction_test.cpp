// What a prediction says of level, residual and trims, and where its constants come from.
#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <functional>
#include <numbers>

#include "desk/prediction_campaign.h"
#include "electrical/csv_rows.h"
#include "hearing/auditory/published.h"
#include "refusal.h"
#include "text/number.h"

namespace {

/// A rounded-exponential filter's share of two levels, by the trapezoid rule; filter and bandwidth as Glasberg & Moore 1990
/// and Patterson have them (sources in hearing/auditory/filter.h).
double in_filter_db(double centre_hz, const std::function<double(double)>& difference_db,
                    const std::function<double(double)>& reference_db) {
  const double erb_hz = 24.7 * (4.37 * centre_hz / 1000 + 1), low_hz = std::max(20.0, centre_hz - 5 * erb_hz),
               high_hz = std::min(20000.0, centre_hz + 5 * erb_hz);
  constexpr int steps = 4'000;
  double one = 0, other = 0;
  for (int i = 0; i <= steps; ++i) {
    const double f = low_hz + (high_hz - low_hz) * i / steps, along = 4 * std::abs(f - centre_hz) / erb_hz;
    const double weight = (i == 0 || i == steps ? 0.5 : 1) * (1 + along) * std::exp(-along);
    one += weight * std::pow(10, (reference_db(f) + difference_db(f)) / 10);
    other += weight * std::pow(10, reference_db(f) / 10);
  }
  return 10 * std::log10(one / other);
}

}  // namespace

// L1: recomputed; see tests/hearing. A2-A1 under K: 0.617051104 dB, residual -0.496303218 to 0.701904057 dB.
TEST(Prediction, OfTheGoldenCables) {
  PredictionCampaign campaign(golden_hall());
  campaign.table(golden_cables);
  const desk::Prediction found = campaign.predicted("A1", "A2");
  int rows = 0;
  for (const CsvRow& row : csv_rows("hearing/data/level_differences.csv")) {
    if (row.text("pair") != "A2-A1" || row.text("weighting") != "pink_K48k_integral") continue;
    ++rows;
    EXPECT_NEAR(found.level_differences.at(3).difference_db, row.number("level_difference_dB"), 6e-10);
    EXPECT_NEAR(found.after.residual.minimum_db, row.number("residual_min_dB"), 1.2e-9);
    EXPECT_NEAR(found.after.residual.maximum_db, row.number("residual_max_dB"), 1.2e-9);
  }
  EXPECT_EQ(rows, 1);
  EXPECT_FALSE(found.left_open);
  const std::string words = campaign.words("A1", "A2");
  EXPECT_SAYS(
      words,
      "after a trim by the pink-k difference the response still differs by -0.496 to 0.702 dB (r.m.s. ");
  EXPECT_SAYS(words, "most at 240 Hz");
  EXPECT_SAYS(words,
              "A2: loop resistance 47.9 mohm, inductance 1.65 uH, capacitance 240 pF, damping factor 27.0");
  EXPECT_SAYS(words,
              "resistance, inductance and capacitance as read; no skin effect, the same resistance at all "
              "frequencies: geometry not stated");
  EXPECT_SAYS_NOT(words, "left open");
}

// 0.617 dB is one step of 0.5 dB and 0.117 dB; the raw difference is 0.120747886 to 1.318955162 dB (L1, recomputed).
TEST(Prediction, SaysWhatWholeStepsLeave) {
  PredictionCampaign campaign(golden_hall());
  campaign.table(golden_cables);
  const auto stepped = campaign.predicted("A1", "A2").stepped.value();
  EXPECT_EQ(stepped.first_steps, 0);
  EXPECT_EQ(stepped.second_steps, 1);
  EXPECT_NEAR(stepped.level_left_db, 0.117051104, 6e-10);
  EXPECT_NEAR(stepped.after.residual.minimum_db, 0.120747886 - 0.5, 1.1e-9);
  EXPECT_NEAR(stepped.after.residual.maximum_db, 1.318955162 - 0.5, 1.1e-9);
  EXPECT_SAYS(
      campaign.words("A1", "A2"),
      "in whole steps of 0.5 dB: A2 down by 1 step, which leaves 0.117 dB under pink-k; the response then "
      "differs by -0.379 to 0.819 dB");
  EXPECT_SAYS(campaign.words("A2", "A1"), "A2 down by 1 step, which leaves -0.117 dB under pink-k");
  // A3 less A2: 0.027730430 dB, less than half a step.
  EXPECT_SAYS(campaign.words("A2", "A3"),
              "no step brings the levels nearer, which leaves 0.028 dB under pink-k");
  desk::RigTyped without = golden_hall();
  without.volume_step = "";
  PredictionCampaign other(without);
  other.table(golden_cables);
  EXPECT_SAYS(other.words("A1", "A2"), "is not said: the rig's volume step is not known");
  EXPECT_TRUE(other.json("A1", "A2").at("stepped_trim").is_null());
}

// Two resistances behind a resistive and inductive load, all lumped: H = Z/(Rs + R + Z) with Z = 4 ohm + 1 mH.
TEST(Prediction, SmoothsToAuditoryBands) {
  PredictionCampaign campaign(other_rig("0.1ohm", "4ohm + 1mH"));
  campaign.table(
      "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF\nthick,3,0.05,0,0\nthin,3,0.6,0,0\n");
  const auto level_db = [](double ohm, double f) {
    const std::complex<double> load(4, 2 * std::numbers::pi * f * 1e-3);
    return 20 * std::log10(std::abs(load / (load + 0.1 + ohm)));
  };
  const desk::Prediction found = campaign.predicted("thick", "thin", "1khz");
  const double trim_db = level_db(0.6, 1000) - level_db(0.05, 1000);
  const auto& smoothed = found.after.smoothed;
  const auto smoothed_db = [&](double centre_hz) {
    return in_filter_db(
               centre_hz, [&](double f) { return level_db(0.6, f) - level_db(0.05, f); },
               [&](double f) { return level_db(0.05, f); }) -
           trim_db;
  };
  EXPECT_NEAR(smoothed.frequency_of_largest_hz, 20, 1e-6);  // it only rises from there on
  EXPECT_NEAR(smoothed.largest_db, smoothed_db(20), 1e-4);
  // The mean over filters a quarter Cam apart: 21.4 log10(4.37 f/1000 + 1), Glasberg & Moore 1990.
  const auto cams = [](double f) { return 21.4 * std::log10(4.37 * f / 1000 + 1); };
  const int filters = 2 + static_cast<int>(4 * (cams(20000) - cams(20)));
  double squares = 0;
  for (int i = 0; i < filters; ++i) {
    const double cam = cams(20) + (cams(20000) - cams(20)) * i / (filters - 1);
    squares += std::pow(smoothed_db((std::pow(10, cam / 21.4) - 1) / 4.37 * 1000), 2);
  }
  const double rms_db = std::sqrt(squares / filters);
  EXPECT_NEAR(smoothed.rms_db, rms_db, 1e-4);
  EXPECT_SAYS(campaign.words("thick", "thin", "1khz"),
              "smoothed to auditory bands: largest " + text::fixed(smoothed_db(20), 3) +
                  " dB at 20.0 Hz, r.m.s. " + text::fixed(rms_db, 3) + " dB");
}

// A tone at 1 kHz into 8 ohm behind nothing: H = 8/(8 + R + j omega L); the capacitance of up to 900 pF
// counts for less than 2e-5 dB at 20 kHz. L is 0.6 to 3 uH of three
// metres, and the residual of two such cables is greatest at 20 kHz.
TEST(Prediction, SaysWhatUnknownConstantsLeaveOpen) {
  PredictionCampaign campaign(other_rig("0ohm", "8ohm"));
  campaign.table("cable,length_m,resistance_ohm,inductance_uH,capacitance_pF\nknown,3,0.05,1.5,150\n");
  campaign.table("cable,length_m,resistance_ohm\nmultimeter,3,0.6\n");
  const auto level_db = [](double ohm, double henry, double f) {
    return -20 * std::log10(std::abs(std::complex<double>(8 + ohm, 2 * std::numbers::pi * f * henry)) / 8);
  };
  const auto difference_db = [&](double henry, double f) {
    return level_db(0.6, henry, f) - level_db(0.05, 1.5e-6, f);
  };
  const auto open = campaign.predicted("known", "multimeter", "1khz").left_open.value();
  EXPECT_NEAR(open.level_difference_db.greatest, difference_db(0.6e-6, 1000), 1e-7);
  EXPECT_NEAR(open.level_difference_db.least, difference_db(3e-6, 1000), 1e-7);
  const auto residual_db = [&](double henry, double f) {
    return difference_db(henry, f) - difference_db(henry, 1000);
  };
  EXPECT_NEAR(open.largest_residual_db.greatest, std::abs(residual_db(3e-6, 20000)), 2e-5);
  EXPECT_NEAR(open.largest_residual_db.least, residual_db(0.6e-6, 20000), 2e-5);
  const auto rms_db = [&](double henry) {
    double sum = 0;
    constexpr int points = 20'000;
    for (int i = 0; i < points; ++i)
      sum += std::pow(residual_db(henry, 20 * std::pow(1000, (i + 0.5) / points)), 2);
    return std::sqrt(sum / points);
  };
  EXPECT_NEAR(open.rms_residual_db.greatest, rms_db(3e-6), 1e-5);
  EXPECT_NEAR(open.rms_residual_db.least, rms_db(0.6e-6), 1e-5);
  const std::string words = campaign.words("known", "multimeter", "1khz");
  EXPECT_SAYS(words, "left open: inductance and capacitance of multimeter; the other numbers leave them out");
  EXPECT_SAYS(
      words,
      "with 0.20 to 1.0 uH/m and 20 to 300 pF/m where unknown (pairs; common practice, no source) the 1khz "
      "difference is -0.574 to -0.574 dB; after that trim the largest residual is 0.002 to 0.006 dB in size");
  EXPECT_SAYS(words, "multimeter: loop resistance 600 mohm, inductance unknown, capacitance unknown");
  EXPECT_SAYS(words, "resistance as read; inductance and capacitance unknown; no skin effect");
}

TEST(Prediction, NamesTheCableWhoseConstantIsUnknown) {
  PredictionCampaign campaign(golden_hall());
  campaign.table("cable,length_m,resistance_ohm,capacitance_pF\nno-inductance,3,0.1,200\n");
  campaign.table("cable,length_m,resistance_ohm,inductance_uH\nno-capacitance,3,0.1,2\n");
  EXPECT_SAYS(campaign.words("no-inductance", "no-capacitance"),
              "left open: inductance of no-inductance; capacitance of no-capacitance;");
  const auto found = campaign.json("no-inductance", "no-capacitance");
  EXPECT_EQ(found.at("first").at("inductance_from"), "unknown");
  EXPECT_EQ(found.at("first").at("capacitance_from"), "reading");
  EXPECT_EQ(found.at("second").at("inductance_from"), "reading");
  EXPECT_EQ(found.at("second").at("capacitance_from"), "unknown");
}

// The list is that of published_thresholds(), whose sources tests/hearing holds.
TEST(Prediction, StandsBesideThePublishedThresholds) {
  PredictionCampaign campaign(golden_hall());
  campaign.table(golden_cables);
  const std::string words = campaign.words("A1", "A2");
  EXPECT_EQ(hearing::published_thresholds().size(), 6u);
  for (const auto& each : hearing::published_thresholds())
    EXPECT_SAYS(words,
                text::shortest(each.size_db) + " " + std::string(each.what) + " " + std::string(each.source));
  EXPECT_SAYS(words,
              "these disagree, as methods and criteria differ; none was measured with music through cables");
  EXPECT_SAYS(words, std::string(hearing::kNoSlope));
  EXPECT_SAYS_NOT(words, "audible");
  const auto thresholds = campaign.json("A1", "A2").at("published_thresholds");
  ASSERT_EQ(thresholds.size(), 6u);
  EXPECT_EQ(thresholds[0].at("concerns"), "level");
  EXPECT_EQ(thresholds[0].at("size_dB"), 0.3);
  EXPECT_EQ(thresholds[5].at("concerns"), "response");
  EXPECT_EQ(thresholds[5].at("size_dB"), 5);
}

// Every key stands in the comment that says what it means.
TEST(Prediction, DocumentsItsKeys) {
  desk::RigTyped rig = golden_hall();
  rig.kind = "line level";
  PredictionCampaign campaign(rig);
  campaign.table(golden_cables);
  campaign.table("cable,length_m,resistance_ohm\nmultimeter,3,0.6\n");
  const std::string header =
      content_of(std::filesystem::path(SOURCE_FOLDER) / "src/desk/shelf/prediction_text.h");
  int keys = 0;
  const std::function<void(const nlohmann::json&)> look = [&](const nlohmann::json& value) {
    for (const auto& [key, child] : value.items()) {
      if (value.is_object()) {
        ++keys;
        const std::size_t end =
            key.rfind("_least") == std::string::npos ? key.rfind("_greatest") : key.rfind("_least");
        EXPECT_TRUE(header.find(key.substr(0, end)) != std::string::npos) << key;
      }
      if (child.is_structured() && key != "level_difference_dB") look(child);
    }
  };
  const auto value = campaign.json("A1", "multimeter");
  EXPECT_EQ(value.at("schema"), 1);
  look(value);
  EXPECT_GT(keys, 60);
}

TEST(Prediction, RefusesACableOfNoKnownResistance) {
  PredictionCampaign campaign(golden_hall());
  campaign.table(golden_cables);
  campaign.cable("bare", {});
  campaign.cable("strips", {{"geometry", "flat strips"}, {"cross-section", "2.4mm2"}, {"length", "3m"}});
  const std::string import =
      " has no reading of its resistance, and its construction gives none\nimport a table: "
      "cable,length_m,resistance_ohm, with inductance_uH and capacitance_pF where they are known;\nor add a "
      "cable "
      "whose construction says what is missing here: ";
  EXPECT_EQ(refusal([&] { campaign.predicted("A1", "bare"); }),
            "cable \"bare\"" + import + "geometry=pair, cross-section=2.5mm2 (or awg=12) and length=3m");
  EXPECT_EQ(refusal([&] { campaign.predicted("strips", "A1"); }),
            "cable \"strips\"" + import + "geometry=pair");
}
