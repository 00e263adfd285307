#pragma once

#include "hearing/level_curve.h"

namespace hearing {

/// What remains of a level difference over a band after a trim.
struct Residual {
  double minimum_db;
  double maximum_db;
  double rms_db;                   ///< over ln f, the mean not removed
  double largest_db;               ///< the minimum or the maximum, whichever is farther from 0
  double frequency_of_largest_hz;  ///< where it stands
  electrical::Band band;           ///< the band it was taken over
};

/// First curve less second less `trim_db`, over the band common to both and to 20 Hz to 20 kHz.
///
/// @param trim_db  finite; the level difference that was trimmed away (not the attenuation's sign).
/// @throws std::domain_error  naming the argument; if the curves share no band there.
/// Accuracy: extremes as `electrical::minimum_over`, r.m.s. as `log_mean`.
Residual residual(const LevelCurve& first, const LevelCurve& second, double trim_db);

}  // namespace hearing
