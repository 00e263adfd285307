#pragma once

#include <vector>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// Fewest comparisons over which a correlation is looked for.
inline constexpr int kFewestComparisons = 3;

/// What goes with what: the outcome of the claims against each measured difference of the list, where at
/// least `kFewestComparisons` have a value. Exploratory; Benjamini-Hochberg over the list.
///
/// Claims that a bar keeps from being judged are left out, never those that were merely not shown or whose
/// verdict depends on the outcome. Where an answer can be right: share right against the absolute difference.
/// Else: share for a cable against that cable's signed difference; measures without a sign are left out.
///
/// With a common benchmark, one cable in every comparison and all the others different, comparisons are
/// permuted. Without one, comparisons that share cables are not independent: the values are permuted among
/// the cables, and measures that are no difference of two cables' own values are left out.
///
/// Needs the tallies, the levels and the measured responses of `findings`.
std::vector<Correlation> correlations_of(const Evidence& evidence, const Findings& findings);

}  // namespace findings
