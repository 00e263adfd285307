#include "electrical/response.h"

#include <cmath>
#include <numbers>
#include <stdexcept>
#include <string>

#include "electrical/argument.h"

namespace electrical {
namespace {

using Complex = std::complex<double>;

/// E.m.f. over load current: ZL times 1/H.
Complex emf_per_load_current(Complex source_ohm, const TwoPort& cable, Complex load_ohm) {
  const Complex line = cable.a_minus_1 * load_ohm + cable.b_ohm;
  const Complex input = cable.c_siemens * load_ohm + cable.d_minus_1;
  return load_ohm + source_ohm + (line + source_ohm * input);
}

}  // namespace

Complex impedance_ohm(const Source& source, double frequency_hz) {
  require_not_negative("source resistance_ohm", source.resistance_ohm);
  require_not_negative("source inductance_henry", source.inductance_henry);
  require_not_negative("frequency_hz", frequency_hz);
  return {source.resistance_ohm, 2 * std::numbers::pi * frequency_hz * source.inductance_henry};
}

Complex voltage_ratio(Complex source_ohm, const TwoPort& cable, Complex load_ohm) {
  return load_ohm / emf_per_load_current(source_ohm, cable, load_ohm);
}

Complex response(const Source& source, const Cable& cable, const Load& load, double frequency_hz) {
  return voltage_ratio(impedance_ohm(source, frequency_hz), two_port(cable, frequency_hz),
                       impedance_ohm(load, frequency_hz));
}

std::vector<Complex> responses(const Source& source, const Cable& cable, const Load& load,
                               std::span<const double> frequency_hz) {
  return responses(source, frequency_hz, two_ports(cable, frequency_hz), impedances_ohm(load, frequency_hz));
}

std::vector<Complex> responses(const Source& source, std::span<const double> frequency_hz,
                               std::span<const TwoPort> cable, std::span<const Complex> load_ohm) {
  if (cable.size() != frequency_hz.size() || load_ohm.size() != frequency_hz.size()) {
    throw std::domain_error("frequencies, cable and load must have the same length, got " +
                            std::to_string(frequency_hz.size()) + ", " + std::to_string(cable.size()) +
                            " and " + std::to_string(load_ohm.size()));
  }
  std::vector<Complex> ratios(frequency_hz.size());
  for (std::size_t i = 0; i < ratios.size(); ++i) {
    ratios[i] = voltage_ratio(impedance_ohm(source, frequency_hz[i]), cable[i], load_ohm[i]);
  }
  return ratios;
}

double level_db(Complex ratio) { return 20 * std::log10(std::abs(ratio)); }

double phase_deg(Complex ratio) { return std::arg(ratio) * 180 / std::numbers::pi; }

double level_difference_db(const Source& source, const Cable& first, const Cable& second, const Load& load,
                           double frequency_hz) {
  const Complex source_ohm = impedance_ohm(source, frequency_hz);
  const Complex load_ohm = impedance_ohm(load, frequency_hz);
  const TwoPort one = two_port(first, frequency_hz);
  const TwoPort two = two_port(second, frequency_hz);
  // |H1/H2|^2 = |1 + r|^2 with r = (ZL/H2 - ZL/H1) / (ZL/H1).
  const Complex change =
      (two.a_minus_1 - one.a_minus_1) * load_ohm + (two.b_ohm - one.b_ohm) +
      source_ohm * ((two.c_siemens - one.c_siemens) * load_ohm + (two.d_minus_1 - one.d_minus_1));
  const Complex r = change / emf_per_load_current(source_ohm, one, load_ohm);
  return 10 / std::numbers::ln10 * std::log1p(2 * r.real() + std::norm(r));
}

Complex input_impedance_ohm(const Cable& cable, const Load& load, double frequency_hz) {
  const TwoPort port = two_port(cable, frequency_hz);
  const Complex load_ohm = impedance_ohm(load, frequency_hz);
  return (load_ohm + (port.a_minus_1 * load_ohm + port.b_ohm)) /
         (1.0 + (port.c_siemens * load_ohm + port.d_minus_1));
}

Complex output_impedance_ohm(const Source& source, const Cable& cable, double frequency_hz) {
  const Complex source_ohm = impedance_ohm(source, frequency_hz);
  const TwoPort port = two_port(cable, frequency_hz);
  return (port.b_ohm + source_ohm * (1.0 + port.d_minus_1)) /
         (1.0 + port.a_minus_1 + source_ohm * port.c_siemens);
}

}  // namespace electrical
