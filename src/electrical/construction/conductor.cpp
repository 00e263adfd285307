#include "electrical/construction/conductor.h"

#include <cmath>
#include <numbers>

#include "electrical/argument.h"

namespace electrical {
namespace {

constexpr StandardConductor kStandardConductors[] = {
    {0.5e-6, 36.0e-3, 39.0e-3, 40.1e-3}, {0.75e-6, 24.5e-3, 26.0e-3, 26.7e-3},
    {1e-6, 18.1e-3, 19.5e-3, 20.0e-3},   {1.5e-6, 12.1e-3, 13.3e-3, 13.7e-3},
    {2.5e-6, 7.41e-3, 7.98e-3, 8.21e-3}, {4e-6, 4.61e-3, 4.95e-3, 5.09e-3},
    {6e-6, 3.08e-3, 3.30e-3, 3.39e-3},
};

}  // namespace

double awg_diameter_m(double gauge) {
  require_within("gauge", gauge, -3, 50);
  return 0.127e-3 * std::pow(92, (36 - gauge) / 39);
}

double round_area_m2(double diameter_m) {
  require_positive("diameter_m", diameter_m);
  return std::numbers::pi / 4 * diameter_m * diameter_m;
}

double round_diameter_m(double area_m2) {
  require_positive("area_m2", area_m2);
  return 2 * std::sqrt(area_m2 / std::numbers::pi);
}

double resistance_ohm_per_m(const Material& material, double metal_area_m2, double temperature_celsius) {
  require_positive("metal_area_m2", metal_area_m2);
  return resistivity_ohm_m(material, temperature_celsius) / metal_area_m2;
}

double area_of_resistance_m2(const Material& material, double ohm_per_m, double temperature_celsius) {
  require_positive("ohm_per_m", ohm_per_m);
  return resistivity_ohm_m(material, temperature_celsius) / ohm_per_m;
}

std::span<const StandardConductor> standard_conductors() { return kStandardConductors; }

std::optional<StandardConductor> standard_conductor(double nominal_area_m2) {
  for (const StandardConductor& row : kStandardConductors)
    if (std::abs(nominal_area_m2 / row.nominal_area_m2 - 1) < 0.01) return row;
  return std::nullopt;
}

}  // namespace electrical
