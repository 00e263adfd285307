#include "electrical/facts/corner.h"

#include <gtest/gtest.h>

#include "electrical/golden_cases.h"
#include "electrical/refusal.h"

using electrical::Resistor;

// T3: recomputed; printed to a thousandth of a hertz, the one-pole estimate to whole hertz.
TEST(Corner, InterconnectsAgreeWithTheTable) {
  struct Row {
    const char* name;
    double at_20_hz_db, fall_db, exact_hz, one_pole_hz;
  };
  constexpr Row kRows[] = {{"C1", -0.018553190, -0.000150834, 3867730.556, 2658226},
                           {"C3", -0.182958090, -0.023465178, 271554.015, 270902.031},
                           {"C4", -0.828248652, -0.142214214, 109505.444, 109419.023}};
  for (const Row& row : kRows) {
    SCOPED_TRACE(row.name);
    const auto& [source, cable, load] = golden_cases().at(row.name);
    const auto level = [&](double f) {
      return electrical::level_db(electrical::response(source, cable, load, f));
    };
    EXPECT_NEAR(level(20), row.at_20_hz_db, 5.1e-10);
    EXPECT_NEAR(level(20000) - level(1000), row.fall_db, 5.1e-10);
    EXPECT_NEAR(electrical::corner_frequency_hz(source, cable, load).value(), row.exact_hz, 5.1e-4);
    EXPECT_NEAR(electrical::one_pole_corner_hz(source, cable, std::get<Resistor>(load)).value(),
                row.one_pole_hz, 0.6);
  }
  // C1: near the cable's own impedance of 63 ohm the estimate is 31 % low.
  EXPECT_NEAR(2658226 / 3867730.556, 0.687, 0.001);
}

// T3, C3 at 20 and 500 kHz as printed. recomputed.
TEST(Corner, LevelAndPhaseOfC3) {
  const auto& [source, cable, load] = golden_cases().at("C3");
  const auto low = electrical::response(source, cable, load, 20e3),
             high = electrical::response(source, cable, load, 500e3);
  EXPECT_NEAR(electrical::level_db(low), -0.206482214, 5.1e-10);
  EXPECT_NEAR(electrical::phase_deg(low), -4.2238737, 5.1e-8);
  EXPECT_NEAR(electrical::level_db(high), -6.597446826, 5.1e-10);
  EXPECT_NEAR(electrical::phase_deg(high), -61.6796747, 5.1e-8);
}

TEST(Corner, NothingWhereTheLevelStays) {
  EXPECT_FALSE(electrical::corner_frequency_hz({0.1}, line(0.1, 0, 0, 3), Resistor{8}));
  EXPECT_FALSE(electrical::one_pole_corner_hz({0.1}, line(0.1, 0, 0, 3), Resistor{8}));
  EXPECT_FALSE(electrical::one_pole_corner_hz({0}, line(0.1, 0, 100e-12, 3), Resistor{8}));
  // A table ends before any corner: nothing, not a refusal.
  EXPECT_FALSE(electrical::corner_frequency_hz({0.1}, line(0.1, 0, 0, 3),
                                               electrical::ImpedanceTable({20, 20000}, {8.0, 8.0})));
  EXPECT_EQ(refusal([] { electrical::corner_frequency_hz({0.1}, {}, Resistor{8}, 2e9); }).substr(0, 6),
            "a band");
}

// Ohm's law: 1000 ohm behind 0.5 ohm of cable into 47 kohm. The cable's resistance is 2000 times smaller than the
// source's, and so is its share.
TEST(LevelShares, AreThoseOfEachPart) {
  const auto& [source, cable, load] = golden_cases().at("C3");
  const auto low = electrical::level_shares(source, cable, load, 20);
  EXPECT_NEAR(low.cable_resistance_db, 20 * std::log10(48000 / 48000.5), 1e-9);
  EXPECT_NEAR(low.source_resistance_db, 20 * std::log10(47000.5 / 48000.5), 1e-6);
  EXPECT_NEAR(low.cable_capacitance_db, 0, 1e-6);
  const auto high = electrical::level_shares(source, cable, load, 20e3);
  EXPECT_LT(high.cable_capacitance_db, -0.015);
  EXPECT_GT(high.cable_capacitance_db, -0.0235);
  // omega^2 L C of the whole is 1.9e-5: no more than 1.65e-4 dB.
  EXPECT_NEAR(high.cable_inductance_db, 0, 1.65e-4);
}
