#include "stats/association/partial_rho.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/association/spearman.h"
#include "stats/refusal.h"

namespace stats {
namespace {

using Numbers = std::vector<double>;

// With one control it is (r_xy - r_xz r_yz) / sqrt((1 - r_xz^2)(1 - r_yz^2)) of Spearman's, in any textbook.
TEST(PartialRhos, OfOneControlAreTheFormula) {
  const Numbers x{3, 1, 4, 1, 5, 9, 2, 6}, y{2, 7, 1, 8, 2, 8, 1, 8}, z{1, 6, 1, 8, 0, 3, 3, 9};
  const auto r = [](const Numbers& a, const Numbers& b) { return spearman(a, b, Alternative::greater)->rho; };
  const double expected =
      (r(x, y) - r(x, z) * r(y, z)) / std::sqrt((1 - r(x, z) * r(x, z)) * (1 - r(y, z) * r(y, z)));
  const auto found = partial_rho(x, y, {z}).value();
  EXPECT_NEAR(found.rho, expected, 1e-12);
  EXPECT_EQ(found.degrees_of_freedom, 5);
  EXPECT_TRUE(found.test.exact);
  // A control that says the same once more changes the degrees of freedom only.
  const auto twice = partial_rho(x, y, {z, z}).value();
  EXPECT_NEAR(twice.rho, expected, 1e-12);
  EXPECT_EQ(twice.degrees_of_freedom, 4);
}

TEST(PartialRhos, OfPairsWithinEqualControls) {
  const auto found =
      partial_rho(Numbers{1, 2, 3, 4, 5, 6}, Numbers{2, 1, 4, 3, 6, 5}, {{1, 1, 2, 2, 3, 3}}).value();
  EXPECT_NEAR(found.rho, -1, 1e-12);
  EXPECT_EQ(found.t_p, 0);
  EXPECT_LE(found.test.p, 0.1);
}

TEST(PartialRhos, SayNothingOrRefuse) {
  const Numbers x{1, 2, 3, 4}, y{2, 1, 4, 3};
  EXPECT_FALSE(partial_rho(x, y, {x}));
  EXPECT_FALSE(partial_rho(Numbers{7, 7, 7, 7}, y, {x}));
  EXPECT_EQ(refusal([&] { partial_rho(x, y, {}); }), "number of controls must be between 1 and 1, got 0");
  EXPECT_EQ(refusal([&] {
              partial_rho(x, y, {{1, 2}});
            }),
            "number of values of a control must be between 4 and 4, got 2");
}

}  // namespace
}  // namespace stats
