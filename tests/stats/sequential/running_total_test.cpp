#include "stats/sequential/running_total.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

TEST(RunningTotal, OfAnswersIsTheBinomial) {
  for (double share : {0.0, 1.0 / 3, 0.5, 0.9}) {
    RunningTotal total;
    for (int trial = 0; trial < 40; ++trial) total.add({1, 0, share});
    for (int count = 40; count >= 0; --count) {
      const double exact = share == 0 ? double(count == 0) : chance_of_exactly(count, 40, share);
      EXPECT_NEAR(total.take_at_least(count), exact, 1e-13 * exact);
    }
    EXPECT_EQ(total.remaining(), 0);
  }
}

// By hand: {2, 0} then {1, 4} at 1/4 and 1/2: totals 1, 3, 4, 6 with probabilities 3/8, 1/8, 3/8, 1/8.
TEST(RunningTotal, OfUnequalGains) {
  RunningTotal total;
  total.add({2, 0, 0.25});
  total.add({1, 4, 0.5});
  EXPECT_EQ(total.smallest_total(0, 0.5), 4);
  EXPECT_EQ(total.smallest_total(0, 0.499), 6);
  EXPECT_EQ(total.smallest_total(0.1, 0.5), 6);
  EXPECT_EQ(total.smallest_total(0, 0.1), std::nullopt);
  EXPECT_EQ(total.take_at_least(5), 0.125);
  EXPECT_EQ(total.take_at_most(0), 0);
  EXPECT_EQ(total.take_at_most(1), 0.375);
  EXPECT_EQ(total.remaining(), 0.5);
  total.add({1, 1, 0.5});
  EXPECT_EQ(total.take_at_most(4), 0.125);
  EXPECT_EQ(total.take_at_least(5), 0.375);
  total.add({7, 0, 0.5});
  EXPECT_EQ(total.remaining(), 0);
}

// 0.1 + 0.2 is 0.3, though not in doubles.
TEST(RunningTotal, CountsASumThatEqualsWhatIsAllowed) {
  RunningTotal total;
  total.add({1, 0, 0.2});
  EXPECT_EQ(total.smallest_total(0.1, 0.3), 1);
}

TEST(RunningTotal, RefusesImpossibleGains) {
  const auto add = [](int one, int other, double probability) {
    return refusal([=] { RunningTotal().add({one, other, probability}); });
  };
  EXPECT_EQ(add(-1, 0, 0.5), "one must be between 0 and 1000000, got -1");
  EXPECT_EQ(add(0, 1'000'001, 0.5), "other must be between 0 and 1000000, got 1000001");
  EXPECT_EQ(add(1, 0, 1.5), "probability_of_one must be between 0 and 1, got 1.5");
  EXPECT_EQ(add(1, 1, std::numeric_limits<double>::quiet_NaN()),
            "probability_of_one must be between 0 and 1, got nan");
  EXPECT_EQ(add(1'000'000, 0, 0.5), "(not refused)");
  EXPECT_EQ(refusal([] {
              RunningTotal total;
              total.add({600'000, 600'000, 0.5});
              total.add({600'000, 600'000, 0.5});
            }),
            "sum of all counts must be between 0 and 1000001, got 1200001");
}

}  // namespace
}  // namespace stats
