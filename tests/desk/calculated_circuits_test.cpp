// Cables between source and load, as the calculator shows them. Values: see tests/electrical for their sources.
#include <gtest/gtest.h>

#include <cmath>
#include <complex>

#include "desk/calculated.h"
#include "electrical/csv_rows.h"
#include "refusal.h"

namespace desk {
namespace {

/// LS1, the synthetic loudspeaker of tests/electrical.
const std::string loudspeaker = "'3.0ohm + 0.1mH + [27ohm||475uF||21.3mH] + [11ohm||9.6uF||0.81mH]'";

/// Circuits of golden_line_cases.csv, as its `#` lines state them, with the totals of their cables.
const std::map<std::string, std::string> typed_cases{
    {"A1",
     "--source 0.1ohm --resistance 0.6ohm --inductance 1.8uH --capacitance 180pF --load " + loudspeaker},
    {"B1", "--source 0.05ohm --resistance 0.52ohm --inductance 7uH --capacitance 500pF --load 4ohm"},
    {"C1", "--source 100ohm --resistance 0.5ohm --inductance 2uH --capacitance 500pF --load 47kohm||100pF"},
    {"C3", "--source 1000ohm --resistance 0.5ohm --inductance 2uH --capacitance 500pF --load 47kohm||100pF"},
    {"C4", "--source 1kohm --resistance 0.5ohm --inductance 2uH --capacitance 1.5nF --load 10kohm||100pF"},
    {"D1", "--source 50ohm --resistance 0.25ohm --inductance 1.25uH --capacitance 500pF"},
    {"D2", "--source 50ohm --resistance 0.25ohm --inductance 3uH --capacitance 300pF"},
    {"D3", "--source 50ohm --resistance 0.25ohm --inductance 0.5uH --capacitance 2nF"},
};

// Golden rows of tests/electrical, IEEE binary128. Totals of a cable are rounded otherwise than its values per metre.
TEST(CalculateCable, AgreesWithTheGoldenRows) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/golden_line_cases.csv")) {
    const auto typed = typed_cases.find(row.text("case"));
    if (typed == typed_cases.end()) continue;
    ++rows;
    SCOPED_TRACE(row.text("case") + " at " + row.text("f_Hz"));
    const Figures found = calculated("cable " + typed->second + " --frequency " + row.text("f_Hz") + "Hz");
    EXPECT_NEAR(amount(found, "level_db"), row.number("H_dB"), 1e-12);
    EXPECT_NEAR(amount(found, "phase_deg"), row.number("H_deg"), 1e-11);
    const std::complex<double> input{row.number("Zin_re"), row.number("Zin_im")};
    EXPECT_NEAR(amount(found, "input_ohm") / std::abs(input), 1, 1e-12);
    EXPECT_NEAR(amount(found, "input_deg"), std::arg(input) * 180 / M_PI, 1e-10);
    EXPECT_NE(note(found, "phase_deg").find("behind "), std::string::npos);
  }
  EXPECT_GT(rows, 50);
}

// L2: damping factors, output impedance at 20 kHz. T1: 8 ohm behind 0.7 ohm. recomputed.
TEST(CalculateCable, HasDampingFactorsAndItsOwnPart) {
  const std::string ends = "cable --source 0.1ohm --load 8ohm --rated 8ohm --resistance 0.6ohm ";
  const Figures inductive = calculated(ends + "--inductance 1.8uH --capacitance 0pF --frequency 20kHz");
  EXPECT_NEAR(amount(inductive, "damping_factor"), 11.428571, 5.1e-7);
  EXPECT_NEAR(amount(inductive, "damping_factor_at_frequency"), 10.874906, 5.1e-7);
  EXPECT_NEAR(amount(inductive, "output_ohm"), 0.735638518, 5.1e-10);
  const Figures resistive = calculated(ends + "--inductance 0H --capacitance 0F --frequency 1kHz");
  EXPECT_NEAR(amount(resistive, "level_db"), -0.728585, 5.1e-7);
  EXPECT_NEAR(amount(resistive, "cable_db"), 20 * std::log10(8.1 / 8.7), 1e-12);  // Ohm's law
  EXPECT_ANY_THROW(
      calculated("cable --source 0ohm --load 8ohm --resistance 1ohm --inductance 0H --capacitance "
                 "0F --frequency 1kHz")
          .at("damping_factor"));
}

// G4: 3 m of 0.6 uH/m and 60 pF/m: 3.335641/6 of light's speed. Y3: above 1 nF, common practice.
TEST(CalculateCable, SaysWhatCannotBeAndWhatMayDisturb) {
  const std::string ends =
      "cable --source 0.1ohm --load 8ohm --resistance 0.6ohm --frequency 1kHz --length 3m ";
  const Figures usual = calculated(ends + "--inductance 1.8uH --capacitance 180pF");
  EXPECT_NEAR(amount(usual, "speed_share"), 3.335641 / 6, 1e-7);
  EXPECT_EQ(note(usual, "speed_share"), "of light's");
  EXPECT_FALSE(std::get<bool>(usual.at("capacitance_caution")));
  const Figures fast = calculated(ends + "--inductance 1734nH --capacitance 57pF");
  EXPECT_NE(note(fast, "speed_share").find("impossible"), std::string::npos);
  EXPECT_TRUE(
      std::get<bool>(calculated(ends + "--inductance 1uH --capacitance 11.7nF").at("capacitance_caution")));
}

// T3: recomputed; the one-pole estimate to whole hertz.
TEST(CalculateInterconnect, AgreesWithTheTable) {
  struct Row {
    const char* name;
    double fall_db, exact_hz, one_pole_hz;
  };
  for (const Row& row :
       {Row{"C1", -0.000150834, 3867730.556, 2658226}, Row{"C3", -0.023465178, 271554.015, 270902.031},
        Row{"C4", -0.142214214, 109505.444, 109419.023}}) {
    const Figures found = calculated("interconnect " + typed_cases.at(row.name));
    EXPECT_NEAR(amount(found, "against_1khz_db"), row.fall_db, 5.1e-10);
    EXPECT_NEAR(amount(found, "corner_hz"), row.exact_hz, 5.1e-4);
    EXPECT_NEAR(amount(found, "one_pole_corner_hz"), row.one_pole_hz, 0.6);
  }
  EXPECT_NEAR(amount("interconnect " + typed_cases.at("C3"), "level_db"), -0.206482214, 5.1e-10);
}

// Ohm's law at 20 Hz: 1000 ohm and 0.5 ohm of cable into 47 kohm.
TEST(CalculateInterconnect, SharesTheLoss) {
  const Figures found = calculated("interconnect " + typed_cases.at("C3") + " --frequency 20Hz");
  EXPECT_NEAR(amount(found, "cable_resistance_db"), 20 * std::log10(48000 / 48000.5), 1e-9);
  EXPECT_NEAR(amount(found, "source_resistance_db"), 20 * std::log10(47000.5 / 48000.5), 1e-6);
  EXPECT_NEAR(amount(found, "load_db"), 20 * std::log10(47000 / 48000.5), 1e-6);
  EXPECT_NEAR(amount(found, "cable_capacitance_db"), 0, 1e-6);
}

TEST(CalculateInterconnect, HasNoCornerWithoutCapacitanceOrInductance) {
  const std::string cable =
      "interconnect --source 0.1ohm --resistance 0.3ohm --inductance 0H --capacitance 0F ";
  const Figures found = calculated(cable + "--load 8ohm");
  EXPECT_EQ(found.at("corner_hz"), Value());
  EXPECT_EQ(found.at("one_pole_corner_hz"), Value());
  EXPECT_ANY_THROW(calculated(cable + "--load " + loudspeaker).at("one_pole_corner_hz"));
}

// T4: 5 m behind 50 ohm at 500 kHz. recomputed. A reading 0.2 degrees off, and a turn: what is left is 0.2.
TEST(CalculatePhase, AgreesWithTheTable) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/phase_500kHz.csv")) {
    SCOPED_TRACE(row.text("cable") + " " + row.text("termination"));
    ++rows;
    const std::string load = row.text("termination") == "50 ohm" ? "50ohm" : "1Mohm||15pF";
    const double actual = row.number("actual_phase_deg"), straight = row.number("minus_360_f_tau_deg");
    const std::string circuit =
        "phase " + typed_cases.at(row.text("cable")) + " --load " + load + " --frequency 500kHz";
    const Figures found = calculated(circuit + " --measured " + std::to_string(actual + 0.2 - 360) + "deg");
    EXPECT_NEAR(amount(found, "phase_deg"), actual, 5.1e-10);
    EXPECT_NEAR(amount(found, "propagation_ns"), row.number("tau_ns"), 5.1e-7);
    EXPECT_NEAR(amount(found, "propagation_deg"), straight, 5.1e-10);
    EXPECT_NEAR(amount(found, "terminations_deg"), actual - straight, 1e-9);
    EXPECT_NEAR(amount(found, "left_over_deg"), 0.2, 5.1e-7);  // typed with six decimals
    EXPECT_NEAR(amount(found, "measured_deg"), actual + 0.2, 5.1e-7);
    EXPECT_ANY_THROW(calculated(circuit).at("left_over_deg"));
  }
  EXPECT_EQ(rows, 6);
}

// T4: three different numbers for D3 on high impedance. recomputed.
TEST(CalculatePhase, TellsTheThreeDelaysApart) {
  const Figures found =
      calculated("phase " + typed_cases.at("D3") + " --load 1Mohm||15pF --frequency 500kHz --length 5m");
  EXPECT_NEAR(amount(found, "propagation_ns"), 31.622777, 5.1e-7);
  EXPECT_NEAR(amount(found, "phase_delay_ns"), 98.116, 5.1e-4);
  EXPECT_NEAR(amount(found, "group_delay_ns"), 92.651, 5.1e-4);
  EXPECT_NEAR(amount(found, "speed_share"), 5 / (299792458 * 31.622777e-9), 1e-7);
}

TEST(CalculateCable, RefusesAnImpossibleDampingFactor) {
  EXPECT_EQ(refusal([] {
              calculated(
                  "cable --source 0ohm --load 8ohm --resistance 0ohm --inductance 0H --capacitance 0F "
                  "--frequency 1kHz --rated 8ohm");
            }),
            "impedance seen by the load must be a finite number above 0, got 0");
}

}  // namespace
}  // namespace desk
