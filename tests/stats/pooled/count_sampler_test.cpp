#include "stats/pooled/count_sampler.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

#include "stats/pooled/beta_binomial.h"
#include "stats/refusal.h"

namespace stats {
namespace {

/// Share of all words that give `number`, found by bisection within each slice of the words: each slice
/// changes its number at most once.
double share_of_words(const CountSampler& sampler, std::uint32_t number, int slice_bits) {
  double share = 0;
  const int shift = 64 - slice_bits;
  for (std::uint64_t slice = 0; slice < std::uint64_t{1} << slice_bits; ++slice) {
    const std::uint64_t first = slice << shift, last = first + ((std::uint64_t{1} << shift) - 1);
    std::uint64_t low = first, high = last;  // the first word with the number of the last one
    while (low < high) {
      const std::uint64_t middle = low + (high - low) / 2;
      if (sampler.of(middle) == sampler.of(last))
        high = middle;
      else
        low = middle + 1;
    }
    if (sampler.of(last) == number) share += std::ldexp(double(last - low) + 1, -64);
    if (low > first && sampler.of(first) == number) share += std::ldexp(double(low - first), -64);
  }
  return share;
}

TEST(CountSampler, GivesEachNumberItsShareOfTheWords) {
  const auto sixteen = beta_binomial(16, 0.6, 0.05);
  const CountSampler sampler(sixteen);
  for (std::uint32_t number = 0; number <= 16; ++number)
    EXPECT_NEAR(share_of_words(sampler, number, 5), sixteen[number], 0x1p-50);
}

TEST(CountSampler, OfCoinsAndCertainties) {
  const CountSampler coin(std::vector{0.5, 0.5}), certain(std::vector{1.0}),
      third(std::vector{0.0, 0.0, 1.0});
  for (const std::uint64_t word : {std::uint64_t{0}, std::uint64_t{1} << 63, ~std::uint64_t{0}}) {
    EXPECT_EQ(coin.of(word), word >> 63);
    EXPECT_EQ(certain.of(word), 0u);
    EXPECT_EQ(third.of(word), 2u);
  }
}

TEST(CountSampler, RefusesWhatIsNoDistribution) {
  EXPECT_EQ(refusal([] { CountSampler sampler({}); }),
            "number of probabilities must be between 1 and 65536, got 0");
  EXPECT_EQ(refusal([] {
              CountSampler sampler(std::vector{1.5, -0.5});
            }),
            "probability must be between 0 and 1, got 1.5");
  EXPECT_EQ(refusal([] {
              CountSampler sampler(std::vector{0.5, 0.25});
            }).substr(0, 32),
            "sum of probabilities must be bet");
  EXPECT_THROW(CountSampler(std::vector{std::numeric_limits<double>::quiet_NaN()}), std::domain_error);
}

}  // namespace
}  // namespace stats
