#include "stats/discrimination/share_right.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

constexpr double kInfiniteDPrime = std::numeric_limits<double>::infinity();

struct LinkColumn {
  Link link;
  const char* of_share;    // column of pc_from_dprime.csv
  const char* of_d_prime;  // column of dprime_from_pc.csv
};

constexpr LinkColumn kLinkColumns[] = {
    {Link::two_afc, "twoAFC", "twoAFC"},         {Link::three_afc, "threeAFC", "threeAFC"},
    {Link::abx_independent, "ABX_io", "ABX_io"}, {Link::abx_differencing, "ABX_diff", "ABX_diff"},
    {Link::duo_trio, "duotrio", "ABX_diff"},     {Link::same_different_independent, "SD_io", "SD_io"},
    {Link::triangle, "triangle", "triangle"},
};

// DP-1, recomputed: R pnorm and integrate on the formulas in the source of psyphy (confirmed).
TEST(ShareRight, AgreesWithRecomputedValues) {
  for (const CsvRow& row : check_values("pc_from_dprime.csv"))
    for (const LinkColumn& column : kLinkColumns)
      EXPECT_NEAR(share_right_at(column.link, row.number("d")), row.number(column.of_share), 5.1e-11)
          << link_name(column.link) << " at " << row.number("d");
}

// DP-2, recomputed: R uniroot, tol 1e-12.
TEST(DPrime, AgreesWithRecomputedValues) {
  for (const CsvRow& row : check_values("dprime_from_pc.csv"))
    for (const LinkColumn& column : kLinkColumns)
      EXPECT_NEAR(d_prime_at(column.link, row.number("pc")), row.number(column.of_d_prime), 5.1e-9)
          << link_name(column.link) << " at " << row.number("pc");
}

// DP-2, recomputed; Hacker and Ratcliff (1979) print .95, 1.43 and 1.68 (memory). The triangle at .34 and
// .40: recomputed with Python mpmath, 25 digits, since the .270167 and .879138 of DP-2 carry the error of R's
// uniroot at its usual tolerance.
TEST(DPrime, AgreesWithPrintedValues) {
  EXPECT_NEAR(d_prime_at(Link::triangle, .34), .270173705671610, 5.1e-14);
  EXPECT_NEAR(d_prime_at(Link::triangle, .40), .879112212324415, 5.1e-14);
  EXPECT_NEAR(d_prime_at(Link::triangle, .34), .270167, 3e-5);
  EXPECT_NEAR(d_prime_at(Link::triangle, .40), .879138, 3e-5);
  EXPECT_NEAR(d_prime_at(Link::triangle, .50), 1.466263, 5.1e-7);
  EXPECT_NEAR(d_prime_at(Link::four_afc, .75), 1.682195, 5.1e-7);
  EXPECT_NEAR(d_prime_at(Link::five_afc, .75), 1.846278, 5.1e-7);
  EXPECT_NEAR(d_prime_at(Link::two_afc, .75), .95, 5.1e-3);
  EXPECT_NEAR(d_prime_at(Link::three_afc, .75), 1.43, 5.1e-3);
  EXPECT_NEAR(d_prime_at(Link::four_afc, .75), 1.68, 5.1e-3);
}

// DP-1, Ennis (1993): .418 and .582 (memory).
TEST(ShareRight, AgreesWithEnnis) {
  EXPECT_NEAR(share_right_at(Link::triangle, 1), .418, 5.1e-4);
  EXPECT_NEAR(share_right_at(Link::duo_trio, 1), .582, 5.1e-4);
}

TEST(ShareRight, StartsAtChanceAndEndsAtAll) {
  for (const Link link : kLinks) {
    EXPECT_NEAR(share_right_at(link, 0), link_chance(link), 1e-15) << link_name(link);
    EXPECT_EQ(share_right_at(link, kInfiniteDPrime), 1) << link_name(link);
    EXPECT_EQ(link_slope(link, kInfiniteDPrime), 0) << link_name(link);
    EXPECT_EQ(d_prime_at(link, 1), kInfiniteDPrime) << link_name(link);
    EXPECT_EQ(d_prime_at(link, link_chance(link)), 0) << link_name(link);
    EXPECT_EQ(d_prime_at(link, 0), 0) << link_name(link);
  }
}

TEST(DPrime, IsTheInverseAllTheWay) {
  for (const Link link : kLinks)
    for (double d_prime = 0.05; d_prime < 6; d_prime += 0.05) {
      const double share = share_right_at(link, d_prime);
      const double grain = 4e-16 / link_slope(link, d_prime);  // what a rounding of the share does to d'
      EXPECT_NEAR(d_prime_at(link, share), d_prime, 1e-13 + grain) << link_name(link) << " at " << d_prime;
    }
}

// Near chance 1/2 the share is 1/2 + 2 phi(0)^2 a b, with a and b the two arguments of Phi.
TEST(DPrime, IsExactNearBothEnds) {
  const double excess = 0x1p-40;
  const double product = excess * std::acos(-1.0);
  EXPECT_NEAR(d_prime_at(Link::abx_independent, 0.5 + excess) / std::sqrt(product * std::sqrt(8.0)), 1,
              1e-11);
  EXPECT_NEAR(d_prime_at(Link::abx_differencing, 0.5 + excess) / std::sqrt(product * std::sqrt(12.0)), 1,
              1e-11);
  EXPECT_NEAR(d_prime_at(Link::same_different_independent, 0.5 + excess) / std::sqrt(4 * product), 1, 1e-11);
  for (const Link link : kLinks)
    for (double wrong : {0x1p-20, 0x1p-40, 0x1p-53})
      EXPECT_EQ(share_right_at(link, d_prime_at(link, 1 - wrong)), 1 - wrong) << link_name(link);
}

// Recomputed: Python mpmath, 30 digits, regula falsi on the published formulas and integrals.
TEST(DPrime, AgreesWithLongNumbersNearTheEnds) {
  EXPECT_NEAR(d_prime_at(Link::two_afc, 1 - 0x1p-20), 6.735900660258621, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::two_afc, 1 - 0x1p-40), 9.96695328651515, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::two_afc, 0.5 + 0x1p-20), 3.380687429251107e-6, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::three_afc, 1 - 0x1p-20), 6.93053101437301, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::three_afc, 1 - 0x1p-40), 10.10250548351353, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::three_afc, 0.35), 0.0585406268155054, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::abx_independent, 1 - 0x1p-20), 9.526005514356365, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::abx_independent, 1 - 0x1p-40), 14.09540051333207, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::abx_independent, 0.5 + 0x1p-20), 0.002911036872698009, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::abx_differencing, 1 - 0x1p-20), 11.66692217834579, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::abx_differencing, 1 - 0x1p-40), 17.26326948890984, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::abx_differencing, 0.5 + 0x1p-20), 0.003221592025876764, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::same_different_independent, 1 - 0x1p-20), 9.801928228591889, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::same_different_independent, 1 - 0x1p-40), 14.28710406870425, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::same_different_independent, 0.5 + 0x1p-20), 0.003461825656188171, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::triangle, 1 - 0x1p-20), 12.00486155715332, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::triangle, 1 - 0x1p-40), 17.49805743518359, 1e-13);
  EXPECT_NEAR(d_prime_at(Link::triangle, 0.35), 0.4291529006848985, 1e-13);
}

TEST(LinkSlope, IsTheDerivative) {
  for (const Link link : kLinks)
    for (double d_prime : {0.5, 1.0, 2.0, 4.0}) {
      const double h = 1e-3;
      const auto share = [=](int steps) { return share_right_at(link, d_prime + steps * h); };
      EXPECT_NEAR(link_slope(link, d_prime), (share(-2) - 8 * share(-1) + 8 * share(1) - share(2)) / (12 * h),
                  1e-11)
          << link_name(link);
    }
}

TEST(ShareRight, OfTheChoiceOfAnyNumber) {
  for (double d_prime : {0.0, 0.3, 1.0, 3.0, 8.0}) {
    EXPECT_NEAR(choice_share_right(2, d_prime), share_right_at(Link::two_afc, d_prime), 1e-15);
    EXPECT_EQ(choice_share_right(5, d_prime), share_right_at(Link::five_afc, d_prime));
    for (int alternatives : {2, 3, 10, 300})
      EXPECT_GT(choice_share_right(alternatives, d_prime), choice_share_right(alternatives + 1, d_prime));
  }
  for (int alternatives : {2, 7, 100, 1'000}) {
    EXPECT_NEAR(choice_share_right(alternatives, 0), 1.0 / alternatives, 1e-15);
    EXPECT_NEAR(choice_d_prime(alternatives, choice_share_right(alternatives, 1.5)), 1.5, 1e-13);
  }
  EXPECT_NEAR(choice_d_prime(4, .75), 1.682195, 5.1e-7);  // DP-2, recomputed
  EXPECT_EQ(choice_d_prime(4, .25), 0);
  EXPECT_EQ(choice_d_prime(4, 1), kInfiniteDPrime);
}

/// A normal observation by adding twelve uniform ones: near enough for three digits.
double observation(Random& random, double mean) {
  double sum = mean - 6;
  for (int i = 0; i < 12; ++i) sum += random.below(1u << 30) / double(1 << 30);
  return sum;
}

// The models as rules of an observer, against the formulas: 100,000 trials, 4 standard errors and the error
// of the drawn normal.
TEST(ShareRight, IsThatOfAnObserverWhoFollowsTheRule) {
  Random random(6);
  const double d_prime = 1.7;
  int choice = 0, abx = 0, abx_apart = 0, same = 0, odd = 0;
  const int trials = 100'000;
  for (int trial = 0; trial < trials; ++trial) {
    const double a = observation(random, d_prime), b = observation(random, 0), c = observation(random, 0),
                 x = observation(random, d_prime);
    choice += a > b && a > c;
    abx += std::abs(x - a) < std::abs(x - b);
    abx_apart += (a > b) == (x > d_prime / 2);
    same += trial % 2 ? (a > d_prime / 2) == (x > d_prime / 2) : (a > d_prime / 2) != (b > d_prime / 2);
    odd += std::abs(b - c) < std::min(std::abs(a - b), std::abs(a - c));
  }
  EXPECT_NEAR(choice / double(trials), share_right_at(Link::three_afc, d_prime), 0.007);
  EXPECT_NEAR(abx / double(trials), share_right_at(Link::abx_differencing, d_prime), 0.007);
  EXPECT_NEAR(abx_apart / double(trials), share_right_at(Link::abx_independent, d_prime), 0.007);
  EXPECT_NEAR(same / double(trials), share_right_at(Link::same_different_independent, d_prime), 0.007);
  EXPECT_NEAR(odd / double(trials), share_right_at(Link::triangle, d_prime), 0.007);
}

TEST(ShareRight, Refuses) {
  EXPECT_EQ(refusal([] { share_right_at(Link::triangle, -0.1); }),
            "d_prime must be between 0 and inf, got -0.1");
  EXPECT_EQ(refusal([] { link_slope(Link::two_afc, std::numeric_limits<double>::quiet_NaN()); }),
            "d_prime must be between 0 and inf, got nan");
  EXPECT_EQ(refusal([] { d_prime_at(Link::two_afc, 1.1); }), "share must be between 0 and 1, got 1.1");
  EXPECT_EQ(refusal([] { choice_share_right(1, 1); }), "alternatives must be between 2 and 1000, got 1");
  EXPECT_EQ(refusal([] { choice_d_prime(1'001, 0.5); }), "alternatives must be between 2 and 1000, got 1001");
}

}  // namespace
}  // namespace stats
