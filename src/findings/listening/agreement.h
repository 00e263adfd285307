#pragma once

#include <optional>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// From this share of answers in one category on kappa is not printed, only the counts: it collapses there
/// whatever the listeners did. Common practice, no source.
inline constexpr double kNearlyAll = 0.9;

/// How far the listeners score on the same trials: right or wrong where an answer can be right, else the
/// cable preferred, never the position. Over the trials that the primary test counts.
/// @return  nothing when no trial was answered by two listeners.
std::optional<Agreement> agreement_of(const Evidence& evidence, int comparison);

}  // namespace findings
