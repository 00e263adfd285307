#include "electrical/construction/round_wire.h"

#include <cmath>
#include <numbers>
#include <utility>

#include "electrical/argument.h"

namespace electrical {
namespace {

using Complex = std::complex<double>;
using std::numbers::pi;

constexpr double kFractionUpTo = 30;

/// Z/R0 = 1 + K/2 with K = q/(4 + q/(6 + q/(8 + ...))), q = j x^2: the continued fraction of I1/I0 (Gauss). As many terms
/// as 12 + x reach rounding up to x = 30. K/2 less its first term j x^2/8 is -(q/8) t/(4 + t), t = q/(6 + ...).
struct Fraction {
  Complex half_k;
  Complex excess;
};

/// The fraction from its last term on, as one quotient: t = q p3/p2 with p(m-1) = 2m p(m) + q p(m+1).
Fraction by_fraction(double x) {
  const double x2 = x * x;
  const auto times_q = [&](Complex p) { return Complex(-x2 * p.imag(), x2 * p.real()); };
  Complex p3 = 0, p2 = 1;
  for (int m = 12 + static_cast<int>(x); m >= 3; --m) p3 = std::exchange(p2, 2.0 * m * p2 + times_q(p3));
  const Complex whole = 4.0 * p2 + times_q(p3);
  return {times_q(p2) / (2.0 * whole), -times_q(times_q(p3)) / (8.0 * whole)};
}

/// Hankel's expansion of I0 and I1, the same exponential left out of both.
Complex by_expansion(double x) {
  const Complex z = std::polar(x, pi / 4);
  const auto sum = [&](double order) {
    Complex term = 1, total = 1;
    for (int k = 1; k <= 22; ++k) {
      const double odd = 2 * k - 1;
      term *= -(4 * order * order - odd * odd) / (8.0 * k) / z;
      total += term;
    }
    return total;
  };
  return 0.5 * z * sum(0) / sum(1);
}

}  // namespace

double skin_depth_m(const Material& material, double frequency_hz, double temperature_celsius) {
  require_positive("frequency_hz", frequency_hz);
  return std::sqrt(resistivity_ohm_m(material, temperature_celsius) /
                   (pi * frequency_hz * kMagneticConstant));
}

double skin_argument(double resistance_ohm_per_m, double frequency_hz) {
  require_positive("resistance_ohm_per_m", resistance_ohm_per_m);
  require_not_negative("frequency_hz", frequency_hz);
  return std::sqrt(2 * frequency_hz * kMagneticConstant / resistance_ohm_per_m);
}

Complex internal_impedance_ratio(double argument) {
  require_not_negative("argument", argument);
  return argument <= kFractionUpTo ? 1.0 + by_fraction(argument).half_k : by_expansion(argument);
}

double internal_inductance_share(double argument) {
  require_not_negative("argument", argument);
  return 1 + skin_excess_ratio(argument).imag() / (argument == 0 ? 1 : argument * argument / 8);
}

Complex skin_excess_ratio(double argument) {
  require_not_negative("argument", argument);
  if (argument <= kFractionUpTo) return by_fraction(argument).excess;
  return by_expansion(argument) - Complex(1, argument * argument / 8);
}

}  // namespace electrical
