#pragma once

#include <string>
#include <vector>

#include "findings/exploration/exploration.h"
#include "plan/plan.h"

namespace findings {

/// What a spread or a drift shows. "Shown" is an unadjusted p at the level or below.
std::string sentence_of(const Spread& spread, std::size_t listeners, double level);
std::string sentence_of(const Drift& drift, double level);

/// What was left out or not computed, and why.
std::vector<std::string> remarks_on(const plan::Plan& plan, const Exploration& exploration);

}  // namespace findings
