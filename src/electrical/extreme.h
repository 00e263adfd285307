#pragma once

#include <functional>
#include <span>

#include "electrical/frequency_grid.h"

namespace electrical {

/// A least or greatest value and where it stands.
struct Extreme {
  double frequency_hz;
  double value;
};

/// The least value of a function of frequency over a band.
///
/// 2001 log-spaced points and the function's own points (`own_points_hz`, for a table; those outside the
/// band are ignored) are scanned, then the best one is refined between its neighbours by golden section
/// in ln f. A dip narrower than the scan (0.35 % of frequency over 20 Hz to 20 kHz) that lies on none of
/// the own points can be missed.
/// Accuracy: value about 1e-14, frequency about 1e-7, both relative, for a smooth minimum.
/// @throws std::domain_error  for an impossible band; and whatever the function throws.
Extreme minimum_over(const std::function<double(double)>& of_frequency_hz, const Band& band,
                     std::span<const double> own_points_hz = {});

/// The greatest value, in the same way.
Extreme maximum_over(const std::function<double(double)>& of_frequency_hz, const Band& band,
                     std::span<const double> own_points_hz = {});

}  // namespace electrical
