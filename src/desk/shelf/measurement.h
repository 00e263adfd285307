#pragma once

#include "findings/bench/measurement.h"
#include "store/campaign.h"

namespace desk {

/// A reading as the findings know it.
findings::Measurement measurement_of(const store::NumberedReading& numbered);

}  // namespace desk
