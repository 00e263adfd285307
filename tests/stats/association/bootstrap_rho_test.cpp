#include "stats/association/bootstrap_rho.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

using Numbers = std::vector<double>;

const Numbers eight_x{1, 2, 2, 3, 5, 8, 8, 9}, eight_y{2, 1, 3, 3, 6, 5, 9, 9};

// With one resample both limits are its rho: that of the pairs drawn, written out.
TEST(BootstrapRhos, AreThoseOfTheResample) {
  int defined = 0;
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    QuickRandom random(seed);
    Numbers x_drawn, y_drawn;
    random.each_below(8, 8, [&](std::uint32_t pair) {
      x_drawn.push_back(eight_x[pair]);
      y_drawn.push_back(eight_y[pair]);
    });
    const auto found = bootstrap_rho(eight_x, eight_y, 0.9, {.seed = seed, .draws = 1});
    const auto expected = spearman(x_drawn, y_drawn, Alternative::greater, {.draws = 1});
    ASSERT_EQ(found.has_value(), expected.has_value());
    if (!found) continue;
    ++defined;
    EXPECT_NEAR(found->interval.lower, expected->rho, 1e-12);
    EXPECT_EQ(found->interval.lower, found->interval.upper);
    EXPECT_NEAR(found->rho, spearman(eight_x, eight_y, Alternative::greater)->rho, 1e-12);
  }
  EXPECT_GT(defined, 25);
}

// Pairs of items drawn several times count as often as each with each.
TEST(BootstrapRhos, ByItemAreThoseOfItemsWithEachOther) {
  const Numbers values{0, 1, 3, 7, 8};
  const std::vector<ItemPair> pairs{{0, 1, .5}, {0, 2, .6}, {1, 2, .8}, {3, 1, .9}, {4, 0, .7}, {3, 4, .4}};
  int defined = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    QuickRandom random(seed);
    std::vector<int> times(5);
    random.each_below(5, 5, [&](std::uint32_t item) { ++times[item]; });
    Numbers differences, outcomes;
    for (const ItemPair& pair : pairs)
      for (int i = 0; i < times[std::size_t(pair.first)] * times[std::size_t(pair.second)]; ++i) {
        differences.push_back(std::abs(values[std::size_t(pair.first)] - values[std::size_t(pair.second)]));
        outcomes.push_back(pair.outcome);
      }
    const auto expected = differences.size() < 2
                              ? std::nullopt
                              : spearman(differences, outcomes, Alternative::greater, {.draws = 1});
    const auto found =
        bootstrap_rho_by_item(values, pairs, PairValue::absolute_difference, 0.9, {.seed = seed, .draws = 1});
    ASSERT_EQ(found.has_value(), expected.has_value()) << seed;
    if (!found) continue;
    ++defined;
    EXPECT_NEAR(found->interval.lower, expected->rho, 1e-12);
  }
  EXPECT_GT(defined, 30);
}

TEST(BootstrapRhos, CountWhatHasNoCorrelation) {
  const auto found =
      bootstrap_rho(Numbers{1, 2, 3}, Numbers{1, 3, 2}, 0.5, {.seed = 1, .draws = 27'000}).value();
  // The three pairs alike in 3 of 27 resamples.
  EXPECT_NEAR(found.undefined, 3'000, 210);  // 4 standard deviations
  EXPECT_EQ(found.resamples + found.undefined, 27'000);
}

TEST(BootstrapRhos, SayNothingOrRefuse) {
  EXPECT_FALSE(bootstrap_rho(Numbers{1, 1, 1}, Numbers{1, 2, 3}, 0.9));
  EXPECT_EQ(refusal([] {
              bootstrap_rho(Numbers{1, 2}, Numbers{1, 2}, 0.9);
            }),
            "number of x must be between 3 and 10000, got 2");
  EXPECT_EQ(refusal([] { bootstrap_rho(eight_x, eight_y, 0.9, {.draws = 0}); }),
            "draws must be between 1 and 1000000, got 0");
}

}  // namespace
}  // namespace stats
