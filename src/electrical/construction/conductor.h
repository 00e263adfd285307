#pragma once

#include <optional>
#include <span>

#include "electrical/construction/material.h"

namespace electrical {

/// Diameter of a round solid wire of this gauge: 0.127 mm * 92^((36 - gauge)/39).
/// @param gauge  -3 (written 4/0) to 50.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: gauge 12 is 2.0525 mm.  Source: ASTM B258 (from memory).
double awg_diameter_m(double gauge);

/// Area of a round solid wire, and back. @throws std::domain_error  for a value that is not above 0.
double round_area_m2(double diameter_m);
double round_diameter_m(double area_m2);

/// Direct-current resistance of ONE conductor: resistivity / area of its metal. A pair's loop has twice as much.
///
/// It is the geometry's own resistance: a standard cable of the same nominal area may have 4 to 16 % more (IEC 60228
/// limits the resistance, not the area; see `standard_conductors`).
/// @param metal_area_m2  above 0; of all strands together.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 2.5 mm2 of copper at 20 C: 6.897 mohm/m.
double resistance_ohm_per_m(const Material& material, double metal_area_m2, double temperature_celsius = 20);

/// The metal's area of ONE conductor that has this resistance: the inverse of `resistance_ohm_per_m`.
/// @param ohm_per_m  of one conductor, above 0.
double area_of_resistance_m2(const Material& material, double ohm_per_m, double temperature_celsius = 20);

/// The largest direct-current resistance at 20 C that the standard allows one conductor of annealed copper.
struct StandardConductor {
  double nominal_area_m2;
  double solid_or_stranded_ohm_per_m;  ///< class 1 and class 2
  double flexible_ohm_per_m;           ///< class 5, plain
  double flexible_tinned_ohm_per_m;    ///< class 5, tinned
};

/// 0.5 to 6 mm2. Source: IEC 60228:2004, Tables 1 to 3 (read in secondary copies that agree).
std::span<const StandardConductor> standard_conductors();

/// The row of this nominal area (within 1 %), if there is one.
std::optional<StandardConductor> standard_conductor(double nominal_area_m2);

}  // namespace electrical
