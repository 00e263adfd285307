#pragma once

#include "hearing/level_curve.h"
#include "hearing/weighting.h"

namespace hearing {

/// How far a response stands from the baseline's, nothing trimmed.
struct Deviation {
  double largest_db;               ///< signed: above 0 where the response is louder
  double frequency_of_largest_hz;  ///< where it stands
  double rms_db;                   ///< over ln f
  double weighted_level_db;        ///< the level difference under the weighting
  electrical::Band band;           ///< the band all of it was taken over
};

/// Response less baseline over the band common to both and to 20 Hz to 20 kHz.
/// @throws std::domain_error  if the curves share no band there; for a tone outside it.
Deviation deviation(const LevelCurve& response, const LevelCurve& baseline, const Weighting& weighting);

}  // namespace hearing
