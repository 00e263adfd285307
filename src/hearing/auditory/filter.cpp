#include "hearing/auditory/filter.h"

#include <cmath>

#include "electrical/argument.h"

namespace hearing {

double erb_hz(double frequency_hz) {
  electrical::require_positive("frequency_hz", frequency_hz);
  return 24.7 * (4.37 * frequency_hz / 1000 + 1);
}

double erb_rate_cam(double frequency_hz) {
  electrical::require_not_negative("frequency_hz", frequency_hz);
  return 21.4 * std::log10(4.37 * frequency_hz / 1000 + 1);
}

double frequency_at_cam_hz(double cam) {
  electrical::require_not_negative("cam", cam);
  return (std::pow(10, cam / 21.4) - 1) / 4.37 * 1000;
}

double auditory_weight(double centre_hz, double frequency_hz) {
  const double p = 4 * centre_hz / erb_hz(centre_hz);
  electrical::require_not_negative("frequency_hz", frequency_hz);
  const double along = p * std::abs(frequency_hz - centre_hz) / centre_hz;
  return (1 + along) * std::exp(-along);
}

}  // namespace hearing
