#pragma once

#include <string>
#include <vector>

#include "findings/evidence.h"

namespace findings {

/// What was recorded of one sitting, one sentence each, every sentence beginning with the sitting's number.
void add_sitting_conditions(const Evidence& evidence, const SittingEvidence& sitting,
                            std::vector<std::string>& words);

}  // namespace findings
