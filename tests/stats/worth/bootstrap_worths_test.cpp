#include "stats/worth/bootstrap_worths.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/random.h"
#include "stats/refusal.h"
#include "stats/worth/published_preferences.h"
#include "stats/worth/worth.h"

namespace stats {
namespace {

/// The first resample of a seed, by the rule of the header: each answer of each row is one of the row's.
std::vector<PairCount> resampled(std::vector<PairCount> counts, std::uint64_t seed) {
  QuickRandom random(seed);
  for (PairCount& count : counts) {
    const auto first = count.first_preferred, ties = count.ties, all = first + ties + count.second_preferred;
    count = {count.first, count.second, 0, 0, 0};
    random.each_below(static_cast<std::uint32_t>(all), all, [&](std::uint32_t answer) {
      ++(answer < first          ? count.first_preferred
         : answer < first + ties ? count.ties
                                 : count.second_preferred);
    });
  }
  return counts;
}

// With one resample both limits are its worth.
TEST(BootstrapWorths, RefitsAsTheFullFit) {
  for (const auto& [counts, items, order] :
       {std::tuple(flutes(), 8, false), std::tuple(flutes(), 8, true), std::tuple(baseball(), 7, true)}) {
    int finite = 0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
      const auto full = fit_worths(items, resampled(counts, seed), 2, {.order_effect = order});
      const auto quick = bootstrap_worths(items, counts, 2, order, 0.9, {.seed = seed, .draws = 1});
      ASSERT_EQ(full.has_value(), quick.has_value());
      if (!full) continue;
      ++finite;
      for (std::size_t item = 0; item < full->worth.size(); ++item) {
        EXPECT_NEAR(quick->interval[item].lower, full->worth[item], 1e-7);
        EXPECT_EQ(quick->interval[item].lower, quick->interval[item].upper);
      }
    }
    EXPECT_GT(finite, 10);
  }
}

// For many answers the spread of refits is that of the expected information.
TEST(BootstrapWorths, AgreesWithTheStandardErrorOfManyAnswers) {
  const auto counts = counts_of_table("citations1994.csv", {"Biometrika", "Comm Statist", "JASA", "JRSS-B"});
  const auto fit = fit_worths(4, counts).value();
  const auto found = bootstrap_worths(4, counts, 0, false, 0.95, {.seed = 3, .draws = 4'000}).value();
  EXPECT_EQ(found.refits, 4'000);
  EXPECT_EQ(found.standard_error[0], 0);
  for (int item = 1; item < 4; ++item) {
    const double error = fit.difference_error(item, 0), worth = fit.worth[std::size_t(item)];
    EXPECT_NEAR(found.standard_error[std::size_t(item)] / error, 1, 0.06);
    EXPECT_NEAR(found.interval[std::size_t(item)].lower, worth - 1.96 * error, 0.2 * error);
    EXPECT_NEAR(found.interval[std::size_t(item)].upper, worth + 1.96 * error, 0.2 * error);
  }
}

TEST(BootstrapWorths, IsTheSameForEveryNumberOfThreads) {
  const auto one = bootstrap_worths(8, flutes(), 0, false, 0.9, {.seed = 4, .draws = 333}).value();
  for (const int threads : {2, 5}) {
    const auto other =
        bootstrap_worths(8, flutes(), 0, false, 0.9, {.seed = 4, .draws = 333}, threads).value();
    EXPECT_EQ(other.standard_error, one.standard_error);
    EXPECT_EQ(other.infinite, one.infinite);
  }
}

// 1 of 5 for the second: all five resampled answers agree with probability 0.8^5 + 0.2^5 = 0.328.
TEST(BootstrapWorths, LeavesOutInfiniteResamples) {
  const std::vector<PairCount> counts{{0, 1, 4, 0, 1}};
  const auto found = bootstrap_worths(2, counts, 0, false, 0.9, {.seed = 6, .draws = 10'000}).value();
  EXPECT_NEAR(found.infinite, 3'280, 190);  // 4 standard deviations
  EXPECT_EQ(found.infinite + found.refits, 10'000);
  EXPECT_NEAR(found.interval[1].lower, -std::log(4), 1e-7);
}

TEST(BootstrapWorths, PassesOverRowsWithoutAnswers) {
  const auto found = bootstrap_worths(2, std::vector<PairCount>{{0, 1, 0, 0, 0}, {1, 0, 30, 5, 30}}, 0, false,
                                      0.9, {.draws = 50})
                         .value();
  EXPECT_EQ(found.refits, 50);
  EXPECT_NEAR(found.standard_error[1], 0.25, 0.1);
}

TEST(BootstrapWorths, CoversTheTrueDifference) {
  Random random(7);
  int holding = 0;
  for (int repeat = 0; repeat < 1'000; ++repeat) {
    const auto counts = drawn_answers(random);
    const auto found = bootstrap_worths(4, counts, 0, false, 0.95, {.seed = 1, .draws = 499}).value();
    holding += found.interval[3].lower <= 1.2 && found.interval[3].upper >= 1.2;
  }
  EXPECT_NEAR(holding, 940, 30);  // 4 standard deviations of 0.94
}

TEST(BootstrapWorths, RefusesAndSaysNothing) {
  EXPECT_FALSE(bootstrap_worths(2, std::vector<PairCount>{{0, 1, 4, 0, 0}}, 0, false, 0.9));
  EXPECT_EQ(refusal([] {
              bootstrap_worths(2, std::vector<PairCount>{{0, 1, 4, 0, 1}}, 0, false, 1);
            }),
            "confidence must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] {
              bootstrap_worths(2, std::vector<PairCount>{{0, 1, 4, 0, 1}}, 0, false, 0.9, {.draws = 0});
            }),
            "draws must be between 1 and 1000000, got 0");
}

}  // namespace
}  // namespace stats
