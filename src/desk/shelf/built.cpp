#include "desk/shelf/built.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "electrical/construction/conductor.h"
#include "electrical/construction/geometry.h"
#include "text/error.h"
#include "text/number.h"
#include "text/quantity.h"
#include "text/utf8.h"

namespace desk {
namespace {

/// Diameter over all strands, over that of a solid wire of the same metal: 3/sqrt(7) = 1.134 for 7 strands in a hexagon,
/// 5/sqrt(19) = 1.147 for 19 (geometry of touching circles); in bunched wires about the same, common practice, no source.
constexpr double kOutlineOfStrands = 1.14;

CableShape shape_named(const std::string& geometry) {
  for (const char* pair : {"pair", "parallel pair", "twisted pair", "solid pair"})
    if (geometry == pair) return CableShape::round_pair;
  return geometry == "coaxial" || geometry == "coax" ? CableShape::coaxial : CableShape::other;
}

/// A gauge as typed: "12", "4/0".
double awg_area_m2(const std::string& typed) {
  const bool zeros = typed.size() == 3 && typed.ends_with("/0") && '1' <= typed[0] && typed[0] <= '4';
  const auto gauge = zeros ? std::optional<double>('1' - typed[0]) : text::number(typed);
  if (!gauge || *gauge < -3 || *gauge > 50)
    throw text::BadInput("a gauge is a number from 4/0 to 50, as 12, got " + text::quoted(typed));
  return electrical::round_area_m2(electrical::awg_diameter_m(*gauge));
}

double size_typed(const std::string& typed, text::Unit unit) {
  const double value = text::quantity(typed, unit);
  if (!(value > 0)) throw text::BadInput("must be above 0, got " + text::quoted(typed));
  return value;
}

double permittivity_typed(const std::string& typed) {
  const auto value = text::number(typed);
  if (!value || *value < 1)
    throw text::BadInput("a relative permittivity is a number of 1 or more, as 2.5, got " +
                         text::quoted(typed));
  return *value;
}

int strands_typed(const std::string& typed) {
  if (typed == "solid") return 1;
  const auto count = text::whole_number(typed);
  if (!count || *count < 1 || *count > 100'000)
    throw text::BadInput("strands are a whole number from 1 to 100000, or \"solid\", got " +
                         text::quoted(typed));
  return static_cast<int>(*count);
}

const electrical::Material* material_or_none(const std::string& name) {
  for (const electrical::Material& material : electrical::materials())
    if (material.name == name) return &material;
  return nullptr;
}

void take(Built& cable, const std::string& attribute, const std::string& typed) {
  using text::Unit;
  if (attribute == "geometry") {
    cable.geometry = typed;
    cable.shape = shape_named(text::lower_case(text::trimmed(typed)));
  } else if (attribute == "material") {
    cable.material = material_or_none(text::lower_case(text::trimmed(typed)));
  } else if (attribute == "cross-section" || attribute == "awg") {
    if (cable.metal_area_m2) throw text::BadInput("cross-section and awg say it twice; give one of them");
    cable.metal_area_m2 = attribute == "awg" ? awg_area_m2(typed) : size_typed(typed, Unit::square_metre);
  } else if (attribute == "strands") {
    cable.strands = strands_typed(typed);
  } else if (attribute == "spacing") {
    cable.spacing_m = size_typed(typed, Unit::metre);
  } else if (attribute == "shield-diameter") {
    cable.shield_diameter_m = size_typed(typed, Unit::metre);
  } else if (attribute == "permittivity") {
    cable.permittivity = permittivity_typed(typed);
  } else if (attribute == "length") {
    cable.length_m = size_typed(typed, Unit::metre);
  }
}

/// Of any metal: only resistance depends on which.
electrical::Wire built_wire(const Built& cable) {
  const auto& material = cable.material != nullptr ? *cable.material : electrical::materials().front();
  electrical::Wire wire = electrical::solid_wire(material, *cable.metal_area_m2);
  if (cable.strands > 1) wire.outline_diameter_m *= kOutlineOfStrands;
  return wire;
}

}  // namespace

Built built(const store::Cable& cable) {
  Built found;
  found.material = material_or_none("copper");
  for (const auto& [attribute, typed] : cable.construction) try {
      take(found, attribute, typed);
    } catch (const text::BadInput& error) {
      found.unreadable.push_back(attribute + " " + text::quoted(typed) + ": " + error.what());
    }
  try {
    calculated(found);
  } catch (const std::domain_error& error) {
    found.spacing_m = found.shield_diameter_m = std::nullopt;
    found.unreadable.emplace_back(error.what());
  }
  return found;
}

Calculated calculated(const Built& cable) {
  Calculated found;
  if (cable.shape == CableShape::other || !cable.metal_area_m2) return found;
  const electrical::Wire wire = built_wire(cable);
  const bool pair = cable.shape == CableShape::round_pair;
  if (pair && cable.material != nullptr)
    found.resistance_ohm_per_m = 2 * electrical::resistance_ohm_per_m(wire.material, wire.metal_area_m2);
  const auto& across_m = pair ? cable.spacing_m : cable.shield_diameter_m;
  if (!across_m) return found;
  const double permittivity = cable.permittivity.value_or(1);
  const electrical::Cable metre = pair ? electrical::round_pair(wire, *across_m, permittivity, 1)
                                       : electrical::coaxial(wire, *across_m, 0, permittivity, 1);
  found.inductance_henry_per_m = metre.inductance_henry_per_m;
  if (cable.permittivity) found.capacitance_farad_per_m = metre.capacitance_farad_per_m;
  return found;
}

electrical::RoundConductors round_conductors(const Built& cable, double loop_ohm_per_m) {
  if (!(loop_ohm_per_m > 0)) return {};
  if (cable.shape == CableShape::round_pair) return {2, loop_ohm_per_m / 2};
  if (cable.shape != CableShape::coaxial || !cable.metal_area_m2 || cable.material == nullptr) return {};
  const double inner = electrical::resistance_ohm_per_m(*cable.material, *cable.metal_area_m2);
  return inner <= loop_ohm_per_m ? electrical::RoundConductors{1, inner} : electrical::RoundConductors{};
}

void refuse_unless_buildable(const store::Cable& cable) {
  const Built found = built(cable);
  if (found.shape == CableShape::other || found.unreadable.empty()) return;
  std::string faults;
  for (const std::string& each : found.unreadable) faults += "\n" + each;
  throw text::BadInput("cable " + text::quoted(cable.name) + " cannot be built so as a " + found.geometry +
                       ":" + faults);
}

}  // namespace desk
