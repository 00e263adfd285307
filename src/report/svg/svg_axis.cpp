#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "report/svg/svg_chart.h"
#include "text/number.h"

namespace report {
namespace {

/// The smallest of 1, 2, 5 times a power of ten that is at least `rough`.
double round_step(double rough) {
  const double power = std::pow(10, std::floor(std::log10(rough)));
  for (const double factor : {1.0, 2.0, 5.0})
    if (factor * power >= rough * (1 - 1e-9)) return factor * power;
  return 10 * power;
}

int decimals_of(double step) {
  return std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 12);
}

std::string with_minus_sign(std::string number) {
  if (number.starts_with('-')) number.replace(0, 1, "\u2212");
  return number;
}

}  // namespace

Axis linear_axis(std::string title, double least, double greatest, int most) {
  if (!std::isfinite(least) || !std::isfinite(greatest))
    throw std::domain_error("axis \"" + title + "\" must have finite ends");
  if (least > greatest) std::swap(least, greatest);
  const double smallest_range = std::max(1e-6, 1e-6 * std::max(std::abs(least), std::abs(greatest)));
  if (greatest - least < smallest_range) {
    const double centre = (least + greatest) / 2;
    const double spread = centre == 0 ? 1 : std::abs(centre) / 2;
    least = centre - spread;
    greatest = centre + spread;
  }
  const double step = round_step((greatest - least) / std::max(1, most - 1));
  const double low = std::floor(least / step + 1e-9), high = std::ceil(greatest / step - 1e-9);
  Axis axis{std::move(title), low * step, high * step, {}, false};
  for (double k = low; k <= high; ++k)
    axis.ticks.push_back({k * step, with_minus_sign(text::fixed(k * step, decimals_of(step)))});
  return axis;
}

Axis audio_frequency_axis() {
  return {"frequency, Hz",
          20,
          20000,
          {{20, "20"},
           {50, "50"},
           {100, "100"},
           {200, "200"},
           {500, "500"},
           {1000, "1k"},
           {2000, "2k"},
           {5000, "5k"},
           {10000, "10k"},
           {20000, "20k"}},
          true};
}

}  // namespace report
