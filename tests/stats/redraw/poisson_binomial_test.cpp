#include "stats/redraw/poisson_binomial.h"

#include <gtest/gtest.h>

#include <boost/multiprecision/cpp_int.hpp>
#include <limits>
#include <vector>

#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

// 10 trials at 1/2 and 12 at 1/3. Recomputed: products of binomials in Python's fractions.
TEST(PoissonBinomial, OfAMixedStudyAgreesWithRecomputedValues) {
  const auto at = poisson_binomial(std::vector<TrialGroup>{{10, 0.5}, {12, 1.0 / 3}});
  EXPECT_NEAR(total_at_least(at, 12), .13589587672949585, 1e-15);
  EXPECT_NEAR(total_at_least(at, 13), .06284627072607778, 1e-15);
  EXPECT_NEAR(total_at_least(at, 14), 4480711.0 / 181398528, 1e-16);
  EXPECT_NEAR(total_at_least(at, 16), .002222112849780126, 1e-16);
  EXPECT_NEAR(total_at_most(at, 5), .058430286711036596, 1e-15);
  EXPECT_NEAR(total_two_sided_by_probability(at, 14), .04501879419881511, 1e-15);
  EXPECT_EQ(total_minimum(at, 0.05), 14);
}

/// Probabilities in whole multiples of 6^-trials, by every outcome of every trial: chances in sixths.
std::vector<double> in_sixths(const std::vector<int>& sixths) {
  using boost::multiprecision::cpp_int;
  std::vector<cpp_int> ways(sixths.size() + 1);
  for (unsigned outcome = 0; outcome < 1u << sixths.size(); ++outcome) {
    cpp_int product = 1;
    std::size_t right = 0;
    for (std::size_t i = 0; i < sixths.size(); ++i) {
      const bool is_right = (outcome >> i) & 1;
      product *= is_right ? sixths[i] : 6 - sixths[i];
      right += is_right;
    }
    ways[right] += product;
  }
  const cpp_int all = boost::multiprecision::pow(cpp_int(6), static_cast<unsigned>(sixths.size()));
  std::vector<double> at;
  for (const cpp_int& count : ways) at.push_back(count.convert_to<double>() / all.convert_to<double>());
  return at;
}

TEST(PoissonBinomial, AgreesWithEveryOutcomeInWholeNumbers) {
  const std::vector<int> sixths{3, 2, 1, 5, 3, 2, 4, 6, 2, 3, 1, 3};
  std::vector<TrialGroup> groups;
  for (const int s : sixths) groups.push_back({1, s / 6.0});
  const auto at = poisson_binomial(groups);
  const auto exact = in_sixths(sixths);
  EXPECT_EQ(at[0], 0);  // one trial is always right
  for (std::size_t right = 1; right < at.size(); ++right)
    EXPECT_NEAR(at[right] / exact[right], 1, 36 * 0x1p-53);
}

TEST(PoissonBinomial, OfOneChanceIsTheBinomial) {
  for (const int trials : {1, 30, 3'000}) {
    const auto at = poisson_binomial(std::vector<TrialGroup>{{trials, 1.0 / 3}});
    for (int correct = trials / 5; correct <= trials / 2; correct += 1 + trials / 30)
      EXPECT_NEAR(at[static_cast<std::size_t>(correct)] / chance_of_exactly(correct, trials, 1.0 / 3), 1,
                  2e-12);
  }
}

TEST(PoissonBinomial, DoesNotCareForOrderOrGrouping) {
  const auto one = poisson_binomial(std::vector<TrialGroup>{{2, 0.5}, {3, 0.25}});
  const auto other = poisson_binomial(std::vector<TrialGroup>{{1, 0.25}, {2, 0.5}, {0, 0.9}, {2, 0.25}});
  EXPECT_EQ(one, other);  // chances and products are multiples of 2^-8: no rounding
}

TEST(PoissonBinomial, OfNothingIsCertainAndBadArgumentsAreRefused) {
  EXPECT_EQ(poisson_binomial({}), TotalDistribution{1.0});
  const auto of = [](TrialGroup group) { return refusal([=] { poisson_binomial(std::vector{group}); }); };
  EXPECT_EQ(of({-1, 0.5}), "trials must be between 0 and 20000, got -1");
  EXPECT_EQ(of({1, 1.5}), "chance must be between 0 and 1, got 1.5");
  EXPECT_EQ(of({0, std::numeric_limits<double>::quiet_NaN()}), "chance must be between 0 and 1, got nan");
  EXPECT_EQ(refusal([] {
              poisson_binomial(std::vector<TrialGroup>(3, {10'000, 0.5}));
            }),
            "trials of all groups must be between 0 and 20000, got 30000");
}

}  // namespace
}  // namespace stats
