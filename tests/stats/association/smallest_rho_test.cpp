#include <gtest/gtest.h>

#include <numeric>
#include <vector>

#include "stats/association/spearman.h"

namespace stats {
namespace {

std::vector<double> counted_to(int n) {
  std::vector<double> values(static_cast<std::size_t>(n));
  std::iota(values.begin(), values.end(), 1.0);
  return values;
}

// Recomputed: all 7! pairings of the mid-ranks counted in Python. Untied, .786 and .893.
TEST(SmallestSignificantRho, OfTiedValuesIsThatOfTheirOwnNull) {
  const std::vector<double> x{1, 0, 2, 3, 4, 6, 5}, y{9, 12, 12, 12, 12, 14, 15};
  EXPECT_NEAR(spearman(x, y, Alternative::two_sided)->test.p, .047619047619047616, 1e-14);
  EXPECT_NEAR(smallest_significant_rho(x, y, 0.05).value().rho, .7684076460831231, 1e-14);
  EXPECT_NEAR(smallest_significant_rho(x, y, 0.05 / 3).value().rho, .9063269671749657, 1e-14);
  EXPECT_TRUE(smallest_significant_rho(x, y, 0.05).value().exact);
  EXPECT_EQ(smallest_significant_rho(x, std::vector<double>(7, 1.0), 0.05), std::nullopt);
  EXPECT_EQ(smallest_significant_rho(counted_to(4), counted_to(4), 0.05), std::nullopt);
}

TEST(SmallestSignificantRho, OfUntiedValuesIsThatOfTheirNumber) {
  for (int n : {7, 12, 13}) {
    const auto of_values = smallest_significant_rho(counted_to(n), counted_to(n), 0.05).value();
    EXPECT_EQ(of_values.rho, smallest_significant_rho(n, 0.05).value().rho);
    EXPECT_EQ(of_values.exact, n <= kExactRanks);
  }
}

}  // namespace
}  // namespace stats
