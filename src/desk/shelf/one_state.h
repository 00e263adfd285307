#pragma once

#include <string_view>
#include <vector>

#include "store/campaign.h"

namespace desk {

/// The column of this name; none where the reading has none.
const std::vector<double>* column(const imported::Reading& reading, std::string_view name);

/// Those without a feature; where all have one, those in the state of the first.
std::vector<store::NumberedReading> of_one_state(std::vector<store::NumberedReading> readings);

}  // namespace desk
