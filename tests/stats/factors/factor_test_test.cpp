#include "stats/factors/factor_test.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/refusal.h"
#include "stats/samples/mean_difference.h"

namespace stats {
namespace {

using Numbers = std::vector<double>;
using Levels = std::vector<int>;

const Numbers seven{12, 15, 18, 20, 21, 25, 28};
const Levels of_seven{0, 0, 0, 0, 1, 1, 1};

// CO-7, complete separation: two-sided 2/35; and 121 118 110 against 34 12 22: 1/20 (recomputed: R package exactRankTests).
TEST(FactorTests, OfTwoLevelsAreThePermutationOfMeans) {
  const auto found = factor_test({seven, of_seven, {}}).value();
  EXPECT_DOUBLE_EQ(found.test.p, 2 / 35.);
  EXPECT_TRUE(found.test.exact);
  EXPECT_EQ(found.arrangements, 35);
  EXPECT_DOUBLE_EQ(found.smallest_p.value(), 1 / 35.);  // of the larger sample above the smaller
  EXPECT_EQ(found.degrees_of_freedom, 1);
  const auto contrast = contrast_test({seven, of_seven, {}}, Numbers{1, -1}, Alternative::two_sided).value();
  EXPECT_DOUBLE_EQ(contrast.test.p, 2 / 35.);
  EXPECT_NEAR(contrast.estimate, 65 / 4. - 74 / 3., 1e-12);
  const Numbers six{121, 118, 110, 34, 12, 22};
  const auto greater =
      contrast_test({six, Levels{0, 0, 0, 1, 1, 1}, {}}, Numbers{1, -1}, Alternative::greater).value();
  EXPECT_DOUBLE_EQ(greater.test.p, 0.05);
  EXPECT_DOUBLE_EQ(greater.smallest_p.value(), 0.05);
}

// Recomputed: R package coin, statistic(independence_test(y ~ g | b, teststat = "quad")), and without blocks.
TEST(FactorTests, HaveTheStatisticOfConditionalInference) {
  const Numbers values{1.2, 3.4, 2.2, 5.1, 4.0, 2.8, 6.1, 3.3};
  const Levels levels{0, 1, 2, 0, 1, 2, 1, 2}, blocks{0, 0, 0, 1, 1, 1, 1, 0};
  const auto blocked = factor_test({values, levels, blocks}).value();
  EXPECT_NEAR(blocked.statistic, 1.39613235198, 5.1e-12);
  EXPECT_EQ(blocked.degrees_of_freedom, 2);
  EXPECT_EQ(blocked.arrangements, 12 * 12);
  EXPECT_NEAR(factor_test({values, levels, {}})->statistic, 1.98958866701, 5.1e-12);
  EXPECT_EQ(factor_test({values, levels, {}})->arrangements, 560);
}

// Blocks take away what differs between them: here everything but 1 against 2 in each.
TEST(FactorTests, CompareWithinBlocks) {
  const Numbers values{1, 2, 101, 102, 51, 52};
  const Levels levels{0, 1, 0, 1, 0, 1}, blocks{7, 7, -3, -3, 9, 9};
  EXPECT_DOUBLE_EQ(factor_test({values, levels, blocks})->test.p, 2 / 8.);
  const auto contrast = contrast_test({values, levels, blocks}, Numbers{-1, 1}, Alternative::greater).value();
  EXPECT_NEAR(contrast.estimate, 1, 1e-12);
  EXPECT_EQ(contrast.blocks, 3);
  EXPECT_DOUBLE_EQ(contrast.test.p, 1 / 8.);
  EXPECT_GT(factor_test({values, levels, {}})->test.p, 0.5);
}

TEST(FactorTests, TestEachFactorWithinTheOthers) {
  const Numbers values{1, 3, 5, 7};
  const auto tests = main_effects(values, {{0, 1, 0, 1}, {0, 0, 1, 1}});
  ASSERT_EQ(tests.size(), 2u);
  for (const auto& test : tests) {
    EXPECT_DOUBLE_EQ(test->test.p, 0.5);
    EXPECT_DOUBLE_EQ(test->smallest_p.value(), 0.5);
    EXPECT_EQ(test->arrangements, 4);
  }
  // A factor that goes with another cannot be told from it; with blocks one that goes with them.
  EXPECT_FALSE(main_effects(values, {{0, 0, 1, 1}, {1, 1, 0, 0}})[0]);
  EXPECT_FALSE(main_effects(values, {{0, 0, 1, 1}}, Levels{4, 4, 5, 5})[0]);
}

// A contrast takes only blocks that have all its levels, and weighs them by precision: 2 items a level count twice.
TEST(FactorTests, WeighBlocksOfAContrast) {
  const Numbers values{0, 0, 3, 3, 10, 16, 77};
  const Levels levels{0, 0, 1, 1, 0, 1, 0}, blocks{0, 0, 0, 0, 1, 1, 2};
  const auto found = contrast_test({values, levels, blocks}, Numbers{-1, 1}, Alternative::two_sided).value();
  EXPECT_NEAR(found.estimate, (2 * 3 + 6) / 3., 1e-12);
  EXPECT_EQ(found.blocks, 2);
  // A third level of weight 0 takes part in the null only.
  const Levels three{0, 0, 1, 1, 0, 1, 2};
  EXPECT_NEAR(contrast_test({values, three, blocks}, Numbers{-1, 1}, Alternative::less)->estimate, 4, 1e-12);
  EXPECT_FALSE(contrast_test({values, three, blocks}, Numbers{-1, 0, 1}, Alternative::less));
}

TEST(FactorTests, DrawWhereThereAreTooManyArrangements) {
  Numbers values;
  Levels levels;
  for (int i = 0; i < 30; ++i) {
    values.push_back((i * 7) % 11);
    levels.push_back(i % 3);
  }
  const auto found = factor_test({values, levels, {}}, {.seed = 2, .draws = 20'000}).value();
  EXPECT_FALSE(found.test.exact);
  EXPECT_FALSE(found.smallest_p);
  EXPECT_NEAR(found.arrangements / 5'550'996'791'340., 1, 1e-9);  // 30!/(10!)^3
  // Two levels of whole numbers can be counted otherwise.
  for (int& level : levels) level = level > 0;
  const auto drawn = contrast_test({values, levels, {}}, Numbers{1, -1}, Alternative::two_sided,
                                   {.seed = 3, .draws = 40'000});
  Numbers first, rest;
  for (std::size_t i = 0; i < values.size(); ++i) (levels[i] == 0 ? first : rest).push_back(values[i]);
  const double exact = mean_difference_test(first, rest, Alternative::two_sided).p;
  EXPECT_NEAR(drawn->test.p, exact, 4 * std::sqrt(exact * (1 - exact) / 40'000));
}

TEST(FactorTests, SayNothingOrRefuse) {
  EXPECT_FALSE(factor_test({Numbers{1, 1, 1}, Levels{0, 1, 2}, {}}));
  EXPECT_FALSE(factor_test({Numbers{1, 2, 3}, Levels{4, 4, 4}, {}}));
  EXPECT_FALSE(factor_test({Numbers{0.1 + 0.2, 0.3}, Levels{0, 1}, {}}));
  EXPECT_FALSE(contrast_test({Numbers{1, 1, 1}, Levels{0, 1, 2}, {}}, Numbers{1, -1}, Alternative::less));
  EXPECT_EQ(refusal([] {
              factor_test({Numbers{1, 2}, Levels{0}, {}});
            }),
            "number of levels must be between 2 and 2, got 1");
  EXPECT_EQ(refusal([] {
              factor_test({Numbers{1, 2}, Levels{0, -1}, {}});
            }),
            "level must be between 0 and 99, got -1");
  EXPECT_EQ(refusal([] {
              factor_test({Numbers{1, 2}, Levels{0, 1}, Levels{1}});
            }),
            "number of blocks must be between 2 and 2, got 1");
  EXPECT_EQ(refusal([] {
              contrast_test({Numbers{1, 2}, Levels{0, 1}, {}}, Numbers{1, 1}, Alternative::less);
            }),
            "the weights must add up to 0, and not all be 0");
  EXPECT_EQ(refusal([] {
              main_effects(Numbers{1, 2}, {});
            }),
            "number of factors must be between 1 and 10, got 0");
}

}  // namespace
}  // namespace stats
