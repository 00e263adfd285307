#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace hearing {

/// One cable's attenuation in whole steps of the volume control.
struct Trim {
  int steps;              ///< 0 or more, downwards
  double attenuation_db;  ///< steps times the step
  double level_db;        ///< the level with the trim set
};

/// The trims that bring every cable down to the quietest, as near as whole steps allow.
///
/// Each cable takes the nearest number of steps; an exact half takes the smaller. The quietest takes 0.
///
/// @param level_db  the cables' levels under one weighting, at least one, each within -1000 to 1000.
/// @param step_db   the volume control's step, 0.001 to 20; or 0: no trim is possible, every cable takes
///                  0 steps and keeps its level.
/// @return  one trim a cable, in the same order; no level is more than half a step from the quietest
///          (unless the step is 0).
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// Example: levels -0.7, -0.1 and 0 dB and a step of 0.5 dB: 0, 1 and 1 steps; levels -0.7, -0.6, -0.5.
std::vector<Trim> trims(std::span<const double> level_db, double step_db);

/// The level difference of two cables with their trims set, first less second.
struct RemainingDifference {
  std::size_t first;
  std::size_t second;
  double difference_db;
};

/// Every pair's remaining difference: (0,1), (0,2), ... (1,2), ...
std::vector<RemainingDifference> remaining_differences(std::span<const Trim> trims);

}  // namespace hearing
