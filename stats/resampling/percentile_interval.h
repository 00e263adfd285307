#pragma once

#include <span>

#include "stats/share/interval.h"

namespace stats {

/// Both limits of resampled values: the smallest ones that (1 - confidence)/2 and (1 + confidence)/2 of them, or more, do not
/// exceed. In places B (1 - confidence)/2 and B (1 + confidence)/2, rounded up, of the B in ascending order.
/// @param values  one or more, no not-a-number; put into another order.
Interval percentile_interval(std::span<double> values, double confidence);

}  // namespace stats
