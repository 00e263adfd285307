#include "stats/discrimination/hits.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <optional>

#include "stats/discrimination/share_right.h"
#include "stats/refusal.h"

namespace stats {
namespace {

constexpr double kInfiniteHits = std::numeric_limits<double>::infinity();

struct RatesRow {
  HitRates rates;
  double abx_differencing, abx_independent, same_different_differencing, same_different_independent;
};

// DP-3, recomputed: R psyphy dprime.ABX(H, F, method =) and dprime.SD(H, F, method =), whose uniroot leaves
// errors up to 3e-5.
TEST(HitRates, AgreeWithPsyphy) {
  constexpr RatesRow rows[] = {{{.75, .30}, 1.868700, 1.660967, 2.405887, 1.954916},
                               {{.80, .20}, 2.354860, 2.072580, 3.000959, 2.424570}};
  for (const RatesRow& row : rows) {
    EXPECT_NEAR(d_prime_of_rates(HitModel::abx_differencing, row.rates).value(), row.abx_differencing, 3e-5);
    EXPECT_NEAR(d_prime_of_rates(HitModel::abx_independent, row.rates).value(), row.abx_independent, 3e-5);
    EXPECT_NEAR(d_prime_of_rates(HitModel::same_different_differencing, row.rates).value(),
                row.same_different_differencing, 3e-5);
    EXPECT_NEAR(d_prime_of_rates(HitModel::same_different_independent, row.rates).value(),
                row.same_different_independent, 3e-5);
  }
}

// Recomputed: the same formulas in R with uniroot, tol 1e-14.
TEST(HitRates, AgreeWithRecomputedValues) {
  constexpr RatesRow rows[] = {
      {{.75, .30}, 1.8686765855108, 1.6609822736098, 2.4058862606681, 1.9549161851215},
      {{.80, .20}, 2.3548600648215, 2.0725792799874, 3.0009405093285, 2.4245698587726},
      {{.60, .55}, .53465862798252, .48249122782162, .72888564110332, .57330246870936}};
  for (const RatesRow& row : rows) {
    EXPECT_NEAR(d_prime_of_rates(HitModel::abx_differencing, row.rates).value(), row.abx_differencing, 1e-12);
    EXPECT_NEAR(d_prime_of_rates(HitModel::abx_independent, row.rates).value(), row.abx_independent, 1e-12);
    EXPECT_NEAR(d_prime_of_rates(HitModel::same_different_differencing, row.rates).value(),
                row.same_different_differencing, 1e-12);
    EXPECT_NEAR(d_prime_of_rates(HitModel::same_different_independent, row.rates).value(),
                row.same_different_independent, 1e-12);
  }
}

// Recomputed: R qnorm.
TEST(YesNo, AgreesWithRecomputedValues) {
  constexpr HitRates rates{.75, .30};
  EXPECT_NEAR(d_prime_of_rates(HitModel::yes_no, rates).value(), 1.19889026290412, 1e-13);
  EXPECT_NEAR(criterion_c(rates).value(), -.075044618744021, 1e-14);
  EXPECT_NEAR(ln_beta(rates).value(), -.089970262695558, 1e-14);
}

TEST(HitRates, WithoutBiasGiveTheLink) {
  for (double share : {.55, .7, .9, .99}) {
    const HitRates rates{share, 1 - share};
    EXPECT_NEAR(d_prime_of_rates(HitModel::abx_differencing, rates).value(),
                d_prime_at(Link::abx_differencing, share), 1e-12);
    EXPECT_NEAR(d_prime_of_rates(HitModel::same_different_independent, rates).value(),
                d_prime_at(Link::same_different_independent, share), 1e-12);
    EXPECT_NEAR(d_prime_of_rates(HitModel::yes_no, rates).value() / std::sqrt(2.0),
                d_prime_at(Link::two_afc, share), 1e-12);
    EXPECT_NEAR(criterion_c(rates).value(), 0, 1e-14);
    EXPECT_NEAR(ln_beta(rates).value(), 0, 1e-14);
  }
}

TEST(HitRates, InWhichFalseAlarmsExceedHits) {
  constexpr HitRates rates{.3, .75};
  EXPECT_NEAR(d_prime_of_rates(HitModel::yes_no, rates).value(), -1.19889026290412, 1e-13);
  for (const HitModel model : {HitModel::same_different_differencing, HitModel::same_different_independent,
                               HitModel::abx_differencing, HitModel::abx_independent}) {
    EXPECT_EQ(d_prime_of_rates(model, rates), 0);
    EXPECT_EQ(d_prime_of_rates(model, {.4, .4}), 0);
  }
}

TEST(HitRates, OfNothingAndEverything) {
  for (const HitModel model :
       {HitModel::yes_no, HitModel::same_different_differencing, HitModel::same_different_independent,
        HitModel::abx_differencing, HitModel::abx_independent}) {
    EXPECT_EQ(d_prime_of_rates(model, {1, .3}), kInfiniteHits);
    EXPECT_EQ(d_prime_of_rates(model, {.7, 0}), kInfiniteHits);
    EXPECT_EQ(d_prime_of_rates(model, {1, 0}), kInfiniteHits);
    EXPECT_EQ(d_prime_of_rates(model, {1, 1}), std::nullopt);
    EXPECT_EQ(d_prime_of_rates(model, {0, 0}), std::nullopt);
    EXPECT_EQ(d_prime_of_rates(model, {0, .3}), model == HitModel::yes_no ? -kInfiniteHits : 0);
  }
  EXPECT_EQ(criterion_c({1, .3}), -kInfiniteHits);
  EXPECT_EQ(criterion_c({0, 0}), kInfiniteHits);
  EXPECT_EQ(criterion_c({1, 0}), std::nullopt);
  EXPECT_EQ(ln_beta({1, .3}), -kInfiniteHits);
  EXPECT_EQ(ln_beta({.7, 0}), kInfiniteHits);
  EXPECT_EQ(ln_beta({1, 0}), std::nullopt);
  EXPECT_EQ(ln_beta({1, 1}), std::nullopt);
}

// Recomputed: R qnorm(10.5/11) - qnorm(.5/13).
TEST(LogLinear, MakesEverythingFinite) {
  const HitCounts counts{10, 10, 0, 12};
  EXPECT_EQ(d_prime_of_rates(HitModel::yes_no, hit_rates(counts)), kInfiniteHits);
  EXPECT_NEAR(d_prime_of_rates(HitModel::yes_no, log_linear_rates(counts)).value(), 3.4594466681036, 1e-12);
  EXPECT_EQ(log_linear_rates({0, 1, 1, 1}).hit, 0.25);
}

TEST(HitCounts, AreRefusedWhereImpossible) {
  EXPECT_EQ(refusal([] { hit_rates({0, 0, 0, 1}); }), "signals must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { hit_rates({11, 10, 0, 1}); }), "hits must be between 0 and 10, got 11");
  EXPECT_EQ(refusal([] { log_linear_rates({1, 10, 0, 0}); }), "noises must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] {
              log_linear_rates({1, 10, -1, 9});
            }),
            "false_alarms must be between 0 and 9, got -1");
  EXPECT_EQ(refusal([] {
              d_prime_of_rates(HitModel::yes_no, {1.1, 0});
            }),
            "hit must be between 0 and 1, got 1.1");
  EXPECT_EQ(refusal([] { criterion_c({.5, -.1}); }), "false_alarm must be between 0 and 1, got -0.1");
  EXPECT_EQ(refusal([] {
              ln_beta({std::numeric_limits<double>::quiet_NaN(), 0});
            }),
            "hit must be between 0 and 1, got nan");
}

}  // namespace
}  // namespace stats
