#include "electrical/construction/conductor.h"

#include <gtest/gtest.h>

#include "electrical/construction/copper.h"
#include "electrical/csv_rows.h"
#include "electrical/refusal.h"

using electrical::material_named;

// R1: IEC 60228:2004, Tables 1 to 3 (read in five secondary copies that agree, not in the standard itself).
TEST(StandardConductor, HasTheLimitsOfTheStandard) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/conductor_rmax_iec60228.csv")) {
    SCOPED_TRACE(row.text("area_mm2"));
    const double area_m2 = row.number("area_mm2") * 1e-6;
    if (area_m2 > 6.5e-6) continue;
    ++rows;
    const auto found = electrical::standard_conductor(area_m2);
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->solid_or_stranded_ohm_per_m, row.number("class1") / 1e3, 1e-12);
    EXPECT_NEAR(found->solid_or_stranded_ohm_per_m, row.number("class2") / 1e3, 1e-12);
    EXPECT_NEAR(found->flexible_ohm_per_m, row.number("class5_plain") / 1e3, 1e-12);
    EXPECT_NEAR(found->flexible_tinned_ohm_per_m, row.number("class5_tinned") / 1e3, 1e-12);
    // R1, last column: solid wire of the nominal area. recomputed; printed to four decimals.
    EXPECT_NEAR(electrical::resistance_ohm_per_m(copper(), area_m2) * 1e3, row.number("r_iacs_ohm_per_km"),
                5.1e-5);
    // The limit is 5 to 16 % above the solid wire's.
    const double above = found->flexible_ohm_per_m / electrical::resistance_ohm_per_m(copper(), area_m2);
    EXPECT_GT(above, 1.04);
    EXPECT_LT(above, 1.17);
  }
  EXPECT_EQ(rows, 7);
  EXPECT_FALSE(electrical::standard_conductor(3e-6));
}

// R3: ASTM B258's rule (memory); values recomputed.
TEST(Gauge, HasTheDiameterAreaAndResistanceOfTheRule) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/awg_copper.csv")) {
    SCOPED_TRACE(row.text("awg"));
    ++rows;
    const double diameter_m = electrical::awg_diameter_m(row.number("awg"));
    EXPECT_NEAR(diameter_m * 1e3, row.number("d_mm"), 5.1e-7);
    const double area_m2 = electrical::round_area_m2(diameter_m);
    EXPECT_NEAR(area_m2 * 1e6, row.number("area_mm2"), 5.1e-7);
    EXPECT_NEAR(electrical::resistance_ohm_per_m(copper(), area_m2) * 1e3, row.number("ohm_per_km_20C"),
                5.1e-5);
    EXPECT_NEAR(electrical::round_diameter_m(area_m2), diameter_m, 1e-15);
  }
  EXPECT_GT(rows, 15);
}

// R3, cross-check: a printed table in ohm per 100 ft (read in a secondary copy); 0.05 % for its older temperature constant.
TEST(Gauge, AgreesWithAPrintedTable) {
  constexpr double kPrinted[][2] = {
      {12, 0.15880}, {14, 0.25250}, {16, 0.40160}, {20, 1.01500}, {22, 1.61400}};
  for (const auto& [gauge, ohm_per_100_ft] : kPrinted) {
    const double area_m2 = electrical::round_area_m2(electrical::awg_diameter_m(gauge));
    EXPECT_NEAR(electrical::resistance_ohm_per_m(copper(), area_m2) * 30.48 / ohm_per_100_ft, 1, 5e-4)
        << gauge;
  }
}

// R4 and R5: alpha 0.00393 per K (memory; recomputed); 254.5/(234.5 + t) is the same to 3e-5.
TEST(Material, ResistanceRisesWithTemperature) {
  const double at_20 = electrical::resistivity_ohm_m(copper(), 20);
  EXPECT_NEAR(at_20, 1.7241379e-8, 1e-15);  // R2
  const auto ratio = [&](double celsius) { return electrical::resistivity_ohm_m(copper(), celsius) / at_20; };
  EXPECT_NEAR(ratio(40), 1.0786, 1e-12);
  EXPECT_NEAR(ratio(55), 1.13755, 1e-12);
  for (const double celsius : {0.0, 30.0, 60.0})
    EXPECT_NEAR(1 / ratio(celsius), 254.5 / (234.5 + celsius), 4e-5);
}

TEST(Conductor, TheAreaOfAResistanceIsTheInverse) {
  for (const electrical::Material& material : electrical::materials()) {
    const double ohm_per_m = electrical::resistance_ohm_per_m(material, 2.5e-6, 35);
    EXPECT_NEAR(electrical::area_of_resistance_m2(material, ohm_per_m, 35), 2.5e-6, 1e-18) << material.name;
  }
}

TEST(Conductor, RefusesImpossibleValues) {
  EXPECT_EQ(refusal([] { material_named("gold-ish"); }),
            "material must be one of copper, silver, aluminium, got \"gold-ish\"");
  EXPECT_EQ(refusal([] { electrical::resistance_ohm_per_m(copper(), 0); }),
            "metal_area_m2 must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] { electrical::resistance_ohm_per_m(copper(), 1e-6, 500); }),
            "temperature_celsius must be from -60 to 200, got 500");
  EXPECT_EQ(refusal([] { electrical::awg_diameter_m(60); }), "gauge must be from -3 to 50, got 60");
  EXPECT_EQ(refusal([] { electrical::area_of_resistance_m2(copper(), -1); }),
            "ohm_per_m must be a finite number above 0, got -1");
}
