#pragma once

#include "findings/evidence.h"

namespace findings {

/// Refuses evidence that contradicts its own plan: a comparison without its list of trials, a trial of a
/// sitting that is not there, an answer by nobody or with an index that the protocol has not, a level of no
/// specimen.
/// @throws std::domain_error  naming the trial, the value and its range.
void check_consistency(const Evidence& evidence);

}  // namespace findings
