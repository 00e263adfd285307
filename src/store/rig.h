#pragma once

#include <string>

namespace store {

/// Source, load and level in which comparisons are made. Numbers are texts as typed, in the unit of their
/// name; "" where nothing is known.
struct Rig {
  std::string name{};
  std::string kind{};  ///< "loudspeaker" or "line level"
  std::string source_resistance_ohm{};
  std::string source_inductance_henry{};
  /// "" for the rig's own impedance reading; else as typed: "8ohm", "47kohm||100pF", a circuit.
  std::string load{};
  std::string rated_impedance_ohm{};
  std::string volume_step_db{};
  std::string level_note{};
  std::string programme_note{};

  bool operator==(const Rig&) const = default;
};

}  // namespace store
