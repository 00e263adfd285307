#pragma once

#include <string>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// The finding in words, with its numbers, what would have been caught, the gap between presentations and for
/// whom it holds. Needs verdict, tallies, limits and adjusted p.
std::string sentence_of(const Evidence& evidence, const Findings& findings, const ComparisonFinding& finding);

/// "Level matched within 0.1 dB ...", by the state of the level.
std::string level_sentence_of(const ComparisonFinding& finding);

/// What remains of the response, predicted and measured; "" when neither is known.
std::string response_sentence_of(const ComparisonFinding& finding);

}  // namespace findings
