#pragma once

#include <optional>
#include <string>

#include "findings/evidence.h"
#include "store/campaign.h"

namespace desk {

/// What the campaign's readings say of a cable on a rig: line constants from the per-cable readings (the mean of the
/// repeats), with the skin effect that its construction allows (`known_line.h`), and responses measured on that rig. A cable
/// without such readings has no line here, whatever its construction says. Of a cable whose feature was read on and off too,
/// the readings without that feature count; where there are none, those in the state that was read first.
findings::CableEvidence cable_evidence(const store::Campaign& campaign, const std::string& cable,
                                       const std::string& rig);

/// The rig as a circuit; source or load stay empty where nothing is known of them.
/// @throws text::BadInput when there is no such rig.
findings::RigEvidence rig_evidence(const store::Campaign& campaign, const std::string& rig);

/// The rig of that name. @throws text::BadInput with the nearest name.
store::Rig rig_named(const store::Campaign& campaign, const std::string& name);

/// Refuses a cable that the campaign has not. @throws text::BadInput with the nearest name.
void require_cable(const store::Campaign& campaign, const std::string& name);

}  // namespace desk
