#include "electrical/many/levels.h"

#include <gtest/gtest.h>

#include <boost/random/mersenne_twister.hpp>
#include <cmath>
#include <limits>

#include "electrical/csv_rows.h"
#include "electrical/frequency_grid.h"
#include "electrical/golden_cases.h"
#include "electrical/refusal.h"

using electrical::Cable;
using electrical::levels_db;
using electrical::Rig;

namespace {

double alone_db(const Rig& rig, const Cable& cable, double frequency_hz) {
  return electrical::level_db(electrical::response(rig.source, cable, rig.load, frequency_hz));
}

class CircuitDraw {
 public:
  explicit CircuitDraw(std::uint64_t seed) : engine_(seed) {}

  Cable cable() {
    Cable drawn{.resistance_ohm_per_m = perhaps(1e-4, 1),
                .inductance_henry_per_m = perhaps(1e-9, 1e-5),
                .capacitance_farad_per_m = perhaps(1e-12, 1e-8),
                .conductance_siemens_per_m = perhaps(1e-12, 1e-3),
                .length_m = log_uniform(1e-4, 200),
                .load_end_resistance_ohm = perhaps(1e-4, 10)};
    if (drawn.resistance_ohm_per_m > 0 && uniform() < 0.5)
      drawn.round_conductors = {1 + (uniform() < 0.5), drawn.resistance_ohm_per_m * uniform() / 2};
    return drawn;
  }

  Rig rig() {
    const electrical::Source source{perhaps(1e-3, 1e3), perhaps(1e-8, 1e-4)};
    const double kind = uniform();
    if (kind < 0.4) return {source, electrical::Resistor{log_uniform(1e-2, 1e6), perhaps(1e-12, 1e-6)}};
    if (kind < 0.7) return {source, ls1()};
    return {source,
            electrical::ImpedanceTable({0.1, log_uniform(1, 1e6), 1e7},
                                       {{log_uniform(1, 10), 1}, {log_uniform(1, 100), -3}, {8, 30}})};
  }

  double log_uniform(double low, double high) { return low * std::pow(high / low, uniform()); }

 private:
  double uniform() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }
  double perhaps(double low, double high) { return uniform() < 0.25 ? 0 : log_uniform(low, high); }

  boost::random::mt19937_64 engine_;
};

}  // namespace

// Lines from 0.1 mm to 200 m, 0.1 Hz to 10 MHz, any constant 0: both ways through the calculation, and two blocks of
// frequencies.
TEST(ManyLevels, EachIsThatOfItsCircuitAlone) {
  CircuitDraw draw(20240901);
  int long_lines = 0;
  for (int campaign = 0; campaign < 20; ++campaign) {
    std::vector<Rig> rigs;
    std::vector<Cable> cables;
    std::vector<double> frequency_hz;
    for (int i = 0; i < 5; ++i) rigs.push_back(draw.rig());
    for (int i = 0; i < 6; ++i) cables.push_back(draw.cable());
    for (int i = 0; i < 300; ++i) frequency_hz.push_back(draw.log_uniform(0.1, 1e7));
    const auto levels = levels_db(rigs, cables, frequency_hz, 2);
    ASSERT_EQ(levels.all_db.size(), 5u * 6 * 300);
    for (std::size_t r = 0; r < rigs.size(); ++r)
      for (std::size_t c = 0; c < cables.size(); ++c)
        for (std::size_t i = 0; i < frequency_hz.size(); ++i)
          ASSERT_NEAR(levels.at(r, c)[i], alone_db(rigs[r], cables[c], frequency_hz[i]), 1e-9)
              << campaign << ": rig " << r << ", cable " << c << ", " << frequency_hz[i] << " Hz";
    for (const Cable& cable : cables) long_lines += std::abs(electrical::two_port(cable, 1e7).a_minus_1) > 1;
  }
  EXPECT_GT(long_lines, 10);
  EXPECT_LT(long_lines, 110);
}

// recomputed: IEEE binary128; see the head of the file. B2 and B3 have other formulas for R and L.
TEST(ManyLevels, AgreeWithWideArithmetic) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/golden_line_cases.csv")) {
    if (row.text("case") == "B2" || row.text("case") == "B3") continue;
    const auto& [source, cable, load] = golden_cases().at(row.text("case"));
    const Rig rig{source, load};
    const double frequency_hz = row.number("f_Hz");
    EXPECT_NEAR(levels_db({&rig, 1}, {&cable, 1}, {&frequency_hz, 1}).all_db.at(0), row.number("H_dB"), 2e-13)
        << row.text("case") << " at " << frequency_hz << " Hz";
    ++rows;
  }
  EXPECT_GT(rows, 150);
}

// Half the voltage, and a tenth of it.
TEST(ManyLevels, OfADividerAreItsShare) {
  const std::vector<Rig> rigs{{{.resistance_ohm = 8}, electrical::Resistor{8}},
                              {{.resistance_ohm = 72}, electrical::Resistor{8}}};
  const std::vector<Cable> cables{Cable{}};
  const std::vector<double> frequency_hz{0, 1000};
  const auto levels = levels_db(rigs, cables, frequency_hz);
  for (const double db : levels.at(0, 0)) EXPECT_NEAR(db, -20 * std::log10(2), 1e-13);
  for (const double db : levels.at(1, 0)) EXPECT_NEAR(db, -20, 1e-13);
}

TEST(ManyLevels, FillEveryNumberOfFrequencies) {
  const std::vector<Rig> rigs{{{.resistance_ohm = 0.1}, ls1()}};
  const std::vector<Cable> cables{line(0.2, 0.6e-6, 60e-12, 3), line(0.02, 0.6e-6, 60e-12, 3)};
  for (const int points : {2, 255, 256, 257, 511, 512, 513, 1000}) {
    const auto frequency_hz = electrical::log_spaced({20, 20000}, points);
    const auto levels = levels_db(rigs, cables, frequency_hz);
    ASSERT_EQ(levels.at(0, 1).size(), frequency_hz.size());
    for (std::size_t c = 0; c < 2; ++c)
      for (std::size_t i = 0; i < frequency_hz.size(); ++i)
        ASSERT_NEAR(levels.at(0, c)[i], alone_db(rigs[0], cables[c], frequency_hz[i]), 1e-12) << points;
  }
}

TEST(ManyLevels, OfNothingAreNone) {
  const std::vector<Rig> rigs{{{}, ls1()}};
  const std::vector<Cable> cables{Cable{}};
  const std::vector<double> frequency_hz{1000};
  EXPECT_TRUE(levels_db({}, cables, frequency_hz).all_db.empty());
  EXPECT_TRUE(levels_db(rigs, {}, frequency_hz).all_db.empty());
  EXPECT_TRUE(levels_db(rigs, cables, {}).all_db.empty());
  EXPECT_TRUE(levels_db(rigs, cables, {}, 2).at(0, 0).empty());
}

// |H|^2 of the first is no double, nor is |H| of the second.
TEST(ManyLevels, BeyondTheSquaresOfDoublesAreThoseOfTheCircuitAlone) {
  const std::vector<Rig> rigs{{{.resistance_ohm = 1e6}, electrical::Resistor{1e-6}},
                              {{.resistance_ohm = 1e200}, electrical::Resistor{1e-6}},
                              {{}, electrical::Resistor{8}}};
  const std::vector<Cable> cables{
      {.resistance_ohm_per_m = 1, .conductance_siemens_per_m = 1, .length_m = 345}, Cable{}};
  const std::vector<double> frequency_hz{0, 1000};
  const auto levels = levels_db(rigs, cables, frequency_hz);
  EXPECT_LT(levels.at(0, 0)[0], -3100);
  EXPECT_EQ(levels.at(1, 0)[0], -std::numeric_limits<double>::infinity());
  EXPECT_LT(levels.at(2, 0)[0], -2990);
  EXPECT_EQ(levels.at(2, 1)[0], 0);
  for (std::size_t r = 0; r < rigs.size(); ++r)
    for (std::size_t c = 0; c < cables.size(); ++c)
      for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
        const double expected = alone_db(rigs[r], cables[c], frequency_hz[i]);
        if (std::abs(expected) > 2900)
          EXPECT_EQ(levels.at(r, c)[i], expected) << r << c << i;
        else
          EXPECT_NEAR(levels.at(r, c)[i], expected, 1e-12) << r << c << i;
      }
}

// A quarter of a wave without loss is its own resonance: the level is far above 0 dB.
TEST(ManyLevels, KeepTheirDigitsInAResonance) {
  const std::vector<Rig> rigs{{{}, electrical::Resistor{1e6}}};
  const std::vector<Cable> cables{line(0, 0.25e-6, 100e-12, 5)};
  const double quarter_hz = 1 / (4 * 5 * std::sqrt(0.25e-6 * 100e-12));
  const auto frequency_hz = electrical::log_spaced({0.9 * quarter_hz, 1.1 * quarter_hz}, 301);
  const auto levels = levels_db(rigs, cables, frequency_hz);
  double highest_db = 0;
  for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
    EXPECT_NEAR(levels.all_db[i], alone_db(rigs[0], cables[0], frequency_hz[i]), 1e-9);
    highest_db = std::max(highest_db, levels.all_db[i]);
  }
  EXPECT_GT(highest_db, 50);
}

TEST(ManyLevels, AreTheSameForEveryNumberOfThreads) {
  CircuitDraw draw(7);
  std::vector<Rig> rigs;
  std::vector<Cable> cables;
  for (int i = 0; i < 3; ++i) rigs.push_back(draw.rig());
  for (int i = 0; i < 5; ++i) cables.push_back(draw.cable());
  const auto frequency_hz = electrical::log_spaced({10, 1e5}, 700);
  const auto one = levels_db(rigs, cables, frequency_hz, 1);
  for (const int threads : {2, 3, 40})
    EXPECT_EQ(levels_db(rigs, cables, frequency_hz, threads).all_db, one.all_db) << threads;
}

TEST(ManyLevels, RefuseWhatTheCircuitAloneRefuses) {
  const Rig rig{{.resistance_ohm = 0.1}, ls1()};
  const Cable cable = line(0.2, 0.6e-6, 60e-12, 3);
  const auto refused = [](const std::vector<Rig>& rigs, const std::vector<Cable>& cables, double frequency_hz,
                          int threads) {
    return refusal([&] { levels_db(rigs, cables, std::vector<double>{20, frequency_hz}, threads); });
  };
  Cable negative = cable;
  negative.capacitance_farad_per_m = -1e-12;
  const Rig table{{}, electrical::ImpedanceTable({10, 100}, {{4, 0}, {4, 0}})};
  for (const int threads : {1, 2}) {
    EXPECT_EQ(refused({rig}, {cable}, 1000, threads), "accepted");
    EXPECT_EQ(refused({rig}, {cable}, -1, threads),
              "frequency_hz must be a finite number, 0 or more, got -1");
    EXPECT_EQ(refused({rig}, {cable, negative}, 1000, threads),
              "capacitance_farad_per_m must be a finite number, 0 or more, got -1e-12");
    EXPECT_EQ(refused({rig, {{-1}, ls1()}}, {cable}, 1000, threads),
              "source resistance_ohm must be a finite number, 0 or more, got -1");
    EXPECT_EQ(refused({rig, {{}, electrical::Resistor{0}}}, {cable}, 1000, threads),
              "resistance_ohm must be a finite number above 0, got 0");
    EXPECT_EQ(refused({rig, table}, {cable}, 1000, threads),
              "frequency_hz in an impedance table must be from 10 to 100, got 1000");
    EXPECT_EQ(refused({rig}, {cable, line(1, 0, 0, 400, 1)}, 1000, threads),
              "the attenuation of the cable must be at most 350 neper, got 400");
  }
  EXPECT_EQ(refused({rig}, {cable}, 1000, 0), "threads must be from 1 to 256, got 0");
  EXPECT_EQ(refused({rig}, {cable}, 1000, 257), "threads must be from 1 to 256, got 257");
}
