#pragma once

#include <string>
#include <vector>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// Far below chance: a one-sided p of so few right at or under this level asks for a look at the meaning of A
/// and B. Common practice, no source.
inline constexpr double kFarBelowChance = 0.01;

/// What a reader of one comparison should know and what bars nothing. Needs everything else of the
/// comparison.
std::vector<std::string> cautions_of(const Evidence& evidence, const ComparisonFinding& finding);

/// The same over the whole plan. Needs every comparison's verdict, and the pace.
std::vector<std::string> plan_cautions(const Evidence& evidence, const Findings& findings);

}  // namespace findings
