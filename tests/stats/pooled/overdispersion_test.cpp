#include "stats/pooled/overdispersion.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <utility>
#include <vector>

#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

std::vector<SubjectCount> twelve_subjects() {
  std::vector<SubjectCount> subjects;
  for (const int correct : {3, 4, 5, 5, 5, 6, 6, 6, 7, 8, 9, 10}) subjects.push_back({correct, 10});
  return subjects;
}

std::vector<SubjectCount> weil_litters() {
  std::vector<SubjectCount> subjects;
  for (const CsvRow& row : check_values("weil1970.csv")) subjects.push_back({row.whole("x"), row.whole("n")});
  return subjects;
}

// OD-1: synthetic, 12 subjects of 10 trials; formula of Tarone (1979) (confirmed in a secondary copy;
// recomputed).
TEST(Overdispersion, AgreesWithRecomputedValues) {
  EXPECT_NEAR(tarone_z(twelve_subjects()).value(), 1.57467948, 5.1e-9);
  EXPECT_NEAR(tarone_normal_p(twelve_subjects()).value(), .05766522, 5.1e-9);
  EXPECT_NEAR(pearson_dispersion(twelve_subjects()).value(), 1.756222626, 5.1e-10);
  EXPECT_NEAR(chance_of_at_least(74, 120, 0.5), .006688163364, 5.1e-13);
}

// OD-3: Weil (1970) by way of Williams (1975), control group (counts memory; recomputed).
TEST(Overdispersion, AgreesWithWeil) { EXPECT_NEAR(tarone_z(weil_litters()).value(), .4511791609, 5.1e-11); }

// Recomputed: counts of placements in Python's whole numbers.
TEST(TaroneExact, AgreesWithRecomputedValues) {
  const auto twelve = tarone_exact(twelve_subjects()).value();
  EXPECT_TRUE(twelve.exact);
  EXPECT_NEAR(twelve.p, .057846627388087116, 1e-14);
  EXPECT_NEAR(tarone_exact(weil_litters()).value().p, .2252923685305022, 1e-13);
  const std::vector<SubjectCount> uneven{{0, 3}, {5, 5}, {6, 8}, {2, 6}};
  EXPECT_NEAR(tarone_exact(uneven).value().p, .03196895983273692, 1e-15);
}

/// Probability of Z with p at most 0.05 by the normal distribution [0], and given the total [1]: through all
/// totals and sums of squares.
std::pair<double, double> tarone_sizes(int subjects, int trials, double share) {
  std::vector<double> chances;
  for (int correct = 0; correct <= trials; ++correct)
    chances.push_back(chance_of_exactly(correct, trials, share));
  std::map<std::pair<int, int>, double> states{{{0, 0}, 1.0}};
  for (int subject = 0; subject < subjects; ++subject) {
    std::map<std::pair<int, int>, double> next;
    for (const auto& [state, weight] : states)
      for (int correct = 0; correct <= trials; ++correct)
        next[{state.first + correct, state.second + correct * correct}] +=
            weight * chances[static_cast<std::size_t>(correct)];
    states = std::move(next);
  }
  const double all = subjects * trials;
  double normal = 0, exact = 0;
  for (int total = 1; total < all; ++total) {
    const double pooled = total / all;
    const auto first = states.lower_bound({total, 0}), last = states.lower_bound({total + 1, 0});
    double of_total = 0;
    for (auto state = first; state != last; ++state) of_total += state->second;
    double tail = 0;
    for (auto state = last; state != first;) {
      --state;
      const double squares = (state->first.second - trials * pooled * total) / (pooled * (1 - pooled));
      if (squares - all >= 1.6448536269514722 * std::sqrt(2 * all * (trials - 1))) normal += state->second;
      tail += state->second;
      if (tail <= 0.05 * of_total * (1 + 1e-12)) exact += state->second;
    }
  }
  return {normal, exact};
}

// Recomputed: the same sums in Python.
TEST(Overdispersion, HasTheSizesStated) {
  const auto close = [](std::pair<double, double> found, double normal, double exact) {
    EXPECT_NEAR(found.first, normal, 1e-12);
    EXPECT_NEAR(found.second, exact, 1e-12);
  };
  close(tarone_sizes(4, 16, 0.5), .03652882339189162, .042134256028861804);
  close(tarone_sizes(4, 16, 0.7), .0374830629428492, .04020809741178809);
  close(tarone_sizes(8, 16, 0.5), .04397906309117249, .045204373359633856);
  close(tarone_sizes(8, 16, 0.7), .043094384504916074, .04364135190494489);
  close(tarone_sizes(12, 10, 0.5), .04554747132570153, .043796353569559736);
  close(tarone_sizes(12, 10, 0.7), .04531825453535543, .043397483179127574);
}

/// Every placement of the right answers over 13 trials, by Z itself.
TEST(TaroneExact, AgreesWithEveryPlacement) {
  const std::vector<int> trials{2, 5, 1, 3, 2};
  const std::vector<std::vector<int>> cases{{2, 1, 0, 3, 0}, {0, 5, 1, 0, 1}, {1, 2, 0, 1, 2}};
  for (const auto& correct : cases) {
    std::vector<SubjectCount> seen;
    int total = 0;
    for (std::size_t i = 0; i < trials.size(); ++i) {
      seen.push_back({correct[i], trials[i]});
      total += correct[i];
    }
    int all = 0, reaching = 0;
    for (unsigned placed = 0; placed < 1u << 13; ++placed) {
      std::vector<SubjectCount> other;
      int sum = 0, bit = 0;
      for (const int n : trials) {
        int right = 0;
        for (int i = 0; i < n; ++i) right += (placed >> bit++) & 1;
        other.push_back({right, n});
        sum += right;
      }
      if (sum != total) continue;
      ++all;
      reaching += tarone_z(other).value() >= tarone_z(seen).value() - 1e-9;
    }
    EXPECT_NEAR(tarone_exact(seen).value().p, double(reaching) / all, 1e-14);
  }
}

TEST(TaroneExact, DrawsWhereCountingTakesTooLong) {
  Random random(61);
  std::vector<SubjectCount> subjects;
  for (int i = 0; i < 60; ++i)
    subjects.push_back({static_cast<int>(random.below(10)) + 8, 20 + static_cast<int>(random.below(9))});
  const auto drawn = tarone_exact(subjects, {7, 5'000}).value();
  EXPECT_FALSE(drawn.exact);
  EXPECT_NEAR(drawn.p, tarone_normal_p(subjects).value(), 0.03);
}

TEST(Overdispersion, IsNothingWhereNothingCanVary) {
  for (const auto& subjects :
       {std::vector<SubjectCount>{{5, 9}}, {{4, 4}, {3, 3}}, {{0, 4}, {0, 3}}, {{1, 1}, {0, 1}}}) {
    EXPECT_FALSE(tarone_z(subjects));
    EXPECT_FALSE(tarone_normal_p(subjects));
    EXPECT_FALSE(tarone_exact(subjects));
  }
  EXPECT_FALSE(pearson_dispersion(std::vector<SubjectCount>{{4, 4}, {3, 3}}));
  EXPECT_NEAR(pearson_dispersion(std::vector<SubjectCount>{{1, 1}, {0, 1}}).value(), 2, 1e-15);
}

TEST(Overdispersion, RefusesBadCounts) {
  EXPECT_EQ(refusal([] { tarone_z({}); }), "number of subjects must be between 1 and 10000, got 0");
  EXPECT_EQ(refusal([] {
              tarone_exact(std::vector<SubjectCount>{{3, 2}});
            }),
            "correct must be between 0 and 2, got 3");
  EXPECT_EQ(refusal([] {
              pearson_dispersion(std::vector<SubjectCount>{{0, 0}});
            }),
            "trials must be between 1 and 100000, got 0");
  EXPECT_EQ(refusal([] {
              tarone_normal_p(std::vector<SubjectCount>(2, {1, 60'000}));
            }),
            "trials of all subjects must be between 1 and 100000, got 120000");
  EXPECT_EQ(refusal([] {
              tarone_exact(std::vector<SubjectCount>{{1, 2}}, {1, 0});
            }),
            "draws must be between 1 and 100000000, got 0");
}

}  // namespace
}  // namespace stats
