#include "stats/sequential/group_sequential.h"

#include <gtest/gtest.h>

#include <boost/math/distributions/normal.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <limits>
#include <numeric>

#include "stats/csv.h"
#include "stats/refusal.h"

namespace stats {
namespace {

constexpr double kZ975 = 1.959963984540054;

std::vector<double> equal_looks(int looks) {
  std::vector<double> information(static_cast<std::size_t>(looks));
  std::iota(information.begin(), information.end(), 1.0);
  return information;
}

double size_of(const std::vector<double>& boundary, const std::vector<double>& information, Sides sides) {
  const auto exits = exit_probabilities(boundary, information, sides);
  return std::accumulate(exits.begin(), exits.end(), 0.0);
}

// SEQ-3, file group_sequential_constants.csv (Jennison and Turnbull, tables 2.1 and 2.3: memory agrees;
// recomputed: recursive Gauss-Legendre integration), 5 decimals.
TEST(GroupConstants, AgreeWithRecomputedValues) {
  for (const CsvRow& row : check_values("group_sequential_constants.csv"))
    for (const auto& [level, suffix] : {std::pair(0.05, "05"), {0.10, "10"}, {0.01, "01"}}) {
      const int looks = row.whole("K");
      const std::string digits = suffix;
      EXPECT_NEAR(pocock_constant(looks, level, Sides::two), row.number("pocock" + digits), 5.1e-6);
      EXPECT_NEAR(obrien_fleming_constant(looks, level, Sides::two), row.number("obf" + digits), 5.1e-6);
    }
}

// Recomputed: NumPy, one Gauss-Legendre rule of 300 points a look, SciPy brentq, 11 decimals. Two sides at
// 0.05, then one side at 0.025.
TEST(GroupConstants, AgreeToElevenDecimals) {
  const struct {
    int looks;
    double pocock, obrien_fleming, pocock_one, obrien_fleming_one;
  } rows[] = {{2, 2.17827208873, 1.97743095929, 2.17827209438, 1.97743095946},
              {3, 2.28947806102, 2.00403557861, 2.28947845485, 2.00403557960},
              {5, 2.41317622006, 2.04007317480, 2.41318027098, 2.04007317517},
              {8, 2.51233621166, 2.07220677227, 2.51234997635, 2.07220677264}};
  for (const auto& row : rows) {
    EXPECT_NEAR(pocock_constant(row.looks, 0.05, Sides::two), row.pocock, 2e-11);
    EXPECT_NEAR(obrien_fleming_constant(row.looks, 0.05, Sides::two), row.obrien_fleming, 2e-11);
    EXPECT_NEAR(pocock_constant(row.looks, 0.025, Sides::one), row.pocock_one, 2e-11);
    EXPECT_NEAR(obrien_fleming_constant(row.looks, 0.025, Sides::one), row.obrien_fleming_one, 2e-11);
  }
}

// SEQ-3: nominal levels of Pocock's boundary, 6 decimals; .0294 for two looks is confirmed.
TEST(PocockConstant, HasTheRecomputedNominalLevels) {
  for (const auto& [looks, nominal] : {std::pair(2, .029386), {3, .022052}, {5, .015814}})
    EXPECT_NEAR(std::erfc(pocock_constant(looks, 0.05, Sides::two) / std::sqrt(2)), nominal, 5.1e-7);
}

// SEQ-4 (Armitage, McPherson and Rowe 1969: memory agrees to 3 digits; recomputed to 5 decimals), two sides
// at the exact 97.5 % point. Ten more digits: NumPy as above.
TEST(ExitProbabilities, SumToTheRecomputedSizes) {
  const struct {
    int looks;
    double size, longer;
  } rows[] = {{2, .08312, .0831178033545}, {3, .10726, .1072563746396},  {4, .12617, .1261690125021},
              {5, .14169, .1416893325910}, {10, .19336, .1933565933498}, {20, .24791, .2479109386192},
              {50, .32045, .3204500038887}};
  for (const auto& row : rows) {
    const std::vector<double> boundary(static_cast<std::size_t>(row.looks), kZ975);
    const double size = size_of(boundary, equal_looks(row.looks), Sides::two);
    EXPECT_NEAR(size, row.size, 5.1e-6) << row.looks;
    EXPECT_NEAR(size, row.longer, 1e-12) << row.looks;
  }
}

// Recomputed: NumPy as above, looks at .2, .4, .6, .8 and 1, 10 decimals.
TEST(SpendingBoundary, AgreesWithRecomputedValues) {
  const std::vector<double> fractions{.2, .4, .6, .8, 1};
  const struct {
    Spending spending;
    Sides sides;
    double level;
    std::vector<double> boundary;
  } rows[] = {{Spending::obrien_fleming,
               Sides::two,
               .05,
               {4.3826127029, 3.0997274776, 2.5533549726, 2.2538478983, 2.0635011036}},
              {Spending::obrien_fleming,
               Sides::one,
               .025,
               {4.8768849488, 3.3570119216, 2.6802800645, 2.2898167677, 2.0310320435}},
              {Spending::pocock,
               Sides::two,
               .05,
               {2.4379766881, 2.4268138582, 2.4101938403, 2.3966454006, 2.3859845716}},
              {Spending::pocock,
               Sides::one,
               .025,
               {2.4379766881, 2.4268138584, 2.4101941425, 2.3966492654, 2.3859996498}}};
  for (const auto& row : rows) {
    const auto boundary = spending_boundary(row.spending, row.level, fractions, row.sides);
    for (std::size_t k = 0; k < 5; ++k) EXPECT_NEAR(boundary[k], row.boundary[k], 1e-9);
  }
}

TEST(SpendingBoundary, SpendsJustWhatItMay) {
  const std::vector<double> fractions{.1, .15, .5, .9, 1};
  for (const auto spending : {Spending::obrien_fleming, Spending::pocock})
    for (const auto sides : {Sides::one, Sides::two}) {
      const auto boundary = spending_boundary(spending, 0.05, fractions, sides);
      const auto exits = exit_probabilities(boundary, fractions, sides);
      double spent = 0;
      for (std::size_t k = 0; k < 5; ++k)
        EXPECT_NEAR(spent += exits[k], level_spent(spending, 0.05, fractions[k]), 1e-13);
    }
}

TEST(SpendingBoundary, IsInfiniteWhereNothingMayBeSpent) {
  const auto boundary =
      spending_boundary(Spending::obrien_fleming, 0.05, std::vector{0.001, 1.0}, Sides::two);
  EXPECT_EQ(boundary[0], std::numeric_limits<double>::infinity());
  EXPECT_NEAR(boundary[1], kZ975, 1e-12);
}

// Two looks by another integrator: the score at the first look, then the tail given it.
TEST(ExitProbabilities, OfTwoLooksAgreeWithKronrod) {
  const boost::math::normal normal;
  for (double first : {0.5, 1.7, 3.0})
    for (double second : {0.8, 2.1})
      for (double share : {0.01, 0.3, 0.9}) {
        const auto later = [&](double z) {
          const double centre = z * std::sqrt(share);
          const double step = std::sqrt(1 - share);
          return pdf(normal, z) *
                 (cdf(complement(normal, (second - centre) / step)) + cdf(normal, (-second - centre) / step));
        };
        const double integral =
            boost::math::quadrature::gauss_kronrod<double, 61>::integrate(later, -first, first, 10, 1e-14);
        const auto exits =
            exit_probabilities(std::vector{first, second}, std::vector{share, 1.0}, Sides::two);
        EXPECT_NEAR(exits[0], 2 * cdf(complement(normal, first)), 1e-14);
        EXPECT_NEAR(exits[1], integral, 1e-13);
      }
}

TEST(ExitProbabilities, DoNotDependOnTheUnitOfInformation) {
  const std::vector<double> boundary{2.5, 2.2, 2.0};
  for (const auto sides : {Sides::one, Sides::two})
    EXPECT_NEAR(size_of(boundary, {8, 16, 24}, sides), size_of(boundary, {1, 2, 3}, sides), 1e-15);
}

TEST(ExitProbabilities, PassALookThatIsClosed) {
  const double never = std::numeric_limits<double>::infinity();
  for (const auto sides : {Sides::one, Sides::two}) {
    const auto exits = exit_probabilities(std::vector{never, never, 1.5}, std::vector{0.2, 0.5, 1.0}, sides);
    EXPECT_EQ(exits[0], 0);
    EXPECT_EQ(exits[1], 0);
    EXPECT_NEAR(exits[2], (sides == Sides::two ? 1 : 0.5) * std::erfc(1.5 / std::sqrt(2)), 1e-13);
  }
  const auto at_once = exit_probabilities(std::vector{0.0, 1.0}, std::vector{1.0, 2.0}, Sides::two);
  EXPECT_NEAR(at_once[0], 1, 1e-15);
  EXPECT_EQ(at_once[1], 0);
}

// Looks close together lose nothing: a second look one ten-thousandth later hardly adds.
TEST(ExitProbabilities, ResolveUnevenLooks) {
  const double once = 2 * cdf(complement(boost::math::normal(), 2.0));
  const double twice = size_of({2, 2}, {0.9999, 1}, Sides::two);
  EXPECT_GT(twice, once);
  EXPECT_LT(twice, once + 0.001);
  const double backwards =
      size_of({2, std::numeric_limits<double>::infinity(), 2}, {0.0001, 0.9999, 1}, Sides::two);
  EXPECT_NEAR(backwards, size_of({2, 2}, {0.0001, 1}, Sides::two), 1e-12);
}

TEST(GroupSequential, RefusesImpossibleArguments) {
  const auto exits = [](std::vector<double> boundary, std::vector<double> information) {
    return refusal([&] { exit_probabilities(boundary, information, Sides::two); });
  };
  EXPECT_EQ(exits({}, {}), "looks must be between 1 and 100, got 0");
  EXPECT_EQ(exits({2}, {1, 2}), "number of boundaries must be between 2 and 2, got 1");
  EXPECT_EQ(exits({-1, 2}, {1, 2}), "boundary must be between 0 and inf, got -1");
  EXPECT_EQ(exits({std::nan(""), 2}, {1, 2}), "boundary must be between 0 and inf, got nan");
  EXPECT_NE(exits({2, 2}, {2, 1}), "(not refused)");
  EXPECT_NE(exits({2, 2}, {0, 1}), "(not refused)");
  EXPECT_EQ(exits({2, 2}, {1, INFINITY}), "information[1] must be a finite number, got inf");
  EXPECT_EQ(refusal([] { pocock_constant(0, 0.05, Sides::two); }), "looks must be between 1 and 100, got 0");
  EXPECT_EQ(refusal([] { obrien_fleming_constant(2, 5, Sides::two); }),
            "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
  EXPECT_EQ(refusal([] { pocock_constant(1, 0.5, Sides::one); }),
            "level of one side must be between 0 and 0.49999999999999994, got 0.5");
  EXPECT_EQ(refusal([] {
              spending_boundary(Spending::pocock, 0.05, std::vector{0.5, 2.0}, Sides::two);
            }),
            "fraction must be between 0 and 1, got 2");
}

}  // namespace
}  // namespace stats
