#include "electrical/many/kernel.h"

#include <bit>
#include <cmath>
#include <cstdint>
#include <numbers>

// The loops are plain arithmetic without a branch or a call, so that the compiler makes vector instructions of them. They
// are compiled once for each of these processors, and the best is chosen when the program starts.
#ifdef __x86_64__
#define FOR_EACH_PROCESSOR __attribute__((target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")))
#else
#define FOR_EACH_PROCESSOR
#endif

namespace electrical {
namespace {

/// std::complex checks its products for infinities, which is a branch.
struct Pair {
  double real, imag;
};

inline Pair operator+(Pair x, Pair y) { return {x.real + y.real, x.imag + y.imag}; }
inline Pair operator+(double x, Pair y) { return {x + y.real, y.imag}; }
inline Pair operator*(double x, Pair y) { return {x * y.real, x * y.imag}; }
inline Pair operator*(Pair x, Pair y) {
  return {x.real * y.real - x.imag * y.imag, x.real * y.imag + x.imag * y.real};
}
inline double squared(Pair x) { return x.real * x.real + x.imag * x.imag; }

inline Pair at(const BlockOfComplex& block, std::size_t i) { return {block.real[i], block.imag[i]}; }
inline void put(BlockOfComplex& block, std::size_t i, Pair value) {
  block.real[i] = value.real;
  block.imag[i] = value.imag;
}

constexpr auto kInverseFactorial = [] {
  std::array<double, 20> inverse{1};
  for (std::size_t n = 1; n < inverse.size(); ++n) inverse[n] = inverse[n - 1] / static_cast<double>(n);
  return inverse;
}();

/// cosh(g) and sinh(g)/g as functions of q = g^2; for |q| up to 1 the first terms left out are below 1e-17.
struct PairOfSeries {
  Pair cosh{0, 0};
  Pair sinh_over_g{0, 0};
};

inline PairOfSeries series_of(Pair q) {
  PairOfSeries sum;
  for (std::size_t n = kInverseFactorial.size(); n > 0; n -= 2) {
    sum.cosh = kInverseFactorial[n - 2] + q * sum.cosh;
    sum.sinh_over_g = kInverseFactorial[n - 1] + q * sum.sinh_over_g;
  }
  return sum;
}

/// ln x within 1e-14 for a normal x; beyond 700 for 0, infinity and what is not a number. x = m 2^e with m from
/// sqrt(1/2) to sqrt(2), and ln m = 2 artanh t, t = (m - 1)/(m + 1), as power series.
inline double logarithm(double x) {
  constexpr auto one = std::bit_cast<std::uint64_t>(1.0);
  constexpr auto root_half = std::bit_cast<std::uint64_t>(std::numbers::sqrt2 / 2);
  const auto bits = std::bit_cast<std::uint64_t>(x);
  const std::uint64_t biased_e = (bits + (one - root_half)) >> 52;
  const auto m = std::bit_cast<double>(bits - (biased_e << 52) + one);
  // An integer in the lowest bits of 2^52 makes the double 2^52 + integer: older processors convert it in no other way.
  const auto e = std::bit_cast<double>(biased_e | std::bit_cast<std::uint64_t>(0x1p52)) - (0x1p52 + 1023);
  const double t = (m - 1) / (m + 1);
  double sum = 0;
  for (int odd = 15; odd >= 1; odd -= 2) sum = sum * (t * t) + 2.0 / odd;
  return e * std::numbers::ln2 + t * sum;
}

}  // namespace

FOR_EACH_PROCESSOR
bool fill_chains(const BlockOfComplex& series_ohm, const BlockOfComplex& shunt_siemens,
                 double load_end_resistance_ohm, BlockOfChains& chains) {
  std::uint64_t too_long = 0;
  for (std::size_t i = 0; i < kBlock; ++i) {
    const Pair z = at(series_ohm, i), y = at(shunt_siemens, i), q = z * y;
    const auto [a, shape] = series_of(q);
    const Pair c = y * shape;
    put(chains.a, i, a);
    put(chains.b_ohm, i, z * shape + load_end_resistance_ohm * a);
    put(chains.c_siemens, i, c);
    put(chains.d, i, a + load_end_resistance_ohm * c);
    too_long |= squared(q) <= 1 ? 0u : 1u;
  }
  return too_long == 0;
}

FOR_EACH_PROCESSOR
bool fill_levels_db(const BlockOfChains& chains, const BlockOfEnds& ends, BlockOfReals& levels_db) {
  std::uint64_t beyond = 0;
  for (std::size_t i = 0; i < kBlock; ++i) {
    const Pair source = at(ends.source_ohm, i);
    const Pair open = at(chains.a, i) + source * at(chains.c_siemens, i);
    const Pair loaded = at(chains.b_ohm, i) + source * at(chains.d, i);
    const double level_db =
        -10 / std::numbers::ln10 * logarithm(squared(open + loaded * at(ends.load_siemens, i)));
    levels_db[i] = level_db;
    beyond |= std::abs(level_db) <= 2900 ? 0u : 1u;
  }
  return beyond == 0;
}

}  // namespace electrical
