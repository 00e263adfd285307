#pragma once

#include <string>
#include <vector>

#include "findings/bench/measurement.h"

namespace findings {

/// A kind of reading on a rig, as a column of the table: "response on hall"; a kind that needs no rig has none.
struct CoverageColumn {
  std::string kind, rig;
  std::string title;
};

/// How often one cable was measured in one way.
struct CoverageCell {
  int readings = 0;    ///< that count
  int superseded = 0;  ///< kept beside them
  std::vector<int>
      stale;  ///< of those that count: numbers of the readings that something newer puts in doubt
};

/// Cables by kinds of reading.
struct Coverage {
  std::vector<std::string> cables;
  std::vector<CoverageColumn> columns;
  std::vector<std::vector<CoverageCell>> cells;  ///< per cable, per column
  struct Stale {
    int reading;
    std::string cable, why;
  };
  std::vector<Stale> stale;
  std::vector<std::string> rigs_without_load;  ///< neither stated nor measured
};

/// What is known of a rig's load.
struct CoveredRig {
  std::string name;
  bool has_stated_load = false;
};

/// Two readings that count and have the same kind, cable, rig, piece, condition, feature, state and repeat (of readings of one
/// row frequency and temperature too): one of them is a repeat without its number, or a mistake that nobody superseded.
struct SameNames {
  const Measurement *older, *newer;
};

/// @param measurements  in the order of their numbers; they must outlive what is returned.
std::vector<SameNames> same_names(const std::vector<Measurement>& measurements);

/// The table: a column for the totals of a cable, and one for each kind and rig of which any cable has a reading.
///
/// A reading is stale where a newer one has the same names (`same_names`), and where it is a response on a rig whose load was
/// measured anew since.
/// @param measurements  in the order of their numbers, superseded ones among them.
Coverage coverage_of(const std::vector<std::string>& cables, const std::vector<CoveredRig>& rigs,
                     const std::vector<Measurement>& measurements);

}  // namespace findings
