#include "electrical/extreme.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace electrical {
namespace {

using Function = std::function<double(double)>;

constexpr int kScanPoints = 2001;
constexpr int kGoldenSteps = 50;

std::vector<double> scan_points(const Band& band, std::span<const double> own_points_hz) {
  std::vector<double> points = log_spaced(band, kScanPoints);
  for (const double f : own_points_hz) {
    if (f > band.low_hz && f < band.high_hz) points.push_back(f);
  }
  std::sort(points.begin(), points.end());
  return points;
}

/// Golden-section search; keeps the best point it has met, starting from `best`.
Extreme refined(const Function& f, double low_hz, double high_hz, Extreme best) {
  const double keep = std::numbers::phi - 1;
  double low = std::log(low_hz);
  double high = std::log(high_hz);
  const auto visit = [&](double x) {
    const double frequency_hz = std::clamp(std::exp(x), low_hz, high_hz);
    const double value = f(frequency_hz);
    if (value < best.value) best = {frequency_hz, value};
    return value;
  };
  double left = high - keep * (high - low);
  double right = low + keep * (high - low);
  double at_left = visit(left);
  double at_right = visit(right);
  for (int i = 0; i < kGoldenSteps; ++i) {
    if (at_left <= at_right) {
      high = right;
      right = left;
      at_right = at_left;
      left = high - keep * (high - low);
      at_left = visit(left);
    } else {
      low = left;
      left = right;
      at_left = at_right;
      right = low + keep * (high - low);
      at_right = visit(right);
    }
  }
  return best;
}

}  // namespace

Extreme minimum_over(const Function& of_frequency_hz, const Band& band,
                     std::span<const double> own_points_hz) {
  const std::vector<double> points = scan_points(band, own_points_hz);
  std::size_t best = 0;
  double least = of_frequency_hz(points[0]);
  for (std::size_t i = 1; i < points.size(); ++i) {
    const double value = of_frequency_hz(points[i]);
    if (value < least) {
      least = value;
      best = i;
    }
  }
  const double below = points[best == 0 ? 0 : best - 1];
  const double above = points[std::min(best + 1, points.size() - 1)];
  return refined(of_frequency_hz, below, above, {points[best], least});
}

Extreme maximum_over(const Function& of_frequency_hz, const Band& band,
                     std::span<const double> own_points_hz) {
  const Extreme mirrored = minimum_over([&](double f) { return -of_frequency_hz(f); }, band, own_points_hz);
  return {mirrored.frequency_hz, -mirrored.value};
}

}  // namespace electrical
