#pragma once

#include <string>

#include "desk/plans/planning.h"
#include "findings/evidence.h"

namespace desk {

/// Everything that findings on a plan are made from, read from the campaign.
/// @throws text::NotNow while the plan is sealed.
findings::Evidence evidence_of(const store::Campaign& campaign, const std::string& plan);

/// Every sealed plan of a campaign with its state, abandoned ones too.
std::vector<findings::PlanLine> plan_lines(const store::Campaign& campaign);

/// The listening part alone: trials, sittings and levels of an unsealed plan, from any log.
findings::Evidence listening_evidence(const plan::Plan& plan, const plan::SealedPlan& sealed,
                                      const sitting::EventLog& log);

}  // namespace desk
