#include "electrical/construction/geometry.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

#include "electrical/argument.h"
#include "electrical/construction/conductor.h"
#include "electrical/construction/round_wire.h"
#include "electrical/line_facts.h"

namespace electrical {
namespace {

using std::numbers::pi;

constexpr double kElectricConstant = 1 / (kMagneticConstant * kSpeedOfLight * kSpeedOfLight);

void require_permittivity(double relative_permittivity) {
  if (!(relative_permittivity >= 1) || !std::isfinite(relative_permittivity))
    throw std::domain_error("relative_permittivity must be a finite number, 1 or more, got " +
                            number_text(relative_permittivity));
}

void require_wider(const char* name, double value, const char* than, double limit) {
  require_positive(name, value);
  if (value <= limit)
    throw std::domain_error(std::string(name) + " must be above " + than + ", " + number_text(limit) +
                            ", got " + number_text(value));
}

/// Refuses an outline that cannot hold the metal; returns the conductor's resistance.
double checked_resistance_ohm_per_m(const Wire& wire) {
  const double resistance = resistance_ohm_per_m(wire.material, wire.metal_area_m2, wire.temperature_celsius);
  const double solid = round_diameter_m(wire.metal_area_m2);
  require_positive("outline_diameter_m", wire.outline_diameter_m);
  if (wire.outline_diameter_m < solid * (1 - 1e-12))
    throw std::domain_error("outline_diameter_m must hold the metal, a solid wire of which has " +
                            number_text(solid) + ", got " + number_text(wire.outline_diameter_m));
  return resistance;
}

}  // namespace

Wire solid_wire(const Material& material, double area_m2, double temperature_celsius) {
  return {material, area_m2, round_diameter_m(area_m2), temperature_celsius};
}

Cable round_pair(const Wire& wire, double centre_spacing_m, double relative_permittivity, double length_m) {
  const double resistance = checked_resistance_ohm_per_m(wire);
  require_wider("centre_spacing_m", centre_spacing_m, "the conductor's diameter", wire.outline_diameter_m);
  require_permittivity(relative_permittivity);
  require_positive("length_m", length_m);
  const double shape = std::acosh(centre_spacing_m / wire.outline_diameter_m);
  return {.resistance_ohm_per_m = 2 * resistance,
          .inductance_henry_per_m = kMagneticConstant / pi * shape + 2 * kInternalInductanceHenryPerM,
          .capacitance_farad_per_m = pi * kElectricConstant * relative_permittivity / shape,
          .length_m = length_m,
          .round_conductors = {2, resistance}};
}

Cable coaxial(const Wire& wire, double shield_inner_diameter_m, double shield_resistance_ohm_per_m,
              double relative_permittivity, double length_m) {
  const double resistance = checked_resistance_ohm_per_m(wire);
  require_wider("shield_inner_diameter_m", shield_inner_diameter_m, "the conductor's diameter",
                wire.outline_diameter_m);
  require_not_negative("shield_resistance_ohm_per_m", shield_resistance_ohm_per_m);
  require_permittivity(relative_permittivity);
  require_positive("length_m", length_m);
  const double shape = std::log(shield_inner_diameter_m / wire.outline_diameter_m);
  return {.resistance_ohm_per_m = resistance + shield_resistance_ohm_per_m,
          .inductance_henry_per_m = kMagneticConstant / (2 * pi) * shape + kInternalInductanceHenryPerM,
          .capacitance_farad_per_m = 2 * pi * kElectricConstant * relative_permittivity / shape,
          .length_m = length_m,
          .round_conductors = {1, resistance}};
}

Cable flat_strips(const Material& material, double width_m, double thickness_m, double separation_m,
                  double relative_permittivity, double length_m, double temperature_celsius) {
  require_positive("thickness_m", thickness_m);
  require_positive("separation_m", separation_m);
  require_wider("width_m", width_m, "the separation", separation_m);
  require_permittivity(relative_permittivity);
  require_positive("length_m", length_m);
  return {
      .resistance_ohm_per_m = 2 * resistance_ohm_per_m(material, width_m * thickness_m, temperature_celsius),
      .inductance_henry_per_m = kMagneticConstant * separation_m / width_m,
      .capacitance_farad_per_m = kElectricConstant * relative_permittivity * width_m / separation_m,
      .length_m = length_m};
}

}  // namespace electrical
