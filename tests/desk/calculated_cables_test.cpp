// Conductors and constructions from numbers, as the calculator shows them. Values: see tests/electrical/construction
// for their sources.
#include <gtest/gtest.h>

#include "desk/calculated.h"
#include "electrical/csv_rows.h"
#include "refusal.h"

namespace desk {
namespace {

// R1: IEC 60228:2004, Tables 1 to 3 (read in secondary copies that agree).
TEST(CalculateConductor, HasTheStandardsAreas) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/conductor_rmax_iec60228.csv")) {
    if (row.number("area_mm2") > 6.5) continue;
    ++rows;
    const Figures found = calculated("conductor --area " + row.text("area_mm2") + "mm2 --length 3m");
    EXPECT_NEAR(amount(found, "resistance_mohm_per_m"), row.number("r_iacs_ohm_per_km"), 5.1e-5);
    EXPECT_NEAR(amount(found, "loop_mohm"), 6 * row.number("r_iacs_ohm_per_km"), 6 * 5.1e-5);
    EXPECT_NEAR(amount(found, "standard_solid_mohm_per_m"), row.number("class2"), 1e-9);
    EXPECT_NEAR(amount(found, "standard_flexible_mohm_per_m"), row.number("class5_plain"), 1e-9);
  }
  EXPECT_EQ(rows, 7);
  EXPECT_ANY_THROW(calculated("conductor --area 3mm2").at("standard_solid_mohm_per_m"));
  EXPECT_ANY_THROW(calculated("conductor --area 2.5mm2 --material silver").at("standard_solid_mohm_per_m"));
}

// R3: ASTM B258's rule (memory; recomputed), whose 4/0 is 0.46 inches by definition.
TEST(CalculateConductor, HasTheGauges) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/awg_copper.csv")) {
    ++rows;
    const Figures found = calculated("conductor --awg " + row.text("awg"));
    EXPECT_NEAR(amount(found, "diameter_mm"), row.number("d_mm"), 5.1e-7);
    EXPECT_NEAR(amount(found, "area_mm2"), row.number("area_mm2"), 5.1e-7);
    EXPECT_NEAR(amount(found, "resistance_mohm_per_m"), row.number("ohm_per_km_20C"), 5.1e-5);
  }
  EXPECT_GT(rows, 15);
  EXPECT_NEAR(amount("conductor --awg 4/0", "diameter_mm"), 11.684, 1e-12);
  EXPECT_NEAR(amount("conductor --awg 1/0", "diameter_mm"), amount("conductor --awg 0", "diameter_mm"), 0);
  EXPECT_NEAR(amount("conductor --diameter 2,052525mm", "resistance_mohm"), 5.2108, 5.1e-5);
}

// R4: copper at 40 C has 1.0786 times its resistance at 20 C. S2: skin depths. recomputed.
TEST(CalculateConductor, KnowsTemperatureAndSkinDepth) {
  EXPECT_NEAR(amount("conductor --area 2.5mm2 --temperature 40C", "resistance_mohm") /
                  amount("conductor --area 2.5mm2", "resistance_mohm"),
              1.0786, 1e-12);
  EXPECT_NEAR(amount("conductor --area 1mm2 --frequency 20kHz", "skin_depth_mm"), 0.467295, 5.1e-7);
  EXPECT_NEAR(amount("conductor --area 1mm2 --frequency 60Hz", "skin_depth_mm"), 8.5316, 5.1e-7);
}

// S3: solid wires at 20 C. recomputed, with the magnetic constant 4 pi 1e-7: 3e-10. Half the last printed digit.
TEST(CalculateConductor, HasTheSkinEffect) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/skin_wire_examples.csv")) {
    ++rows;
    const std::string wire =
        "conductor --area " + row.text("area_mm2") + "mm2 --frequency " + row.text("f_Hz") + "Hz";
    SCOPED_TRACE(wire);
    const Figures found = calculated(wire);
    const double ratio = row.number("R_over_R0"), mohm = row.number("R_ac_ohm_per_km");
    EXPECT_NEAR(amount(found, "resistance_ratio"), ratio, 5.1e-9 + 3e-10 * ratio);
    EXPECT_NEAR(amount(found, "ac_resistance_mohm_per_m"), mohm, 5.1e-7 + 3e-10 * mohm);
    EXPECT_NEAR(amount(found, "internal_inductance_nh_per_m"), row.number("Li_nH_per_m"), 6e-7);
  }
  EXPECT_GT(rows, 40);
}

void expect_line(const Figures& found, double outer_nh, double pf, double impedance_ohm, double speed) {
  EXPECT_NEAR(1e3 * amount(found, "outer_inductance_uh_per_m"), outer_nh, 1e-6);
  EXPECT_NEAR(amount(found, "capacitance_pf_per_m"), pf, 1e-6);
  EXPECT_NEAR(amount(found, "impedance_ohm"), impedance_ohm, 1e-6);
  EXPECT_NEAR(amount(found, "speed_share"), speed, 1e-6);
}

// G1: two round wires, textbook (memory); recomputed. 1/c is 3.335641 ns/m (G4).
TEST(CalculatePair, AgreesWithTheTable) {
  const Figures air = calculated("pair --area 2.5mm2 --spacing 4mm --permittivity 1");
  expect_line(air, 578.637932, 19.228778, 173.471288, 1);
  EXPECT_NEAR(amount(air, "delay_ns"), 3.335641, 5.1e-7);
  const Figures plastic = calculated("pair --area 2,5mm2 --spacing 4mm --permittivity 2,5 --length 3m");
  expect_line(plastic, 578.637932, 48.071946, 109.712876, 0.632456);
  EXPECT_NEAR(amount(plastic, "capacitance_pf"), 3 * 48.071946, 3e-6);
  // 50 nH/m within each conductor, mu0/(8 pi).
  EXPECT_NEAR(amount(plastic, "inductance_uh"), 3 * 0.678637932, 3e-9);
  EXPECT_NEAR(amount(plastic, "loop_mohm"), 6 * 6.8966, 6 * 5.1e-5);  // R1
  expect_line(calculated("pair --area 4mm2 --spacing 100mm --permittivity 1"), 1793.704241, 6.203085,
              537.739003, 1);
  EXPECT_NE(note(plastic, "inductance_uh_per_m").find("left out: twist, proximity effect"),
            std::string::npos);
  // Strands of the same metal in a wider outline have their field further out.
  EXPECT_LT(amount("pair --area 2.5mm2 --outline 2mm --spacing 4mm --permittivity 1", "inductance_uh"),
            0.678638);
}

// G2: coaxial. recomputed; the last row G4, b/a = e in air.
TEST(CalculateCoax, AgreesWithTheTable) {
  const Figures fifty =
      calculated("coax --diameter 1mm --shield 3.5mm --shield-resistance 10mohm/m --permittivity 2.25");
  expect_line(fifty, 250.552594, 99.917650, 50.075852, 0.666667);
  EXPECT_NEAR(amount(fifty, "resistance_mohm_per_m"),
              amount("conductor --diameter 1mm", "resistance_mohm") + 10, 1e-12);
  expect_line(
      calculated("coax --diameter 0.51mm --shield 2.95mm --shield-resistance 0ohm/m --permittivity 2.25"),
      351.029945, 71.317637, 70.157420, 0.666667);
  expect_line(
      calculated(
          "coax --diameter 2mm --shield 5.43656365691809mm --shield-resistance 1ohm/km --permittivity 1"),
      200, 55.632503, 59.958492, 1);
}

// G3: strips without fringing. recomputed.
TEST(CalculateStrips, AgreeWithTheTable) {
  const Figures wide =
      calculated("strips --width 20mm --thickness 0.2mm --separation 0.1mm --permittivity 2.2 --length 2m");
  EXPECT_NEAR(1e3 * amount(wide, "inductance_uh_per_m"), 6.283185, 1e-6);
  EXPECT_NEAR(amount(wide, "capacitance_pf_per_m"), 3895.842638, 1e-6);
  EXPECT_NEAR(amount(wide, "impedance_ohm"), 1.269958, 1e-6);
  EXPECT_NEAR(amount(wide, "loop_mohm"), 4 * 1e3 / 58 / 4, 1e-9);  // 4 mm2, 58 MS/m (R2)
  EXPECT_NE(note(wide, "capacitance_pf_per_m").find("fringing"), std::string::npos);
  EXPECT_NEAR(
      amount("strips --width 10mm --thickness 0.2mm --separation 0.5mm --permittivity 3", "impedance_ohm"),
      10.875267, 1e-6);
}

TEST(CalculateCables, RefuseWhatCannotBe) {
  EXPECT_EQ(refusal([] { calculated("conductor"); }),
            "exactly one of --area, --diameter or --awg must be given, got 0\n"
            "see blindswap calc conductor --help");
  EXPECT_NE(refusal([] { calculated("conductor --area 2.5mm2 --awg 12"); }).find("given, got 2"),
            std::string::npos);
  EXPECT_EQ(refusal([] { calculated("conductor --awg 60"); }), "gauge must be from -3 to 50, got 60");
  EXPECT_EQ(refusal([] { calculated("conductor --area 1mm2 --material gold"); }),
            "material must be copper, silver or aluminium, got \"gold\"");
  EXPECT_EQ(refusal([] { calculated("conductor --area 1mm2 --temperature 500C"); }),
            "temperature_celsius must be from -60 to 200, got 500");
  EXPECT_EQ(refusal([] { calculated("pair --diameter 1mm --spacing 4mm --permittivity 0.9"); }),
            "relative_permittivity must be a finite number, 1 or more, got 0.9");
  EXPECT_NE(refusal([] {
              calculated("pair --diameter 2mm --spacing 2mm --permittivity 1");
            }).find("must be above the conductor's diameter"),
            std::string::npos);
  EXPECT_EQ(
      refusal([] { calculated("strips --width 1mm --thickness 1mm --separation 2mm --permittivity 1"); }),
      "width_m must be above the separation, 0.002, got 0.001");
}

}  // namespace
}  // namespace desk
