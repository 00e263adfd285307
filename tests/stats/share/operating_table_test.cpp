#include "stats/share/operating_table.h"

#include <gtest/gtest.h>

#include <array>

#include "stats/refusal.h"
#include "stats/share/power.h"

namespace stats {
namespace {

TEST(OperatingTable, AgreesWithTheDirectFunctions) {
  const std::array shares{0.0, 0.2, 0.7, 1.0};
  for (double chance : {1.0 / 3, 0.5})
    for (double level : {0.001, 0.05, 0.9}) {
      const OperatingTable table = operating_table(500, level, chance, shares);
      ASSERT_EQ(table.minimum_correct.size(), 500u);
      ASSERT_EQ(table.power.size(), shares.size());
      for (int n = 1; n <= 500; ++n) {
        const auto row = static_cast<std::size_t>(n - 1);
        for (std::size_t i = 0; i < shares.size(); ++i) {
          const PowerOfTrials direct = power_of_trials(shares[i], n, level, chance);
          ASSERT_EQ(table.minimum_correct[row], direct.minimum_correct.value_or(n + 1))
              << n << " at " << level;
          ASSERT_NEAR(table.size[row], direct.size, 1e-12) << n << " at " << level;
          ASSERT_NEAR(table.power[i][row], direct.power, 1e-12)
              << n << " at " << level << " share " << shares[i];
        }
      }
    }
}

TEST(OperatingTable, StaysAccurateToThreeThousandTrials) {
  const std::array shares{0.55, 0.7};
  const OperatingTable table = operating_table(3'000, 0.05, 0.5, shares);
  for (int n = 2'900; n <= 3'000; ++n)
    for (std::size_t i = 0; i < shares.size(); ++i) {
      const PowerOfTrials direct = power_of_trials(shares[i], n, 0.05, 0.5);
      const auto row = static_cast<std::size_t>(n - 1);
      EXPECT_EQ(table.minimum_correct[row], direct.minimum_correct);
      EXPECT_NEAR(table.size[row], direct.size, 1e-12);
      EXPECT_NEAR(table.power[i][row], direct.power, 1e-12);
    }
}

// Levels that equal a tail (mathematics): 2517/65536 is reached by 12 of 16.
TEST(OperatingTable, CountsATailThatEqualsTheLevel) {
  EXPECT_EQ(operating_table(16, 2517.0 / 65536, 0.5, {}).minimum_correct.back(), 12);
  EXPECT_EQ(operating_table(4, 1.0 / 81, 1.0 / 3, {}).minimum_correct.back(), 4);
  EXPECT_EQ(operating_table(3, 0.001, 0.1, {}).minimum_correct.back(), 3);
}

TEST(OperatingTable, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] { operating_table(0, 0.05, 0.5, {}); }),
            "most_trials must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { operating_table(5, 0.05, 0.5, std::array{1.5}); }),
            "share must be between 0 and 1, got 1.5");
  EXPECT_THROW(operating_table(5, 0.05, 1, {}), std::domain_error);
  EXPECT_THROW(operating_table(5, 1, 0.5, {}), std::domain_error);
}

}  // namespace
}  // namespace stats
