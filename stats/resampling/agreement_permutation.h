#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "stats/permutation.h"

namespace stats {

/// Right or wrong of one rater, an entry for each trial; nothing where the rater did not answer.
using Marks = std::vector<std::optional<bool>>;

/// Whether several raters are right on the same trials.
struct SharedMarks {
  std::int64_t agreeing;  ///< pairs of raters alike on a trial (both right or both wrong), over all trials
  std::int64_t pairs;     ///< pairs of raters who both answered a trial, over all trials
  PermutationP test;      ///< one-sided: as many agreeing pairs or more
};

/// Right on the same trials beyond the raters' own shares.
///
/// The null hypothesis: each rater's right and wrong marks fall in any order on the trials that the rater
/// answered, each order equally likely, independently of the other raters. So neither high shares nor missing
/// answers make an agreement. Raters all right or all wrong carry no information; with only such raters p
/// is 1.
///
/// Two raters are always exact; three or more where the arrangements can be counted
/// (`share_of_arrangements`: three raters up to 20 trials or so), else they are drawn.
///
/// @param raters  2 to 100, each with an entry for each of the same 1 to 1,000 trials.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: two raters with 4 of 8 right each, on the same four trials: p = 1/70.
SharedMarks permutation_agreement(std::span<const Marks> raters, const MonteCarlo& monte_carlo = {});

}  // namespace stats
