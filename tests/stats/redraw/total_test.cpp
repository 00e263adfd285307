#include "stats/redraw/total.h"

#include <gtest/gtest.h>

#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

TotalDistribution binomial_total(int trials, double chance) {
  TotalDistribution at;
  for (int correct = 0; correct <= trials; ++correct)
    at.push_back(chance_of_exactly(correct, trials, chance));
  return at;
}

// BIN-4, recomputed: R pbinom(11, 16, .5, lower.tail=FALSE); binom.test(12, 16)$p.value; binom.test(7, 20,
// .3).
TEST(Total, OfTheBinomialHasItsTails) {
  const auto half = binomial_total(16, 0.5);
  EXPECT_NEAR(total_at_least(half, 12), .03840637207, 5.1e-12);
  EXPECT_NEAR(total_two_sided_by_distance(half, 12), .07681274414, 5.1e-12);
  EXPECT_NEAR(total_two_sided_by_probability(half, 12), .07681274414, 5.1e-12);
  EXPECT_NEAR(total_two_sided_by_probability(binomial_total(20, 0.3), 7), .6294979667, 5.1e-11);
}

TEST(Total, OfTheBinomialAgreesWithTheFunctionsOfTheBinomial) {
  for (const double chance : {0.5, 1.0 / 3, 0.9})
    for (const int trials : {1, 7, 40}) {
      const auto at = binomial_total(trials, chance);
      for (int correct = 0; correct <= trials; ++correct) {
        EXPECT_NEAR(total_at_least(at, correct) / chance_of_at_least(correct, trials, chance), 1, 1e-12);
        EXPECT_NEAR(total_at_most(at, correct) / chance_of_at_most(correct, trials, chance), 1, 1e-12);
        EXPECT_NEAR(total_two_sided_by_probability(at, correct) / two_sided(correct, trials, chance), 1,
                    1e-12);
      }
      for (const double level : {0.3, 0.05, 0.001})
        EXPECT_EQ(total_minimum(at, level), minimum_correct(trials, level, chance));
    }
}

TEST(Total, CountsDistancesFromTheMean) {
  const TotalDistribution lopsided{0.5, 0.25, 0, 0.25};  // mean 1
  EXPECT_EQ(total_two_sided_by_distance(lopsided, 1), 1);
  EXPECT_EQ(total_two_sided_by_distance(lopsided, 0), 0.75);
  EXPECT_EQ(total_two_sided_by_distance(lopsided, 2), 0.75);
  EXPECT_EQ(total_two_sided_by_distance(lopsided, 3), 0.25);
  EXPECT_EQ(total_two_sided_by_probability(lopsided, 3), 0.5);
  EXPECT_EQ(total_two_sided_by_probability(lopsided, 2), 0);
}

TEST(Total, MinimumIsATotalThatCanBe) {
  EXPECT_EQ(total_minimum({0.75, 0, 0.25, 0}, 0.25), 2);
  EXPECT_EQ(total_minimum({0.75, 0, 0.25, 0}, 0.2), std::nullopt);
}

TEST(Total, ConvolvedBinomialsAreABinomial) {
  const auto both = convolved(binomial_total(9, 0.3), binomial_total(14, 0.3));
  const auto one = binomial_total(23, 0.3);
  ASSERT_EQ(both.size(), one.size());
  for (std::size_t i = 0; i < one.size(); ++i) EXPECT_NEAR(both[i] / one[i], 1, 1e-12);
}

TEST(Total, RefusesWhatHasNoPlace) {
  const TotalDistribution coin{0.5, 0.5};
  EXPECT_EQ(refusal([&] { total_at_least(coin, 2); }), "observed must be between 0 and 1, got 2");
  EXPECT_EQ(refusal([&] { total_two_sided_by_distance(coin, -1); }),
            "observed must be between 0 and 1, got -1");
  EXPECT_EQ(refusal([&] { total_minimum(coin, 0); }), "level must be strictly between 0 and 1, got 0");
  EXPECT_EQ(refusal([] { total_at_most({}, 0); }),
            "places of the distribution must be between 1 and 2147483647, got 0");
  EXPECT_EQ(refusal([&] { convolved(coin, {}); }),
            "places of the second distribution must be between 1 and 2147483647, got 0");
}

}  // namespace
}  // namespace stats
