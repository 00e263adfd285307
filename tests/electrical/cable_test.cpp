#include "electrical/cable.h"

#include <gtest/gtest.h>

#include <limits>

#include "electrical/golden_cases.h"
#include "electrical/line_facts.h"
#include "electrical/refusal.h"

using electrical::Cable;

// R1: 2.5 mm2 class 5, IEC 60228:2004 Table 3 (read in secondary copies): 7.98 ohm/km, a 3 m pair 0.04788 ohm.
TEST(Cable, LoopResistanceIsThatOfBothConductorsAndTheResistor) {
  Cable cable = line(2 * 7.98e-3, 0, 0, 3);
  EXPECT_NEAR(electrical::loop_resistance_ohm(cable), 0.04788, 1e-16);
  cable.load_end_resistance_ohm = 0.5;
  EXPECT_NEAR(electrical::loop_resistance_ohm(cable), 0.54788, 1e-15);
  EXPECT_NEAR(electrical::totals(cable).loop_resistance_ohm, 0.04788, 1e-16);
}

TEST(Cable, FromTotalsHasTheseTotals) {
  const electrical::CableTotals given{0.6, 1.8e-6, 180e-12, 3e-6};
  const auto back = electrical::totals(electrical::cable_from_totals(given, 3));
  EXPECT_DOUBLE_EQ(back.loop_resistance_ohm, 0.6);
  EXPECT_DOUBLE_EQ(back.inductance_henry, 1.8e-6);
  EXPECT_DOUBLE_EQ(back.capacitance_farad, 180e-12);
  EXPECT_DOUBLE_EQ(back.conductance_siemens, 3e-6);
}

TEST(Cable, RefusesNegativeAndNonFiniteValues) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinity = std::numeric_limits<double>::infinity();
  EXPECT_EQ(refusal([] { electrical::check(line(-0.2, 0, 0, 3)); }),
            "resistance_ohm_per_m must be a finite number, 0 or more, got -0.2");
  EXPECT_EQ(refusal([&] { electrical::check(line(0, nan, 0, 3)); }),
            "inductance_henry_per_m must be a finite number, 0 or more, got nan");
  EXPECT_EQ(refusal([&] { electrical::check(line(0, 0, infinity, 3)); }),
            "capacitance_farad_per_m must be a finite number, 0 or more, got inf");
  EXPECT_EQ(refusal([] { electrical::check(line(0, 0, 0, 3, -1e-6)); }),
            "conductance_siemens_per_m must be a finite number, 0 or more, got -1e-06");
  EXPECT_EQ(refusal([] { electrical::check(line(0, 0, 0, -3)); }),
            "length_m must be a finite number, 0 or more, got -3");
  EXPECT_EQ(refusal([] { electrical::check({.load_end_resistance_ohm = -0.1}); }),
            "load_end_resistance_ohm must be a finite number, 0 or more, got -0.1");
  EXPECT_EQ(refusal([] { electrical::cable_from_totals({0.6}, 0); }),
            "length_m must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] { electrical::cable_from_totals({-0.6}, 3); }),
            "loop_resistance_ohm must be a finite number, 0 or more, got -0.6");
}

// G4: a 3 m cable of 0.6 uH/m and 60 pF/m: 18 ns, 100 ohm; 1/c is 3.335641 ns/m. recomputed.
TEST(LineFacts, AgreeWithTheExample) {
  const Cable cable = line(0.2, 0.6e-6, 60e-12, 3);
  EXPECT_NEAR(electrical::delay_s(cable), 18e-9, 1e-23);
  EXPECT_NEAR(electrical::characteristic_impedance_ohm(cable), 100, 1e-12);
  EXPECT_NEAR(electrical::speed_relative_to_light(cable), 3.335641 / 6, 1e-7);
}

// G1, first and second row: two round wires in air and with er = 2.5. Textbook (memory); recomputed.
TEST(LineFacts, AgreeWithTheTwoWireLine) {
  const Cable air = line(0, 578.637932e-9, 19.228778e-12, 1);
  EXPECT_NEAR(electrical::characteristic_impedance_ohm(air), 173.471288, 1e-5);
  EXPECT_NEAR(electrical::speed_relative_to_light(air), 1, 5e-8);
  EXPECT_NEAR(electrical::delay_s(air), 3.335641e-9, 1e-15);
  EXPECT_FALSE(electrical::faster_than_light(air));
  const Cable dielectric = line(0, 578.637932e-9, 48.071946e-12, 1);
  EXPECT_NEAR(electrical::characteristic_impedance_ohm(dielectric), 109.712876, 1e-5);
  EXPECT_NEAR(electrical::speed_relative_to_light(dielectric), 0.632456, 1e-6);
}

TEST(LineFacts, TellReadingsThatCannotBeRight) {
  EXPECT_TRUE(electrical::faster_than_light(line(0, 578e-9, 19e-12, 1)));  // LC 1.3 % below mu0 eps0
  EXPECT_FALSE(electrical::faster_than_light(line(0, 0, 19e-12, 1)));      // inductance left out
  EXPECT_FALSE(electrical::faster_than_light(line(0, 0.6e-6, 60e-12, 3)));
}

// Y3: above about 1 nF in all. Common practice, no source.
TEST(LineFacts, CautionAboveOneNanofarad) {
  EXPECT_FALSE(electrical::capacitance_needs_caution(line(0, 0, 100e-12, 3)));
  EXPECT_FALSE(electrical::capacitance_needs_caution(line(0, 0, 1e-9, 1)));
  EXPECT_TRUE(electrical::capacitance_needs_caution(line(0, 0, 3.9e-9, 3)));
}

TEST(LineFacts, RefuseALineWithoutInductanceOrCapacitance) {
  EXPECT_EQ(refusal([] { electrical::characteristic_impedance_ohm(line(0.2, 0.6e-6, 0, 3)); }),
            "capacitance_farad_per_m must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] { electrical::speed_relative_to_light(line(0.2, 0, 60e-12, 3)); }),
            "inductance_henry_per_m must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] { electrical::delay_s(line(0.2, 0, -60e-12, 3)); }),
            "capacitance_farad_per_m must be a finite number, 0 or more, got -6e-11");
}
