#pragma once

#include <string>
#include <vector>

#include "store/campaign.h"

namespace desk {

/// The readings of a kind that count, of a cable on a rig ("" for any rig and none).
/// @throws text::BadInput for a cable or rig that is not there; when there is no such reading, with what to import.
std::vector<store::NumberedReading> measured(const store::Campaign& campaign, const std::string& cable,
                                             const std::string& kind, const std::string& rig,
                                             const std::string& what_to_import);

/// "reading 7 (noise.csv), rig hall, left, shield connected on, repeat 2": what is known of its circumstances.
std::string named_reading(const store::NumberedReading& reading);

}  // namespace desk
