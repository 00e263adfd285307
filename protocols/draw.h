#pragma once

#include <array>
#include <boost/random/mersenne_twister.hpp>
#include <cstdint>
#include <span>

namespace protocols {

using Seed = std::array<unsigned char, 32>;

/// The random engine of every order, the same on every machine and for ever.
///
/// The 32 bytes of the seed are read as eight little-endian 32-bit words, which seed `mt19937_64` through
/// `seed_seq` (C++ standard, [rand.util.seedseq] and [rand.predef]). Everything drawn is taken from the raw
/// 64-bit words by the rules below; no library distribution is used, because their mappings are not promised.
class Draw {
 public:
  explicit Draw(const Seed& seed);

  /// The next raw word.
  std::uint64_t word();

  /// A fair coin: the top bit of the next word.
  bool coin();

  /// A whole number from 0 to `bound` - 1, each equally likely: the next word that is below the largest
  /// multiple of `bound` within 2^64, modulo `bound`; words above are thrown away.
  /// @throws std::domain_error for a bound of 0.
  std::uint64_t below(std::uint64_t bound);

  /// Every order of `values` equally likely: for i from the last place down to 1, swaps place i with
  /// place below(i + 1).
  void shuffle(std::span<int> values);

 private:
  boost::random::mt19937_64 engine_;
};

}  // namespace protocols
