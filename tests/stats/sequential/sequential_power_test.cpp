#include "stats/sequential/sequential_power.h"

#include <gtest/gtest.h>

#include <vector>

#include "stats/redraw/redraw.h"
#include "stats/refusal.h"
#include "stats/sequential/rules_on_counts.h"
#include "stats/sequential/spending_rule.h"
#include "stats/share/power.h"

namespace stats {
namespace {

const std::vector<int> kSingles(16, 1);

TEST(SequentialPower, IsTheOrdinaryPowerWithoutEarlierLooks) {
  const StoppingRule fixed = fixed_rule(16, 0.05, 0.5);
  for (const double share : {0.5, 0.7, 0.9, 1.0})
    EXPECT_NEAR(sequential_power(fixed, kSingles, share), power_of_trials(share, 16, 0.05, 0.5).power, 1e-14);
  EXPECT_NEAR(*sequential_share_caught(fixed, kSingles, 0.8), *smallest_share_caught(16, 0.05, 0.5, 0.8),
              1e-9);
}

TEST(SequentialPower, CountsAnswersOfATrialTogether) {
  std::vector<int> answers(8, 3);
  answers.resize(16, 1);
  StoppingRule rule{std::vector<Look>(16)};
  std::vector<Split> alike;
  for (const int count : answers) alike.push_back({count, 0});
  rule.looks.back().support = redraw_minimum(alike, 0.05);
  EXPECT_NEAR(sequential_power(rule, answers, 0.9), redraw_power(answers, 0.05, 0.9), 1e-13);
}

TEST(SequentialPower, FindsTheShareThatIsCaught) {
  const std::vector<int> looks{8, 16, 24}, answers(24, 1);
  const std::vector<double> spent{0.01, 0.02, 0.05};
  const StoppingRule rule = spending_rule(looks, spent, 0.5);
  const double share = *sequential_share_caught(rule, answers, 0.8);
  EXPECT_NEAR(share, 0.757491, 5.1e-7);  // recomputed: a recursion in plain Python
  EXPECT_NEAR(operate(rule, share).support, 0.8, 1e-8);
  EXPECT_EQ(sequential_share_caught(StoppingRule{std::vector<Look>(24)}, answers, 0.8), std::nullopt);
}

TEST(SequentialPower, RefusesWhatDoesNotFit) {
  EXPECT_EQ(refusal([] { sequential_power(fixed_rule(16, 0.05, 0.5), kSingles, 1.5); }),
            "share must be between 0 and 1, got 1.5");
  EXPECT_EQ(refusal([] { sequential_share_caught(fixed_rule(16, 0.05, 0.5), kSingles, 80); }),
            "probability must be strictly between 0 and 1, got 80 (write 0.8 for 80 %)");
}

}  // namespace
}  // namespace stats
