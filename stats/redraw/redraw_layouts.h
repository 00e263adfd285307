#pragma once

#include <span>
#include <vector>

#include "stats/redraw/total.h"

namespace stats {

/// The exact re-draw of stats/redraw/redraw.h for trials with more than two layouts. Everybody's answers are
/// given and stay as they are; only the hidden layout of each trial is drawn again, each of its layouts
/// equally likely, independently of the other trials. The distribution is exact however the answers within a
/// trial depend on each other.

/// What one trial adds to the total under each of its equally likely layouts, 1 to 24 of them, each 0 or
/// more. In the triangle: how many answered "first is odd", "second", "third". In same-different with a fair
/// coin: how many answered "same", "different"; a layout that is twice as likely is written twice.
using Layouts = std::vector<int>;

/// Distribution of the total, with a place for each total up to the sum of the trials' largest. Tails,
/// two-sided p (by distance, as `redraw_two_sided`, or by probability) and the minimum at a level: see
/// stats/redraw/total.h. No trials: {1}. With two layouts in every trial: that of `redraw_distribution`.
///
/// @throws std::domain_error  for a trial without layouts or with more than 24, a negative number, or a sum
/// of the largest above 1,000,000; also where the work (that sum times layouts, added over trials) passes
/// 10^10.
///
/// Example: 12 triangles of three raters who always answer alike ({3, 0, 0}), 24 of 36 right:
/// `total_at_least` gives 0.0188, as 8 of 12 at 1/3.
/// Accuracy: with L layouts in all trials together each probability has a relative error below L * 2^-52
/// (only addition and division of non-negative numbers); exact where all trials have 1, 2, 4, 8 or 16 layouts
/// and together at most 2^53 equally likely outcomes.
TotalDistribution redraw_layouts(std::span<const Layouts> trials);

}  // namespace stats
