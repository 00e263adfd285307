#include "electrical/facts/delay.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "electrical/csv_rows.h"
#include "electrical/golden_cases.h"
#include "electrical/line_facts.h"
#include "electrical/refusal.h"

using electrical::Resistor;

// T4: 5 m behind 50 ohm at 500 kHz. recomputed (exact two-port; ngspice agrees to 1e-11 degrees).
TEST(PhaseShares, AgreeWithTheTable) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/phase_500kHz.csv")) {
    SCOPED_TRACE(row.text("cable") + " " + row.text("termination"));
    ++rows;
    const bool matched = row.text("termination") == "50 ohm";
    const auto& [source, cable, load] = golden_cases().at(row.text("cable") + (matched ? "m" : "h"));
    const double actual = row.number("actual_phase_deg");
    EXPECT_NEAR(electrical::unwrapped_phase_deg(source, cable, load, 500e3), actual, 5.1e-10);
    EXPECT_NEAR(electrical::delay_s(cable) * 1e9, row.number("tau_ns"), 5.1e-7);
    EXPECT_NEAR(electrical::characteristic_impedance_ohm(cable), row.number("Z0_ohm"), 5.1e-10);
    // A reading 0.2 degrees off, and a turn: what is left is 0.2.
    const auto shares = electrical::phase_shares(source, cable, load, 500e3, actual + 0.2 - 360);
    EXPECT_NEAR(shares.propagation_deg, row.number("minus_360_f_tau_deg"), 5.1e-10);
    EXPECT_NEAR(shares.terminations_deg, actual - row.number("minus_360_f_tau_deg"), 1e-9);
    EXPECT_NEAR(shares.left_over_deg, 0.2, 1e-9);
    EXPECT_NEAR(shares.measured_deg, actual + 0.2, 1e-9);
  }
  EXPECT_EQ(rows, 6);
}

// T4: three different numbers for D3 on high impedance: 92.651, 98.116 and 31.6 ns. recomputed.
TEST(Delay, GroupPhaseAndPropagationDiffer) {
  const auto& [source, cable, load] = golden_cases().at("D3h");
  EXPECT_NEAR(electrical::group_delay_s(source, cable, load, 500e3) * 1e9, 92.651, 5.1e-4);
  EXPECT_NEAR(electrical::phase_delay_s(source, cable, load, 500e3) * 1e9, 98.116, 5.1e-4);
  EXPECT_NEAR(electrical::delay_s(cable) * 1e9, 31.622777, 5.1e-7);
}

// T4: the order of two cables turns with the ends. recomputed.
TEST(Delay, TheOrderOfTwoCablesDependsOnTheEnds) {
  const auto phase = [](const char* name) {
    const auto& [source, cable, load] = golden_cases().at(name);
    return electrical::unwrapped_phase_deg(source, cable, load, 500e3);
  };
  EXPECT_NEAR(phase("D2m") - phase("D1m"), -2.228799, 5.1e-7);
  EXPECT_NEAR(phase("D2h") - phase("D1h"), 1.797099, 5.1e-7);
  // Into a high impedance the phase is near that of capacitance behind the source (and 1 Mohm), within 0.1 degrees.
  const auto capacitive = [](double farad) {
    return -std::atan(2 * M_PI * 500e3 * farad / (1 / 50.0 + 1e-6)) * 180 / M_PI;
  };
  EXPECT_NEAR(capacitive(515e-12), -4.624699, 5.1e-7);
  EXPECT_NEAR(phase("D1h"), capacitive(515e-12), 0.1);
  EXPECT_NEAR(phase("D2h"), capacitive(315e-12), 0.1);
  EXPECT_NEAR(phase("D3h"), capacitive(2015e-12), 0.1);
}

// Matched and without loss every delay is that of the line, however many turns.
TEST(Delay, AMatchedLineDelaysEverythingAlike) {
  const auto cable = line(0, 0.25e-6, 100e-12, 1000);
  for (const double f : {1e3, 1e5, 1e6, 1e7}) {
    EXPECT_NEAR(electrical::phase_delay_s({50}, cable, Resistor{50}, f) / 5e-6, 1, 1e-9) << f;
    EXPECT_NEAR(electrical::group_delay_s({50}, cable, Resistor{50}, f) / 5e-6, 1, 1e-9) << f;
  }
}

TEST(Delay, RefusesImpossibleValues) {
  EXPECT_EQ(refusal([] { electrical::unwrapped_phase_deg({50}, {}, Resistor{50}, 0); }),
            "frequency_hz must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] {
              electrical::phase_shares({50}, {}, Resistor{50}, 1e3, std::numeric_limits<double>::quiet_NaN());
            }),
            "measured_deg must be a finite number, got nan");
}
