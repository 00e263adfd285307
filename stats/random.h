#pragma once

#include <algorithm>
#include <boost/random/mersenne_twister.hpp>
#include <cstddef>
#include <cstdint>
#include <span>
#include <utility>

namespace stats {

__extension__ using Wide = unsigned __int128;

/// Random numbers for Monte Carlo, the same for the same seed on every machine: an engine of 64-bit words seeded with one
/// number, and the documented rules below; no library distribution is used, because their mappings are not promised.
template <typename Engine>
class RandomOf {
 public:
  explicit RandomOf(std::uint64_t seed) : engine_(seed) {}

  /// The next raw word.
  std::uint64_t word() { return engine_(); }

  /// A whole number from 0 to `bound` - 1, each equally likely. The upper 32 bits of the next word times
  /// `bound` give 64 bits, whose upper half is the number; words whose lower half falls below 2^32 modulo
  /// `bound` are thrown away.
  /// @param bound  1 or more.
  /// Source: D. Lemire, ACM Trans. Model. Comput. Simul. 29 (2019) 3.
  std::uint32_t below(std::uint32_t bound) {
    for (;;) {
      const std::uint64_t product = (word() >> 32) * bound;
      const auto lower = static_cast<std::uint32_t>(product);
      if (lower >= bound || lower >= (0 - bound) % bound) return static_cast<std::uint32_t>(product >> 32);
    }
  }

  /// Calls `use(number)` with `count` numbers from 0 to `bound` - 1, each equally likely, several to a word: each is the whole
  /// part of word times bound, and leaves the fraction to the next. A word whose last fraction falls below 2^64 modulo the
  /// product of its bounds is thrown away.
  /// @param bound  1 to 2^32 - 1.
  /// Source: N. Brackett-Rozinsky and D. Lemire, Softw. Pract. Exper. 55 (2025) 155 (from memory).
  template <typename Use>
  void each_below(std::uint32_t bound, std::int64_t count, const Use& use) {
    std::uint32_t numbers[64];
    while (count > 0) {
      std::uint64_t fraction = word(), product = 1;
      std::int64_t drawn = 0;
      while (drawn < std::min<std::int64_t>(count, 64) && product <= (std::uint64_t{1} << 48) / bound) {
        const Wide wide = static_cast<Wide>(fraction) * bound;
        numbers[drawn++] = static_cast<std::uint32_t>(wide >> 64);
        fraction = static_cast<std::uint64_t>(wide);
        product *= bound;
      }
      if (fraction < product && fraction < (0 - product) % product) continue;
      for (std::int64_t i = 0; i < drawn; ++i) use(numbers[i]);
      count -= drawn;
    }
  }

  /// Every order of `values` equally likely: for i from the last place down to 1, swaps place i with place
  /// below(i + 1).
  template <typename Value>
  void shuffle(std::span<Value> values) {
    for (std::size_t i = values.size(); i-- > 1;)
      std::swap(values[i], values[below(static_cast<std::uint32_t>(i + 1))]);
  }

 private:
  Engine engine_;
};

/// The engine mt19937_64 (C++ standard, [rand.predef]): for everything but where words are what takes the time.
using Random = RandomOf<boost::random::mt19937_64>;

/// SplitMix64: every word from the one before by addition and two multiplications, several times faster. Its period of
/// 2^64 words is far more than any resampling here draws.
/// Source: G. L. Steele, D. Lea and C. H. Flood, OOPSLA 2014, 453.
class SplitMix {
 public:
  explicit SplitMix(std::uint64_t seed) : state_(seed) {}
  std::uint64_t operator()() {
    std::uint64_t word = state_ += 0x9E3779B97F4A7C15;
    word = (word ^ word >> 30) * 0xBF58476D1CE4E5B9;
    word = (word ^ word >> 27) * 0x94D049BB133111EB;
    return word ^ word >> 31;
  }

 private:
  std::uint64_t state_;
};
using QuickRandom = RandomOf<SplitMix>;

}  // namespace stats
