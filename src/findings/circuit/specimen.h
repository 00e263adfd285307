#pragma once

#include <optional>

#include "findings/evidence.h"
#include "findings/finding.h"
#include "hearing/level_curve.h"
#include "hearing/weighting.h"

namespace findings {

/// The weighting under which the plan's levels are compared; "pink-k" when it names none.
const hearing::Weighting& weighting_of(const plan::Plan& plan);

/// What is known of the specimen's cable; nothing when nothing is.
const CableEvidence* cable_of(const Evidence& evidence, int specimen);

/// The specimen as a circuit: its cable's readings with the stated resistor in series; nothing without
/// readings.
std::optional<electrical::Cable> line_of(const Evidence& evidence, int specimen);

/// The specimen's level at the load by the circuit, trims not counted; nothing when source, cable or load is
/// unknown.
std::optional<hearing::LevelCurve> predicted_curve_of(const Evidence& evidence, int specimen);

/// Attenuation of the specimen as set: its steps of the volume control; 0 when the plan's levels are as
/// connected.
double attenuation_db(const plan::Plan& plan, int specimen);

/// The level of one curve under the weighting over its part of 20 Hz to 20 kHz; nothing when it has none, or
/// not the weighting's tone.
std::optional<double> weighted_level_db(const hearing::Weighting& weighting,
                                        const hearing::LevelCurve& curve);

/// Whether two curves share a band within 20 Hz to 20 kHz in which the weighting can be taken.
bool are_comparable(const hearing::LevelCurve& first, const hearing::LevelCurve& second,
                    const hearing::Weighting& weighting);

/// About 200 log-spaced points of a difference.
template <typename Function>
Curve sampled(const electrical::Band& band, Function difference_db) {
  constexpr int kPoints = 200;
  Curve curve;
  curve.frequency_hz = electrical::log_spaced(band, kPoints);
  for (const double frequency_hz : curve.frequency_hz)
    curve.difference_db.push_back(difference_db(frequency_hz));
  return curve;
}

}  // namespace findings
