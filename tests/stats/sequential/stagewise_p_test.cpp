#include "stats/sequential/stagewise_p.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <vector>

#include "stats/refusal.h"
#include "stats/sequential/rules_on_counts.h"
#include "stats/sequential/spending_rule.h"
#include "stats/share/binomial.h"
#include "stats/share/interval.h"

namespace stats {
namespace {

std::vector<Gain> guesses_one_by_one(int trials) {
  return std::vector<Gain>(static_cast<std::size_t>(trials), {1, 0, 0.5});
}

StoppingRule rule_up_to(StoppingRule rule, int trials) {
  rule.looks.resize(static_cast<std::size_t>(trials));
  return rule;
}

TEST(StagewiseP, IsTheOrdinaryPWithoutEarlierLooks) {
  for (int correct = 0; correct <= 16; ++correct)
    EXPECT_NEAR(stagewise_p(fixed_rule(16, 0.05, 0.5), guesses_one_by_one(16), correct),
                chance_of_at_least(correct, 16, 0.5), 1e-15);
}

// By enumeration of all 2^16 sequences: support at the first look (8 of 8), or 13 and more of 16.
TEST(StagewiseP, AgreesWithAnEnumeration) {
  const std::vector<int> looks{8, 16, 24};
  const std::vector<double> spent{0.01, 0.02, 0.05};
  const StoppingRule rule = rule_up_to(spending_rule(looks, spent, 0.5), 16);
  int reaching = 0;
  for (unsigned sequence = 0; sequence < 1U << 16; ++sequence)
    if ((sequence & 0xFF) == 0xFF || __builtin_popcount(sequence) >= 13) ++reaching;
  EXPECT_NEAR(stagewise_p(rule, guesses_one_by_one(16), 13), reaching / 65536.0, 1e-15);
  EXPECT_NEAR(reaching / 65536.0, 0.0131, 5.1e-5);
}

// The definition of a p-value: under the null P(p <= level) <= level; and p is at most what is spent exactly where the
// look supports.
TEST(StagewiseP, HoldsItsLevelAndAgreesWithTheBounds) {
  const std::vector<int> looks{4, 9, 12};
  const std::vector<double> spent{0.07, 0.1, 0.2};
  const StoppingRule rule = spending_rule(looks, spent, 0.5);
  std::vector<double> values;
  for (unsigned sequence = 0; sequence < 1U << 12; ++sequence) {
    std::size_t look = 0;
    int total = 0;
    for (;; ++look) {
      total = __builtin_popcount(sequence & ((1U << looks[look]) - 1));
      const auto support = rule.looks[static_cast<std::size_t>(looks[look]) - 1].support;
      const bool crossed = support && total >= *support;
      const double p = stagewise_p(rule_up_to(rule, looks[look]), guesses_one_by_one(looks[look]), total);
      EXPECT_EQ(p <= spent[look] * (1 + 1e-12), crossed) << sequence;
      if (!crossed && look + 1 < looks.size()) continue;
      values.push_back(p);
      break;
    }
  }
  for (const double level : {0.01, 0.05, 0.1, 0.2, 0.5}) {
    int reached = 0;
    for (const double p : values) reached += p <= level;
    EXPECT_LE(reached / 4096.0, level);
  }
}

// Without earlier looks they are those of Clopper and Pearson; with looks they bound the p.
TEST(StagewiseLimits, AreExactAndAgreeWithTheP) {
  for (int correct = 0; correct <= 16; ++correct) {
    EXPECT_NEAR(stagewise_lower(fixed_rule(16, 0.05, 0.5), correct, 0.95),
                clopper_pearson_lower(correct, 16, 0.95), 1e-9);
    EXPECT_NEAR(stagewise_upper(fixed_rule(16, 0.05, 0.5), correct, 0.95),
                clopper_pearson_upper(correct, 16, 0.95), 1e-9);
  }
  const std::vector<int> looks{8, 16, 24};
  const std::vector<double> spent{0.01, 0.02, 0.05};
  const StoppingRule rule = rule_up_to(spending_rule(looks, spent, 0.5), 16);
  const double p = stagewise_p(rule, guesses_one_by_one(16), 13);
  EXPECT_NEAR(stagewise_lower(rule, 13, 1 - p), 0.5, 1e-8);
  // recomputed: a recursion with bisection in plain Python
  EXPECT_NEAR(stagewise_lower(rule, 13, 0.95), 0.57624, 5.1e-6);
  EXPECT_NEAR(stagewise_upper(rule, 13, 0.95), 0.94483, 5.1e-6);
}

// By exact sums over all ends: either limit holds the true share with probability 0.95 or more.
TEST(StagewiseLimits, CoverAsOftenAsTheySay) {
  const std::vector<int> looks{4, 9, 12};
  const std::vector<double> spent{0.07, 0.1, 0.2};
  const StoppingRule rule = spending_rule(looks, spent, 0.5);
  for (const double share : {0.3, 0.5, 0.65, 0.8, 0.95}) {
    double lower_holds = 0, upper_holds = 0;
    for (unsigned sequence = 0; sequence < 1U << 12; ++sequence) {
      const int all = __builtin_popcount(sequence);
      const double probability = std::pow(share, all) * std::pow(1 - share, 12 - all);
      for (std::size_t look = 0; look < looks.size(); ++look) {
        const int total = __builtin_popcount(sequence & ((1U << looks[look]) - 1));
        const auto support = rule.looks[static_cast<std::size_t>(looks[look]) - 1].support;
        if (look + 1 < looks.size() && !(support && total >= *support)) continue;
        static std::map<std::pair<std::size_t, int>, Interval> limits;
        if (!limits.contains({look, total})) {
          const StoppingRule end = rule_up_to(rule, looks[look]);
          limits[{look, total}] = {stagewise_lower(end, total, 0.95), stagewise_upper(end, total, 0.95)};
        }
        const Interval found = limits[{look, total}];
        lower_holds += found.lower <= share ? probability : 0;
        upper_holds += share <= found.upper ? probability : 0;
        break;
      }
    }
    EXPECT_GE(lower_holds, 0.95 - 1e-9) << share;
    EXPECT_GE(upper_holds, 0.95 - 1e-9) << share;
  }
}

TEST(StagewiseP, RefusesWhatDoesNotFit) {
  EXPECT_EQ(refusal([] { stagewise_p({}, {}, 0); }), "looks must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { stagewise_p(fixed_rule(4, 0.1, 0.5), guesses_one_by_one(3), 2); }),
            "number of gains must be between 4 and 4, got 3");
  EXPECT_EQ(refusal([] { stagewise_p(fixed_rule(4, 0.1, 0.5), guesses_one_by_one(4), -1); }),
            "observed must be between 0 and 1000000, got -1");
}

}  // namespace
}  // namespace stats
