#include "stats/worth/goodness_of_fit.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/refusal.h"
#include "stats/worth/published_preferences.h"

namespace stats {
namespace {

// Preferences in a circle, 10 each: all worths equal, every row a binomial of 10 of 10 against 1/2.
TEST(GoodnessOfFit, OfACircleIsBad) {
  const std::vector<PairCount> circle{{0, 1, 10, 0, 0}, {1, 2, 10, 0, 0}, {2, 0, 10, 0, 0}};
  const auto found = goodness_of_fit(3, circle).value();
  EXPECT_NEAR(found.deviance, 60 * std::log(2), 1e-10);
  EXPECT_EQ(found.degrees_of_freedom, 1);
  EXPECT_NEAR(found.chi_square_p.value() / 1.12634926167e-10, 1,
              1e-9);  // R: pchisq(60 * log(2), 1, lower.tail = FALSE)
  EXPECT_EQ(found.simulated->p, 0.001);
  EXPECT_FALSE(found.simulated->exact);
}

// PC-5: deviance 44.05346123 with 36 degrees of freedom; R: pchisq(44.05346123, 36, lower.tail = FALSE), and with so few
// answers to a row far from it 0.384 of 20,000 deviances that R's glm gives of answers drawn by rbinom from its fit.
TEST(GoodnessOfFit, OfBaseball) {
  const auto found = goodness_of_fit(7, baseball()).value();
  EXPECT_NEAR(found.chi_square_p.value(), .167611392, 5.1e-9);
  EXPECT_NEAR(found.simulated->p, 0.384, 0.062);  // 4 standard deviations
}

// One row of three answers with worths that fit: every simulated deviance counts.
TEST(GoodnessOfFit, WithoutDegreesOfFreedomIsPerfect) {
  const auto found = goodness_of_fit(2, std::vector<PairCount>{{0, 1, 1, 0, 2}}, {}, {.draws = 19}).value();
  EXPECT_NEAR(found.deviance, 0, 1e-12);
  EXPECT_FALSE(found.chi_square_p);
  EXPECT_EQ(found.simulated->p, 1);
}

TEST(GoodnessOfFit, LeavesManyAnswersToChiSquare) {
  const std::vector<PairCount> many{
      {0, 1, 60'000, 0, 50'000}, {1, 2, 60'000, 0, 50'000}, {0, 2, 60'000, 0, 50'000}};
  EXPECT_FALSE(goodness_of_fit(3, many)->simulated);
}

TEST(GoodnessOfFit, SaysNothingOrRefuses) {
  const std::vector<PairCount> ranked{{0, 1, 3, 0, 0}};
  EXPECT_FALSE(goodness_of_fit(2, ranked));
  EXPECT_EQ(refusal([&] { goodness_of_fit(2, ranked, {.bias_reduced = true}); }),
            "goodness of fit needs a fit without bias reduction");
  EXPECT_EQ(refusal([&] { goodness_of_fit(2, ranked, {}, {.draws = 0}); }),
            "draws must be between 1 and 100000000, got 0");
}

}  // namespace
}  // namespace stats
