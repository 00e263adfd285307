#pragma once

#include "desk/plans/planning.h"

namespace desk {

/// The plan that the organiser asked for, not checked yet.
/// @throws text::BadInput for anything typed that cannot be read or that the campaign has not.
plan::Plan drafted(const store::Campaign& campaign, const PlanTyped& typed);

}  // namespace desk
