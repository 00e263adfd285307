#include "stats/worth/pair_count.h"

#include <stdexcept>
#include <string>

#include "stats/arguments.h"
#include "stats/preference/preference_table.h"

namespace stats {

void require_pair_counts(int items, std::span<const PairCount> counts) {
  require_count("number of items", items, 2, kMostItems);
  require_count("number of rows", std::ssize(counts), 1, 100'000);
  std::int64_t row = 0, said = 0;
  for (const PairCount& count : counts) {
    const std::string place = " of row " + std::to_string(++row);
    require_count("first item" + place, count.first, 0, items - 1);
    require_count("second item" + place, count.second, 0, items - 1);
    if (count.first == count.second) throw std::domain_error("the items" + place + " must be different");
    require_count("preferences for the first" + place, count.first_preferred, 0, kMostTrials);
    require_count("ties" + place, count.ties, 0, kMostTrials);
    require_count("preferences for the second" + place, count.second_preferred, 0, kMostTrials);
    said += count.first_preferred + count.ties + count.second_preferred;
  }
  if (said == 0) throw std::domain_error("no preference was given: all counts are 0");
}

}  // namespace stats
