#include "findings/bench/doubts.h"

#include <gtest/gtest.h>

#include "electrical/frequency_grid.h"
#include "findings/bench/bench_measurements.h"
#include "hearing/level_curve.h"

namespace {

using bench_sample::impedance;
using bench_sample::repeat;
using bench_sample::response;
using bench_sample::totals;
using findings::BenchCable;
using findings::Measurement;

/// What and explanation of the only doubt, or how many there are.
std::string only(const std::vector<findings::Doubt>& doubts) {
  return doubts.size() == 1 ? doubts[0].what + " | " + doubts[0].explanation : std::to_string(doubts.size());
}

std::string line_doubt(const Measurement& one, std::optional<double> area_m2 = {}) {
  return only(findings::line_doubts({one}, {{"x", area_m2, "copper", {}}}));
}

// Copper of 1/58 uohm m (IEC 60028): 3 m of 2.5 mm2, go and return, have 41.4 mohm.
constexpr double kLoopOhm = 2 * 3 / 58e6 / 2.5e-6;

TEST(LineDoubts, AreNoneWhereAllAgrees) {
  EXPECT_EQ(line_doubt(totals(1, "x", 3, kLoopOhm, 2e-6, 150e-12), 2.5e-6), "0");
  EXPECT_EQ(line_doubt(totals(1, "x", 3, 1.15 * kLoopOhm), 2.5e-6), "0");
}

TEST(LineDoubts, KnowTheFactorOfTwo) {
  EXPECT_EQ(line_doubt(totals(7, "x", 3, kLoopOhm / 2), 2.5e-6),
            "reading 7 (cables.csv): a loop of 20.7 mohm over 3.00 m has the resistance of 5.00 mm2 of "
            "copper, stated is "
            "2.50 mm2 | the value of one conductor taken for that of the loop, which is twice as much");
  EXPECT_NE(line_doubt(totals(7, "x", 3, kLoopOhm * 2), 2.5e-6).find("a loop counted twice"),
            std::string::npos);
  EXPECT_NE(line_doubt(totals(7, "x", 3, kLoopOhm * 1.64), 2.5e-6).find("aluminium"), std::string::npos);
}

TEST(LineDoubts, KnowUnitsOffByAThousand) {
  EXPECT_EQ(line_doubt(totals(1, "x", 3, 41.4)),
            "reading 1 (cables.csv): 41.4 ohm for 3.00 m is not usual, 41.4 mohm would be | a unit off by "
            "1000: ohm and "
            "mohm mixed up");
  EXPECT_NE(line_doubt(totals(1, "x", 3, kLoopOhm, 2e-9, 150e-12)).find("2.00 uH would be"),
            std::string::npos);
  EXPECT_NE(line_doubt(totals(1, "x", 3, kLoopOhm, 2e-6, 150e-9)).find("150 pF would be"), std::string::npos);
}

// L C = (length/c)^2 is light's; a quarter of it is twice its speed.
TEST(LineDoubts, KnowLight) {
  const double lc = std::pow(3 / 299792458.0, 2);
  EXPECT_EQ(line_doubt(totals(1, "x", 3, kLoopOhm, 1e-6, 1.01 * lc / 1e-6)), "0");
  const std::string fast = line_doubt(totals(1, "x", 3, kLoopOhm, 1e-6, lc / 4e-6));
  EXPECT_NE(fast.find("would carry a signal at 2.00 times the speed of light"), std::string::npos) << fast;
}

// IEC 60228 allows 8.21 mohm/m of 2.5 mm2, tinned: 49.3 mohm for 3 m of two. 56 mohm are 6.7 more.
TEST(LineDoubts, KnowContacts) {
  EXPECT_EQ(
      line_doubt(totals(1, "x", 3, 0.056), 2.5e-6),
      "reading 1 (cables.csv): 6.74 mohm of the loop's 56.0 mohm is more than the largest that IEC 60228 "
      "allows "
      "conductors of 2.50 mm2 | contacts at plugs or probes; measure with four wires, or at two lengths");
}

TEST(LineDoubts, HoldRepeatsAndPiecesSideBySide) {
  const auto one = totals(1, "x", 3, kLoopOhm);
  const std::string repeats =
      only(findings::line_doubts({one, repeat(totals(2, "x", 3, kLoopOhm * 1.3), 2, 2)}, {}));
  EXPECT_NE(repeats.find("reading 1 (cables.csv) and reading 2 (cables.csv, repeat 2): repeats have 41.4 "
                         "mohm and 53.8 mohm"),
            std::string::npos)
      << repeats;
  auto left = one, right = totals(2, "x", 3, kLoopOhm * 1.15);
  left.piece = "left";
  right.piece = "right";
  EXPECT_NE(only(findings::line_doubts({left, right}, {})).find("the pieces left and right have"),
            std::string::npos);
  right.superseded = true;
  EXPECT_EQ(only(findings::line_doubts({left, right}, {})), "0");
}

struct Hall {
  electrical::Source source{0.1, 0};
  electrical::Load load = electrical::EquivalentCircuit{3.5, 0.13e-3, {{31, 430e-6, 23e-3}}};
  electrical::Cable line = electrical::cable_from_totals({0.2, 2e-6, 150e-12, 0}, 3);
  std::vector<BenchCable> cables{{"x", {}, "copper", line}};
  std::vector<findings::BenchRig> rigs{{"hall", 4.0, source, load}};
  std::vector<double> hz = electrical::log_spaced({20, 20000}, 80);

  /// The response of the line, changed by `change(f)` dB, with its phase times `sign`.
  template <typename Change>
  Measurement measured(int number, Change change, double sign = 1) const {
    std::vector<double> level, phase;
    for (const double f : hz) {
      const auto ratio = electrical::response(source, line, load, f);
      level.push_back(electrical::level_db(ratio) + change(f));
      phase.push_back(sign * electrical::phase_deg(ratio));
    }
    auto one = response(number, "x", hz, level);
    one.columns.push_back("phase_deg");
    one.values.push_back(phase);
    return one;
  }
};

TEST(CurveDoubts, HoldAResponseAgainstItsOwnTotals) {
  const Hall hall;
  const auto as_predicted = [](double) { return 0.05; };
  EXPECT_EQ(only(findings::curve_doubts({hall.measured(1, as_predicted), hall.measured(2, as_predicted)},
                                        hall.cables, hall.rigs)),
            "0");
  const std::string off = only(findings::curve_doubts(
      {hall.measured(1, as_predicted), hall.measured(2, as_predicted),
       hall.measured(3, [](double f) { return 0.05 + (f > 5000 ? -0.4 * std::log10(f / 5000) : 0); })},
      hall.cables, hall.rigs));
  EXPECT_NE(off.find("reading 3 (response.csv): at 20.0 kHz the response is 0.24 dB below what the cable's "
                     "own totals predict"),
            std::string::npos)
      << off;
  EXPECT_NE(off.find("it grows with frequency"), std::string::npos);
}

TEST(CurveDoubts, KnowAChangedSignOfAPhase) {
  const Hall hall;
  const auto same = [](double) { return 0.0; };
  EXPECT_EQ(only(findings::curve_doubts({hall.measured(1, same, 1)}, hall.cables, hall.rigs)), "0");
  EXPECT_NE(only(findings::curve_doubts({hall.measured(1, same, -1)}, hall.cables, hall.rigs))
                .find("with the sign of its phase changed"),
            std::string::npos);
  const double predicted =
      electrical::phase_deg(electrical::response(hall.source, hall.line, hall.load, 20'000));
  Measurement single;
  single.number = 5;
  single.kind = "phase";
  single.cable = "x";
  single.rig = "hall";
  single.file = "phases.csv";
  single.columns = {"frequency_hz", "phase_deg"};
  single.values = {{20'000}, {0.9 * predicted}};
  EXPECT_EQ(only(findings::curve_doubts({single}, hall.cables, hall.rigs)), "0");
  single.values = {{20'000}, {-0.9 * predicted}};
  EXPECT_NE(only(findings::curve_doubts({single}, hall.cables, hall.rigs))
                .find("reading 5 (phases.csv): with the sign of its phase changed"),
            std::string::npos);
  std::vector<double> magnitude, phase, changed;
  for (const double f : hall.hz) {
    const auto ohm = electrical::impedance_ohm(hall.load, f);
    magnitude.push_back(std::abs(ohm));
    phase.push_back(std::arg(ohm) * 180 / std::acos(-1.0));
    changed.push_back(-phase.back());
  }
  EXPECT_EQ(only(findings::curve_doubts({impedance(1, hall.hz, magnitude, phase)}, {}, hall.rigs)), "0");
  EXPECT_NE(only(findings::curve_doubts({impedance(1, hall.hz, magnitude, changed)}, {}, hall.rigs))
                .find("the sign of the phase is changed"),
            std::string::npos);
}

// IEC 60268-5, 16.1 (read in a secondary copy): 3.2 ohm is the least of a rated 4 ohm.
TEST(CurveDoubts, KnowTheRatedImpedance) {
  const Hall hall;
  EXPECT_EQ(
      only(findings::curve_doubts({impedance(1, {20, 1000, 20000}, {8, 3.2, 8}, {0, 0, 0})}, {}, hall.rigs)),
      "0");
  EXPECT_EQ(
      only(findings::curve_doubts({impedance(1, {20, 1000, 20000}, {8, 3.19, 8}, {0, 0, 0})}, {}, hall.rigs)),
      "reading 1 (load.csv): 3.19 ohm at 1.00 kHz is below 80 % of the rated 4.00 ohm of rig hall (IEC "
      "60268-5, "
      "16.1) | a rating that is too high, or another loudspeaker");
  EXPECT_EQ(
      only(findings::curve_doubts({impedance(1, {10, 1000, 20000}, {2, 8, 8}, {0, 0, 0})}, {}, hall.rigs)),
      "0");
}

TEST(CurveDoubts, HoldLeftAgainstRight) {
  auto left = response(1, "x", {20, 20000}, {0, 0}), right = response(2, "x", {20, 20000}, {0, -0.3});
  left.piece = "left";
  right.piece = "right";
  EXPECT_NE(
      only(findings::curve_doubts({left, right}, {}, {})).find("the pieces differ by 0.30 dB at 20.0 kHz"),
      std::string::npos);
  right.values[1][1] = -0.05;
  EXPECT_EQ(only(findings::curve_doubts({left, right}, {}, {})), "0");
}

}  // namespace
