#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "stats/random.h"

namespace stats {

/// Sums of records drawn with replacement, as many as there are: the inside of a bootstrap over units.
///
/// The fields of a record stand side by side in words of 64 bits, each as wide as its largest possible sum
/// needs, so that adding words adds several fields at once and none runs into its neighbour.
class ResampledSums {
 public:
  /// @param records  `fields` numbers of 0 or more for each unit, unit by unit; 1 to 65,535 units, no field
  ///                 times the number of units above 2^62.
  /// @throws std::domain_error  for any other number of units.
  ResampledSums(std::span<const std::int64_t> records, std::size_t fields);

  /// Draws the records and returns the sum of each field, until the next draw.
  ///
  /// The rule of the draw: each word of `random` gives four numbers of 16 bits, the lowest first. A number
  /// times the units gives 32 bits, whose upper half is the place of the record; numbers whose lower half
  /// falls below 2^16 modulo the units are replaced, 40 places at a time and in order, by `below`.
  std::span<const std::int64_t> draw(QuickRandom& random);

 private:
  /// A word of a unit, and one more beside it: one look-up for both.
  using Words = std::array<std::uint64_t, 2>;

  /// Where a field lies.
  struct Field {
    std::size_t word;
    int shift;
    std::uint64_t mask;
  };

  void draw_places(QuickRandom& random);

  std::vector<Field> fields_;
  std::vector<std::vector<Words>> columns_;  // words of each unit
  std::vector<std::uint16_t> numbers_;
  std::vector<std::uint16_t> places_;
  std::vector<std::int64_t> sums_;
};

}  // namespace stats
