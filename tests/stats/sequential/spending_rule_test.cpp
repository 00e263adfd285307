#include "stats/sequential/spending_rule.h"

#include <gtest/gtest.h>

#include <optional>
#include <vector>

#include "stats/refusal.h"
#include "stats/sequential/alpha_spending.h"
#include "stats/sequential/rules_on_counts.h"

namespace stats {
namespace {

std::vector<double> planned_spending(Spending spending, const std::vector<int>& looks) {
  std::vector<double> spent;
  for (const int look : looks) spent.push_back(level_spent(spending, 0.05, double(look) / looks.back()));
  return spent;
}

TEST(SpendingRule, AsksForTheCountsOfItsExample) {
  const auto looks = spending_rule(std::vector{8, 16, 24}, std::vector{0.01, 0.02, 0.05}, 0.5).looks;
  EXPECT_EQ(looks[7].support, 8);
  EXPECT_EQ(looks[15].support, 13);
  EXPECT_EQ(looks[23].support, 17);
  EXPECT_EQ(looks[22].support, std::nullopt);
}

TEST(SpendingRule, OfOneLookIsTheFixedTest) {
  for (int trials : {3, 16, 40})
    EXPECT_EQ(spending_rule(std::vector{trials}, std::vector{0.05}, 0.5).looks.back().support,
              fixed_rule(trials, 0.05, 0.5).looks.back().support);
}

// At every look the false alarms so far are within what is spent, and with one success less at the look they
// would not be.
TEST(SpendingRule, SpendsWhatItMayAndNoMore) {
  const std::vector<int> looks{8, 16, 20, 30, 48};
  for (const auto spending : {Spending::obrien_fleming, Spending::pocock})
    for (double chance : {1.0 / 3, 0.5}) {
      const auto spent = planned_spending(spending, looks);
      const auto rule = spending_rule(looks, spent, chance);
      for (std::size_t k = 0; k < looks.size(); ++k) {
        const auto trials = static_cast<std::size_t>(looks[k]);
        StoppingRule so_far{{rule.looks.begin(), rule.looks.begin() + looks[k]}};
        EXPECT_LE(operate(so_far, chance).support, spent[k] * (1 + 1e-12));
        auto& last = so_far.looks[trials - 1].support;
        last = last.value_or(looks[k] + 1) - 1;
        EXPECT_GT(operate(so_far, chance).support, spent[k]);
      }
    }
}

TEST(SpendingRule, TakesMixedChances) {
  std::vector<Gain> gains(10, {1, 0, 1.0 / 3});
  gains.insert(gains.end(), 10, {1, 0, 0.5});
  const auto rule = spending_rule(std::vector{10, 20}, std::vector{0.02, 0.05}, gains);
  EXPECT_LE(operate(rule, gains).support, 0.05);
  EXPECT_EQ(rule.looks[9].support, fixed_rule(10, 0.02, 1.0 / 3).looks.back().support);
}

TEST(SpendingRule, RefusesImpossibleArguments) {
  const auto rule = [](std::vector<int> looks, std::vector<double> spent, double chance = 0.5) {
    return refusal([&] { spending_rule(looks, spent, chance); });
  };
  EXPECT_EQ(rule({8, 16}, {0.01}), "number of levels spent must be between 2 and 2, got 1");
  EXPECT_EQ(rule({8, 16}, {0.02, 0.01}), "spent must be between 0.02 and 0.9999999999999999, got 0.01");
  EXPECT_EQ(rule({8}, {-0.01}), "spent must be between 0 and 0.9999999999999999, got -0.01");
  EXPECT_EQ(rule({16, 8}, {0.01, 0.02}), "look must be between 17 and 1000000, got 8");
  EXPECT_EQ(rule({8}, {0.05}, 0), "chance must be strictly between 0 and 1, got 0");
  EXPECT_EQ(rule({8}, {0}), "(not refused)");
  EXPECT_EQ(refusal([] {
              spending_rule(std::vector{2}, std::vector{0.05}, std::vector<Gain>{{1, 0, 0.5}});
            }),
            "look must be between 1 and 1, got 2");
}

}  // namespace
}  // namespace stats
