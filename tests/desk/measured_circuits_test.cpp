#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "desk/circuits/noise.h"
#include "desk/circuits/phase.h"
#include "desk/circuits/tradeoff.h"
#include "electrical/csv_rows.h"
#include "refusal.h"
#include "text/number.h"
#include "whole/program.h"

namespace desk {
namespace {

/// A campaign with the cables D1 to D3 of electrical/data/phase_500kHz.csv, 5 m each, and rigs.
class MeasuredCircuits : public testing::Test {
 protected:
  MeasuredCircuits() {
    start_campaign(file, "Bench");
    import("cables.csv",
           "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF\n"
           "D1,5,0.25,1.25,500\nD2,5,0.25,3,300\nD3,5,0.25,0.5,2000\n");
    rig("bench", "50ohm", "1Mohm||15pF");
  }

  void rig(const std::string& name, const std::string& source, const std::string& load,
           const std::string& kind = "loudspeaker") {
    RigTyped typed;
    typed.name = name;
    typed.kind = kind;
    typed.source = source;
    typed.load = load;
    add_rig(file, typed);
  }

  void import(const std::string& name, const std::string& content,
              const imported::Assignment& assignment = {}) {
    import_files(file, {folder.write(name, content)}, assignment);
  }

  void noise(const std::string& name, const std::string& content, const std::string& rig_name = "",
             const std::string& state = "", int repeat = 1) {
    imported::Assignment assignment;
    assignment.cable = "D1";
    assignment.rig = rig_name;
    assignment.repeat = repeat;
    if (!state.empty()) assignment.feature = "shield";
    assignment.state = state;
    import(name, content, assignment);
  }

  NoiseOfCable noise_of_d1(const hearing::Seat& seat = {88, 2.5, 1, 0}, const std::string& on_rig = "") {
    return noise_of(file, "D1", on_rig, seat);
  }

  Folder folder;
  Path file = folder / "bench.blindswap";
};

/// 100 uV from 20 Hz to 20 kHz: 1e-4 / sqrt(19980) V per root hertz.
const char* const white = "frequency_Hz,density_nV_per_sqrtHz\n20,707.460599963\n20000,707.460599963\n";

const hearing::BandAtSeat& band_of(const NoiseAtSeat& noise, int third_octave) {
  for (const hearing::BandAtSeat& band : noise.bands)
    if (band.third_octave == third_octave) return band;
  throw std::runtime_error("no such band");
}

// T4, the rows into 1 Mohm and 15 pF, and the same 0.2 degrees off. recomputed (exact two-port; ngspice agrees).
TEST_F(MeasuredCircuits, PhaseHasItsShares) {
  std::string table = "cable,frequency_Hz,phase_deg,rig\n";
  std::vector<CsvRow> rows;
  for (const CsvRow& row : csv_rows("electrical/data/phase_500kHz.csv"))
    if (row.text("termination") == "1M||15p") rows.push_back(row);
  ASSERT_EQ(rows.size(), 3U);
  for (const CsvRow& row : rows)
    table +=
        row.text("cable") + ",500000," + text::shortest(row.number("actual_phase_deg") + 0.2) + ",bench\n";
  import("phases.csv", table);
  for (const CsvRow& row : rows) {
    const PhasesOfCable phases = phases_of(file, row.text("cable"));
    ASSERT_EQ(phases.readings.size(), 1U);
    const PhaseReading& reading = phases.readings.front();
    EXPECT_EQ(reading.missing, "");
    EXPECT_EQ(reading.ends, "source 50.0 ohm, load 1Mohm||15pF");
    ASSERT_TRUE(reading.shares);
    const double propagation = row.number("minus_360_f_tau_deg");
    EXPECT_NEAR(reading.shares->propagation_deg, propagation, 5.1e-10);
    EXPECT_NEAR(reading.shares->terminations_deg, row.number("actual_phase_deg") - propagation, 2e-9);
    EXPECT_NEAR(reading.shares->left_over_deg, 0.2, 2e-9);
    EXPECT_FALSE(reading.left_over_of_other_sign_deg);
  }
}

// T4, D1: -4.646890688 degrees, here read with the other sign.
TEST_F(MeasuredCircuits, PhaseOfTheOtherSignIsACaution) {
  import("phases.csv", "cable,frequency_Hz,phase_deg,rig\nD1,500000,4.646890688,bench\n");
  const PhasesOfCable phases = phases_of(file, "D1");
  ASSERT_TRUE(phases.readings.front().left_over_of_other_sign_deg);
  EXPECT_NEAR(*phases.readings.front().left_over_of_other_sign_deg, 0, 2e-9);
  EXPECT_NEAR(phases.readings.front().shares->left_over_deg, 9.293781376, 2e-9);
  EXPECT_NE(phases_text(phases).find("caution: reading 4 of the other sign?"), std::string::npos);
}

TEST_F(MeasuredCircuits, PhaseSaysWhatIsMissing) {
  add_cable(file, {"unread", {}, ""}, false);
  rig("no-source", "", "50ohm");
  rig("no-load", "50ohm", "");
  rig("low", "50ohm", "");
  imported::Assignment of_low;
  of_low.rig = "low";
  import("low.csv", "frequency_Hz,magnitude_ohm,phase_deg\n20,50,0\n20000,50,0\n", of_low);
  import("phases.csv",
         "cable,frequency_Hz,phase_deg,rig,repeat\n"
         "D1,500000,-4,,1\nD1,500000,-4,no-source,1\nD1,500000,-4,no-load,1\nD1,500000,-4,low,1\n"
         "unread,500000,-4,bench,1\n");
  const PhasesOfCable phases = phases_of(file, "D1");
  ASSERT_EQ(phases.readings.size(), 4U);
  for (const auto& [place, words, ends] : std::vector<std::tuple<std::size_t, std::string, std::string>>{
           {0, "it names no rig", "source and load not known"},
           {1, "rig no-source has no source resistance", "source not known, load 50ohm"},
           {2, "rig no-load has no load: import its impedance with --rig no-load",
            "source 50.0 ohm, load not known"},
           {3, "the load of rig low is known from 20.0 Hz to 20.0 kHz only",
            "source 50.0 ohm, load by its imported impedance"}}) {
    EXPECT_TRUE(phases.readings[place].missing.starts_with(words)) << phases.readings[place].missing;
    EXPECT_EQ(phases.readings[place].ends, ends);
    EXPECT_FALSE(phases.readings[place].shares);
  }
  EXPECT_TRUE(
      phases_of(file, "unread").readings.front().missing.starts_with("inductance or capacitance of unread"));
  const auto parsed = nlohmann::json::parse(phases_json(phases));
  EXPECT_EQ(parsed.at("schema"), 1);
  EXPECT_TRUE(parsed.at("readings").at(0).at("left_over_deg").is_null());
}

// N2 and N3, as in tests/hearing/noise: 100 uV of white noise, 88 dB, 2.5 m, one loudspeaker. recomputed.
TEST_F(MeasuredCircuits, NoiseStandsBesideTheThreshold) {
  noise("white.csv", white);
  const NoiseAtSeat one = noise_of_d1().groups.at(0).at(0);
  EXPECT_NEAR(one.level_db, -8.994528884, 5.1e-8);
  EXPECT_NEAR(band_of(one, 5).level_db, -23.3687, 5.1e-5);
  EXPECT_NEAR(band_of(one, 5).margin_db, 17.3687, 5.1e-5);
  EXPECT_EQ(worst_band(one).third_octave, 6);
  EXPECT_NEAR(worst_band(one).margin_db, 16.9687, 5.1e-5);
  EXPECT_EQ(bands_at_or_above(one), 0);
  // A: SciPy's quad of IEC 61672-1's Annex E. ITU-R 468: Simpson's rule in Python over the standard's table, 400 000 steps.
  EXPECT_NEAR(20 * std::log10(one.a_weighted_volt / 1e-4), -2.048271, 1e-5);
  EXPECT_NEAR(one.a_weighted_level_db, -8.994528884 - 2.048271, 1e-5);
  ASSERT_TRUE(one.itu_468_weighted_volt);
  EXPECT_NEAR(*one.itu_468_weighted_volt * 1e6, 229.5178, 1e-3);
  // Two loudspeakers and 4 dB of room are 10 log10(2) + 4 more.
  EXPECT_NEAR(noise_of_d1({88, 2.5, 2, 4}).groups.at(0).at(0).level_db, -8.994528884 + 7.0103, 5.1e-5);
}

// 20 dB more brings the bands whose margin was less above their thresholds; each is counted alone.
TEST_F(MeasuredCircuits, NoiseAboveTheThresholdIsCountedByBands) {
  noise("white.csv", white);
  const NoiseOfCable quiet = noise_of_d1(), loud = noise_of_d1({108, 2.5, 1, 0});
  int within_20_db = 0;
  for (const hearing::BandAtSeat& band : quiet.groups[0][0].bands) within_20_db += band.margin_db <= 20;
  EXPECT_EQ(within_20_db, 3);  // 17.4 at 3.15 kHz, 17.0 at 4 kHz, 19.6 at 5 kHz
  EXPECT_EQ(bands_at_or_above(loud.groups[0][0]), 3);
  EXPECT_NE(noise_text(quiet).find("each band is below the published threshold of hearing for that band (29"),
            std::string::npos);
  EXPECT_NE(noise_text(loud).find("3 of 29 bands are at or above the published thresholds"),
            std::string::npos);
  const auto parsed = nlohmann::json::parse(noise_json(loud));
  EXPECT_EQ(parsed.at("schema"), 1);
  EXPECT_EQ(parsed.at("readings").at(0).at("bands_at_or_above"), 3);
  EXPECT_EQ(parsed.at("readings").at(0).at("bands").size(), 29U);
}

// The same noise as levels in bins of 1.5 Hz: 20 log10(707.460600e-9 sqrt(1.5)) = -121.245042 dBV.
TEST_F(MeasuredCircuits, NoiseLevelsNeedTheirBandwidth) {
  const char* const levels = "frequency_Hz,level_dBV\n20,-121.245042\n20000,-121.245042\n";
  noise("levels.csv", levels);
  EXPECT_EQ(refusal([&] { noise_of_d1(); }),
            "reading 4 (levels.csv) holds levels without the bandwidth that each was measured in\n"
            "import the file again with --bandwidth 1.46Hz (its own) and --repeat 2, then supersede "
            "reading 4 by it");
  imported::Assignment again;
  again.cable = "D1";
  again.repeat = 2;
  again.bandwidth_hz = 1.5;
  import("levels.csv", levels, again);
  supersede(file, 4, 5, "the bandwidth was not given");
  EXPECT_NEAR(noise_of_d1().groups.at(0).at(0).level_db, -8.994529, 2e-5);
}

TEST_F(MeasuredCircuits, NoiseWithoutBandwidthIsLeftOutBesideOthers) {
  noise("levels.csv", "frequency_Hz,level_dBV\n20,-121\n20000,-121\n");
  noise("white.csv", white, "", "", 2);
  const NoiseOfCable found = noise_of_d1();
  ASSERT_EQ(found.groups.size(), 1U);
  EXPECT_EQ(found.groups[0][0].number, 5);
  ASSERT_EQ(found.left_out.size(), 1U);
  EXPECT_NE(found.left_out[0].find("reading 4 (levels.csv) holds levels without"), std::string::npos);
  EXPECT_NE(found.left_out[0].find("--repeat 3,"), std::string::npos) << "repeat 2 is taken";
  EXPECT_NE(noise_text(found).find("left out: reading 4"), std::string::npos);
  EXPECT_EQ(nlohmann::json::parse(noise_json(found)).at("left_out").size(), 1U);
}

// N1: 1 kohm at 300 K has 4.070355 nV per root hertz, at 293 K sqrt(293/300) of it; beside 47 kohm it is 979.1667 ohm.
TEST_F(MeasuredCircuits, NoiseBelowThermalNoiseIsACaution) {
  rig("line", "1kohm", "47kohm", "line level");
  noise("quiet.csv", "frequency_Hz,density_nV_per_sqrtHz\n20,2\n20000,2\n", "line");
  noise("fair.csv", "frequency_Hz,density_nV_per_sqrtHz\n20,4\n20000,4\n", "line", "", 2);
  noise("elsewhere.csv", white);
  const NoiseOfCable found = noise_of_d1({88, 2.5, 2, 0}, "line");
  ASSERT_EQ(found.groups.size(), 2U);
  const double thermal_nv = 4.070355 * std::sqrt(293.0 / 300);
  const NoiseAtSeat &quiet = found.groups[0][0], &fair = found.groups[1][0];
  EXPECT_TRUE(quiet.thermal.is_of_the_rig);
  EXPECT_NEAR(quiet.thermal.density_volt_per_sqrt_hz * 1e9, thermal_nv, 5.1e-7);
  const double beside_load_nv = thermal_nv * std::sqrt(47.0 / 48);
  EXPECT_NEAR(*quiet.thermal.least_above_db, 20 * std::log10(2 / beside_load_nv), 1e-5);
  EXPECT_NEAR(*fair.thermal.least_above_db, 20 * std::log10(4 / beside_load_nv), 1e-5);
  ASSERT_EQ(quiet.cautions.size(), 2U);
  EXPECT_TRUE(quiet.cautions[0].starts_with("reading 4 is up to 6.0 dB below the thermal noise of rig line"));
  ASSERT_EQ(fair.cautions.size(), 1U);
  EXPECT_NE(fair.cautions[0].find("the gain of the amplifier behind it is not counted"), std::string::npos);
  const NoiseAtSeat elsewhere = noise_of_d1().groups.at(2).at(0);
  EXPECT_FALSE(elsewhere.thermal.least_above_db);
  EXPECT_TRUE(elsewhere.cautions.empty());
}

TEST_F(MeasuredCircuits, TwoStatesOfAFeatureStandNextToEachOther) {
  noise("on.csv", white, "bench", "on");
  noise("plain.csv", white);
  noise("off.csv", "frequency_Hz,density_nV_per_sqrtHz\n20,7074.60599963\n10000,7074.60599963\n", "bench",
        "off");
  noise("later.csv", white, "bench", "on", 2);
  const NoiseOfCable found = noise_of_d1();
  ASSERT_EQ(found.groups.size(), 3U);
  ASSERT_EQ(found.groups[0].size(), 2U);
  EXPECT_EQ(found.groups[0][0].state, "on");
  EXPECT_EQ(found.groups[0][1].state, "off");
  // Ten times the density is 20 dB more; the band of 10 kHz is not whole below 10 kHz.
  const std::string text = noise_text(found);
  EXPECT_NE(
      text.find("band, Hz  threshold, dB  level, dB, on  margin, dB, on  level, dB, off  margin, dB, off"),
      std::string::npos)
      << text;
  EXPECT_NE(
      text.find("    3162           -6.0          -23.4            17.4            -3.4             -2.6\n"),
      std::string::npos)
      << text;
  EXPECT_NE(text.find("   10000            8.4          -18.4            26.8\n"), std::string::npos) << text;
}

// The lossless values of the same file: Z0, and the delay of 5 m.
TEST_F(MeasuredCircuits, TradeoffHasImpedanceAndSpeed) {
  import("more.csv",
         "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF\nfast,3,0.03,0.9,20\nplain,3,0.03,,\n");
  add_cable(file, {"unread", {}, ""}, false);
  const Tradeoff found = tradeoff(file);
  const auto parsed = nlohmann::json::parse(found.json);
  EXPECT_EQ(parsed.at("schema"), 1);
  const auto& cables = parsed.at("cables");
  ASSERT_EQ(cables.size(), 6U);
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/phase_500kHz.csv"))
    for (const auto& cable : cables) {
      if (cable.at("cable") != row.text("cable")) continue;
      ++rows;
      EXPECT_NEAR(cable.at("characteristic_impedance_ohm").get<double>(), row.number("Z0_ohm"), 5.1e-10);
      EXPECT_NEAR(cable.at("speed_relative_to_light").get<double>(),
                  5 / (row.number("tau_ns") * 1e-9 * 299792458), 1e-8);
      EXPECT_FALSE(cable.at("faster_than_light").get<bool>());
    }
  EXPECT_EQ(rows, 6);
  EXPECT_TRUE(cables.at(3).at("faster_than_light").get<bool>());
  EXPECT_TRUE(cables.at(4).at("characteristic_impedance_ohm").is_null());
  EXPECT_NEAR(cables.at(4).at("loop_resistance_ohm_per_m").get<double>(), 0.01, 1e-12);
  EXPECT_TRUE(cables.at(5).at("loop_resistance_ohm_per_m").is_null());
  for (const char* words : {"check the inductance, capacitance and length of fast.",
                            "inductance or capacitance is not known: plain and unread."})
    EXPECT_NE(found.text.find(words), std::string::npos) << found.text;
}

}  // namespace
}  // namespace desk
