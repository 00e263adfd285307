#pragma once

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// Everything the evidence supports, and what it does not. A pure function of the evidence.
/// @throws std::domain_error when the evidence contradicts its own plan (an answer by nobody, a level that is
/// no number).
Findings findings_of(const Evidence& evidence);

}  // namespace findings
