#pragma once

#include <vector>

#include "hearing/level_curve.h"

namespace hearing {

/// A level difference as the auditory filters pass it: at each centre the power that the filter lets through, signals of
/// equal power density within the band.
struct AuditoryDifference {
  double largest_db;               ///< signed
  double frequency_of_largest_hz;  ///< centre of that filter
  double rms_db;                   ///< over the filters, equally spaced in Cams
  electrical::Band band;           ///< the band it was taken over; filters at its edges are cut there
  std::vector<double> centre_hz;
  std::vector<double> difference_db;
};

/// First curve less second less `trim_db`, smoothed to auditory bands, over the band common to both and to 20 Hz to 20 kHz;
/// a filter every quarter Cam.
///
/// What is narrower than a filter is averaged with its surroundings; a level difference that is the same at all frequencies
/// stays what it is. It says how much reaches the filters, not whether it is heard: see `published.h`.
/// @param trim_db  within -1000 to 1000; the level difference trimmed away.
/// @throws std::domain_error  naming the argument; if the curves share no band there.
/// Accuracy: 1e-4 dB for responses of cables on loudspeakers (tests/hearing, against a sum over 20,000 frequencies).
AuditoryDifference auditory_difference(const LevelCurve& first, const LevelCurve& second, double trim_db);

}  // namespace hearing
