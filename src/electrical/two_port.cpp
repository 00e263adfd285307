#include "electrical/two_port.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

#include "electrical/argument.h"

namespace electrical {
namespace {

using Complex = std::complex<double>;

constexpr double kSeriesBelow = 0.1;
constexpr double kMostNepers = 350;

/// cosh(g) - 1 and sinh(g)/g as functions of q = g^2.
struct Hyperbolic {
  Complex cosh_minus_1;
  Complex sinh_over_g;
};

Hyperbolic by_series(Complex q) {
  // Nested from the highest term down; below |q| = 0.1 the first left out is under 1e-21.
  Complex cosh_tail = 0;
  Complex sinh_tail = 1;
  for (int k = 8; k >= 1; --k) {
    cosh_tail = q / double((2 * k - 1) * (2 * k)) * (1.0 + cosh_tail);
    sinh_tail = 1.0 + q / double((2 * k) * (2 * k + 1)) * sinh_tail;
  }
  return {cosh_tail, sinh_tail};
}

Hyperbolic by_formula(Complex q) {
  const Complex g = std::sqrt(q);
  if (!(g.real() <= kMostNepers)) {
    throw std::domain_error("the attenuation of the cable must be at most 350 neper, got " +
                            number_text(g.real()));
  }
  const Complex half = std::sinh(0.5 * g);
  return {2.0 * half * half, std::sinh(g) / g};
}

}  // namespace

TwoPort two_port(Complex series_ohm, Complex shunt_siemens) {
  const Complex q = series_ohm * shunt_siemens;
  const auto [cosh_minus_1, sinh_over_g] = std::abs(q) < kSeriesBelow ? by_series(q) : by_formula(q);
  return {cosh_minus_1, series_ohm * sinh_over_g, shunt_siemens * sinh_over_g, cosh_minus_1};
}

TwoPort two_port(const Cable& cable, double frequency_hz) {
  const double capacitance_farad = cable.capacitance_farad_per_m * cable.length_m;
  TwoPort port =
      two_port(series_ohm(cable, frequency_hz), {cable.conductance_siemens_per_m * cable.length_m,
                                                 2 * std::numbers::pi * frequency_hz * capacitance_farad});
  port.b_ohm += cable.load_end_resistance_ohm * (1.0 + port.a_minus_1);
  port.d_minus_1 += cable.load_end_resistance_ohm * port.c_siemens;
  return port;
}

std::vector<TwoPort> two_ports(const Cable& cable, std::span<const double> frequency_hz) {
  std::vector<TwoPort> ports;
  ports.reserve(frequency_hz.size());
  for (const double f : frequency_hz) ports.push_back(two_port(cable, f));
  return ports;
}

}  // namespace electrical
