#include "stats/resampling/resampled_sums.h"

#include <algorithm>
#include <bit>
#include <cstring>

#include "stats/arguments.h"

namespace stats {
namespace {

constexpr std::size_t kPlacesAtATime = 40;

std::uint16_t lower_16_bits(std::uint32_t product) { return static_cast<std::uint16_t>(product); }

/// Turns numbers into places; whether one of them must be replaced.
bool places_of(std::span<const std::uint16_t> numbers, std::uint16_t units, std::uint16_t least,
               std::uint16_t* places) {
  std::uint16_t replaced = 0;  // as wide as the numbers, so that all lanes of a vector stay in use
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    const std::uint32_t product = std::uint32_t{numbers[i]} * units;
    places[i] = static_cast<std::uint16_t>(product >> 16);
    replaced = static_cast<std::uint16_t>(replaced | (lower_16_bits(product) < least ? 1 : 0));
  }
  return replaced != 0;
}

}  // namespace

ResampledSums::ResampledSums(std::span<const std::int64_t> records, std::size_t fields) : sums_(fields) {
  const std::size_t units = records.size() / fields;
  require_count("number of units", static_cast<std::int64_t>(units), 1, 65'535);
  numbers_.resize((units + 3) / 4 * 4);
  places_.resize(units);
  std::size_t word = 0;
  int used = 0;  // bits of that word
  for (std::size_t field = 0; field < fields; ++field) {
    std::int64_t largest = 0;
    for (std::size_t unit = 0; unit < units; ++unit)
      largest = std::max(largest, records[unit * fields + field]);
    const auto width = static_cast<int>(std::bit_width(static_cast<std::uint64_t>(largest) * units));
    if (used + width > 63) {
      ++word;
      used = 0;
    }
    fields_.push_back({word, used, (std::uint64_t{1} << width) - 1});
    columns_.resize(word / 2 + 1, std::vector<Words>(units));
    for (std::size_t unit = 0; unit < units; ++unit)
      columns_[word / 2][unit][word % 2] |= static_cast<std::uint64_t>(records[unit * fields + field])
                                            << used;
    used += width;
  }
}

std::span<const std::int64_t> ResampledSums::draw(QuickRandom& random) {
  draw_places(random);
  std::size_t field = 0;
  for (std::size_t column = 0; column < columns_.size(); ++column) {
    const Words* words = columns_[column].data();
    Words total{};
#pragma GCC unroll 8
    for (const std::uint16_t place : places_) {
      total[0] += words[place][0];
      total[1] += words[place][1];
    }
    for (; field < fields_.size() && fields_[field].word / 2 == column; ++field) {
      const auto [word, shift, mask] = fields_[field];
      sums_[field] = static_cast<std::int64_t>((total[word % 2] >> shift) & mask);
    }
  }
  return sums_;
}

void ResampledSums::draw_places(QuickRandom& random) {
  for (std::size_t i = 0; i < numbers_.size(); i += 4) {
    const std::uint64_t word = random.word();
    if constexpr (std::endian::native == std::endian::little)
      std::memcpy(&numbers_[i], &word, sizeof word);
    else
      for (std::size_t part = 0; part < 4; ++part)
        numbers_[i + part] = static_cast<std::uint16_t>(word >> (16 * part));
  }
  const auto units = static_cast<std::uint16_t>(places_.size());
  const auto least = static_cast<std::uint16_t>(0x10000U % units);
  for (std::size_t first = 0; first < places_.size(); first += kPlacesAtATime) {
    const std::size_t end = std::min(places_.size(), first + kPlacesAtATime);
    const auto numbers = std::span(numbers_).subspan(first, end - first);
    if (!places_of(numbers, units, least, &places_[first])) continue;
    for (std::size_t i = first; i < end; ++i)
      if (lower_16_bits(std::uint32_t{numbers_[i]} * units) < least)
        places_[i] = static_cast<std::uint16_t>(random.below(units));
  }
}

}  // namespace stats
