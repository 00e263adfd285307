#include "stats/discrimination/hits_interval.h"

#include <gtest/gtest.h>

#include <limits>
#include <optional>

#include "stats/discrimination/normal.h"
#include "stats/discrimination/share_right.h"
#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

constexpr double kEndlessHits = std::numeric_limits<double>::infinity();

struct HitsRow {
  HitModel model;
  HitCounts counts;
  double lower, upper;
};

// Recomputed: R, the deviance minimised over the criterion by optimize (tol 1e-10), its limits by uniroot.
constexpr HitsRow kHitsRows[] = {
    {HitModel::yes_no, {15, 20, 6, 20}, .38314582543978, 2.0483140934833},
    {HitModel::yes_no, {45, 50, 12, 60}, 1.5458730114893, 2.7418753014046},
    {HitModel::yes_no, {10, 10, 3, 10}, 1.2289771424811, kEndlessHits},
    {HitModel::yes_no, {8, 10, 0, 10}, 1.5173788632485, kEndlessHits},
    {HitModel::same_different_differencing, {15, 20, 6, 20}, 1.2452512937938, 3.5005109743799},
    {HitModel::same_different_differencing, {10, 10, 3, 10}, 2.5866292307871, kEndlessHits},
    {HitModel::same_different_differencing, {13, 40, 9, 40}, 0, 1.8184625718038},
};

TEST(HitsInterval, AgreesWithRecomputedValues) {
  for (const HitsRow& row : kHitsRows) {
    const HitEstimate estimate = estimate_d_prime_of_hits(row.model, row.counts, 0.95);
    EXPECT_NEAR(estimate.limits.lower, row.lower, 1e-8);
    if (row.upper == kEndlessHits)
      EXPECT_EQ(estimate.limits.upper, kEndlessHits);
    else
      EXPECT_NEAR(estimate.limits.upper, row.upper, 1e-8);
    EXPECT_EQ(estimate.d_prime, d_prime_of_rates(row.model, hit_rates(row.counts)));
  }
}

// The table of hits_interval.h, by enumeration here: no outside source.
TEST(HitsInterval, CoversAsOftenAsSaid) {
  constexpr double said[][3] = {{.947739, .935633, .946684}, {.957474, .949201, .919018}};
  for (int row : {0, 1})
    for (int d_prime : {0, 1, 2}) {
      const int trials = 10 * (row + 1);
      const double right = normal_below(d_prime / 2.0);
      double covered = 0;
      for (int hits = 0; hits <= trials; ++hits)
        for (int alarms = 0; alarms <= trials; ++alarms) {
          const auto [lower, upper] =
              estimate_d_prime_of_hits(HitModel::yes_no, {hits, trials, alarms, trials}, 0.95).limits;
          if (lower <= d_prime && d_prime <= upper)
            covered += chance_of_exactly(hits, trials, right) * chance_of_exactly(alarms, trials, 1 - right);
        }
      EXPECT_NEAR(covered, said[row][d_prime], 5.1e-7) << trials << " at " << d_prime;
    }
}

TEST(HitsInterval, TurnsAroundWithTheAnswers) {
  const Interval limits = estimate_d_prime_of_hits(HitModel::yes_no, {13, 20, 4, 17}, 0.9).limits;
  const Interval turned = estimate_d_prime_of_hits(HitModel::yes_no, {4, 17, 13, 20}, 0.9).limits;
  const Interval renamed = estimate_d_prime_of_hits(HitModel::yes_no, {13, 17, 7, 20}, 0.9).limits;
  EXPECT_NEAR(limits.lower, -turned.upper, 1e-9);
  EXPECT_NEAR(limits.upper, -turned.lower, 1e-9);
  EXPECT_NEAR(limits.lower, renamed.lower, 1e-9);
  EXPECT_NEAR(limits.upper, renamed.upper, 1e-9);
}

TEST(HitsInterval, GoesThroughTheLinkToTheOtherModels) {
  const HitCounts counts{17, 20, 8, 20};
  const Interval plain = estimate_d_prime_of_hits(HitModel::yes_no, counts, 0.95).limits;
  const Interval abx = estimate_d_prime_of_hits(HitModel::abx_differencing, counts, 0.95).limits;
  EXPECT_NEAR(share_right_at(Link::abx_differencing, abx.lower), normal_below(plain.lower / 2), 1e-12);
  EXPECT_NEAR(share_right_at(Link::abx_differencing, abx.upper), normal_below(plain.upper / 2), 1e-12);
  const Interval wide = estimate_d_prime_of_hits(HitModel::abx_independent, {9, 20, 8, 20}, 0.95).limits;
  EXPECT_EQ(wide.lower, 0);
  EXPECT_GT(wide.upper, 0);
}

TEST(HitsInterval, IsEndlessWhereTheCountsAllowIt) {
  const auto limits = [](HitModel model, const HitCounts& counts) {
    return estimate_d_prime_of_hits(model, counts, 0.95).limits;
  };
  for (const HitModel model :
       {HitModel::yes_no, HitModel::abx_differencing, HitModel::same_different_differencing}) {
    EXPECT_EQ(limits(model, {10, 10, 0, 10}).upper, kEndlessHits);
    EXPECT_GT(limits(model, {10, 10, 0, 10}).lower, 1);
    EXPECT_EQ(limits(model, {10, 10, 10, 10}).upper, kEndlessHits);
    EXPECT_EQ(limits(model, {0, 10, 0, 10}).upper, kEndlessHits);
    const double least = model == HitModel::yes_no ? -kEndlessHits : 0;
    EXPECT_EQ(limits(model, {10, 10, 10, 10}).lower, least);
    EXPECT_EQ(limits(model, {0, 10, 0, 10}).lower, least);
    EXPECT_EQ(limits(model, {0, 10, 3, 10}).lower, least);
    EXPECT_EQ(estimate_d_prime_of_hits(model, {0, 10, 0, 10}, 0.95).d_prime, std::nullopt);
  }
  EXPECT_LT(limits(HitModel::yes_no, {0, 10, 10, 10}).upper, -1);
  EXPECT_EQ(limits(HitModel::same_different_differencing, {2, 20, 18, 20}).upper, 0);
  EXPECT_EQ(limits(HitModel::abx_differencing, {2, 20, 18, 20}).upper, 0);
}

TEST(HitsInterval, WorksWithOneTrialAndAMillion) {
  const Interval one = estimate_d_prime_of_hits(HitModel::yes_no, {1, 1, 0, 1}, 0.95).limits;
  EXPECT_LT(one.lower, 0);
  EXPECT_EQ(one.upper, kEndlessHits);
  const HitCounts many{999'999, 1'000'000, 1, 1'000'000};
  for (const HitModel model : {HitModel::yes_no, HitModel::same_different_differencing}) {
    const HitEstimate estimate = estimate_d_prime_of_hits(model, many, 1 - 1e-12);
    EXPECT_LT(estimate.limits.lower, estimate.d_prime.value());
    EXPECT_GT(estimate.limits.upper, estimate.d_prime.value());
    EXPECT_LT(estimate.limits.upper, kEndlessHits);
  }
}

TEST(HitsInterval, Refuses) {
  EXPECT_EQ(refusal([] {
              estimate_d_prime_of_hits(HitModel::yes_no, {11, 10, 0, 1}, 0.95);
            }),
            "hits must be between 0 and 10, got 11");
  EXPECT_EQ(refusal([] {
              estimate_d_prime_of_hits(HitModel::abx_independent, {10, 10, 0, 1}, 95);
            }),
            "confidence must be strictly between 0 and 1, got 95 (write 0.95 for 95 %)");
}

}  // namespace
}  // namespace stats
