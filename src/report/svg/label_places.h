#pragma once

#include <vector>

#include "report/svg/svg_chart.h"

namespace report {

/// A place for each of several labels, one after the other: the first of its wishes that is within the drawing and clear of
/// what is taken and of the labels before; where none is, the one that covers least.
/// @param wishes  at least one a label, in order of preference.
std::vector<Box> label_places(const std::vector<std::vector<Box>>& wishes, std::vector<Box> taken,
                              const Box& within);

}  // namespace report
