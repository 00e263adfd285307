// Factors within blocks against every order counted in Python, and against R's coin.
#include "reference/draws.h"
#include "stats/factors/factor_test.h"

namespace reference {
namespace {

using FactorsR = AgainstR;
using FactorsPython = AgainstPython;

/// Values, their levels 0 to 1 or 2, all of which occur in the first block, and blocks.
std::vector<Numbers> layout(Draws& draws, int most_in_block) {
  const int levels = draws.whole(2, 3), blocks = draws.whole(1, 3);
  const bool ties = draws.one_in(2);
  std::vector<Numbers> all(3);
  for (int block = 0; block < blocks; ++block) {
    const int items = block == 0 ? draws.whole(levels, most_in_block) : draws.whole(1, 3);
    for (int i = 0; i < items; ++i) {
      all[0].push_back(ties ? draws.whole(0, 3) : draws.between(-5, 5));
      all[1].push_back(block == 0 && i < levels ? i : draws.whole(0, levels - 1));
      all[2].push_back(block);
    }
  }
  return all;
}

bool varies(const Numbers& values) {
  return std::any_of(values.begin(), values.end(), [&](double value) { return value != values[0]; });
}

TEST_F(FactorsPython, ContrastsAreThoseOfEveryOrder) {
  const auto calls = drawn(60, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    for (;;) {
      auto all = layout(draws, 5);
      if (!varies(all[0])) continue;
      const double levels = 1 + *std::max_element(all[1].begin(), all[1].end());
      all.push_back(levels == 2       ? Numbers{1, -1}
                    : draws.one_in(2) ? Numbers{-0.5, 1, -0.5}
                                      : Numbers{1, 0, -1});
      const Call call{all};
      if (stats::contrast_test({call.list(0), call.wholes(1), call.wholes(2)}, call.list(3),
                               stats::Alternative::greater))
        return all;
    }
  });
  const auto ours = [](const Call& call) {
    Numbers all;
    for (const auto alternative : kAlternatives) {
      const auto levels = call.wholes(1), blocks = call.wholes(2);
      const auto found =
          stats::contrast_test({call.list(0), levels, blocks}, call.list(3), alternative).value();
      if (all.empty()) all.push_back(found.estimate);
      all.push_back(found.test.p);
    }
    return all;
  };
  expect_alike({"factors.py", "contrast", "values,levels,blocks,weights"}, calls, ours, {1e-12, 1e-13});
}

std::vector<Call> factor_calls(int plain, int many, int most_in_block) {
  return drawn(plain, many, [=](Draws& draws) -> std::vector<Numbers> {
    for (;;) {
      const auto all = layout(draws, most_in_block);
      const Call call{all};
      const auto levels = call.wholes(1), blocks = call.wholes(2);
      if (stats::factor_test({call.list(0), levels, blocks})) return all;
    }
  });
}

TEST_F(FactorsPython, FactorsAreThoseOfEveryOrder) {
  const auto ours = [](const Call& call) -> Numbers {
    const auto levels = call.wholes(1), blocks = call.wholes(2);
    const auto found = stats::factor_test({call.list(0), levels, blocks}).value();
    return {found.statistic, found.test.p};
  };
  expect_alike({"factors.py", "factor", "values,levels,blocks"}, factor_calls(60, 2'000, 5), ours,
               {1e-9, 1e-10});
}

TEST_F(FactorsR, StatisticsAreThoseOfConditionalInference) {
  if (!has_package("coin")) GTEST_SKIP() << "needs coin: Debian package r-cran-coin";
  // coin refuses blocks of one item.
  auto calls = factor_calls(60, 1'000, 12);
  std::erase_if(calls, [](const Call& call) {
    const auto& blocks = call.list(2);
    return std::any_of(blocks.begin(), blocks.end(),
                       [&](double block) { return std::count(blocks.begin(), blocks.end(), block) < 2; });
  });
  ASSERT_GT(calls.size(), 20u);
  const auto ours = [](const Call& call) -> Numbers {
    const auto levels = call.wholes(1), blocks = call.wholes(2);
    const auto found = stats::factor_test({call.list(0), levels, blocks}, {.draws = 1}).value();
    return {found.statistic, double(found.degrees_of_freedom)};
  };
  expect_alike({"factors.R", "statistic", "values,levels,blocks"}, calls, ours, {1e-8, 1e-9});
}

}  // namespace
}  // namespace reference
