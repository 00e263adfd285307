#include "electrical/facts/delay.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "electrical/argument.h"
#include "electrical/line_facts.h"

namespace electrical {
namespace {

using Complex = std::complex<double>;

constexpr int kSteps = 2000;

}  // namespace

double unwrapped_phase_deg(const Source& source, const Cable& cable, const Load& load, double frequency_hz) {
  require_positive("frequency_hz", frequency_hz);
  const double from_hz = std::max(frequency_hz * 1e-5, known_band(load).low_hz);
  if (from_hz >= frequency_hz) return phase_deg(response(source, cable, load, frequency_hz));
  Complex before = response(source, cable, load, from_hz);
  double phase = phase_deg(before);
  for (const double f : log_spaced({from_hz, frequency_hz}, kSteps)) {
    const Complex here = response(source, cable, load, f);
    phase += phase_deg(here / before);
    before = here;
  }
  return phase;
}

double phase_delay_s(const Source& source, const Cable& cable, const Load& load, double frequency_hz) {
  return -unwrapped_phase_deg(source, cable, load, frequency_hz) / (360 * frequency_hz);
}

double group_delay_s(const Source& source, const Cable& cable, const Load& load, double frequency_hz) {
  require_positive("frequency_hz", frequency_hz);
  const auto slope = [&](double step) {
    const Complex turn = response(source, cable, load, frequency_hz * (1 + step)) /
                         response(source, cable, load, frequency_hz * (1 - step));
    return -std::arg(turn) / (4 * std::numbers::pi * frequency_hz * step);
  };
  constexpr double kStep = 1e-3;
  return (4 * slope(kStep / 2) - slope(kStep)) / 3;
}

PhaseShares phase_shares(const Source& source, const Cable& cable, const Load& load, double frequency_hz,
                         double measured_deg) {
  if (!std::isfinite(measured_deg))
    throw std::domain_error("measured_deg must be a finite number, got " + number_text(measured_deg));
  const double predicted_deg = unwrapped_phase_deg(source, cable, load, frequency_hz);
  const double propagation_deg = -360 * frequency_hz * delay_s(cable);
  const double nearest_deg = measured_deg - 360 * std::round((measured_deg - predicted_deg) / 360);
  return {nearest_deg, propagation_deg, predicted_deg - propagation_deg, nearest_deg - predicted_deg};
}

}  // namespace electrical
