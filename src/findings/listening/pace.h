#pragma once

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// Whether any start of a presentation of that sitting is known.
bool pace_is_recorded(const Evidence& evidence, int sitting);

/// How long presentations took to follow the one before within their trial, the same cable again against a
/// change of cable; spoiled trials included, since they were played.
///
/// Only places of a trial where both occur are compared, the X of ABX: elsewhere the difference would be one
/// of places. The difference has Welch's 95 % interval and the two-sided permutation p of the means. Overruns
/// are counted over all places.
Pace pace_of(const Evidence& evidence);

}  // namespace findings
