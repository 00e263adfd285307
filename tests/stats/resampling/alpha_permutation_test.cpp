#include "stats/resampling/alpha_permutation.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

/// Every arrangement of every rater's answers on the subjects that the rater answered, repeated ones too.
void count_alphas(Ratings& ratings, std::size_t rater, Metric metric, double seen, double& reaching,
                  double& all) {
  if (rater == ratings.front().size()) {
    const auto alpha = krippendorff_alpha(ratings, metric);
    reaching += !alpha || alpha->alpha >= seen - 1e-12;
    ++all;
    return;
  }
  std::vector<std::size_t> subjects;
  for (std::size_t i = 0; i < ratings.size(); ++i)
    if (ratings[i][rater]) subjects.push_back(i);
  std::vector<double> answers;
  for (const std::size_t i : subjects) answers.push_back(*ratings[i][rater]);
  std::vector<std::size_t> order(answers.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  do {
    for (std::size_t i = 0; i < order.size(); ++i) ratings[subjects[i]][rater] = answers[order[i]];
    count_alphas(ratings, rater + 1, metric, seen, reaching, all);
  } while (std::next_permutation(order.begin(), order.end()));
  for (std::size_t i = 0; i < order.size(); ++i) ratings[subjects[i]][rater] = answers[i];
}

double alpha_p_by_brute_force(Ratings ratings, Metric metric) {
  double reaching = 0, all = 0;
  count_alphas(ratings, 0, metric, krippendorff_alpha(ratings, metric).value().alpha, reaching, all);
  return reaching / all;
}

// Section A of Krippendorff (2011), AG-4. p recomputed: plain Python, 140 of the 210 arrangements.
TEST(PermuteAlpha, AgreesWithRecomputedValue) {
  const auto result =
      permute_alpha({{0, 1}, {1, 1}, {0, 1}, {0, 0}, {0, 0}, {0, 1}, {0, 0}, {0, 0}, {1, 0}, {0, 0}},
                    Metric::nominal)
          .value();
  EXPECT_NEAR(result.alpha, .0952380952, 5.1e-11);
  EXPECT_TRUE(result.test.exact);
  EXPECT_NEAR(result.test.p, 140. / 210, 1e-15);
}

TEST(PermuteAlpha, AgreesWithBruteForce) {
  const auto none = std::nullopt;
  const std::vector<Ratings> cases = {
      {{1, 1}, {1, 1}, {2, 2}, {2, 2}},
      {{1, 2}, {2, 2}, {3, 3}, {1, 3}, {2, 1}},
      {{1, 1, 2}, {2, 2, 2}, {4, 3, 4}, {1, 1, 3}},
      {{1, 1, none}, {2, 2, 2}, {4, none, 4}, {1, 1, 3}},
      {{1, none}, {none, 2}, {1, 1}, {2, 2}},
      {{1, none}, {2, none}, {1, 1}, {3, 2}},
  };
  for (const auto& ratings : cases)
    for (const Metric metric : {Metric::nominal, Metric::ordinal, Metric::interval, Metric::ratio}) {
      const auto result = permute_alpha(ratings, metric).value();
      EXPECT_TRUE(result.test.exact);
      EXPECT_NEAR(result.test.p, alpha_p_by_brute_force(ratings, metric), 1e-14)
          << "case " << &ratings - cases.data() << ", metric " << static_cast<int>(metric);
    }
}

TEST(PermuteAlpha, OfTwoLikeRatersIsTheirNumberOfOrders) {
  EXPECT_NEAR(permute_alpha({{1, 1}, {1, 1}, {2, 2}, {2, 2}}, Metric::nominal).value().test.p, 1. / 6, 1e-15);
  EXPECT_FALSE(permute_alpha({{1, 1}, {1, 1}}, Metric::nominal));
}

// A third rater who answers nothing with anybody else only makes the arrangements too many to count.
TEST(PermuteAlpha, DrawnLiesWithinItsErrorOfTheExact) {
  Ratings ratings{{1, 2}, {2, 2}, {3, 3}, {1, 3}, {2, 1}, {3, 3}};
  const auto exact = permute_alpha(ratings, Metric::interval).value().test;
  for (auto& subject : ratings) subject.push_back(std::nullopt);
  for (int i = 0; i < 10; ++i) ratings.push_back({std::nullopt, std::nullopt, i});
  const MonteCarlo monte_carlo{.seed = 4, .draws = 9'999};
  const auto drawn = permute_alpha(ratings, Metric::interval, monte_carlo).value().test;
  ASSERT_TRUE(exact.exact);
  ASSERT_FALSE(drawn.exact);
  EXPECT_EQ(drawn.draws, 9'999);
  EXPECT_NEAR(drawn.p, exact.p, 4 * drawn.standard_error);
  EXPECT_EQ(drawn.p, permute_alpha(ratings, Metric::interval, monte_carlo).value().test.p);
}

// Three raters who answer at random, ones rarer than zeros: p at or under 0.05 in no more than 5 % of 1,000
// studies.
TEST(PermuteAlpha, HoldsItsLevelForIndependentRaters) {
  Random random(14);
  int supported = 0;
  for (int study = 0; study < 1'000; ++study) {
    Ratings ratings(6, std::vector<std::optional<double>>(3));
    for (auto& subject : ratings)
      for (auto& answer : subject) answer = random.below(3) == 0;
    const auto result = permute_alpha(ratings, Metric::nominal);
    supported += result && result->test.p <= 0.05;
  }
  EXPECT_LE(supported, 50 + 3 * 6.9);
  EXPECT_GT(supported, 0);
}

TEST(PermuteAlpha, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] {
              permute_alpha({{1, 2}}, Metric::nominal, {.draws = 0});
            }),
            "draws must be between 1 and 100000000, got 0");
  EXPECT_EQ(refusal([] {
              permute_alpha({{-1, 2}}, Metric::ratio);
            }),
            "answer on a ratio scale must be between 0 and 1e+100, got -1");
}

}  // namespace
}  // namespace stats
