#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "stats/csv.h"
#include "stats/random.h"
#include "stats/worth/pair_count.h"

namespace stats {

/// A square table of a data file: row preferred to column.
inline std::vector<PairCount> counts_of_table(const std::string& file,
                                              const std::vector<std::string>& items) {
  const auto rows = check_values(file);
  std::vector<PairCount> counts;
  for (std::size_t i = 0; i < items.size(); ++i)
    for (std::size_t j = i + 1; j < items.size(); ++j)
      counts.push_back({int(i), int(j), rows[i].whole(items[j]), 0, rows[j].whole(items[i])});
  return counts;
}

inline int place_of(const std::string& name, const std::vector<std::string>& items) {
  for (std::size_t i = 0; i < items.size(); ++i)
    if (items[i] == name) return int(i);
  throw std::out_of_range(name);
}

/// Baltimore is the first.
inline const std::vector<std::string> baseball_teams{"Baltimore", "Boston",   "Cleveland", "Detroit",
                                                     "Milwaukee", "New York", "Toronto"};

/// The home team is the first of a pair.
inline std::vector<PairCount> baseball() {
  std::vector<PairCount> counts;
  for (const CsvRow& row : check_values("baseball1987.csv"))
    counts.push_back({place_of(row.cells.at("home.team"), baseball_teams),
                      place_of(row.cells.at("away.team"), baseball_teams), row.whole("home.wins"), 0,
                      row.whole("away.wins")});
  return counts;
}

/// 20 drawn answers to each pair of four items with worths 0, 0.4, 0.8, 1.2.
inline std::vector<PairCount> drawn_answers(Random& random) {
  std::vector<PairCount> counts;
  for (int i = 0; i < 4; ++i)
    for (int j = i + 1; j < 4; ++j) {
      counts.push_back({i, j, 0, 0, 0});
      const double share = 1 / (1 + std::exp(0.4 * (j - i)));
      for (int k = 0; k < 20; ++k)
        ++(double(random.below(1'000'000)) < 1e6 * share ? counts.back().first_preferred
                                                         : counts.back().second_preferred);
    }
  return counts;
}

inline std::vector<PairCount> flutes() {
  const std::vector<std::string> fields{"000", "001", "010", "011", "100", "101", "110", "111"};
  std::vector<PairCount> counts;
  for (const CsvRow& row : check_values("sound_fields1984.csv"))
    if (row.cells.at("instrument") == "flute")
      counts.push_back({place_of(row.cells.at("field1"), fields), place_of(row.cells.at("field2"), fields),
                        row.whole("win1"), row.whole("tie"), row.whole("win2")});
  return counts;
}

}  // namespace stats
