#pragma once

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// Whether a difference in level is beyond the tolerance by more than the rounding of decimal levels.
bool is_beyond(double difference_db, double tolerance_db);

/// Fills in what the circuit and the terminal levels say of a comparison: level, loop resistances, predicted
/// residual and curve. Terminal levels are those of the held sittings in which the comparison was played.
///
/// "matched" needs, in each of these sittings, both specimens measured at start and end, at the left and the
/// right channel or in mono, and no difference beyond the plan's tolerance. Of a level measured more than
/// once at the same moment the last counts.
void describe_level(const Evidence& evidence, ComparisonFinding& finding);

}  // namespace findings
