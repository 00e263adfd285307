#pragma once

#include <optional>
#include <string>
#include <vector>

#include "electrical/cable.h"
#include "electrical/construction/material.h"
#include "store/cable.h"

namespace desk {

/// Two conductors as far as src/electrical/construction has formulas for them; flat strips, quads, weaves and whatever else
/// is typed are `other`.
enum class CableShape { other, round_pair, coaxial };

/// What a cable's construction says in numbers.
///
///     geometry         pair, parallel pair, twisted pair, solid pair: a pair of round conductors; coaxial
///     cross-section    of one conductor's metal: 2.5mm2; or awg: 12, 4/0
///     strands          of one conductor: 50; "solid" or 1, as where it is not stated
///     material         copper, as where it is not stated; silver, aluminium
///     spacing          of a pair, from centre to centre: 4mm
///     shield-diameter  of a coaxial cable, inside the shield: 3.5mm
///     permittivity     relative, an effective value of insulation and air: 2.5
///     length           3m
///
/// Other attributes are free words and say nothing here.
struct Built {
  CableShape shape = CableShape::other;
  std::string geometry;  ///< as typed; "" where it is not stated
  std::optional<double> metal_area_m2, spacing_m, shield_diameter_m, permittivity, length_m;
  int strands = 1;
  const electrical::Material* material = nullptr;  ///< none where the one named is not known
  std::vector<std::string> unreadable;  ///< which of the values could not be read, or cannot be, and why
};

/// Reads a construction; what cannot be read, or cannot be, as conductors that overlap, is as if it were not there.
Built built(const store::Cable& cable);

/// Line constants that follow from a construction; as many as it gives the dimensions for.
struct Calculated {
  std::optional<double> resistance_ohm_per_m;  ///< loop, of a pair; a coaxial shield's is not known
  std::optional<double> inductance_henry_per_m, capacitance_farad_per_m;
};

Calculated calculated(const Built& cable);

/// The cable's conductors whose skin effect follows from its loop resistance and construction; none for other shapes, and
/// where the construction gives the inner conductor of a coaxial cable no resistance, or more than the loop's.
electrical::RoundConductors round_conductors(const Built& cable, double loop_ohm_per_m);

/// Refuses a pair or coaxial cable of which a dimension cannot be read or cannot be. Of other shapes all words are free.
/// @throws text::BadInput  naming cable and attribute.
void refuse_unless_buildable(const store::Cable& cable);

}  // namespace desk
