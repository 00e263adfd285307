#include "stats/resampling/bootstrap_agreement.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "stats/agreement/gwet.h"
#include "stats/agreement/kappa.h"
#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"
#include "stats/resampling/agreement_sums.h"

namespace stats {
namespace {

CountTable simulated_counts() {
  CountTable counts;
  for (const CsvRow& row : check_values("agreement_simulated.csv"))
    counts.push_back({row.whole("c1"), row.whole("c2"), row.whole("c3"), row.whole("c4"), row.whole("c5")});
  return counts;
}

// 200 subjects, 12 raters. Estimates recomputed: NumPy and R to 12 digits (kappa also statsmodels). The
// bootstrap recomputed: NumPy, 400,000 resamples by rng.multinomial; here 10,000, so that mean, standard
// deviation and limits differ by four of their standard errors at most.
TEST(BootstrapAgreement, AgreesWithNumPy) {
  const auto result = bootstrap_agreement(simulated_counts(), 0.95);
  EXPECT_NEAR(result.alpha->estimate, .351254636285, 5.1e-13);
  EXPECT_NEAR(result.fleiss_kappa->estimate, .350984213041, 5.1e-13);
  EXPECT_NEAR(result.gwet_ac1->estimate, .351766068923, 5.1e-13);
  EXPECT_NEAR(result.alpha->mean, .349944627, 4 * 1.35e-4);
  EXPECT_NEAR(result.alpha->standard_error, .013493567, 4 * 9.5e-5);
  EXPECT_NEAR(result.alpha->interval.lower, .323707261, 4 * 3.6e-4);
  EXPECT_NEAR(result.alpha->interval.upper, .376584265, 4 * 3.6e-4);
  EXPECT_NEAR(result.fleiss_kappa->mean, .349673658, 4 * 1.35e-4);
  EXPECT_NEAR(result.fleiss_kappa->interval.lower, .323425355, 4 * 3.6e-4);
  EXPECT_NEAR(result.fleiss_kappa->interval.upper, .376324400, 4 * 3.6e-4);
  EXPECT_EQ(result.alpha->resamples, 10'000);
  EXPECT_EQ(result.alpha->undefined, 0);
}

// Three subjects have 27 equally likely resamples; kappa is 1 where not all three drawn are of one category
// (18 of them) and undefined in the other 9.
TEST(BootstrapAgreement, CountsResamplesWithoutVariation) {
  const auto result = bootstrap_agreement({{3, 0}, {3, 0}, {0, 3}}, 0.95);
  EXPECT_EQ(result.fleiss_kappa->estimate, 1);
  EXPECT_EQ(result.fleiss_kappa->interval.lower, 1);
  EXPECT_EQ(result.fleiss_kappa->standard_error, 0);
  EXPECT_NEAR(result.fleiss_kappa->undefined, 10'000 / 3., 4 * 47.2);
  EXPECT_EQ(result.fleiss_kappa->undefined + result.fleiss_kappa->resamples, 10'000);
  EXPECT_EQ(result.alpha->undefined, result.fleiss_kappa->undefined);
  EXPECT_EQ(result.gwet_ac1->undefined, 0);
}

/// Every resample of a small table, each once, in ascending order of the coefficient.
template <typename Coefficient>
std::vector<double> all_resamples(const CountTable& counts, const Coefficient& coefficient) {
  std::vector<double> values;
  std::size_t resamples = 1;
  for (std::size_t i = 0; i < counts.size(); ++i) resamples *= counts.size();
  for (std::size_t number = 0; number < resamples; ++number) {
    CountTable drawn;
    for (std::size_t i = 0, rest = number; i < counts.size(); ++i, rest /= counts.size())
      drawn.push_back(counts[rest % counts.size()]);
    values.push_back(coefficient(drawn));
  }
  std::sort(values.begin(), values.end());
  return values;
}

// 5 subjects, 3,125 equally likely resamples: the mean of 100,000 drawn lies within four of its standard
// errors of the mean of all, the limits are values that differ from those of all in place by no more than
// chance allows.
TEST(BootstrapAgreement, AgreesWithAllResamples) {
  const CountTable counts{{3, 1, 0}, {1, 1, 2}, {0, 4, 0}, {2, 2, 0}, {0, 1, 3}};
  const auto result = bootstrap_agreement(counts, 0.9, {.seed = 1, .draws = 100'000}).fleiss_kappa.value();
  const auto all = all_resamples(counts, [](const CountTable& t) {
    const auto kappa = fleiss_kappa(t);
    return kappa ? kappa->kappa : 0;
  });
  double mean = 0;
  for (const double value : all) mean += value / double(all.size());
  EXPECT_NEAR(result.mean, mean, 4 * result.standard_error / std::sqrt(100'000) + 1.0 / 3125);
  const auto share_at_most = [&](double limit) {
    return double(std::upper_bound(all.begin(), all.end(), limit + 1e-12) - all.begin()) / double(all.size());
  };
  const auto share_below = [&](double limit) {
    return double(std::lower_bound(all.begin(), all.end(), limit - 1e-12) - all.begin()) / double(all.size());
  };
  const double chance = 4 * std::sqrt(.05 * .95 / 100'000) + 1.0 / 3125;
  EXPECT_GE(share_at_most(result.interval.lower), .05 - chance);
  EXPECT_LE(share_below(result.interval.lower), .05 + chance);
  EXPECT_GE(share_at_most(result.interval.upper), .95 - chance);
  EXPECT_LE(share_below(result.interval.upper), .95 + chance);
}

TEST(AgreementSums, GiveTheCoefficientsOfTheTable) {
  Random random(8);
  for (int repeat = 0; repeat < 20; ++repeat) {
    Ratings ratings(12, std::vector<std::optional<double>>(5));
    const bool missing = repeat % 2 == 0;
    for (auto& subject : ratings)
      for (auto& answer : subject)
        if (!missing || random.below(3) > 0) answer = random.below(3);
    const auto counts = count_ratings(ratings, std::array{0., 1., 2.});
    const AgreementSums sums(counts);
    const auto total = sums.total();
    EXPECT_NEAR(sums.nominal_alpha(total).value(), krippendorff_alpha(ratings, Metric::nominal).value().alpha,
                1e-14);
    EXPECT_NEAR(sums.gwet_ac1(total).value(), gwet_ac1(counts).value().coefficient, 1e-14);
    EXPECT_EQ(sums.fleiss_kappa(total).has_value(), !missing);
    if (!missing) {
      EXPECT_NEAR(sums.fleiss_kappa(total).value(), fleiss_kappa(counts).value().kappa, 1e-14);
    }
  }
}

TEST(BootstrapAgreement, SaysNothingOfWhatIsUndefined) {
  const auto one_category = bootstrap_agreement({{3, 0}, {3, 0}}, 0.95, {.draws = 10});
  EXPECT_FALSE(one_category.alpha);
  EXPECT_FALSE(one_category.fleiss_kappa);
  EXPECT_EQ(one_category.gwet_ac1->estimate, 1);
  const auto missing = bootstrap_agreement({{3, 0}, {1, 1}, {1, 0}, {0, 0}}, 0.95, {.draws = 100});
  EXPECT_TRUE(missing.alpha);
  EXPECT_FALSE(missing.fleiss_kappa);
  const auto single = bootstrap_agreement({{1, 0}, {0, 1}}, 0.95, {.draws = 10});
  EXPECT_FALSE(single.alpha);
  EXPECT_FALSE(single.fleiss_kappa);
  EXPECT_FALSE(single.gwet_ac1);
}

TEST(BootstrapAgreement, IsTheSameForTheSameSeed) {
  const auto counts = simulated_counts();
  const auto lower = [&](std::uint64_t seed) {
    return bootstrap_agreement(counts, 0.95, {.seed = seed, .draws = 999}).alpha->interval.lower;
  };
  EXPECT_EQ(lower(7), lower(7));
  EXPECT_NE(lower(7), lower(8));
}

// Nominal alpha drawn twice, by the sums and anew: alike but for the draws.
TEST(BootstrapAlpha, AgreesWithTheBootstrapOfCounts) {
  Random random(12);
  Ratings ratings(40, std::vector<std::optional<double>>(4));
  for (auto& subject : ratings) {
    const auto seen = random.below(3);
    for (auto& answer : subject)
      if (random.below(8) > 0) answer = random.below(2) > 0 ? seen : random.below(3);
  }
  const auto anew = bootstrap_alpha(ratings, Metric::nominal, 0.95).value();
  const auto by_sums =
      bootstrap_agreement(count_ratings(ratings, std::array{0., 1., 2.}), 0.95).alpha.value();
  const double error = by_sums.standard_error / 100;
  EXPECT_NEAR(anew.estimate, by_sums.estimate, 1e-14);
  EXPECT_NEAR(anew.mean, by_sums.mean, 4 * 1.42 * error);
  EXPECT_NEAR(anew.interval.lower, by_sums.interval.lower, 4 * 1.42 * 2.7 * error);
  EXPECT_NEAR(anew.interval.upper, by_sums.interval.upper, 4 * 1.42 * 2.7 * error);
}

TEST(BootstrapAlpha, TakesEveryMetricAndSaysNothingOfWhatIsUndefined) {
  const Ratings ratings{{1, 2, 2}, {3, 3, std::nullopt}, {1, 1, 1}, {4, 2, 4}, {2, 2, 3}};
  for (const Metric metric : {Metric::ordinal, Metric::interval, Metric::ratio}) {
    const auto result = bootstrap_alpha(ratings, metric, 0.95, {.draws = 500}).value();
    EXPECT_EQ(result.estimate, krippendorff_alpha(ratings, metric).value().alpha);
    EXPECT_LT(result.interval.lower, result.estimate);
    EXPECT_GE(result.interval.upper, result.estimate);
    EXPECT_GE(result.undefined, 0);
  }
  EXPECT_FALSE(bootstrap_alpha({{1, 1}, {1, 1}}, Metric::ordinal, 0.95));
}

// 4 raters each of whom sees the true one of 3 categories in 0.6 of subjects and else answers at random: a
// pair agrees with probability .36 + .64/3, so that all three coefficients are .36 in the long run. Of 2,000
// studies; NumPy covers in .904 .895 .925 (15 subjects) and .940 .937 .945 (50) of 4,000 studies of its own.
TEST(BootstrapAgreement, CoversAsOftenAsIsSaid) {
  const auto covered = [](int subjects) {
    Random random(31);
    std::array<int, 3> count{};
    for (int study = 0; study < 2'000; ++study) {
      CountTable counts(static_cast<std::size_t>(subjects), std::vector<int>(3));
      for (auto& subject : counts) {
        const auto seen = random.below(3);
        for (int rater = 0; rater < 4; ++rater) ++subject[random.below(5) < 3 ? seen : random.below(3)];
      }
      const auto result = bootstrap_agreement(counts, 0.95, {.seed = random.word(), .draws = 999});
      const auto covers_it = [](const auto& b) {
        return b->interval.lower <= .36 && .36 <= b->interval.upper;
      };
      count[0] += covers_it(result.alpha);
      count[1] += covers_it(result.fleiss_kappa);
      count[2] += covers_it(result.gwet_ac1);
    }
    return count;
  };
  EXPECT_EQ(covered(15), (std::array{1833, 1808, 1868}));
  EXPECT_EQ(covered(50), (std::array{1878, 1869, 1895}));
}

TEST(BootstrapAgreement, IsTheSameForEveryNumberOfThreadsAndForWhatIsAskedFor) {
  Random random(5);
  CountTable counts(40, std::vector<int>(3));
  for (auto& subject : counts)
    for (int rater = 0; rater < 4; ++rater) ++subject[random.below(3)];
  const MonteCarlo draws{.seed = 3, .draws = 2'345};
  const auto one = bootstrap_agreement(counts, 0.9, draws),
             three = bootstrap_agreement(counts, 0.9, draws, 3);
  EXPECT_EQ(one.alpha->interval.lower, three.alpha->interval.lower);
  EXPECT_EQ(one.gwet_ac1->mean, three.gwet_ac1->mean);
  const auto alone = bootstrap_agreement(counts, 0.9, draws, 2, {.alpha = false, .gwet_ac1 = false});
  EXPECT_EQ(alone.fleiss_kappa->interval.upper, one.fleiss_kappa->interval.upper);
  EXPECT_FALSE(alone.alpha);
  EXPECT_FALSE(alone.gwet_ac1);
}

TEST(BootstrapAgreement, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] {
              bootstrap_agreement({{1, 2}}, 95);
            }),
            "confidence must be strictly between 0 and 1, got 95 (write 0.95 for 95 %)");
  EXPECT_EQ(refusal([] {
              bootstrap_agreement({{1, 2}}, 0.95, {.draws = 0});
            }),
            "draws must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] {
              bootstrap_agreement({{1, -2}}, 0.95);
            }),
            "count must be between 0 and 1000000, got -2");
  EXPECT_EQ(refusal([] {
              bootstrap_agreement(CountTable(70'000, {1, 1}), 0.95);
            }),
            "number of units must be between 1 and 65535, got 70000");
  EXPECT_EQ(refusal([] {
              bootstrap_agreement({{1'000, 1}}, 0.95);
            }),
            "raters of a subject must be between 0 and 1000, got 1001");
  EXPECT_THROW(bootstrap_agreement({}, 0.95), std::domain_error);
  EXPECT_EQ(refusal([] { bootstrap_alpha({{1}}, Metric::nominal, 0.95); }),
            "number of raters must be between 2 and 1000, got 1");
}

}  // namespace
}  // namespace stats
