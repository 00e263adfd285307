#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "electrical/csv_rows.h"
#include "electrical/golden_cases.h"
#include "electrical/response.h"

using Complex = std::complex<double>;
using electrical::level_db;
using electrical::phase_deg;

namespace {

// recomputed: IEEE binary128 (libquadmath), 15 printed digits; see the head of the file.
const char* kFile = "electrical/data/golden_line_cases.csv";

/// Double precision and 15 printed digits, 20 roundings or so.
constexpr double kRelative = 1e-13;

double relative_error(Complex value, Complex expected) {
  return std::abs(value - expected) / std::abs(expected);
}

/// The skin-effect rows need resistance and inductance that depend on frequency; see SkinEffect below.
bool has_skin_effect(const CsvRow& row) { return row.text("case") == "B2" || row.text("case") == "B3"; }

}  // namespace

TEST(GoldenLine, EveryRowAgreesInRatioLevelPhaseAndInputImpedance) {
  std::set<std::string> met;
  int rows = 0;
  for (const CsvRow& row : csv_rows(kFile)) {
    if (has_skin_effect(row)) continue;
    SCOPED_TRACE(row.text("case") + " at " + row.text("f_Hz") + " Hz");
    met.insert(row.text("case"));
    ++rows;
    const auto& [source, cable, load] = golden_cases().at(row.text("case"));
    const double f = row.number("f_Hz");
    const Complex h = electrical::response(source, cable, load, f);
    EXPECT_LT(relative_error(h, {row.number("H_re"), row.number("H_im")}), kRelative);
    EXPECT_NEAR(level_db(h), row.number("H_dB"), 2e-13);    // 8.7 dB times 1e-14
    EXPECT_NEAR(phase_deg(h), row.number("H_deg"), 1e-12);  // 57 degrees times 1e-14
    const Complex z = electrical::input_impedance_ohm(cable, load, f);
    EXPECT_LT(relative_error(z, {row.number("Zin_re"), row.number("Zin_im")}), kRelative);
  }
  EXPECT_EQ(met.size(), golden_cases().size());
  EXPECT_GT(rows, 150);
}

// T1: levels and phases as printed, with the difference of the two cables. recomputed.
TEST(GoldenLine, CasesA1AndA2AgreeWithThePrintedTable) {
  struct Row {
    double f, a1_db, a1_deg, a2_db, a2_deg, difference_db;
  };
  constexpr Row kRows[] = {
      {20, -0.924442065, 5.3499603, -0.197159537, 1.2258640, 0.727282528},
      {50, -0.200269183, 0.0182299, -0.042696326, 0.0031636, 0.157572857},
      {237, -1.708529031, -0.4022395, -0.389793389, -0.1310748, 1.318735642},
      {1000, -0.558034752, 2.8417517, -0.124261433, 0.5895193, 0.433773320},
      {1800, -0.422482616, 0.1179169, -0.091613857, -0.0319774, 0.330868759},
      {20000, -0.289973281, 2.8373643, -0.169225395, 0.4202632, 0.120747886},
      {500000, -0.141423949, 0.1030319, -0.125387755, 0.0123697, 0.016036194},
  };
  const auto& a1 = golden_cases().at("A1");
  const auto& a2 = golden_cases().at("A2");
  for (const Row& row : kRows) {
    SCOPED_TRACE(row.f);
    const Complex h1 = electrical::response(a1.source, a1.cable, a1.load, row.f);
    const Complex h2 = electrical::response(a2.source, a2.cable, a2.load, row.f);
    // Half the last printed digit, and a rounding.
    EXPECT_NEAR(level_db(h1), row.a1_db, 5.01e-10);
    EXPECT_NEAR(phase_deg(h1), row.a1_deg, 5.01e-8);
    EXPECT_NEAR(level_db(h2), row.a2_db, 5.01e-10);
    EXPECT_NEAR(phase_deg(h2), row.a2_deg, 5.01e-8);
    // The printed difference is that of the two rounded levels.
    EXPECT_NEAR(electrical::level_difference_db(a1.source, a2.cable, a1.cable, a1.load, row.f),
                row.difference_db, 1.01e-9);
  }
}

// T2, case B2: two solid 0.75 mm2 wires, R'(f) and L'(f) as printed to nine digits. recomputed; ngspice.
TEST(SkinEffect, ALineGivenResistanceAndInductanceAtEachFrequencyAgreesWithCaseB2) {
  struct Row {
    double f, resistance, inductance, db, deg;
  };
  constexpr Row kRows[] = {
      {1000, 0.045979874, 0.699996888e-6, -1.042355921, -0.5588096},
      {20000, 0.047099570, 0.698781237e-6, -1.224107691, -10.9928191},
      {500000, 0.132471745, 0.637934223e-6, -14.249992142, -75.1233324},
  };
  for (const Row& row : kRows) {
    SCOPED_TRACE(row.f);
    const double omega = 2 * std::acos(-1.0) * row.f;
    const auto port = electrical::two_port(10.0 * Complex(row.resistance, omega * row.inductance),
                                           10.0 * Complex(0, omega * 50e-12));
    const Complex h = electrical::voltage_ratio(0.05, port, 4.0);
    // R' is rounded at 5e-10 ohm/m: 5e-9 ohm of 4.5, 1e-8 dB. L' likewise at 500 kHz.
    EXPECT_NEAR(level_db(h), row.db, 1.5e-8);
    EXPECT_NEAR(phase_deg(h), row.deg, 2e-7);
  }
}

// T3: line level. recomputed.
TEST(GoldenLine, LineLevelCasesAgreeWithThePrintedTable) {
  struct Row {
    const char* name;
    double at_20_hz_db, treble_db, corner_hz;
  };
  constexpr Row kRows[] = {
      {"C1", -0.018553190, -0.000150834, 3867730.556},
      {"C3", -0.182958090, -0.023465178, 271554.015},
      {"C4", -0.828248652, -0.142214214, 109505.444},
  };
  for (const Row& row : kRows) {
    SCOPED_TRACE(row.name);
    const auto& [source, cable, load] = golden_cases().at(row.name);
    const auto level = [&](double f) { return level_db(electrical::response(source, cable, load, f)); };
    EXPECT_NEAR(level(20), row.at_20_hz_db, 5.01e-10);
    EXPECT_NEAR(level(20000) - level(1000), row.treble_db, 5.01e-10);
    // -3.0103 dB re 20 Hz: the corner is printed to 1e-3 Hz; its slope is about 3e-5 dB per Hz at most.
    EXPECT_NEAR(level(row.corner_hz) - level(20), -10 * std::log10(2.0), 1e-6);
  }
}

// T4: phase at 500 kHz; the order of two cables flips with the termination. recomputed; ngspice.
TEST(Phase, DependsOnTheTermination) {
  const auto phase = [](const char* name) {
    const auto& [source, cable, load] = golden_cases().at(name);
    return phase_deg(electrical::response(source, cable, load, 500e3));
  };
  EXPECT_NEAR(phase("D2m") - phase("D1m"), -2.228799, 1e-6);
  EXPECT_NEAR(phase("D2h") - phase("D1h"), 1.797099, 1e-6);
}
