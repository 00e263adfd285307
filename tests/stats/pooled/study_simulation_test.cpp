#include "stats/pooled/study_simulation.h"

#include <gtest/gtest.h>

#include <boost/math/special_functions/beta.hpp>
#include <cmath>
#include <map>

#include "stats/multiplicity.h"
#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

using RaterCounts = std::vector<int>;

/// Probability of one rater's counts in all comparisons, by the integral over the share: products of binomial
/// coefficients and a ratio of beta functions.
double chance_of_counts(const RaterCounts& counts, int trials, double a, double b) {
  double ways = 1;
  int right = 0;
  for (const int count : counts) {
    ways *= std::ldexp(chance_of_exactly(count, trials, 0.5), trials);
    right += count;
  }
  const int wrong = static_cast<int>(counts.size()) * trials - right;
  return ways * boost::math::beta(a + right, b + wrong) / boost::math::beta(a, b);
}

/// Exact distribution of the number of comparisons supported: all counts of all raters, judged by Holm's
/// adjusted p.
std::vector<double> exact_by_supported(const StudyDesign& design, double a, double b) {
  const auto comparisons = static_cast<std::size_t>(design.comparisons);
  std::map<RaterCounts, double> one;
  RaterCounts counts(comparisons);
  for (bool more = true; more;) {
    one[counts] = chance_of_counts(counts, design.trials, a, b);
    more = false;
    for (std::size_t i = 0; i < comparisons && !more; ++i) {
      counts[i] = (counts[i] + 1) % (design.trials + 1);
      more = counts[i] != 0;
    }
  }
  std::map<RaterCounts, double> all{{RaterCounts(comparisons), 1.0}};
  for (int rater = 0; rater < design.raters; ++rater) {
    std::map<RaterCounts, double> next;
    for (const auto& [sums, weight] : all)
      for (const auto& [added, probability] : one) {
        RaterCounts total = sums;
        for (std::size_t i = 0; i < comparisons; ++i) total[i] += added[i];
        next[total] += weight * probability;
      }
    all = std::move(next);
  }
  std::vector<double> by_supported(comparisons + 1);
  for (const auto& [sums, weight] : all) {
    std::vector<double> p;
    for (const int sum : sums)
      p.push_back(chance_of_at_least(sum, design.raters * design.trials, design.chance));
    std::size_t supported = 0;
    for (const double adjusted : holm(p)) supported += adjusted <= design.level;
    by_supported[supported] += weight;
  }
  return by_supported;
}

void expect_near_exact(const StudyDesign& design, double a, double b, std::int64_t studies) {
  const RaterAbility ability{a / (a + b), 1 / (a + b + 1)};
  const auto found = simulate_studies(design, ability, studies, 11, 2).by_supported;
  const auto exact = exact_by_supported(design, a, b);
  ASSERT_EQ(found.size(), exact.size());
  for (std::size_t i = 0; i < exact.size(); ++i) {
    const double error = std::sqrt(exact[i] * (1 - exact[i]) / double(studies));
    EXPECT_NEAR(double(found[i]) / double(studies), exact[i], 4 * error) << i << " supported";
  }
}

// Exact sums by another route: the integral over the share, and Holm's adjusted p.
TEST(SimulatedStudies, AgreeWithExactSums) {
  expect_near_exact({2, 3, 4, 0.5, 0.2}, 3.0, 2.0, 400'000);
  expect_near_exact({3, 2, 8, 0.5, 0.05}, 11.4, 7.6, 400'000);
  expect_near_exact({2, 4, 3, 0.3, 0.3}, 0.4, 0.6, 400'000);
  expect_near_exact({4, 1, 9, 1.0 / 3, 0.05}, 2.0, 2.0, 400'000);
}

// 8 raters, 4 comparisons, 16 trials, ability Beta(11.4, 7.6). Recomputed: a long simulation by another
// program gives at least one supported in .78492 of studies.
TEST(SimulatedStudies, AgreeWithLongSimulations) {
  const auto found = simulate_studies({8, 4, 16, 0.5, 0.05}, {0.6, 0.05}, 400'000, 1, 2);
  EXPECT_NEAR(found.share_with_any(), .78492, 4 * std::sqrt(.785 * .215 / 400'000));
}

TEST(SimulatedStudies, AreTheSameForEveryNumberOfThreads) {
  const StudyDesign design{8, 4, 16, 0.5, 0.05};
  const auto one = simulate_studies(design, {0.6, 0.05}, 10'300, 3, 1).by_supported;
  for (const int threads : {2, 3, 50})
    EXPECT_EQ(simulate_studies(design, {0.6, 0.05}, 10'300, 3, threads).by_supported, one);
  EXPECT_NE(simulate_studies(design, {0.6, 0.05}, 10'300, 4, 1).by_supported, one);
}

TEST(SimulatedStudies, WithoutChanceAreCertain) {
  const StudyDesign design{5, 3, 4, 0.5, 0.05};
  EXPECT_EQ(simulate_studies(design, {1, 0.3}, 700, 1).by_supported,
            (std::vector<std::int64_t>{0, 0, 0, 700}));
  EXPECT_EQ(simulate_studies(design, {0, 0}, 700, 1).by_supported, (std::vector<std::int64_t>{700, 0, 0, 0}));
  // A single rater of 3 trials can never reach 0.05.
  EXPECT_EQ(simulate_studies({1, 1, 3, 0.5, 0.05}, {1, 0}, 10, 1).by_supported,
            (std::vector<std::int64_t>{10, 0}));
  // All or nothing: what a rater does in the first comparison is done in all others.
  const auto all_or_nothing = simulate_studies({1, 3, 9, 0.5, 0.05}, {0.5, 1}, 2'000, 1);
  EXPECT_EQ(all_or_nothing.by_supported[1] + all_or_nothing.by_supported[2], 0);
  EXPECT_NEAR(all_or_nothing.share_with_all(), 0.5, 0.05);
}

TEST(SimulatedStudies, ShareOut) {
  const SimulatedStudies studies{{5, 2, 3}};
  EXPECT_DOUBLE_EQ(studies.share_with_any(), 0.5);
  EXPECT_DOUBLE_EQ(studies.share_with_all(), 0.3);
  EXPECT_DOUBLE_EQ(studies.share_supported(), 0.4);
}

TEST(SimulatedStudies, RefuseBadDesigns) {
  const auto refused = [](StudyDesign design, RaterAbility ability, std::int64_t studies, int threads) {
    return refusal([=] { simulate_studies(design, ability, studies, 1, threads); });
  };
  const StudyDesign good{8, 4, 16, 0.5, 0.05};
  EXPECT_EQ(refused({0, 4, 16, 0.5, 0.05}, {0.6, 0.05}, 1, 1), "raters must be between 1 and 1000, got 0");
  EXPECT_EQ(refused({8, 4, 300, 0.5, 0.05}, {0.6, 0.05}, 1, 1),
            "trials times comparisons must be between 1 and 1000, got 1200");
  EXPECT_EQ(refused({8, 4, 16, 1, 0.05}, {0.6, 0.05}, 1, 1),
            "chance must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refused({8, 4, 16, 0.5, 5}, {0.6, 0.05}, 1, 1),
            "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
  EXPECT_EQ(refused(good, {1.2, 0.05}, 1, 1), "mean must be between 0 and 1, got 1.2");
  EXPECT_EQ(refused(good, {0.6, -0.05}, 1, 1), "gamma must be between 0 and 1, got -0.05");
  EXPECT_EQ(refused(good, {0.6, 0.05}, 0, 1), "studies must be between 1 and 1000000000, got 0");
  EXPECT_EQ(refused(good, {0.6, 0.05}, 1, 0), "threads must be between 1 and 256, got 0");
}

}  // namespace
}  // namespace stats
