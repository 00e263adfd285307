#include "electrical/response.h"

#include <gtest/gtest.h>

#include <cmath>

#include "electrical/damping_factor.h"
#include "electrical/extreme.h"
#include "electrical/golden_cases.h"
#include "electrical/refusal.h"

using electrical::Cable;
using electrical::level_db;
using electrical::Load;
using electrical::Resistor;
using electrical::Source;

namespace {

/// Greatest less least level over 20 Hz to 20 kHz.
double spread_db(const Source& source, const Cable& cable, const Load& load) {
  const auto level = [&](double f) { return level_db(electrical::response(source, cable, load, f)); };
  return electrical::maximum_over(level, electrical::kAudioBand).value -
         electrical::minimum_over(level, electrical::kAudioBand).value;
}

}  // namespace

// T1: 20 log10(Z / (Z + 0.7)), printed to 1e-6 dB. recomputed.
TEST(Response, OfResistancesIsTheirDivider) {
  struct Row {
    double load_ohm, level_db, tolerance;
  };
  constexpr Row kRows[] = {{3.218, -1.709568, 5.1e-7}, {8, -0.728585, 5.1e-7}, {30, -0.200342, 5.1e-7}};
  for (const Row& row : kRows) {
    const auto h = electrical::response({0.1}, line(0.2, 0, 0, 3), Resistor{row.load_ohm}, 1000);
    EXPECT_NEAR(level_db(h), row.level_db, row.tolerance) << row.load_ohm;
    EXPECT_EQ(h.imag(), 0) << row.load_ohm;
  }
}

TEST(Response, OfCablesAndLoadsComputedOnceIsTheSame) {
  const auto& [source, cable, load] = golden_cases().at("A1");
  const auto frequency_hz = electrical::log_spaced({10, 100000}, 50);
  const auto hoisted = electrical::responses(source, frequency_hz, electrical::two_ports(cable, frequency_hz),
                                             electrical::impedances_ohm(load, frequency_hz));
  const auto whole = electrical::responses(source, cable, load, frequency_hz);
  for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
    EXPECT_EQ(hoisted[i], electrical::response(source, cable, load, frequency_hz[i]));
    EXPECT_EQ(whole[i], hoisted[i]);
  }
}

TEST(Response, CountsTheSourcesInductance) {
  // A source inductance acts as the same inductance of a cable without capacitance.
  const auto in_source = electrical::response({0.1, 2e-6}, line(0.2, 0, 0, 3), ls1(), 20000);
  const auto in_cable = electrical::response({0.1}, line(0.2, 2e-6 / 3, 0, 3), ls1(), 20000);
  EXPECT_LT(std::abs(in_source - in_cable), 1e-15);
}

TEST(Response, SeenFromBothEndsIsTheSameCircuit) {
  // H = ZL / (ZL + Zout) / (A + Zs C): Thevenin's theorem.
  const auto& [source, cable, load] = golden_cases().at("E1");
  for (const double f : {20.0, 20000.0, 500000.0}) {
    const auto zl = electrical::impedance_ohm(load, f);
    const auto zs = electrical::impedance_ohm(source, f);
    const auto port = electrical::two_port(cable, f);
    const auto open = 1.0 / (1.0 + port.a_minus_1 + zs * port.c_siemens);
    const auto h = open * zl / (zl + electrical::output_impedance_ohm(source, cable, f));
    EXPECT_LT(std::abs(h - electrical::response(source, cable, load, f)), 1e-15);
  }
}

// Two loops that differ by 1e-12 of themselves: 20 log10(1 + dR/8.7), dR as the doubles have it.
TEST(LevelDifference, OfTwoNearlyEqualCablesKeepsItsDigits) {
  const double more = 0.6 * (1 + 1e-12);
  const double expected = 20 / std::log(10.0) * std::log1p((more - 0.6) / 8.7);
  const double db =
      electrical::level_difference_db({0.1}, line(0.6, 0, 0, 1), line(more, 0, 0, 1), Resistor{8}, 1000);
  EXPECT_NEAR(db / expected, 1, 1e-12);
  const double swapped =
      electrical::level_difference_db({0.1}, line(more, 0, 0, 1), line(0.6, 0, 0, 1), Resistor{8}, 1000);
  EXPECT_NEAR(swapped / expected, -1, 1e-11);
}

// 1 nF more across 1000 ohm at 20 Hz changes the level by -(w C R)^2 / 2 neper, 6.9e-8 dB: first terms of
// the series of |1 + jwCR|, the next is 4e-15 of it.
TEST(LevelDifference, OfATinyCapacitanceKeepsItsDigits) {
  const double turns = 2 * std::acos(-1.0) * 20 * 1e-9 * 1000;
  const double expected = -10 * std::log1p(turns * turns) / std::log(10.0);
  const double db = electrical::level_difference_db({1000}, line(0, 0, 1e-9, 1), Cable{}, Resistor{1e12}, 20);
  EXPECT_NEAR(db / expected, 1, 3e-9);  // 1000 ohm of 1e12: 2e-9
}

// L2. recomputed.
TEST(DampingFactor, AgreesWithTheExamples) {
  using electrical::damping_factor;
  EXPECT_DOUBLE_EQ(damping_factor(8, {0.1}, Cable{}), 80);
  EXPECT_NEAR(damping_factor(8, {0.1}, line(0.2, 0.6e-6, 60e-12, 3)), 11.428571, 5.1e-7);
  EXPECT_NEAR(damping_factor(8, {0.1}, line(0.01596, 0.55e-6, 80e-12, 3)), 54.097917, 5.1e-7);
  EXPECT_NEAR(damping_factor(4, {0.05}, line(0.052, 0.7e-6, 50e-12, 10)), 7.017544, 5.1e-7);
  // At 20 kHz with 1.8 uH and no capacitance, as the example has it; 180 pF change the sixth digit.
  const Cable inductive = line(0.2, 0.6e-6, 0, 3);
  EXPECT_NEAR(std::abs(electrical::output_impedance_ohm({0.1}, inductive, 20000)), 0.735638518, 5.1e-10);
  EXPECT_NEAR(damping_factor(8, {0.1}, inductive, 20000), 10.874906, 5.1e-7);
  EXPECT_NEAR(damping_factor(8, {0.1}, line(0.2, 0.6e-6, 60e-12, 3), 20000), 10.874906, 1e-4);
}

// L2: output impedance by unloading. recomputed.
TEST(DampingFactor, OfASourceMeasuredByLoading) {
  const double ohm = electrical::source_resistance_by_loading_ohm(2.830, 2.800, 8);
  EXPECT_NEAR(ohm, 0.085714, 5.1e-7);
  EXPECT_NEAR(electrical::damping_factor(8, {ohm}, Cable{}), 93.333, 5.1e-4);
  EXPECT_EQ(electrical::source_resistance_by_loading_ohm(2.8, 2.8, 8), 0);
}

// Facts of the trade. Common practice, no source; the sizes follow from LS1 (impedance 3.2 to 30 ohm).
TEST(FactsOfTheTrade, ResistanceShowsOnALoudspeakerAndNotOnADummyLoad) {
  const Cable cable = line(0.2, 0.6e-6, 60e-12, 3);
  EXPECT_GT(spread_db({0.1}, cable, ls1()), 1.4);
  EXPECT_LT(spread_db({0.1}, cable, Resistor{8}), 0.01);
}

TEST(FactsOfTheTrade, MoreLoopResistanceDeviatesMore) {
  double previous = spread_db({0.1}, line(0, 0.6e-6, 60e-12, 3), ls1());
  for (const double loop_ohm : {0.03, 0.1, 0.3, 0.6, 1.2}) {
    const double spread = spread_db({0.1}, line(loop_ohm / 3, 0.6e-6, 60e-12, 3), ls1());
    EXPECT_GT(spread, previous) << loop_ohm;
    previous = spread;
  }
}

TEST(FactsOfTheTrade, AtLineLevelResistanceHardlyMatters) {
  const Resistor input{47e3, 100e-12};
  const Cable thin = line(0.4, 0.4e-6, 100e-12, 5);
  const Cable thick = line(0.02, 0.4e-6, 100e-12, 5);
  for (const double f : {20.0, 1000.0, 20000.0}) {
    EXPECT_LT(std::abs(electrical::level_difference_db({100}, thin, thick, input, f)), 0.001) << f;
  }
}

TEST(FactsOfTheTrade, DampingFactorFallsWithTheCablesResistance) {
  double previous = electrical::damping_factor(8, {0.1}, Cable{});
  for (const double loop_ohm : {0.03, 0.1, 0.3, 0.6}) {
    const double factor = electrical::damping_factor(8, {0.1}, line(loop_ohm, 0, 0, 1));
    EXPECT_LT(factor, previous);
    previous = factor;
  }
}

TEST(Response, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] { electrical::response({-0.1}, Cable{}, Resistor{8}, 1000); }),
            "source resistance_ohm must be a finite number, 0 or more, got -0.1");
  EXPECT_EQ(refusal([] {
              electrical::response({0.1, -1e-6}, Cable{}, Resistor{8}, 1000);
            }),
            "source inductance_henry must be a finite number, 0 or more, got -1e-06");
  EXPECT_EQ(refusal([] { electrical::response({0.1}, Cable{}, Resistor{8}, -1); }),
            "frequency_hz must be a finite number, 0 or more, got -1");
  EXPECT_EQ(refusal([] { electrical::responses({0.1}, std::vector{1e3}, {}, {}); }),
            "frequencies, cable and load must have the same length, got 1, 0 and 0");
  EXPECT_EQ(refusal([] { electrical::damping_factor(8, {0}, Cable{}); }),
            "impedance seen by the load must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] { electrical::damping_factor(0, {0.1}, Cable{}); }),
            "rated_impedance_ohm must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] { electrical::source_resistance_by_loading_ohm(2.8, 2.83, 8); }),
            "loaded_volt must be from 0 to 2.8, got 2.83");
}
