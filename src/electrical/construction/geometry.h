#pragma once

#include "electrical/cable.h"
#include "electrical/construction/material.h"

namespace electrical {

/// A cable from what it is made of. All formulas are textbook electrostatics and magnetostatics of straight, parallel
/// conductors in one uniform dielectric; in a real cable, with insulation, air and jacket, the relative permittivity is
/// an effective value between 1 and that of the plastic. Twist, proximity effect and dielectric loss are left out.
///
/// Resistance, inductance and capacitance come out as LOOP values of direct current; where the conductors are round the
/// cable carries their skin effect (`Cable::round_conductors`). Every function throws std::domain_error naming the
/// argument, its value and its range.

/// One conductor: the metal, its area (all strands together) and the outline that the field sees.
struct Wire {
  const Material& material;
  double metal_area_m2;       ///< above 0
  double outline_diameter_m;  ///< over all strands: at least that of a solid wire of the area
  double temperature_celsius = 20;
};

/// A solid wire: its outline is that of its metal.
Wire solid_wire(const Material& material, double area_m2, double temperature_celsius = 20);

/// Two equal round conductors side by side: L = mu0/pi acosh(D/d) + 2 * 50 nH/m, C = pi eps0 er / acosh(D/d).
///
/// @param centre_spacing_m        D, above the outline's diameter d.
/// @param relative_permittivity   1 or more.
/// @param length_m                above 0.
/// Example: 2.5 mm2 solid, 4 mm apart, er = 2.5: 0.679 uH/m with the internal 0.1, 48.1 pF/m, 13.8 mohm/m.
Cable round_pair(const Wire& wire, double centre_spacing_m, double relative_permittivity, double length_m);

/// A round conductor within a round shield: L = mu0/(2 pi) ln(b/a) + 50 nH/m, C = 2 pi eps0 er / ln(b/a).
///
/// @param shield_inner_diameter_m      2 b, above the wire's outline 2 a.
/// @param shield_resistance_ohm_per_m  0 or more: of the shield alone, as measured. Its own skin effect and internal
///                                     inductance are left out.
Cable coaxial(const Wire& wire, double shield_inner_diameter_m, double shield_resistance_ohm_per_m,
              double relative_permittivity, double length_m);

/// Two flat strips face to face: L = mu0 h/w, C = eps0 er w/h, fringing left out: a real cable of this shape has somewhat
/// less inductance and more capacitance, and more so the narrower it is.
///
/// @param width_m      w; above 0
/// @param separation_m h of the facing surfaces; above 0 and below the width.
/// @param thickness_m  of each strip, above 0: for its resistance only.
Cable flat_strips(const Material& material, double width_m, double thickness_m, double separation_m,
                  double relative_permittivity, double length_m, double temperature_celsius = 20);

}  // namespace electrical
