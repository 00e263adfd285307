#include "electrical/construction/round_wire.h"

#include <gtest/gtest.h>

#include <boost/multiprecision/cpp_bin_float.hpp>
#include <cmath>

#include "electrical/construction/conductor.h"
#include "electrical/construction/copper.h"
#include "electrical/csv_rows.h"
#include "electrical/refusal.h"

using electrical::internal_impedance_ratio;
using electrical::internal_inductance_share;

namespace {

using Exact = boost::multiprecision::number<boost::multiprecision::cpp_bin_float<200>>;

/// Z/R0 from the power series of I0 and I1 in 200 digits: no cancellation is left up to x = 200.
std::complex<double> by_power_series(double x) {
  // z^2/4 = j x^2/4, so (z/2)^2k / k!^2 turns by j from term to term.
  const Exact quarter = Exact(x) * x / 4;
  Exact zero[2] = {1, 0}, one[2] = {1, 0}, term0[2] = {1, 0}, term1[2] = {1, 0};
  const auto times_j = [](Exact(&term)[2], const Exact& factor) {
    const Exact real = term[0];
    term[0] = -term[1] * factor;
    term[1] = real * factor;
  };
  for (int k = 1; k < 1000; ++k) {
    times_j(term0, quarter / (Exact(k) * k));
    times_j(term1, quarter / (Exact(k) * (k + 1)));
    for (int part = 0; part < 2; ++part) {
      zero[part] += term0[part];
      one[part] += term1[part];
    }
  }
  // z I0/(2 I1) with I1 = (z/2) one: the ratio of the two sums.
  const Exact norm = one[0] * one[0] + one[1] * one[1];
  return {static_cast<double>((zero[0] * one[0] + zero[1] * one[1]) / norm),
          static_cast<double>((zero[1] * one[0] - zero[0] * one[1]) / norm)};
}

}  // namespace

// S1: recomputed (SciPy's Bessel and Kelvin functions, binary128 series), printed to eight decimals.
TEST(RoundWire, AgreesWithTheTable) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/skin_round_wire.csv")) {
    const double x = row.number("x");
    SCOPED_TRACE(x);
    ++rows;
    EXPECT_NEAR(internal_impedance_ratio(x).real(), row.number("R_over_R0"), 5.1e-9);
    EXPECT_NEAR(internal_inductance_share(x), row.number("L_over_L0"), 5.1e-9);
  }
  EXPECT_GT(rows, 30);
}

// S1, from memory: Rosa and Grover's table of 1916, five decimals.
TEST(RoundWire, AgreesWithTheClassicTable) {
  EXPECT_NEAR(internal_impedance_ratio(4).real(), 1.67787, 5.1e-6);
  EXPECT_NEAR(internal_inductance_share(4), 0.68632, 5.1e-6);
  EXPECT_NEAR(internal_impedance_ratio(5).real(), 2.04272, 5.1e-6);
  EXPECT_NEAR(internal_inductance_share(5), 0.55597, 5.1e-6);
}

// 200-digit power series, across the change of formula at 30.
TEST(RoundWire, AgreesWithExactArithmetic) {
  for (double x = 1e-3; x < 150; x *= 1.13) {
    SCOPED_TRACE(x);
    const std::complex<double> exact = by_power_series(x), ours = internal_impedance_ratio(x);
    EXPECT_NEAR(ours.real() / exact.real(), 1, 1e-14);
    EXPECT_NEAR(ours.imag() / exact.imag(), 1, 1e-14);
  }
  for (const double x : {29.999, 30.0, 30.001}) {
    EXPECT_NEAR(internal_impedance_ratio(x).real() / by_power_series(x).real(), 1, 1e-14) << x;
  }
}

// S1: R/R0 -> 1 + x^4/192, L/L0 -> 1 - x^4/384; large: x/(2 sqrt 2) + 1/4 + 3 sqrt 2/(32 x).
TEST(RoundWire, KeepsItsLimits) {
  EXPECT_EQ(internal_impedance_ratio(0), std::complex<double>(1, 0));
  EXPECT_EQ(internal_inductance_share(0), 1);
  const double x = 1e-4, fourth = x * x * x * x;
  EXPECT_NEAR(electrical::skin_excess_ratio(x).real() / (fourth / 192), 1, 1e-8);
  EXPECT_NEAR(electrical::skin_excess_ratio(x).imag() / (-fourth / 384 * x * x / 8), 1, 1e-8);
  for (const double large : {1e3, 1e5, 1e7}) {
    const double root2 = std::sqrt(2.0);
    EXPECT_NEAR(
        internal_impedance_ratio(large).real() / (large / (2 * root2) + 0.25 + 3 * root2 / (32 * large)), 1,
        1e-9)
        << large;
  }
}

// S2: IACS copper. recomputed.
TEST(RoundWire, SkinDepthOfCopper) {
  constexpr double kDepths[][2] = {
      {60, 8.531600}, {1000, 2.089807}, {10000, 0.660855}, {20000, 0.467295}, {1e6, 0.066085}};
  for (const auto& [hertz, millimetre] : kDepths)
    EXPECT_NEAR(electrical::skin_depth_m(copper(), hertz) * 1e3, millimetre, 5.1e-7) << hertz;
}

// S3: one solid wire at 20 C. recomputed, with the magnetic constant 4 pi 1e-7: 3e-10 in x. Half the last printed digit.
TEST(RoundWire, SolidWiresAgreeWithTheExamples) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("electrical/data/skin_wire_examples.csv")) {
    SCOPED_TRACE(row.text("area_mm2") + " mm2 at " + row.text("f_Hz"));
    ++rows;
    const double ohm_per_m = electrical::resistance_ohm_per_m(copper(), row.number("area_mm2") * 1e-6);
    const double x = electrical::skin_argument(ohm_per_m, row.number("f_Hz"));
    EXPECT_NEAR(x, row.number("x"), 5.1e-9 + 3e-10 * x);
    const double ratio = internal_impedance_ratio(x).real();
    EXPECT_NEAR(ratio, row.number("R_over_R0"), 5.1e-9 + 3e-10 * ratio);
    EXPECT_NEAR(ratio * ohm_per_m * 1e3, row.number("R_ac_ohm_per_km"), 5.1e-7 + 3e-7 * ratio * ohm_per_m);
    EXPECT_NEAR(internal_inductance_share(x), row.number("L_over_L0"), 6e-9);
    EXPECT_NEAR(internal_inductance_share(x) * electrical::kInternalInductanceHenryPerM * 1e9,
                row.number("Li_nH_per_m"), 6e-7);
  }
  EXPECT_GT(rows, 40);
}

TEST(RoundWire, RefusesImpossibleValues) {
  EXPECT_EQ(refusal([] { internal_impedance_ratio(-1); }),
            "argument must be a finite number, 0 or more, got -1");
  EXPECT_EQ(refusal([] { electrical::skin_argument(0, 100); }),
            "resistance_ohm_per_m must be a finite number above 0, got 0");
  EXPECT_EQ(refusal([] { electrical::skin_depth_m(copper(), 0); }),
            "frequency_hz must be a finite number above 0, got 0");
}
