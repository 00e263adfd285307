#pragma once

#include "hearing/level_curve.h"
#include "hearing/weighting.h"

namespace hearing {

/// One curve's level under a weighting: the level at the tone, or the power average over ln f,
/// 10 log10( integral of W |H|^2 / integral of W ) over the band.
///
/// @param band  within the curve's own band.
/// @throws std::domain_error  for an impossible band; for a tone outside the band.
/// Accuracy: `log_mean`.
double weighted_level_db(const Weighting& weighting, const LevelCurve& curve, const electrical::Band& band);

struct LevelDifference {
  double difference_db;   ///< first less second
  electrical::Band band;  ///< the band it was taken over
};

/// The level of the first curve less that of the second, as one number under a weighting, over the band
/// common to both and to 20 Hz to 20 kHz.
///
/// @throws std::domain_error  if the curves share no band there; for a tone outside it.
///
/// Different weightings give different numbers (by 0.27 dB in the example of tests/hearing): print the
/// weighting with it, and the residual (`residual.h`).
LevelDifference level_difference(const Weighting& weighting, const LevelCurve& first,
                                 const LevelCurve& second);

}  // namespace hearing
