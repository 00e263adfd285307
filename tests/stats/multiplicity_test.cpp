#include "stats/multiplicity.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

// CO-5: Benjamini and Hochberg, J. R. Stat. Soc. B 57 (1995) 289, 15 p-values (confirmed); adjusted values
// recomputed: R p.adjust.
TEST(Adjusted, AgreesWithBenjaminiAndHochbergsExample) {
  const auto rows = check_values("bh1995.csv");
  std::vector<double> p;
  for (const CsvRow& row : rows) p.push_back(row.number("p"));
  const auto by_holm = holm(p);
  const auto by_bh = benjamini_hochberg(p);
  const auto by_bonferroni = bonferroni(p);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    EXPECT_NEAR(by_holm[i], rows[i].number("holm"), 1e-14);
    EXPECT_NEAR(by_bh[i], rows[i].number("BH"), 1e-14);
    EXPECT_NEAR(by_bonferroni[i], rows[i].number("bonferroni"), 1e-14);
  }
  const auto supported = [](const std::vector<double>& adjusted) {
    return std::count_if(adjusted.begin(), adjusted.end(), [](double value) { return value <= 0.05; });
  };
  EXPECT_EQ(supported(by_bh), 4);
  EXPECT_EQ(supported(by_holm), 3);
  EXPECT_EQ(supported(by_bonferroni), 3);
}

TEST(Adjusted, KeepsTheOrderGivenAndTies) {
  const std::vector<double> p{0.04, 0.01, 0.04, 1};
  EXPECT_EQ(holm(p), (std::vector{0.12, 0.04, 0.12, 1.0}));
  const auto by_bh = benjamini_hochberg(p);
  EXPECT_DOUBLE_EQ(by_bh[0], 0.04 * 4 / 3);
  EXPECT_EQ(by_bh[0], by_bh[2]);
  EXPECT_DOUBLE_EQ(by_bh[1], 0.04);
  EXPECT_EQ(by_bh[3], 1);
}

TEST(Adjusted, NeverFallsAsPRisesAndHolmLiesBetween) {
  Random random(4);
  for (int repeat = 0; repeat < 200; ++repeat) {
    std::vector<double> p;
    for (std::uint32_t i = 0; i <= random.below(12); ++i) p.push_back(random.below(21) / 20.0);
    const auto by_holm = holm(p);
    const auto by_bh = benjamini_hochberg(p);
    const auto by_bonferroni = bonferroni(p);
    for (std::size_t i = 0; i < p.size(); ++i) {
      EXPECT_LE(p[i], by_bh[i]);
      EXPECT_LE(by_bh[i], by_holm[i] * (1 + 1e-15));
      EXPECT_LE(by_holm[i], by_bonferroni[i]);
      EXPECT_LE(by_bonferroni[i], 1);
      for (std::size_t j = 0; j < p.size(); ++j) {
        if (p[i] <= p[j]) {
          EXPECT_LE(by_holm[i], by_holm[j]);
          EXPECT_LE(by_bh[i], by_bh[j]);
        }
      }
    }
  }
}

TEST(Adjusted, OfOneTestIsItsPAndOfNoneIsEmpty) {
  EXPECT_EQ(holm(std::vector{0.03}), std::vector{0.03});
  EXPECT_EQ(benjamini_hochberg(std::vector{0.03}), std::vector{0.03});
  EXPECT_TRUE(holm({}).empty());
  EXPECT_TRUE(benjamini_hochberg({}).empty());
  EXPECT_TRUE(bonferroni({}).empty());
}

TEST(Adjusted, RefusesWhatIsNoProbability) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(refusal([=] { holm(std::vector{0.1, nan}); }), "p[1] must be between 0 and 1, got nan");
  EXPECT_EQ(refusal([] { benjamini_hochberg(std::vector{-0.1}); }), "p[0] must be between 0 and 1, got -0.1");
  EXPECT_EQ(refusal([] { bonferroni(std::vector{0.2, 0.2, 5.0}); }), "p[2] must be between 0 and 1, got 5");
}

}  // namespace
}  // namespace stats
