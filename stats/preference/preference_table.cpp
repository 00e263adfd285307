#include "stats/preference/preference_table.h"

#include <stdexcept>
#include <string>

#include "stats/arguments.h"

namespace stats {

void require_preferences(const PreferenceTable& table, int fewest) {
  const auto items = std::ssize(table);
  require_count("number of items", items, fewest, kMostItems);
  for (std::size_t i = 0; i < table.size(); ++i) {
    const std::string row = "row " + std::to_string(i + 1);
    require_count("number of columns of " + row, std::ssize(table[i]), items, items);
    for (std::size_t j = 0; j < table.size(); ++j)
      require_count(row + ", column " + std::to_string(j + 1), table[i][j], 0, i == j ? 0 : kMostTrials);
  }
}

int comparisons_of_each_pair(const PreferenceTable& table, int fewest) {
  require_preferences(table, fewest);
  const int each = table[0][1] + table[1][0];
  for (std::size_t i = 0; i < table.size(); ++i)
    for (std::size_t j = i + 1; j < table.size(); ++j)
      if (table[i][j] + table[j][i] != each)
        throw std::domain_error(
            "every pair must be compared equally often without ties: items 1 and 2 were " +
            std::to_string(each) + " times, items " + std::to_string(i + 1) + " and " +
            std::to_string(j + 1) + " " + std::to_string(table[i][j] + table[j][i]) + " times");
  return each;
}

}  // namespace stats
