#include "protocols/draw.h"

#include <boost/random/seed_seq.hpp>
#include <stdexcept>
#include <utility>

namespace protocols {
namespace {

boost::random::mt19937_64 engine_of(const Seed& seed) {
  std::array<std::uint32_t, 8> words{};
  for (std::size_t i = 0; i < seed.size(); ++i)
    words[i / 4] |= static_cast<std::uint32_t>(seed[i]) << (8 * (i % 4));
  boost::random::seed_seq sequence(words.begin(), words.end());
  return boost::random::mt19937_64(sequence);
}

}  // namespace

Draw::Draw(const Seed& seed) : engine_(engine_of(seed)) {}

std::uint64_t Draw::word() { return engine_(); }

bool Draw::coin() { return (word() >> 63) != 0; }

std::uint64_t Draw::below(std::uint64_t bound) {
  if (bound == 0) throw std::domain_error("bound must be 1 or more, got 0");
  const std::uint64_t thrown_away = (0 - bound) % bound;  // 2^64 modulo bound
  for (;;) {
    const std::uint64_t drawn = word();
    if (drawn <= UINT64_MAX - thrown_away) return drawn % bound;
  }
}

void Draw::shuffle(std::span<int> values) {
  for (std::size_t i = values.size(); i-- > 1;) std::swap(values[i], values[below(i + 1)]);
}

}  // namespace protocols
