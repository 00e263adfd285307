#pragma once

#include <optional>

#include "electrical/response.h"

namespace electrical {

/// The lowest frequency above `reference_hz` at which the level has fallen to half the power (-3.0103 dB) of that at
/// `reference_hz`: the exact corner of source, cable and load, inductance and all.
///
/// @param highest_hz  where the search ends: 200 points a decade, the first crossing refined to 1e-12 relative. A dip
///                    narrower than 1.2 % of frequency can be missed.
/// @return  nothing if the level stays above, or the load is not known so far up.
/// @throws std::domain_error  as `response`; unless 0 < reference < highest.
std::optional<double> corner_frequency_hz(const Source& source, const Cable& cable, const Load& load,
                                          double reference_hz = 20, double highest_hz = 1e9);

/// The usual estimate of it: 1/(2 pi (Rs || RL) C), with the cable's and the load's capacitance; nothing where there is no
/// capacitance or no source resistance. Where the source comes near the cable's characteristic impedance it is far off.
std::optional<double> one_pole_corner_hz(const Source& source, const Cable& cable, const Resistor& load);

/// How much each part takes from the level at one frequency: the level with the part, less that without it.
struct LevelShares {
  double source_resistance_db;
  double cable_resistance_db;
  double cable_inductance_db;
  double cable_capacitance_db;  ///< its conductance with it
};

/// @throws std::domain_error  as `response`.
LevelShares level_shares(const Source& source, const Cable& cable, const Load& load, double frequency_hz);

}  // namespace electrical
