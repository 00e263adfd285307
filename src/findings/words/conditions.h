#pragma once

#include <string>
#include <vector>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// Everything that decides what a result means, one sentence each: the plan's method and pace, the seal, then
/// sitting by sitting what was recorded, and "not recorded" where nothing was.
std::vector<std::string> conditions_of(const Evidence& evidence);

/// What the record can show of these sittings, and what it cannot.
std::vector<std::string> limits_of_the_method(const Evidence& evidence);

}  // namespace findings
