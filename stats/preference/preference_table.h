#pragma once

#include <cstdint>
#include <vector>

namespace stats {

/// Preferences between items, two at a time: row i, column j says how often item i was preferred to item j. As many columns
/// as rows, 0 on the diagonal.
using PreferenceTable = std::vector<std::vector<int>>;

inline constexpr int kMostItems = 100;

/// @param fewest  items, of at most `kMostItems`.
/// @throws std::domain_error  for another number of items, rows of unequal length, counts outside 0 to 1,000,000, and
///                            items preferred to themselves; rows and columns are counted from 1.
void require_preferences(const PreferenceTable& table, int fewest);

/// How often every two items were compared.
/// @throws std::domain_error  likewise, and where two pairs were not compared equally often.
int comparisons_of_each_pair(const PreferenceTable& table, int fewest);

}  // namespace stats
