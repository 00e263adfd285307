#pragma once

#include <optional>
#include <span>
#include <vector>

#include "stats/agreement/count_table.h"

namespace stats {

/// Answers of several raters: a row for each subject, an entry for each rater; nothing where the rater did
/// not answer. Categories without order are written as any different numbers.
using Ratings = std::vector<std::vector<std::optional<double>>>;

/// Answers lie between -kLargestRating and kLargestRating, so that no square leaves the range of a double.
inline constexpr double kLargestRating = 1e100;

/// Checks 1 or more subjects, each with the same 2 to 1,000 entries, 100,000 entries in all, every answer
/// within `kLargestRating`.
///
/// @throws std::domain_error  naming the argument, its value and its range.
void require_ratings(const Ratings& ratings);

/// How many raters put each subject into each category: the table that the kappas and Gwet's coefficients
/// take.
///
/// @param categories  2 to 1,000 different values; a column for each, also for those that nobody chose.
/// @throws std::domain_error  as `require_ratings`, and for an answer that is none of the categories.
CountTable count_ratings(const Ratings& ratings, std::span<const double> categories);

}  // namespace stats
