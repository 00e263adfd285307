#pragma once

#include <optional>
#include <string>
#include <vector>

#include "electrical/cable.h"
#include "store/campaign.h"

namespace desk {

/// Where a constant of a cable comes from.
enum class Origin { reading, construction, unknown };

/// "reading", "construction", "unknown".
std::string name_of(Origin origin);

/// A cable as a uniform line, with where its constants come from.
struct KnownLine {
  /// Of an unknown inductance only that within its round conductors is counted, of an unknown capacitance nothing.
  electrical::Cable cable;
  Origin resistance = Origin::unknown, inductance = Origin::unknown, capacitance = Origin::unknown;
  std::string words;  ///< where each constant comes from, and what of the skin effect is counted
  std::vector<std::string> cautions;
};

/// The cable from the mean of its readings in one state; what was not read is calculated from its construction where that
/// gives the dimensions. Readings win over construction. Nothing where not even its resistance is known.
std::optional<KnownLine> known_line(const store::Campaign& campaign, const std::string& cable);

/// What the construction would have to say for a resistance without readings, in words.
std::string wanting_for_resistance(const store::Campaign& campaign, const std::string& cable);

/// Inductance and capacitance per metre of most pairs; common practice, no source.
constexpr double kLeastInductanceHenryPerM = 0.2e-6, kMostInductanceHenryPerM = 1e-6;
constexpr double kLeastCapacitanceFaradPerM = 20e-12, kMostCapacitanceFaradPerM = 300e-12;

/// The line with each unknown constant at both ends of what most pairs have: 1, 2 or 4 lines. The one with the least of both
/// would be faster than light; it only makes the span of the others a little wider.
std::vector<electrical::Cable> possible_lines(const KnownLine& line);

}  // namespace desk
