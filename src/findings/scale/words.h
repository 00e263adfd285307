#pragma once

#include <string>

#include "findings/scale/scale.h"
#include "plan/plan.h"

namespace findings {

/// The scale in words: which cables differ, whether the order told, and what it cannot say.
std::string sentence_of(const PreferenceScale& scale, const plan::Plan& plan);

}  // namespace findings
