#include "electrical/load.h"

#include <gtest/gtest.h>

#include <cmath>

#include "electrical/csv_rows.h"
#include "electrical/golden_cases.h"
#include "electrical/refusal.h"

using Complex = std::complex<double>;
using electrical::EquivalentCircuit;
using electrical::impedance_ohm;
using electrical::ImpedanceTable;
using electrical::Resistor;

namespace {

double magnitude(const electrical::Load& load, double f) { return std::abs(impedance_ohm(load, f)); }
double degrees(const electrical::Load& load, double f) {
  return electrical::phase_deg(impedance_ohm(load, f));
}

/// recomputed: NumPy, magnitude and phase printed to 1e-9 ohm and 1e-6 degrees.
ImpedanceTable ls1_table() {
  std::vector<double> frequency_hz;
  std::vector<Complex> impedance;
  for (const CsvRow& row : csv_rows("electrical/data/loudspeaker_LS1.csv")) {
    frequency_hz.push_back(row.number("f_Hz"));
    impedance.emplace_back(row.number("Re"), row.number("Im"));
  }
  return {frequency_hz, impedance};
}

}  // namespace

// Z1: Re=6, Res=42, fs=30, Qms=4. Formulae of Small 1972 (memory); recomputed. f1 and f2, where |Z| is
// Re sqrt(r0), are 30/sqrt(2) and 30 sqrt(2).
TEST(EquivalentCircuit, AgreesWithTheDriverOfOneResonance) {
  EquivalentCircuit driver{.resistance_ohm = 6, .resonances = {{42, 505.253787593e-6, 55.704230082e-3}}};
  struct Row {
    double f, ohm, tolerance;
  };
  constexpr Row kRows[] = {
      // Half the last digit of |Z|, and of the elements: 1e-12 relative of 500 uF times a slope near 1.
      {10, 7.467256695, 6e-10},
      {20, 14.942090049, 6e-10},
      {30, 48, 1e-9},
      {100, 7.162528056, 6e-10},
      {1000, 6.010640377, 6e-10},
      {21.213203436, 6 * 2.8284271247461903, 1e-8},
      {42.426406871, 6 * 2.8284271247461903, 1e-8}};
  for (const Row& row : kRows) EXPECT_NEAR(magnitude(driver, row.f), row.ohm, row.tolerance) << row.f;

  driver.inductance_henry = 0.5e-3;
  EXPECT_NEAR(magnitude(driver, 1000), 6.634495272, 6e-10);
  EXPECT_NEAR(degrees(driver, 1000), 25.214278964, 6e-10);
  EXPECT_NEAR(magnitude(driver, 10000), 31.952816712, 6e-10);
  EXPECT_NEAR(degrees(driver, 10000), 79.176883487, 6e-10);  // recomputed: NumPy, 80-bit
}

// Z3: every row of the file. recomputed.
TEST(EquivalentCircuit, AgreesWithEveryRowOfTheSyntheticLoudspeaker) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/loudspeaker_LS1.csv")) {
    SCOPED_TRACE(row.text("f_Hz"));
    ++rows;
    const double f = row.number("f_Hz");
    // The printed frequency is rounded at 5e-5 Hz, and the steepest slope is about 2 ohm/Hz near 50 Hz
    // and falls as 1/f: 1e-4 ohm would do; phase likewise at 10 degrees/Hz.
    EXPECT_NEAR(impedance_ohm(ls1(), f).real(), row.number("Re"), 1e-4);
    EXPECT_NEAR(impedance_ohm(ls1(), f).imag(), row.number("Im"), 1e-4);
    EXPECT_NEAR(magnitude(ls1(), f), row.number("abs_ohm"), 1e-4);
    EXPECT_NEAR(degrees(ls1(), f), row.number("phase_deg"), 3e-4);
  }
  EXPECT_EQ(rows, 63);
}

// Z3: at round frequencies the printed digits hold. recomputed.
TEST(EquivalentCircuit, AgreesWithTheSyntheticLoudspeakerAtRoundFrequencies) {
  struct Row {
    double f, ohm, deg;
  };
  constexpr Row kRows[] = {{20, 4.687310602, 44.002364},
                           {100, 5.318929981, -45.261817},
                           {1000, 8.352398984, 40.030062},
                           {5000, 4.192766443, -4.501368},
                           {20000, 12.112398749, 75.351222}};
  for (const Row& row : kRows) {
    EXPECT_NEAR(magnitude(ls1(), row.f), row.ohm, 5.01e-10) << row.f;
    EXPECT_NEAR(degrees(ls1(), row.f), row.deg, 5.01e-7) << row.f;
  }
}

// Z3. recomputed; the frequencies by bisection of the derivative's sign in NumPy, 80-bit. A minimum is flat:
// in double precision |Z| cannot tell frequencies 1e-8 apart.
TEST(Extremes, FindTheSyntheticLoudspeakersMinimumAndMaximum) {
  const auto least = electrical::minimum_impedance(ls1(), electrical::kAudioBand);
  EXPECT_NEAR(least.value, 3.218132972, 5.01e-10);
  EXPECT_NEAR(least.frequency_hz, 237.333817, 1e-5);
  const auto greatest = electrical::maximum_impedance(ls1(), electrical::kAudioBand);
  EXPECT_NEAR(greatest.value, 30.008363465, 5.01e-10);
  EXPECT_NEAR(greatest.frequency_hz, 49.9828466, 1e-6);
}

// Z4: IEC 60268-5, 16.1 (read in a secondary copy), with an edge case. recomputed.
TEST(Extremes, DecideTheRatedImpedanceAtItsEdge) {
  auto edge = ls1();
  edge.resistance_ohm = 2.98;
  const auto least = electrical::minimum_impedance(edge, electrical::kAudioBand);
  EXPECT_NEAR(least.value, 3.198144665, 5.01e-10);
  EXPECT_NEAR(least.frequency_hz, 237.373718, 1e-5);
  EXPECT_LT(least.value, electrical::lowest_permitted_impedance_ohm(4));
  const double of_ls1 = electrical::minimum_impedance(ls1(), electrical::kAudioBand).value;
  EXPECT_GE(of_ls1, electrical::lowest_permitted_impedance_ohm(4));
  EXPECT_LT(of_ls1, electrical::lowest_permitted_impedance_ohm(8));
}

TEST(Extremes, StandAtABandsEdgeWhereTheFunctionOnlyRises) {
  const auto least = electrical::minimum_impedance(ls1(), {5000, 20000});
  EXPECT_GT(least.frequency_hz, 5000);  // the second resonance falls until about 5.9 kHz
  const auto edge = electrical::minimum_impedance(ls1(), {8000, 20000});
  EXPECT_EQ(edge.frequency_hz, 8000);
  EXPECT_EQ(electrical::maximum_impedance(ls1(), {8000, 20000}).frequency_hz, 20000);
}

TEST(Extremes, MissNoPointOfATable) {
  // A dip of one point, far narrower than the scan.
  const ImpedanceTable table({20, 999.99, 1000, 1000.01, 20000}, {8.0, 8.0, 2.0, 8.0, 8.0});
  const auto least = electrical::minimum_impedance(table, electrical::kAudioBand);
  EXPECT_EQ(least.frequency_hz, 1000);
  EXPECT_NEAR(least.value, 2, 1e-15);
}

TEST(ResistorLoad, FollowsItsTimeConstant) {
  // By definition: |Z| = R / sqrt(2) and -45 degrees at 1 / (2 pi R C).
  const Resistor input{47e3, 100e-12};
  const double corner = 1 / (2 * std::acos(-1.0) * 47e3 * 100e-12);
  EXPECT_NEAR(magnitude(input, corner), 47e3 / std::sqrt(2.0), 1e-9);
  EXPECT_NEAR(degrees(input, corner), -45, 1e-12);
  EXPECT_EQ(impedance_ohm(Resistor{8}, 20000), Complex(8));
}

TEST(Table, ReproducesItsPointsAndPureElementsBetweenThem) {
  const ImpedanceTable inductor({20, 20000}, {Complex(0, 0.02), Complex(0, 20)});
  EXPECT_LT(std::abs(impedance_ohm(inductor, 632.4) - Complex(0, 0.6324)), 1e-15);
  const ImpedanceTable table = ls1_table();
  for (const CsvRow& row : csv_rows("electrical/data/loudspeaker_LS1.csv")) {
    const Complex expected(row.number("Re"), row.number("Im"));
    EXPECT_LT(std::abs(impedance_ohm(table, row.number("f_Hz")) - expected), 1e-14 * std::abs(expected));
  }
}

// The figure in load.h. recomputed: NumPy, 0.0163 dB on 20001 points.
TEST(Table, OfTheSyntheticLoudspeakerGivesItsLevelWithin17Thousandths) {
  const ImpedanceTable table = ls1_table();
  const electrical::Cable cable = line(0.2, 0, 0, 3);
  double worst = 0;
  for (const double f : electrical::log_spaced(electrical::kAudioBand, 5001)) {
    const double by_table = electrical::level_db(electrical::response({0.1}, cable, table, f));
    const double by_circuit = electrical::level_db(electrical::response({0.1}, cable, ls1(), f));
    worst = std::max(worst, std::abs(by_table - by_circuit));
  }
  EXPECT_LT(worst, 0.017);
  EXPECT_GT(worst, 0.015);
}

TEST(Table, IsRefusedOutsideItsFrequencies) {
  const ImpedanceTable table({30, 15000}, {6.0, 8.0});
  EXPECT_EQ(refusal([&] { impedance_ohm(table, 29.9); }),
            "frequency_hz in an impedance table must be from 30 to 15000, got 29.9");
  EXPECT_EQ(refusal([&] { impedance_ohm(table, 15000.5); }),
            "frequency_hz in an impedance table must be from 30 to 15000, got 15000.5");
  EXPECT_EQ(refusal([&] { electrical::minimum_impedance(table, electrical::kAudioBand); }),
            "frequency_hz in an impedance table must be from 30 to 15000, got 20");
  EXPECT_EQ(electrical::known_band(table).low_hz, 30);
  EXPECT_EQ(electrical::known_band(table).high_hz, 15000);
  EXPECT_EQ(electrical::known_band(Resistor{8}).low_hz, 0);
}

TEST(Table, RefusesWhatIsNoPassiveImpedance) {
  EXPECT_EQ(refusal([] { ImpedanceTable({20}, {8.0}); }),
            "an impedance table must have at least 2 frequencies and an impedance for each, got 1 and 1");
  EXPECT_EQ(refusal([] {
              ImpedanceTable({20, 30}, {8.0});
            }),
            "an impedance table must have at least 2 frequencies and an impedance for each, got 2 and 1");
  EXPECT_EQ(refusal([] { ImpedanceTable({30, 20}, {8.0, 8.0}); }), "frequency_hz must rise, got 20 after 30");
  EXPECT_EQ(refusal([] {
              ImpedanceTable({0, 20}, {8.0, 8.0});
            }),
            "frequency_hz must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] {
              ImpedanceTable({20, 30}, {8.0, 0.0});
            }),
            "impedance_ohm at 30 Hz: magnitude must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] {
              ImpedanceTable({20, 30}, {8.0, Complex(-0.5, 3)});
            }),
            "impedance_ohm at 30 Hz: real part must be a finite number, 0 or more, got -0.5");
}

TEST(Load, RefusesImpossibleElements) {
  EXPECT_EQ(refusal([] { impedance_ohm(Resistor{0}, 1000); }),
            "resistance_ohm must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] {
              impedance_ohm(Resistor{8, -1e-9}, 1000);
            }),
            "parallel_capacitance_farad must be a finite number, 0 or more, got -1e-09");
  EXPECT_EQ(refusal([] {
              impedance_ohm(EquivalentCircuit{3, -1e-3}, 1000);
            }),
            "inductance_henry must be a finite number, 0 or more, got -0.001");
  EXPECT_EQ(refusal([] {
              impedance_ohm(EquivalentCircuit{3, 0, {{27, 1e-6, 0}}}, 1000);
            }),
            "resonance inductance_henry must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] {
              impedance_ohm(EquivalentCircuit{3, 0, {{-27, 1e-6, 1e-3}}}, 1000);
            }),
            "resonance resistance_ohm must be a finite number above 0, got -27");
  EXPECT_EQ(refusal([] { impedance_ohm(Resistor{8}, -1000); }),
            "frequency_hz must be a finite number, 0 or more, got -1000");
  EXPECT_EQ(refusal([] { electrical::lowest_permitted_impedance_ohm(0); }),
            "rated_impedance_ohm must be a finite number above 0, got 0");
}
