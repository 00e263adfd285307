#include "stats/redraw/redraw.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <numeric>

#include "stats/random.h"
#include "stats/refusal.h"
#include "stats/share/binomial.h"
#include "stats/share/power.h"

namespace stats {
namespace {

std::vector<Split> repeated(int trials, Split split) {
  return std::vector<Split>(static_cast<std::size_t>(trials), split);
}

/// Every fall of the coins, one after the other: how many give a total that counts.
template <typename Counts>
double by_brute_force(const std::vector<Split>& splits, Counts counts) {
  const unsigned falls = 1u << splits.size();
  int counted = 0;
  for (unsigned fall = 0; fall < falls; ++fall) {
    int total = 0;
    for (std::size_t i = 0; i < splits.size(); ++i)
      total += (fall >> i) & 1 ? splits[i].one : splits[i].other;
    counted += counts(total);
  }
  return double(counted) / falls;
}

/// Answers of five raters at random over ten trials.
std::vector<Split> random_splits(Random& random) {
  std::vector<Split> splits;
  for (int trial = 0; trial < 10; ++trial)
    splits.push_back({static_cast<int>(random.below(6)), static_cast<int>(random.below(6))});
  return splits;
}

// Three answers always alike in each of 16 trials, 36 of 48 right: the binomial of 12 of 16 (mathematics).
TEST(Redraw, OfAnswersAlwaysAlikeIsTheBinomialOfTrials) {
  EXPECT_EQ(redraw_at_least(repeated(16, {3, 0}), 36), 2517.0 / 65536);
  EXPECT_NEAR(redraw_at_least(repeated(16, {3, 0}), 36), .0384, 5e-5);
}

TEST(Redraw, OfOneAnswerATrialIsTheBinomial) {
  for (int trials : {1, 16, 53, 300})
    for (int correct = 0; correct <= trials; correct += 1 + trials / 20) {
      const auto splits = repeated(trials, {1, 0});
      EXPECT_NEAR(redraw_at_least(splits, correct) / chance_of_at_least(correct, trials, 0.5), 1, 1e-12);
      EXPECT_NEAR(redraw_at_most(splits, correct) / chance_of_at_most(correct, trials, 0.5), 1, 1e-12);
      EXPECT_NEAR(redraw_two_sided(splits, correct) / two_sided(correct, trials, 0.5), 1, 1e-12);
    }
}

// Why answers must not be pooled in a binomial. Recomputed by exact sums: the true size of a pooled binomial
// at level 0.05 when all listeners answer alike in 16 trials: 0.105 for three of them, 0.227 for eight.
TEST(Redraw, ShowsTheTrueSizeOfAPooledBinomial) {
  const auto size = [](int listeners) {
    const int pooled_minimum = minimum_correct(16 * listeners, 0.05, 0.5).value();
    const int trials_needed = (pooled_minimum + listeners - 1) / listeners;
    return redraw_at_least(repeated(16, {listeners, 0}), trials_needed * listeners);
  };
  EXPECT_NEAR(size(3), .105, 5e-4);
  EXPECT_NEAR(size(8), .227, 5e-4);
}

TEST(Redraw, AgreesWithBruteForce) {
  Random random(20);
  for (int repeat = 0; repeat < 30; ++repeat) {
    const auto splits = random_splits(random);
    const auto distribution = redraw_distribution(splits);
    const int sum = static_cast<int>(distribution.size()) - 1;
    for (int seen = 0; seen <= sum; ++seen) {
      const auto is_seen = [=](int total) { return total == seen; };
      const auto at_least = [=](int total) { return total >= seen; };
      const auto at_most = [=](int total) { return total <= seen; };
      const auto as_far = [=](int total) { return std::abs(2 * total - sum) >= std::abs(2 * seen - sum); };
      EXPECT_EQ(distribution[static_cast<std::size_t>(seen)], by_brute_force(splits, is_seen));
      if (by_brute_force(splits, is_seen) == 0) {
        EXPECT_THROW(redraw_at_least(splits, seen), std::domain_error);
        continue;
      }
      EXPECT_EQ(redraw_at_least(splits, seen), by_brute_force(splits, at_least));
      EXPECT_EQ(redraw_at_most(splits, seen), by_brute_force(splits, at_most));
      EXPECT_EQ(redraw_two_sided(splits, seen), by_brute_force(splits, as_far));
    }
  }
}

TEST(RedrawMinimum, IsTheSmallestTotalThatReachesTheLevel) {
  Random random(21);
  for (int repeat = 0; repeat < 30; ++repeat) {
    const auto splits = random_splits(random);
    const int sum = static_cast<int>(redraw_distribution(splits).size()) - 1;
    for (double level : {0.0005, 0.01, 0.05, 0.25}) {
      std::optional<int> smallest;
      for (int total = sum; total >= 0; --total) {
        if (by_brute_force(splits, [=](int t) { return t == total; }) == 0) continue;
        if (by_brute_force(splits, [=](int t) { return t >= total; }) > level) break;
        smallest = total;
      }
      EXPECT_EQ(redraw_minimum(splits, level), smallest);
    }
  }
}

TEST(RedrawMinimum, IsThatOfTheBinomialForOneAnswerATrial) {
  for (int trials = 1; trials <= 60; ++trials)
    EXPECT_EQ(redraw_minimum(repeated(trials, {0, 1}), 0.05), minimum_correct(trials, 0.05, 0.5));
  EXPECT_EQ(redraw_minimum(repeated(16, {1, 0}), 2517.0 / 65536), 12);
}

// Trials in which as many answered one way as the other say nothing.
TEST(Redraw, LeavesOutEvenTrials) {
  std::vector<Split> splits = repeated(16, {1, 0});
  for (int i = 0; i < 40; ++i) splits.push_back({2, 2});
  EXPECT_EQ(redraw_at_least(splits, 12 + 80), 2517.0 / 65536);
}

TEST(Redraw, DoesNotCareWhichWayIsOne) {
  const std::vector<Split> splits{{3, 0}, {2, 1}, {0, 3}, {1, 2}, {3, 0}};
  const std::vector<Split> turned{{0, 3}, {1, 2}, {3, 0}, {2, 1}, {0, 3}};
  EXPECT_EQ(redraw_distribution(splits), redraw_distribution(turned));
}

TEST(Redraw, OfNothingIsCertain) {
  EXPECT_EQ(redraw_distribution({}), std::vector{1.0});
  EXPECT_EQ(redraw_at_least({}, 0), 1.0);
  EXPECT_EQ(redraw_two_sided({}, 0), 1.0);
  EXPECT_EQ(redraw_minimum({}, 0.05), std::nullopt);
}

// Beyond 53 uneven trials rounding begins: it stays under T * 2^-53, here against the binomial in long
// numbers.
TEST(Redraw, KeepsTwelveDigitsWithManyTrials) {
  const auto splits = repeated(1'500, {2, 0});
  for (int correct : {750, 800, 900, 1'100}) {
    EXPECT_NEAR(redraw_at_least(splits, 2 * correct) / chance_of_at_least(correct, 1'500, 0.5), 1, 1e-12);
  }
  EXPECT_EQ(redraw_at_least(splits, 3'000), 0);  // 2^-1500: too small for a double, but not refused
  EXPECT_NEAR(redraw_at_most(splits, 3'000), 1, 1'500 * 0x1p-53);
}

// Eight trials of three answers and eight of one. Recomputed: convolution in Python, the null in fractions,
// the share by bisection. With as many answers in every trial the share would be .801 and the power at .9
// .983.
TEST(RedrawPower, CountsTheAnswersThatEachTrialHas) {
  std::vector<int> answers(8, 3);
  answers.insert(answers.end(), 8, 1);
  EXPECT_NEAR(redraw_power(answers, 0.05, 0.9), .9562310615442279, 1e-13);
  EXPECT_NEAR(redraw_power(answers, 0.05, 0.81), .766375778750173, 1e-13);
  EXPECT_NEAR(redraw_share_caught(answers, 0.05, 0.8).value(), .8219809631241131, 1e-12);
  EXPECT_NEAR(redraw_share_caught(answers, 0.05 / 7, 0.8).value(), .9140223904778231, 1e-12);
}

TEST(RedrawPower, OfTrialsWithEquallyManyAnswersIsThatOfTheTrials) {
  for (int trials : {5, 16, 53, 200})
    for (int each : {1, 3}) {
      const std::vector<int> answers(static_cast<std::size_t>(trials), each);
      EXPECT_NEAR(redraw_power(answers, 0.05, 0.7), power_of_trials(0.7, trials, 0.05, 0.5).power, 1e-13);
      EXPECT_NEAR(redraw_share_caught(answers, 0.05, 0.8).value(),
                  smallest_share_caught(trials, 0.05, 0.5, 0.8).value(), 1e-12);
    }
}

TEST(RedrawPower, AtTheEdges) {
  const std::vector<int> four(4, 2), many(16, 2);
  EXPECT_EQ(redraw_power(four, 0.05, 1), 0);  // not even 2^-4 reaches the level
  EXPECT_EQ(redraw_share_caught(four, 0.05, 0.8), std::nullopt);
  EXPECT_EQ(redraw_share_caught({}, 0.05, 0.8), std::nullopt);
  EXPECT_EQ(redraw_power(many, 0.05, 0), 0);
  EXPECT_EQ(redraw_power(many, 0.05, 1), 1);
  EXPECT_EQ(refusal([&] { redraw_power(many, 0.05, 1.1); }), "share must be between 0 and 1, got 1.1");
  EXPECT_EQ(refusal([&] { redraw_share_caught(four, 0.05, 1); }),
            "probability must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] {
              redraw_power(std::vector<int>{1, 0}, 0.05, 0.5);
            }),
            "answers of a trial must be between 1 and 1000000, got 0");
}

TEST(Redraw, RefusesWhatTheCoinsCannotGive) {
  const auto splits = repeated(16, {3, 0});
  EXPECT_EQ(refusal([&] { redraw_at_least(splits, 49); }), "observed must be between 0 and 48, got 49");
  EXPECT_EQ(refusal([&] { redraw_two_sided(splits, -1); }), "observed must be between 0 and 48, got -1");
  EXPECT_EQ(refusal([&] { redraw_at_most(splits, 35); }),
            "observed must be a total that the splits can give, got 35");
  EXPECT_EQ(refusal([&] {
              redraw_distribution(std::vector<Split>{{2, -1}});
            }),
            "other must be between 0 and 1000000, got -1");
  EXPECT_EQ(refusal([&] {
              redraw_distribution(repeated(3, {400'000, 0}));
            }),
            "sum of all counts must be between 0 and 1000000, got 1200000");
  EXPECT_EQ(refusal([&] { redraw_minimum({}, 5); }),
            "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
  EXPECT_THROW(redraw_two_sided(splits, INT32_MAX), std::domain_error);
}

}  // namespace
}  // namespace stats
