#include "stats/association/drawn_pairings.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <limits>
#include <numeric>
#include <optional>
#include <vector>

#include "stats/blocks.h"
#include "stats/random.h"

namespace stats {
namespace {

constexpr std::int64_t kBlockOfPairings = 4'096;

/// Places that draw their partners from one random word: the product of their numbers of choices.
struct SharedWord {
  std::uint32_t first, last;  ///< places, from `first` down to and without `last`
  std::uint64_t product;
};

/// As many places to a word as leave its rejection (product in 2^64) rare.
std::vector<SharedWord> shared_words(std::uint32_t n) {
  std::vector<SharedWord> words;
  for (std::uint32_t place = n - 1; place > 0;) {
    SharedWord word{place, place, 1};
    while (word.last > 0 && word.product <= (std::uint64_t{1} << 48) / (word.last + 1))
      word.product *= word.last-- + 1;
    words.push_back(word);
    place = word.last;
  }
  return words;
}

/// Draws made side by side, since each waits most of its time for its own last step.
constexpr std::size_t kAbreast = 8;
using Abreast = std::array<std::int64_t, kAbreast>;

/// The sums of products of x and random orders of y, `kAbreast` of them; nothing where a word is to be thrown away, and the
/// draws with it.
///
/// An order is drawn from the last place down: each place takes one of the y that are left, and the last of them fills its
/// gap. Several choices share a word: each takes the whole part of word times choices, and leaves the fraction to the next.
/// A word whose last fraction falls below 2^64 modulo the product of its choices is thrown away.
/// Source: N. Brackett-Rozinsky and D. Lemire, Softw. Pract. Exper. 55 (2025) 155 (from memory).
/// @param left  copies of y one after another, which are used up.
std::optional<Abreast> drawn_products(const std::vector<std::int32_t>& x, std::int32_t* left,
                                      std::span<const SharedWord> words, QuickRandom& random) {
  Abreast products{};
  for (const SharedWord& shared : words) {
    std::uint64_t fraction[kAbreast];
    for (std::uint64_t& one : fraction) one = random.word();
    for (std::uint32_t place = shared.first; place > shared.last; --place)
      for (std::size_t i = 0; i < kAbreast; ++i) {
        const Wide wide = static_cast<Wide>(fraction[i]) * (place + 1);
        std::int32_t* const mine = left + i * x.size();
        std::int32_t& chosen = mine[static_cast<std::uint64_t>(wide >> 64)];
        fraction[i] = static_cast<std::uint64_t>(wide);
        products[i] += x[place] * chosen;  // at most 20,000 squared
        chosen = mine[place];
      }
    for (const std::uint64_t last : fraction)
      if (last < shared.product && last < (0 - shared.product) % shared.product) return std::nullopt;
  }
  for (std::size_t i = 0; i < kAbreast; ++i) products[i] += std::int64_t{x[0]} * left[i * x.size()];
  return products;
}

}  // namespace

std::int64_t drawn_pairings_against(std::span<const std::int64_t> x, std::span<const std::int64_t> y,
                                    std::int64_t covariance, Alternative alternative,
                                    const MonteCarlo& monte_carlo, int threads) {
  constexpr auto kNever = std::numeric_limits<std::int64_t>::max();
  const auto n = std::ssize(x);
  const auto sums = std::accumulate(x.begin(), x.end(), std::int64_t{0}) *
                    std::accumulate(y.begin(), y.end(), std::int64_t{0});
  const bool two_sided = alternative == Alternative::two_sided;
  const std::int64_t high = alternative == Alternative::less ? kNever
                            : two_sided                      ? std::abs(covariance)
                                                             : covariance;
  const std::int64_t low = alternative == Alternative::greater ? -kNever
                           : two_sided                         ? -std::abs(covariance)
                                                               : covariance;
  const std::vector<std::int32_t> x_ranks(x.begin(), x.end()), y_ranks(y.begin(), y.end());
  const auto words = shared_words(static_cast<std::uint32_t>(n));
  const std::int64_t blocks = (monte_carlo.draws + kBlockOfPairings - 1) / kBlockOfPairings;
  std::vector<std::int64_t> reaching(static_cast<std::size_t>(blocks));
  for_each_block(blocks, threads, [&](std::int64_t block, int) {
    QuickRandom random(monte_carlo.seed + (static_cast<std::uint64_t>(block) << 32));
    std::vector<std::int32_t> left(kAbreast * y_ranks.size());
    const std::int64_t draws = std::min(kBlockOfPairings, monte_carlo.draws - block * kBlockOfPairings);
    std::int64_t count = 0;
    for (std::int64_t draw = 0; draw < draws;) {
      for (std::size_t i = 0; i < kAbreast; ++i)
        std::copy(y_ranks.begin(), y_ranks.end(), left.begin() + std::ssize(y_ranks) * std::ptrdiff_t(i));
      const auto products = drawn_products(x_ranks, left.data(), words, random);
      if (!products) continue;
      for (const std::int64_t product : *products)
        if (draw++ < draws) count += n * product - sums >= high || n * product - sums <= low;
    }
    reaching[static_cast<std::size_t>(block)] = count;
  });
  return std::accumulate(reaching.begin(), reaching.end(), std::int64_t{0});
}

}  // namespace stats
