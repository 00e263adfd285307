#pragma once

#include <string>

#include "desk/plans/planning.h"

namespace desk {

/// What is shown when a plan is sealed: its commitment, what each comparison will need, trims and hours.
std::string sealing_text(const SealedNow& now);

/// The sealed plan as it was committed to (its canonical text) and its commitment.
std::string plan_text(const Path& campaign, const std::string& plan);

}  // namespace desk
