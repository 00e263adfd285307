#include "electrical/construction/geometry.h"

#include <gtest/gtest.h>

#include "electrical/construction/conductor.h"
#include "electrical/construction/copper.h"
#include "electrical/construction/round_wire.h"
#include "electrical/csv_rows.h"
#include "electrical/line_facts.h"
#include "electrical/refusal.h"
#include "electrical/response.h"

using electrical::Cable;

namespace {

/// The cable with its internal inductance left out, as the tables of external inductance have it.
Cable external(Cable cable) {
  cable.inductance_henry_per_m -= cable.round_conductors.count * electrical::kInternalInductanceHenryPerM;
  return cable;
}

}  // namespace

// G1: two round wires, acosh form. Textbook (memory); recomputed with SciPy's constants.
TEST(RoundPair, AgreesWithTheTable) {
  struct Row {
    double area_mm2, spacing_mm, permittivity, external_nh, pf, impedance, speed;
  };
  constexpr Row kRows[] = {{2.5, 4, 1, 578.637932, 19.228778, 173.471288, 1},
                           {2.5, 4, 2.5, 578.637932, 48.071946, 109.712876, 0.632456},
                           {4, 100, 1, 1793.704241, 6.203085, 537.739003, 1}};
  for (const Row& row : kRows) {
    SCOPED_TRACE(row.spacing_mm);
    const Cable cable = electrical::round_pair(electrical::solid_wire(copper(), row.area_mm2 * 1e-6),
                                               row.spacing_mm * 1e-3, row.permittivity, 3);
    const Cable outside = external(cable);
    EXPECT_NEAR(outside.inductance_henry_per_m * 1e9, row.external_nh, 1e-6);
    EXPECT_NEAR(cable.capacitance_farad_per_m * 1e12, row.pf, 1e-6);
    EXPECT_NEAR(electrical::characteristic_impedance_ohm(outside), row.impedance, 1e-6);
    EXPECT_NEAR(electrical::speed_relative_to_light(outside), row.speed, 1e-6);
    EXPECT_NEAR(cable.resistance_ohm_per_m,
                2 * electrical::resistance_ohm_per_m(copper(), row.area_mm2 * 1e-6), 0);
    EXPECT_EQ(cable.round_conductors.count, 2);
  }
}

// G2: coaxial. recomputed. b/a = e in air: 200 nH/m and eta0/(2 pi) (G4).
TEST(Coaxial, AgreesWithTheTable) {
  struct Row {
    double inner_mm, shield_mm, permittivity, external_nh, pf, impedance, speed;
  };
  constexpr Row kRows[] = {{0.5, 1.75, 2.25, 250.552594, 99.917650, 50.075852, 0.666667},
                           {0.255, 1.475, 2.25, 351.029945, 71.317637, 70.157420, 0.666667},
                           {1, 2.718281828459045, 1, 200.000000, 55.632503, 59.958492, 1}};
  for (const Row& row : kRows) {
    SCOPED_TRACE(row.inner_mm);
    const auto wire = electrical::solid_wire(copper(), electrical::round_area_m2(2 * row.inner_mm * 1e-3));
    const Cable cable = electrical::coaxial(wire, 2 * row.shield_mm * 1e-3, 0.01, row.permittivity, 1);
    const Cable outside = external(cable);
    EXPECT_NEAR(outside.inductance_henry_per_m * 1e9, row.external_nh, 1e-6);
    EXPECT_NEAR(cable.capacitance_farad_per_m * 1e12, row.pf, 1e-6);
    EXPECT_NEAR(electrical::characteristic_impedance_ohm(outside), row.impedance, 1e-6);
    EXPECT_NEAR(electrical::speed_relative_to_light(outside), row.speed, 1e-6);
    EXPECT_NEAR(cable.resistance_ohm_per_m, cable.round_conductors.resistance_ohm_per_m + 0.01, 1e-15);
  }
}

// G3: strips without fringing. recomputed.
TEST(FlatStrips, AgreeWithTheTable) {
  struct Row {
    double width_mm, separation_mm, permittivity, nh, pf, impedance;
  };
  constexpr Row kRows[] = {{20, 0.1, 2.2, 6.283185, 3895.842638, 1.269958},
                           {10, 0.5, 3, 62.831853, 531.251269, 10.875267}};
  for (const Row& row : kRows) {
    const Cable cable = electrical::flat_strips(copper(), row.width_mm * 1e-3, 0.2e-3,
                                                row.separation_mm * 1e-3, row.permittivity, 2);
    EXPECT_NEAR(cable.inductance_henry_per_m * 1e9, row.nh, 1e-6);
    EXPECT_NEAR(cable.capacitance_farad_per_m * 1e12, row.pf, 1e-6);
    EXPECT_NEAR(electrical::characteristic_impedance_ohm(cable), row.impedance, 1e-6);
  }
}

// T2, cases B2 and B3, every row: two solid wires of 0.75 and 4 mm2 with skin effect, 10 m into 4 ohm behind 0.05 ohm.
// recomputed in binary128; 1e-9 for the magnetic constant, there 4 pi 1e-7.
TEST(SkinEffect, SolidWiresAgreeWithTheGoldenRows) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/golden_line_cases.csv")) {
    const bool thin = row.text("case") == "B2", thick = row.text("case") == "B3";
    if (!thin && !thick) continue;
    SCOPED_TRACE(row.text("case") + " at " + row.text("f_Hz"));
    ++rows;
    const double each = electrical::resistance_ohm_per_m(copper(), thin ? 0.75e-6 : 4e-6);
    const Cable cable{
        .resistance_ohm_per_m = 2 * each,
        .inductance_henry_per_m = (thin ? 0.6e-6 : 0.5e-6) + 2 * electrical::kInternalInductanceHenryPerM,
        .capacitance_farad_per_m = 50e-12,
        .length_m = 10,
        .round_conductors = {2, each}};
    const auto h = electrical::response({0.05}, cable, electrical::Resistor{4}, row.number("f_Hz"));
    EXPECT_NEAR(electrical::level_db(h), row.number("H_dB"), 2e-9);
    EXPECT_NEAR(electrical::phase_deg(h), row.number("H_deg"), 2e-8);
  }
  EXPECT_GE(rows, 20);
}

// T2: B3 at 20 kHz as printed. recomputed.
TEST(SkinEffect, SeriesImpedanceOfThePair) {
  const double each = electrical::resistance_ohm_per_m(copper(), 4e-6);
  const Cable cable{.resistance_ohm_per_m = 2 * each,
                    .inductance_henry_per_m = 0.6e-6,
                    .length_m = 1,
                    .round_conductors = {2, each}};
  const auto ohm = electrical::series_ohm(cable, 20000);
  EXPECT_NEAR(ohm.real(), 0.012595543, 5.1e-10);
  EXPECT_NEAR(ohm.imag() / (2 * 3.14159265358979 * 20000) * 1e6, 0.577932785, 1e-9);
}

TEST(Construction, RefusesWhatCannotBeBuilt) {
  const auto wire = electrical::solid_wire(copper(), 2.5e-6);
  EXPECT_EQ(refusal([&] { electrical::round_pair(wire, 1e-3, 2, 3); }),
            "centre_spacing_m must be above the conductor's diameter, 0.0017841241161527712, got 0.001");
  EXPECT_EQ(refusal([&] { electrical::round_pair(wire, 4e-3, 0.9, 3); }),
            "relative_permittivity must be a finite number, 1 or more, got 0.9");
  EXPECT_EQ(refusal([&] { electrical::coaxial(wire, 4e-3, -1, 2, 3); }),
            "shield_resistance_ohm_per_m must be a finite number, 0 or more, got -1");
  EXPECT_EQ(refusal([] { electrical::flat_strips(copper(), 1e-3, 1e-4, 2e-3, 2, 3); }),
            "width_m must be above the separation, 0.002, got 0.001");
  EXPECT_EQ(refusal([] {
              electrical::round_pair({copper(), 2.5e-6, 1e-3}, 4e-3, 1, 3);
            }).substr(0, 50),
            "outline_diameter_m must hold the metal, a solid wi");
  Cable cable = electrical::round_pair(wire, 4e-3, 2, 3);
  cable.round_conductors.resistance_ohm_per_m *= 2;
  EXPECT_NE(refusal([&] { electrical::check(cable); }), "accepted");
  cable.round_conductors = {3, 0.001};
  EXPECT_EQ(refusal([&] { electrical::check(cable); }), "round_conductors count must be from 0 to 2, got 3");
}
