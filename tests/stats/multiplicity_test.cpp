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
  const auto by_hochberg = hochberg(p);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    EXPECT_NEAR(by_holm[i], rows[i].number("holm"), 1e-14);
    EXPECT_NEAR(by_hochberg[i], rows[i].number("hochberg"), 1e-14);
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

// CO-5, the same 15 p-values. Recomputed: R p.adjust(p, "hommel"), p.adjust(p, "BY").
TEST(Adjusted, AgreesByHommelAndByBenjaminiAndYekutieli) {
  const double by_hommel[] = {.0015, .0056, .0247, .0950, .1608, .1946, .2086, .2408,
                              .3213, 1,     1,     1,     1,     1,     1};
  const double by_by[] = {.00497734348984,
                          .00995468697969,
                          .03152317543568,
                          .11821190788378,
                          .20008920829171,
                          .21189262285334,
                          .21189262285334,
                          .21402577006327,
                          .25384451798202,
                          1,
                          1,
                          1,
                          1,
                          1,
                          1};
  std::vector<double> p;
  for (const CsvRow& row : check_values("bh1995.csv")) p.push_back(row.number("p"));
  for (std::size_t i = 0; i < p.size(); ++i) {
    EXPECT_NEAR(hommel(p)[i], by_hommel[i], 1e-14);
    EXPECT_NEAR(benjamini_yekutieli(p)[i], by_by[i], 5.1e-15);
  }
}

// Unordered and tied. Recomputed: R p.adjust(c(.04,.01,.03,.02,.03,.0021,.7), ...).
TEST(Adjusted, AgreesWithRecomputedValues) {
  const std::vector<double> p{.04, .01, .03, .02, .03, .0021, .7};
  const auto near = [](const std::vector<double>& found, const std::vector<double>& expected) {
    for (std::size_t i = 0; i < expected.size(); ++i) EXPECT_NEAR(found[i], expected[i], 5.1e-14);
  };
  near(bonferroni(p), {.28, .07, .21, .14, .21, .0147, 1});
  near(holm(p), {.12, .06, .12, .10, .12, .0147, .7});
  near(hochberg(p), {.08, .06, .08, .08, .08, .0147, .7});
  near(hommel(p), {.08, .05, .06, .06, .06, .0147, .7});
  near(benjamini_hochberg(p), {.0466666666666667, .035, .042, .042, .042, .0147, .7});
  near(benjamini_yekutieli(p), {.121, .09075, .1089, .1089, .1089, .038115, 1});
}

/// Largest p of Simes' test over all subsets that hold the test: what Hommel's method is (closed testing).
double largest_simes(const std::vector<double>& p, std::size_t held) {
  double largest = 0;
  for (unsigned subset = 0; subset < 1u << p.size(); ++subset) {
    if (!((subset >> held) & 1)) continue;
    std::vector<double> members;
    for (std::size_t i = 0; i < p.size(); ++i)
      if ((subset >> i) & 1) members.push_back(p[i]);
    std::sort(members.begin(), members.end());
    double simes = 1;
    for (std::size_t i = 0; i < members.size(); ++i)
      simes = std::min(simes, members[i] * double(members.size()) / double(i + 1));
    largest = std::max(largest, simes);
  }
  return largest;
}

TEST(Adjusted, ByHommelIsClosedTestingWithSimes) {
  Random random(5);
  for (int repeat = 0; repeat < 60; ++repeat) {
    std::vector<double> p;
    for (std::uint32_t i = 0; i <= random.below(8); ++i) p.push_back(random.below(31) / 60.0);
    const auto by_hommel = hommel(p);
    const auto by_hochberg = hochberg(p);
    const auto by_holm = holm(p);
    for (std::size_t i = 0; i < p.size(); ++i) {
      EXPECT_NEAR(by_hommel[i], largest_simes(p, i), 1e-15);
      EXPECT_LE(by_hommel[i], by_hochberg[i] * (1 + 1e-15));
      EXPECT_LE(by_hochberg[i], by_holm[i] * (1 + 1e-15));
    }
  }
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
  EXPECT_EQ(hommel(std::vector{0.03}), std::vector{0.03});
  EXPECT_EQ(hochberg(std::vector{0.03}), std::vector{0.03});
  EXPECT_EQ(benjamini_yekutieli(std::vector{0.03}), std::vector{0.03});
  EXPECT_TRUE(hommel({}).empty());
  EXPECT_TRUE(hochberg({}).empty());
  EXPECT_TRUE(benjamini_yekutieli({}).empty());
}

TEST(Adjusted, RefusesWhatIsNoProbability) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(refusal([=] { holm(std::vector{0.1, nan}); }), "p[1] must be between 0 and 1, got nan");
  EXPECT_EQ(refusal([] { benjamini_hochberg(std::vector{-0.1}); }), "p[0] must be between 0 and 1, got -0.1");
  EXPECT_EQ(refusal([] { bonferroni(std::vector{0.2, 0.2, 5.0}); }), "p[2] must be between 0 and 1, got 5");
  EXPECT_EQ(refusal([=] { hommel(std::vector{nan}); }), "p[0] must be between 0 and 1, got nan");
  EXPECT_EQ(refusal([] { hochberg(std::vector{0.1, 2.0}); }), "p[1] must be between 0 and 1, got 2");
  EXPECT_EQ(refusal([] { benjamini_yekutieli(std::vector{-1.0}); }), "p[0] must be between 0 and 1, got -1");
}

}  // namespace
}  // namespace stats
