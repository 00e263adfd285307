#pragma once

#include <optional>
#include <vector>

#include "stats/preference/preference_table.h"

namespace stats {

/// Thurstone's case V by his own way: of each item the mean, over all items, of the normal deviate of the share that
/// preferred it; itself counts 0. Given against the first item. For comparison with published scales: `fit_worths` with the
/// normal model weighs the shares by their answers and allows pairs that were not compared.
///
/// @param table  2 to `kMostItems` items.
/// @return  nothing where a pair was not compared, or was answered alike by all.
/// @throws std::domain_error  as `require_preferences`.
/// Example: 12 of 15 prefer the second of two: 0 and 0.842.
/// Source: L. L. Thurstone, Psychol. Rev. 34 (1927) 273.
std::optional<std::vector<double>> thurstone_row_means(const PreferenceTable& table);

}  // namespace stats
