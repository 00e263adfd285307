#include "stats/discrimination/d_prime.h"

#include <gtest/gtest.h>

#include <limits>
#include <optional>

#include "stats/refusal.h"
#include "stats/share/approximate_interval.h"
#include "stats/share/binomial.h"
#include "stats/share/coverage.h"

namespace stats {
namespace {

// Recomputed: R uniroot on the links, tol 1e-14; standard error sqrt(.75 * .25/16) over the five-point
// derivative; limits through the likelihood interval .511007037692695 to .914755010427558.
TEST(DPrimeEstimate, AgreesWithRecomputedValues) {
  const DPrimeEstimate abx = estimate_d_prime(Link::abx_differencing, 12, 16, 0.95);
  EXPECT_NEAR(abx.d_prime, 2.0200391930396, 5.1e-12);
  EXPECT_NEAR(abx.standard_error.value(), .684215185661, 5.1e-11);
  EXPECT_NEAR(abx.limits.lower, .348437507529, 5.1e-11);
  EXPECT_NEAR(abx.limits.upper, 3.456118368823, 5.1e-11);
  const DPrimeEstimate choice = estimate_d_prime(Link::two_afc, 12, 16, 0.95);
  EXPECT_NEAR(choice.limits.lower, .039023884463, 5.1e-11);
  EXPECT_NEAR(choice.limits.upper, 1.938365108139, 5.1e-11);
  const DPrimeEstimate triangle = estimate_d_prime(Link::triangle, 12, 16, 0.95);
  EXPECT_NEAR(triangle.d_prime, 2.79744946969, 5.1e-11);
  EXPECT_NEAR(triangle.standard_error.value(), .670076216, 5.1e-10);
  EXPECT_NEAR(estimate_d_prime(Link::abx_independent, 12, 16, 0.95).standard_error.value(), .582590140777,
              5.1e-11);
}

// The table of d_prime.h. Recomputed: R, the sum over x at every limit -+ 1e-11.
TEST(DPrimeEstimate, CoversAsOftenAsSaid) {
  constexpr int trials[] = {10, 16, 20, 50, 100};
  constexpr double everywhere[] = {.834642536762, .82577771445, .822481088556, .842505354726, .841115079042};
  constexpr double between[] = {.834642536762, .82577771445, .867170213415, .91553110543, .926606464846};
  for (std::size_t i = 0; i < 5; ++i) {
    const auto least = [&](double lowest, double highest) {
      return least_coverage(IntervalMethod::likelihood, trials[i], 0.95, lowest, highest).coverage;
    };
    for (const Link link : kLinks) EXPECT_NEAR(least(link_chance(link), 1), everywhere[i], 1e-8);
    EXPECT_NEAR(least(0.6, 0.9), between[i], 1e-8);
  }
}

TEST(DPrimeEstimate, CoversDPrimeAsTheShareIsCovered) {
  for (const Link link : {Link::two_afc, Link::abx_differencing, Link::triangle})
    for (double d_prime : {0.4, 1.3, 2.9}) {
      const double share = share_right_at(link, d_prime);
      double covered = 0;
      for (int correct = 0; correct <= 16; ++correct) {
        const Interval limits = estimate_d_prime(link, correct, 16, 0.95).limits;
        if (limits.lower <= d_prime && d_prime <= limits.upper)
          covered += chance_of_exactly(correct, 16, share);
      }
      EXPECT_NEAR(covered, coverage(IntervalMethod::likelihood, 16, share, 0.95), 1e-12);
    }
}

TEST(DPrimeEstimate, GrowsWithTheNumberRight) {
  for (const Link link : kLinks) {
    DPrimeEstimate last = estimate_d_prime(link, 0, 20, 0.9);
    for (int correct = 1; correct <= 20; ++correct) {
      const DPrimeEstimate next = estimate_d_prime(link, correct, 20, 0.9);
      EXPECT_GE(next.d_prime, last.d_prime);
      EXPECT_GE(next.limits.lower, last.limits.lower);
      EXPECT_GE(next.limits.upper, last.limits.upper);
      EXPECT_LE(next.limits.lower, next.d_prime);
      EXPECT_GE(next.limits.upper, next.d_prime);
      last = next;
    }
  }
}

TEST(DPrimeEstimate, IsInfiniteWhereEveryAnswerWasRight) {
  const DPrimeEstimate all = estimate_d_prime(Link::abx_differencing, 10, 10, 0.95);
  EXPECT_EQ(all.d_prime, std::numeric_limits<double>::infinity());
  EXPECT_EQ(all.standard_error, std::nullopt);
  EXPECT_NEAR(share_right_at(Link::abx_differencing, all.limits.lower),
              likelihood_interval(10, 10, .95).lower, 1e-14);
  EXPECT_EQ(all.limits.upper, std::numeric_limits<double>::infinity());
  EXPECT_EQ(d_prime_remark(all), "infinite: every answer was right");
}

TEST(DPrimeEstimate, IsNothingAtOrBelowChance) {
  const DPrimeEstimate chance = estimate_d_prime(Link::abx_differencing, 8, 16, 0.95);
  EXPECT_EQ(chance.d_prime, 0);
  EXPECT_EQ(chance.standard_error, std::nullopt);
  EXPECT_EQ(chance.limits.lower, 0);
  EXPECT_GT(chance.limits.upper, 0);
  EXPECT_EQ(d_prime_remark(chance), "0: no more right than by chance");
  const DPrimeEstimate few = estimate_d_prime(Link::abx_differencing, 2, 16, 0.95);
  EXPECT_EQ(few.d_prime, 0);
  EXPECT_EQ(few.limits.upper, 0);
  EXPECT_EQ(d_prime_remark(few), "0: so few right that no d' fits");
  EXPECT_EQ(d_prime_remark(estimate_d_prime(Link::abx_differencing, 12, 16, 0.95)), "");
}

TEST(DPrimeEstimate, Refuses) {
  EXPECT_EQ(refusal([] { estimate_d_prime(Link::triangle, 17, 16, 0.95); }),
            "correct must be between 0 and 16, got 17");
  EXPECT_EQ(refusal([] { estimate_d_prime(Link::triangle, 0, 0, 0.95); }),
            "trials must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { estimate_d_prime(Link::triangle, 16, 16, 95); }),
            "confidence must be strictly between 0 and 1, got 95 (write 0.95 for 95 %)");
}

}  // namespace
}  // namespace stats
