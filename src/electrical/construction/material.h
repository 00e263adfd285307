#pragma once

#include <span>
#include <string_view>

namespace electrical {

/// A conductor's metal: its resistivity at 20 C and how it rises.
struct Material {
  std::string_view name;
  double resistivity_ohm_m;              ///< at 20 C
  double temperature_coefficient_per_k;  ///< of the resistance at 20 C
  std::string_view source;
};

/// copper, silver, aluminium.
std::span<const Material> materials();

/// @throws std::domain_error  listing the names there are.
const Material& material_named(std::string_view name);

/// Resistivity at another temperature: rho20 (1 + alpha (t - 20)).
/// @param temperature_celsius  -60 to 200, where the straight line is a fair description.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: copper at 40 C has 1.0786 times its resistance at 20 C.
double resistivity_ohm_m(const Material& material, double temperature_celsius);

}  // namespace electrical
