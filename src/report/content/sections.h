#pragma once

#include <optional>
#include <string>
#include <vector>

#include "report/content/document.h"

namespace report {

/// One comparison with all that stands beside it: a section of depth 3 and its parts.
std::vector<Section> comparison_sections(const findings::Evidence& evidence,
                                         const findings::Findings& findings,
                                         const findings::ComparisonFinding& finding);

/// The id of a comparison's section.
std::string id_of(const findings::ComparisonFinding& finding);

/// What else its answers show; nothing where that is nothing.
std::optional<Section> exploration_section(const plan::Plan& plan,
                                           const findings::ComparisonFinding& finding);

/// Each listener's answers "A" over all comparisons; nothing where that is nothing.
std::optional<Section> answer_share_section(const plan::Plan& plan, const findings::Findings& findings);

/// Worths of the cables of a preference plan; nothing without.
std::optional<Section> scale_section(const findings::Findings& findings);

/// What goes with what.
Section correlation_section(const findings::Findings& findings);

/// Conditions, pace, and every sitting as recorded.
std::vector<Section> sitting_sections(const findings::Evidence& evidence, const findings::Findings& findings);

/// The plan as it was sealed.
Section plan_section(const plan::Plan& plan);

/// Commitment, seed and heads; what the record shows; all plans; how to check.
std::vector<Section> seal_sections(const findings::Evidence& evidence, const findings::Findings& findings);

}  // namespace report
