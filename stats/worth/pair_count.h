#pragma once

#include <cstdint>
#include <span>

namespace stats {

/// What was said of two items, `first` presented first; items count from 0.
struct PairCount {
  int first;
  int second;
  std::int64_t first_preferred;
  std::int64_t ties;
  std::int64_t second_preferred;
};

/// @param items   2 to 100.
/// @param counts  1 to 100,000 rows; two different items each, counts 0 to 1,000,000, in all at least one.
/// @throws std::domain_error  naming the row, counted from 1.
void require_pair_counts(int items, std::span<const PairCount> counts);

}  // namespace stats
