#include <gtest/gtest.h>

#include <algorithm>
#include <boost/multiprecision/cpp_complex.hpp>
#include <boost/random/mersenne_twister.hpp>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <vector>

#include "electrical/response.h"
#include "tier.h"

namespace {

using Wide = boost::multiprecision::cpp_bin_float_100;
using WideComplex = boost::multiprecision::cpp_complex_100;

/// Everything the level depends on, in the order: source R and L; R, L, C, G per metre, length, load-end resistor; load R
/// and C; frequency.
using Inputs = std::vector<Wide>;

WideComplex exact_response(const Inputs& in) {
  const Wide pi = boost::math::constants::pi<Wide>();
  const Wide omega = 2 * pi * in[10];
  const WideComplex source(in[0], omega * in[1]);
  const WideComplex z = WideComplex(in[2], omega * in[3]) * in[6];
  const WideComplex y = WideComplex(in[5], omega * in[4]) * in[6];
  const WideComplex load = in[8] / WideComplex(Wide(1), omega * in[8] * in[9]);
  const WideComplex g = sqrt(z * y);
  const WideComplex a = cosh(g);
  const WideComplex shape = g == WideComplex(0) ? WideComplex(1) : WideComplex(sinh(g) / g);
  const WideComplex b = z * shape + in[7] * a, c = y * shape, d = a + in[7] * c;
  return load / (a * load + b + source * (c * load + d));
}

Wide exact_level_db(const Inputs& in) { return 20 * log10(Wide(abs(exact_response(in)))); }

/// How many times a relative change of all inputs, each the worst way, is met again in |H|.
double condition_number(const Inputs& in) {
  const Wide step("1e-30"), level = exact_level_db(in);
  Wide sum = 0;
  for (std::size_t i = 0; i < in.size(); ++i) {
    Inputs moved = in;
    moved[i] *= 1 + step;
    sum += abs(exact_level_db(moved) - level) / step;
  }
  return static_cast<double>(sum * log(Wide(10)) / 20);
}

class Drawn {
 public:
  double log_uniform(double low, double high) { return low * std::pow(high / low, uniform()); }
  /// 0 in one of four.
  double perhaps(double low, double high) { return uniform() < 0.25 ? 0 : log_uniform(low, high); }
  double uniform() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }

 private:
  boost::random::mt19937_64 engine_{20240813};
};

}  // namespace

// Boost.Multiprecision, 100 digits: lengths from 0.1 mm to 1 km, 0 to 10 MHz, any of the line's constants 0.
TEST(Exactness, LevelsAgreeWithWideArithmetic) {
  Drawn draw;
  int refused = 0, compared = 0;
  double worst_db = 0, worst_share = 0;
  for (int i = 0; i < (tier() == "long" ? 5000 : 500); ++i) {
    const electrical::Source source{draw.perhaps(1e-3, 1e3), draw.perhaps(1e-8, 1e-4)};
    const electrical::Cable cable{.resistance_ohm_per_m = draw.perhaps(1e-4, 10),
                                  .inductance_henry_per_m = draw.perhaps(1e-9, 1e-5),
                                  .capacitance_farad_per_m = draw.perhaps(1e-12, 1e-8),
                                  .conductance_siemens_per_m = draw.perhaps(1e-12, 1e-3),
                                  .length_m = draw.log_uniform(1e-4, 1e3),
                                  .load_end_resistance_ohm = draw.perhaps(1e-4, 10)};
    const electrical::Resistor load{draw.log_uniform(1e-2, 1e6), draw.perhaps(1e-12, 1e-6)};
    const double frequency_hz = draw.uniform() < 0.1 ? 0 : draw.log_uniform(1, 1e7);
    const Inputs in{source.resistance_ohm,
                    source.inductance_henry,
                    cable.resistance_ohm_per_m,
                    cable.inductance_henry_per_m,
                    cable.capacitance_farad_per_m,
                    cable.conductance_siemens_per_m,
                    cable.length_m,
                    cable.load_end_resistance_ohm,
                    load.resistance_ohm,
                    load.parallel_capacitance_farad,
                    frequency_hz};
    double ours = 0;
    try {
      ours = electrical::level_db(electrical::response(source, cable, load, frequency_hz));
    } catch (const std::domain_error&) {
      ++refused;
      const WideComplex z = WideComplex(in[2], 6.283185307179586 * in[10] * in[3]) * in[6];
      const WideComplex y = WideComplex(in[5], 6.283185307179586 * in[10] * in[4]) * in[6];
      EXPECT_GT(Wide(WideComplex(sqrt(z * y)).real()), 349.9) << "refused though the attenuation is moderate";
      continue;
    }
    ++compared;
    const double error_db = std::abs(static_cast<double>(ours - exact_level_db(in)));
    const double allowed_db = std::max(
        1e-9, 16 * condition_number(in) * std::numeric_limits<double>::epsilon() * 20 / std::log(10));
    EXPECT_LE(error_db, allowed_db) << "circuit " << i;
    worst_db = std::max(worst_db, error_db);
    worst_share = std::max(worst_share, error_db / allowed_db);
  }
  RecordProperty("compared", compared);
  RecordProperty("refused", refused);
  RecordProperty("worst_db", std::to_string(worst_db * 1e9) + "e-9");
  RecordProperty("worst_share_of_allowed", std::to_string(worst_share));
  EXPECT_GT(compared, 450);
}

// A tiny difference of two cables keeps its relative accuracy.
TEST(Exactness, LevelDifferencesAgreeWithWideArithmetic) {
  Drawn draw;
  for (int i = 0; i < 200; ++i) {
    const electrical::Source source{draw.log_uniform(1e-3, 1e3), 0};
    electrical::Cable first{.resistance_ohm_per_m = draw.log_uniform(1e-3, 1),
                            .inductance_henry_per_m = draw.log_uniform(1e-8, 1e-6),
                            .capacitance_farad_per_m = draw.log_uniform(1e-11, 1e-9),
                            .length_m = draw.log_uniform(0.1, 30)};
    electrical::Cable second = first;
    second.resistance_ohm_per_m *= 1 + draw.log_uniform(1e-9, 1e-2);
    const electrical::Resistor load{draw.log_uniform(2, 1e5), 0};
    const double frequency_hz = draw.log_uniform(20, 20000);
    const auto inputs = [&](const electrical::Cable& cable) {
      return Inputs{source.resistance_ohm,
                    0,
                    cable.resistance_ohm_per_m,
                    cable.inductance_henry_per_m,
                    cable.capacitance_farad_per_m,
                    0,
                    cable.length_m,
                    0,
                    load.resistance_ohm,
                    0,
                    frequency_hz};
    };
    const auto exact = static_cast<double>(exact_level_db(inputs(first)) - exact_level_db(inputs(second)));
    // The two resistances differ by 1e-9 of themselves or more: their difference is known to 2^-53/1e-9 = 1.1e-7.
    EXPECT_NEAR(electrical::level_difference_db(source, first, second, load, frequency_hz) / exact, 1, 1e-6)
        << i;
  }
}

// An open or a shorted end is refused: there is no resistor of 0 or of infinite ohm.
TEST(Exactness, OpenAndShortedEndsAreRefused) {
  for (const double ohm :
       {0.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::quiet_NaN()})
    EXPECT_THROW(electrical::response({0.1}, {}, electrical::Resistor{ohm}, 1000), std::domain_error) << ohm;
}
