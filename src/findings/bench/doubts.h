#pragma once

#include <optional>
#include <string>
#include <vector>

#include "electrical/cable.h"
#include "electrical/load.h"
#include "electrical/response.h"
#include "findings/bench/measurement.h"

namespace findings {

/// What is known of a cable beside its readings.
struct BenchCable {
  std::string name;
  std::optional<double> conductor_area_m2;  ///< stated, of one way, all strands together
  std::string material = "copper";
  std::optional<electrical::Cable> line;  ///< from its totals
};

struct BenchRig {
  std::string name;
  std::optional<double> rated_impedance_ohm;
  std::optional<electrical::Source> source;
  std::optional<electrical::Load> load;
};

/// Something about readings that can hardly be, and what would explain it.
struct Doubt {
  std::vector<int> readings;  ///< their numbers
  std::string cable;          ///< "" for a reading of a rig
  std::string what;           ///< begins with the reading: "reading 7 (cables.csv): ..."
  std::string explanation;
};

/// What the totals of cables do not agree with: light, copper and the stated cross-section, the standard's limits of a
/// conductor's resistance, each other (repeats, left and right), usual values a thousand times larger or smaller.
std::vector<Doubt> line_doubts(const std::vector<Measurement>& measurements,
                               const std::vector<BenchCable>& cables);

/// What responses, phases and impedances do not agree with: the prediction from the cable's own totals, the sign of a
/// phase, the other piece, the rated impedance.
std::vector<Doubt> curve_doubts(const std::vector<Measurement>& measurements,
                                const std::vector<BenchCable>& cables, const std::vector<BenchRig>& rigs);

}  // namespace findings
