#include "electrical/frequency_grid.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

#include "electrical/argument.h"

namespace electrical {
namespace {

std::string band_text(const Band& band) {
  return number_text(band.low_hz) + " to " + number_text(band.high_hz) + " Hz";
}

}  // namespace

std::optional<Band> common_band(const Band& first, const Band& second) {
  const Band band{std::max(first.low_hz, second.low_hz), std::min(first.high_hz, second.high_hz)};
  if (!(band.low_hz < band.high_hz)) return std::nullopt;
  return band;
}

Band overlap(const Band& first, const Band& second) {
  const auto band = common_band(first, second);
  if (!band) {
    throw std::domain_error("two bands must overlap, got " + band_text(first) + " and " + band_text(second));
  }
  return *band;
}

std::vector<double> log_spaced(const Band& band, int points) {
  require_positive("low_hz", band.low_hz);
  require_positive("high_hz", band.high_hz);
  if (!(band.low_hz < band.high_hz)) {
    throw std::domain_error("a band must rise from low to high, got " + band_text(band));
  }
  require_within("points", points, 2, 10'000'000);
  const double step = std::log(band.high_hz / band.low_hz) / (points - 1);
  std::vector<double> frequency_hz(static_cast<std::size_t>(points));
  for (int i = 0; i < points; ++i) {
    frequency_hz[static_cast<std::size_t>(i)] = band.low_hz * std::exp(step * i);
  }
  frequency_hz.back() = band.high_hz;
  return frequency_hz;
}

double third_octave_centre_hz(int n) {
  require_within("third-octave number", n, -30, 30);
  return 1000 * std::pow(10, n / 10.0);
}

std::vector<double> third_octave_centres_hz() {
  std::vector<double> centres;
  for (int n = -17; n <= 13; ++n) centres.push_back(third_octave_centre_hz(n));
  return centres;
}

}  // namespace electrical
