#include "findings/bench/repeatability.h"

#include <gtest/gtest.h>

#include "findings/bench/bench_measurements.h"
#include "findings/bench/feature_test.h"

namespace {

using bench_sample::repeat;
using bench_sample::response;
using bench_sample::totals;

// By hand: logarithms of 100/101, 200/202 and 300 alone: each pair log(1.01) apart, s = log(1.01)/sqrt(2) with 2 degrees
// of freedom; t(0.975, 2) = 4.302652729749464 (SciPy).
TEST(Repeatability, OfTotalsIsRelative) {
  const std::vector<findings::Measurement> readings{
      totals(1, "a", 3, 0.100), repeat(totals(2, "a", 3, 0.101), 2, 2), totals(3, "b", 3, 0.200),
      repeat(totals(4, "b", 3, 0.202), 4, 2), totals(5, "c", 3, 0.300)};
  const auto found = findings::compare_with_baseline(readings, "a");
  ASSERT_EQ(found.size(), 1u);
  const auto& spread = found[0].repeatability.at(0);
  EXPECT_EQ(spread.quantity, "resistance");
  EXPECT_TRUE(spread.is_relative);
  EXPECT_EQ(spread.within.degrees_of_freedom, 2);
  const double deviation = std::log(1.01) / std::sqrt(2);
  EXPECT_NEAR(spread.within.standard_deviation.value(), deviation, 1e-12);
  ASSERT_EQ(found[0].rows.size(), 3u);
  EXPECT_TRUE(found[0].rows[0].differences.empty());
  const auto& b = found[0].rows[1].differences.at(0);
  EXPECT_NEAR(b.difference, std::log(2), 1e-12);
  EXPECT_NEAR(b.repeatability_limit.value(), 4.302652729749464 * deviation, 1e-10);
  EXPECT_TRUE(b.is_beyond());
  const auto& c = found[0].rows[2].differences.at(0);
  EXPECT_NEAR(c.repeatability_limit.value(), 4.302652729749464 * deviation * std::sqrt(1.5), 1e-10);
}

// A density of 1 V per root hertz has the band's width as its power: 10 log10(1000 (10^0.05 - 10^-0.05)) at 1 kHz. Levels in
// bins are the same whatever their bandwidth, once it is known.
TEST(Repeatability, OfNoiseIsThatOfThirdOctaves) {
  findings::Measurement density = response(1, "a", {20, 20000}, {});
  density.kind = "noise";
  density.columns = {"frequency_hz", "density_volt_per_sqrt_hz"};
  density.values = {{20, 20000}, {1, 1}};
  findings::Measurement levels = density;
  levels.columns = {"frequency_hz", "level_dbv"};
  levels.values[1] = {10 * std::log10(1.5), 10 * std::log10(1.5)};
  EXPECT_TRUE(findings::quantities_of(levels).empty());
  levels.columns.push_back("bandwidth_hz");
  levels.values.push_back({1.5, 1.5});
  for (const auto& one : {density, levels}) {
    const auto found = findings::quantities_of(one);
    const auto at_1_khz = std::find_if(found.begin(), found.end(),
                                       [](const auto& each) { return each.name == "level at 1.00 kHz"; });
    ASSERT_NE(at_1_khz, found.end());
    EXPECT_NEAR(at_1_khz->value, 10 * std::log10(1000 * (std::pow(10, 0.05) - std::pow(10, -0.05))), 1e-9);
  }
}

TEST(Repeatability, IsNotKnownWithoutRepeats) {
  const auto found = findings::compare_with_baseline({totals(1, "a", 3, 0.1), totals(2, "b", 3, 0.2)}, "a");
  EXPECT_FALSE(found[0].repeatability[0].within.standard_deviation);
  EXPECT_FALSE(found[0].rows[1].differences[0].repeatability_limit);
  EXPECT_FALSE(found[0].rows[1].differences[0].is_beyond());
}

TEST(Repeatability, ComparesLikeWithLike) {
  auto left = totals(1, "a", 3, 0.1), right = totals(2, "a", 3, 0.1), other = totals(3, "b", 3, 0.2);
  left.piece = "left";
  right.piece = "right";
  right.superseded = true;
  other.piece = "right";
  const auto found = findings::compare_with_baseline({left, right, other}, "a");
  ASSERT_EQ(found[0].rows.size(), 2u);
  EXPECT_TRUE(found[0].rows[1].differences.empty());
}

TEST(Repeatability, OfResponsesIsAtThirdOctaves) {
  const auto found = findings::compare_with_baseline(
      {response(1, "a", {90, 1100}, {0, 0}), response(2, "b", {90, 1100}, {-0.5, -0.5})}, "a");
  ASSERT_EQ(found[0].rows[1].differences.size(), 11u);
  EXPECT_EQ(found[0].rows[1].differences[10].quantity, "level at 1.00 kHz");
  EXPECT_NEAR(found[0].rows[1].differences[3].difference, -0.5, 1e-12);
}

/// Totals read at a frequency.
findings::Measurement at(double frequency_hz, findings::Measurement one) {
  one.columns.push_back("frequency_hz");
  one.values.push_back({frequency_hz});
  return one;
}

TEST(Repeatability, HoldsFrequenciesApart) {
  const auto found =
      findings::compare_with_baseline({at(1000, totals(1, "a", 3, 0.1)), at(10000, totals(2, "a", 3, 0.2)),
                                       at(10000, totals(3, "b", 3, 0.4))},
                                      "a");
  ASSERT_EQ(found[0].rows.size(), 3u);
  EXPECT_FALSE(found[0].repeatability[0].within.standard_deviation);
  EXPECT_NEAR(found[0].rows[2].differences.at(0).difference, std::log(2), 1e-12);
  // An ohm-meter's reading states none.
  const auto direct =
      findings::compare_with_baseline({at(1000, totals(1, "a", 3, 0.1)), totals(2, "b", 3, 0.4)}, "a");
  EXPECT_NEAR(direct[0].rows[1].differences.at(0).difference, std::log(4), 1e-12);
}

TEST(Repeatability, TakesTwoKelvinAsOneTemperature) {
  const auto warm = [](double celsius, findings::Measurement one) {
    one.columns.push_back("temperature_celsius");
    one.values.push_back({celsius});
    return one;
  };
  const auto one = warm(20, totals(1, "a", 3, 0.1));
  EXPECT_TRUE(findings::are_repeats(one, warm(21.5, totals(2, "a", 3, 0.1))));
  EXPECT_FALSE(findings::are_repeats(one, warm(40, totals(2, "a", 3, 0.1))));
  EXPECT_FALSE(findings::are_repeats(one, totals(2, "a", 3, 0.1)));
  EXPECT_FALSE(findings::are_repeats(one, warm(20, totals(2, "a", 4, 0.1))));
}

TEST(Features, AreTestedFrequencyByFrequency) {
  std::vector<findings::Measurement> readings;
  for (const double hz : {1000.0, 10000.0})
    for (const char* state : {"on", "off"}) {
      auto one = at(hz, totals(int(readings.size()) + 1, "a", 3, 0.1));
      one.feature = "shield";
      one.state = state;
      readings.push_back(one);
    }
  const auto found = findings::feature_tests(readings);
  ASSERT_EQ(found.size(), 2u);
  for (const auto& test : found) EXPECT_EQ(test.first_readings + test.second_readings, 2);
}

// Three against three cannot go below 1/10 in either direction: stats::max_difference_test.
TEST(Features, AreTestedAgainstTheirRepeats) {
  std::vector<findings::Measurement> readings;
  for (int i = 0; i < 6; ++i) {
    auto one = response(i + 1, "shielded", {50, 5000}, {(i % 2 == 0 ? 1.0 : 0.0) + 0.01 * i, 0.01 * i});
    one.feature = "shield";
    one.state = i % 2 == 0 ? "off" : "on";
    one.repeat = i / 2 + 1;
    readings.push_back(one);
  }
  const auto found = findings::feature_tests(readings);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].first_state, "on");
  EXPECT_EQ(found[0].second_state, "off");
  EXPECT_EQ(found[0].first_readings, 3);
  EXPECT_EQ(found[0].quantities.front(), "level at 50.1 Hz");
  EXPECT_NEAR(found[0].difference.front(), -1 + 0.01, 0.01);
  EXPECT_EQ(found[0].tested->smallest_p, 1 / 10.);
  EXPECT_GE(found[0].tested->test.p, 1 / 10. - 1e-12);
  readings.resize(2);
  EXPECT_FALSE(findings::feature_tests(readings)[0].tested);
  readings[1].superseded = true;
  EXPECT_TRUE(findings::feature_tests(readings).empty());
}

}  // namespace
