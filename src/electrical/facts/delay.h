#pragma once

#include "electrical/response.h"

namespace electrical {

/// The phase at one frequency, whole turns counted: followed from 1e-5 of the frequency in 2000 steps.
///
/// A line of up to 80 wavelengths is followed rightly.
/// @param frequency_hz  above 0.
/// @throws std::domain_error  as `response`; where the load is not known that far down, from its lowest frequency on.
double unwrapped_phase_deg(const Source& source, const Cable& cable, const Load& load, double frequency_hz);

/// The time by which a steady sine comes late: -phase/(360 f), with the unwrapped phase.
double phase_delay_s(const Source& source, const Cable& cable, const Load& load, double frequency_hz);

/// The time by which the envelope of a narrow band comes late: -d phase/d omega. Accuracy 1e-9 relative (tests).
double group_delay_s(const Source& source, const Cable& cable, const Load& load, double frequency_hz);

/// What a phase measured at one frequency consists of, as far as the circuit tells; all in degrees.
struct PhaseShares {
  double measured_deg;
  double propagation_deg;  ///< -360 f delay: all there would be between matched ends, without loss
  double
      terminations_deg;  ///< what the circuit predicts beyond that: ends that do not match the line, and the line's own loss
  double
      left_over_deg;  ///< measured less predicted: what resistance, inductance, capacitance and ends leave unexplained
};

/// Phase at one frequency need not follow the delay: behind 50 ohm into an instrument of high impedance it follows the
/// capacitance. So the same two cables can stand in either order, depending on the ends.
/// @param measured_deg  finite; whole turns do not matter: the one nearest to the prediction is taken.
/// @throws std::domain_error  as `response`.
PhaseShares phase_shares(const Source& source, const Cable& cable, const Load& load, double frequency_hz,
                         double measured_deg);

}  // namespace electrical
