// Levels and coverage of the statistics, by simulation through the same code. Rates that headers name are checked here.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

#include "stats/association/bootstrap_rho.h"
#include "stats/association/kendall.h"
#include "stats/association/partial_rho.h"
#include "stats/effects/heterogeneity.h"
#include "stats/effects/two_shares.h"
#include "stats/factors/factor_test.h"
#include "stats/psychometric/psychometric_function.h"
#include "stats/random.h"
#include "stats/samples/rank_sum.h"
#include "stats/samples/repeated_ranks.h"
#include "stats/samples/signed_rank.h"
#include "stats/worth/bootstrap_worths.h"
#include "stats/worth/estimability.h"
#include "stats/worth/goodness_of_fit.h"
#include "stats/worth/pairwise_tests.h"
#include "stats/worth/worth.h"
#include "tier.h"

namespace {

using namespace stats;
using Numbers = std::vector<double>;

constexpr double kLevel = 0.05;

/// How many studies: BLINDSWAP_TIER is "quick", "plain" or "long".
int studies(int plain) {
#ifdef __SANITIZE_ADDRESS__
  return std::max(20, plain / 40);
#else
  return tier() == "quick" ? std::max(50, plain / 20) : tier() == "long" ? plain * 10 : plain;
#endif
}

class Studies {
 public:
  explicit Studies(std::uint64_t seed) : random_(seed) {}

  double share() { return (double(random_.word() >> 12) + 0.5) * 0x1p-52; }
  int binomial(int draws, double right) {
    int count = 0;
    for (int i = 0; i < draws; ++i) count += share() < right;
    return count;
  }
  int below(int bound) { return int(random_.below(std::uint32_t(bound))); }
  double normal() { return std::sqrt(-2 * std::log(share())) * std::cos(2 * std::acos(-1.0) * share()); }
  Numbers normals(int count) {
    Numbers list;
    for (int i = 0; i < count; ++i) list.push_back(normal());
    return list;
  }
  /// Answers to every pair of items, by Davidson's model.
  std::vector<PairCount> preferences(const Numbers& worths, double nu, int answers) {
    std::vector<PairCount> counts;
    for (int i = 0; i < int(worths.size()); ++i)
      for (int j = i + 1; j < int(worths.size()); ++j) {
        PairCount count{i, j, 0, 0, 0};
        const double x = worths[std::size_t(i)] - worths[std::size_t(j)], first = std::exp(x / 2),
                     second = std::exp(-x / 2);
        for (int k = 0; k < answers; ++k) {
          const double place = share() * (first + second + nu);
          ++(place < first        ? count.first_preferred
             : place < first + nu ? count.ties
                                  : count.second_preferred);
        }
        counts.push_back(count);
      }
    return counts;
  }

 private:
  Random random_;
};

/// How often something happened, with what of the studies said nothing left out.
struct Rate {
  int happened = 0, of = 0, nothing = 0;
  void count(bool happens) { happened += happens, ++of; }
  double value() const { return double(happened) / of; }
};

/// Within four standard deviations of the expected rate.
void expect_rate(const std::string& name, const Rate& rate, double expected) {
  testing::Test::RecordProperty(name, std::to_string(rate.value()));
  if (std::getenv("BLINDSWAP_RATES"))
    std::printf("%s %.4f of %d, nothing %d\n", name.c_str(), rate.value(), rate.of, rate.nothing);
  EXPECT_NEAR(rate.value(), expected, 4 * std::sqrt(expected * (1 - expected) / rate.of) + 1e-9)
      << name << " of " << rate.of;
}

void expect_at_most(const std::string& name, const Rate& rate, double most) {
  testing::Test::RecordProperty(name, std::to_string(rate.value()));
  if (std::getenv("BLINDSWAP_RATES"))
    std::printf("%s %.4f of %d, nothing %d\n", name.c_str(), rate.value(), rate.of, rate.nothing);
  EXPECT_LE(rate.value(), most + 4 * std::sqrt(most * (1 - most) / rate.of)) << name << " of " << rate.of;
}

TEST(LevelsOfWorths, PairwiseTestsOfEqualItems) {
  Studies draws(1);
  Rate plain, ties;
  for (int i = 0; i < studies(3'000); ++i)
    for (Rate* rate : {&plain, &ties}) {
      const auto tests = pairwise_tests(4, draws.preferences({0, 0, 0, 0}, rate == &ties ? 1.0 : 0.0, 10));
      if (!tests) {
        ++rate->nothing;
        continue;
      }
      double least = 1;
      for (const PairwiseTest& test : *tests) least = std::min(least, test.adjusted_p);
      rate->count(least <= kLevel);
    }
  expect_rate("pairwise", plain, 0.0462);
  expect_rate("pairwise_with_ties", ties, 0.0457);
}

TEST(LevelsOfWorths, GoodnessOfFit) {
  Studies draws(2);
  Rate chi_square, simulated, with_ties;
  for (int i = 0; i < studies(1'000); ++i) {
    const Numbers worths{0, 0.4, 0.8, 1.2};
    if (const auto found = goodness_of_fit(4, draws.preferences(worths, 0, 5), {}, {.draws = 199})) {
      chi_square.count(*found->chi_square_p <= kLevel);
      simulated.count(found->simulated->p <= kLevel);
    } else {
      ++simulated.nothing;
    }
    if (const auto found = goodness_of_fit(4, draws.preferences(worths, 1, 5), {}, {.draws = 199}))
      with_ties.count(found->simulated->p <= kLevel);
    else
      ++with_ties.nothing;
  }
  expect_rate("fit_chi_square", chi_square, 0.1142);
  expect_rate("fit_simulated", simulated, 0.0536);
  expect_rate("fit_simulated_with_ties", with_ties, 0.0671);
}

// Few answers to items far apart: half of the studies are separated. The corrected fit gives all of them an interval.
TEST(CoverageOfWorths, OfSeparatedStudies) {
  Studies draws(3);
  Rate corrected, plain;
  for (int i = 0; i < studies(3'000); ++i) {
    const auto counts = draws.preferences({0, 1, 2.5}, 0, 5);
    const auto fit = fit_worths(3, counts, 0, {.bias_reduced = true}).value();
    corrected.count(std::abs(fit.worth[2] - 2.5) <= 1.959964 * fit.difference_error(2, 0));
    const auto likely = fit_worths(3, counts);
    EXPECT_EQ(likely.has_value(), estimable_worths(3, counts, false).estimability == Estimability::finite);
    if (likely)
      plain.count(std::abs(likely->worth[2] - 2.5) <= 1.959964 * likely->difference_error(2, 0));
    else
      ++plain.nothing;
  }
  EXPECT_GT(plain.nothing, studies(3'000) / 4);
  expect_rate("bias_reduced", corrected, 0.9627);
}

// Half of the pairs are not compared at all: no number where items fall apart, and coverage where they do not.
TEST(CoverageOfWorths, OfIncompleteStudies) {
  Studies draws(4);
  Rate rate;
  int apart = 0;
  for (int i = 0; i < studies(3'000); ++i) {
    auto counts = draws.preferences({0, 0.4, 0.8, 1.2}, 0.5, 25);
    for (PairCount& count : counts)
      if (draws.share() < 0.5) count = {count.first, count.second, 0, 0, 0};
    bool any = false;
    for (const PairCount& count : counts)
      any |= count.first_preferred + count.ties + count.second_preferred > 0;
    if (!any) continue;
    const auto fit = fit_worths(4, counts);
    const auto estimable = estimable_worths(4, counts, false).estimability;
    EXPECT_EQ(fit.has_value(), estimable == Estimability::finite);
    if (estimable == Estimability::disconnected) {
      ++apart;
      EXPECT_FALSE(fit_worths(4, counts, 0, {.bias_reduced = true}));
      EXPECT_FALSE(bootstrap_worths(4, counts, 0, false, 0.95, {.draws = 3}));
    } else if (fit) {
      rate.count(std::abs(fit->worth[3] - 1.2) <= 1.959964 * fit->difference_error(3, 0));
    }
  }
  EXPECT_GT(apart, studies(3'000) / 5);
  expect_rate("incomplete_with_ties", rate, 0.9551);
}

// Exact tests hold their level with ties of any kind.
TEST(LevelsOfRanks, WithTies) {
  Studies draws(5);
  Rate tau, sums, signs, items, trend;
  const auto tied = [&](int count, int kinds) {
    Numbers list;
    for (int i = 0; i < count; ++i) list.push_back(draws.below(kinds));
    return list;
  };
  for (int i = 0; i < studies(3'000); ++i) {
    if (const auto found = kendall(tied(9, 4), tied(9, 3), Alternative::two_sided))
      tau.count(found->test.p <= kLevel);
    sums.count(rank_sum(tied(7, 4), tied(9, 4), Alternative::two_sided).test.p <= kLevel);
    Numbers differences = tied(10, 9);
    for (double& difference : differences) difference -= 4;
    signs.count(signed_rank(differences, Alternative::two_sided).test.p <= kLevel);
    const std::vector<Numbers> rows{tied(4, 3), tied(4, 3), tied(4, 3), tied(4, 3), tied(4, 3)};
    if (const auto found = friedman(rows)) items.count(found->test.p <= kLevel);
    if (const auto found = page(rows)) trend.count(found->test.p <= kLevel);
  }
  for (const auto& [name, rate] : {std::pair("tau", &tau),
                                   {"rank_sum", &sums},
                                   {"signed_rank", &signs},
                                   {"friedman", &items},
                                   {"page", &trend}})
    expect_at_most(name, *rate, kLevel);
}

// Blocks that differ by far more than their items, and levels unevenly spread over them.
TEST(LevelsOfFactors, WithinBlocks) {
  Studies draws(6);
  Rate factor, contrast;
  const std::vector<int> levels{0, 1, 2, 0, 1, 1, 0, 2, 2, 1, 0}, blocks{0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2};
  for (int i = 0; i < studies(600); ++i) {
    Numbers values = draws.normals(11);
    for (std::size_t item = 0; item < values.size(); ++item) values[item] += 50 * blocks[item];
    factor.count(factor_test({values, levels, blocks})->test.p <= kLevel);
    contrast.count(
        contrast_test({values, levels, blocks}, Numbers{1, -1, 0}, Alternative::two_sided)->test.p <= kLevel);
  }
  expect_rate("factor", factor, 0.05);
  expect_rate("contrast", contrast, 0.05);
}

TEST(LevelsOfAssociation, PartialRho) {
  Studies draws(7);
  Rate by_t, by_permutation;
  for (int i = 0; i < studies(2'000); ++i) {
    const Numbers control = draws.normals(10);
    Numbers x = draws.normals(10), y = draws.normals(10);
    for (std::size_t item = 0; item < 10; ++item) {
      x[item] += 1.5 * control[item];
      y[item] += 1.5 * control[item];
    }
    const auto found = partial_rho(x, y, {control}, {.seed = std::uint64_t(i), .draws = 199});
    if (!found) {
      ++by_t.nothing;  // one has the order of the control
      continue;
    }
    by_t.count(found->t_p <= kLevel);
    by_permutation.count(found->test.p <= kLevel);
  }
  expect_rate("partial_t", by_t, 0.0691);
  expect_rate("partial_permuted", by_permutation, 0.0691);
}

/// The true rho of normal values correlated by r: 6/pi asin(r/2).
TEST(CoverageOfAssociation, BootstrapOfRho) {
  Studies draws(8);
  const double r = 0.6, rho = 6 / std::acos(-1.0) * std::asin(r / 2);
  Rate few, more;
  for (int i = 0; i < studies(1'500); ++i)
    for (Rate* rate : {&few, &more}) {
      const int pairs = rate == &few ? 12 : 30;
      const Numbers x = draws.normals(pairs);
      Numbers y = draws.normals(pairs);
      for (std::size_t j = 0; j < y.size(); ++j) y[j] = r * x[j] + std::sqrt(1 - r * r) * y[j];
      const auto interval = bootstrap_rho(x, y, 0.95, {.seed = std::uint64_t(i), .draws = 499})->interval;
      rate->count(interval.lower <= rho && rho <= interval.upper);
    }
  expect_rate("bootstrap_rho_12", few, 0.9654);
  expect_rate("bootstrap_rho_30", more, 0.9558);
}

std::vector<LevelCount> curve_answers(Studies& draws, int each, double slope) {
  std::vector<LevelCount> counts;
  for (int at = -2; at <= 3; ++at)
    counts.push_back(
        {double(at), draws.binomial(each, 0.5 + 0.5 / (1 + std::exp(-slope * (at - 0.5)))), each});
  return counts;
}

TEST(CoverageOfThresholds, ByTheLikelihood) {
  Studies draws(9);
  Rate many, few, slopes;
  for (int i = 0; i < studies(1'500); ++i)
    for (Rate* rate : {&many, &few}) {
      const auto found = psychometric_function(curve_answers(draws, rate == &many ? 40 : 12, 1.5));
      if (!found.threshold_interval) {
        ++rate->nothing;
        continue;
      }
      rate->count(found.threshold_interval->lower <= 0.5 && 0.5 <= found.threshold_interval->upper);
      if (rate == &many)
        slopes.count(found.slope_lower.value_or(-1e9) <= 1.5 && 1.5 <= found.slope_upper.value_or(1e9));
    }
  expect_rate("threshold_40", many, 0.95);
  expect_rate("threshold_12", few, 0.95);
  expect_rate("slope_40", slopes, 0.9475);
}

// Nobody notices anything: a threshold is printed no more often than the level.
TEST(LevelsOfThresholds, WhereThereIsNone) {
  Studies draws(10);
  Rate printed;
  for (int i = 0; i < studies(2'000); ++i) {
    std::vector<LevelCount> counts;
    for (int at = 0; at < 5; ++at) counts.push_back({double(at), draws.binomial(16, 0.5), 16});
    printed.count(psychometric_function(counts).state != CurveState::flat);
  }
  expect_at_most("threshold_without_hearing", printed, 0.06);
}

TEST(LevelsOfCampaigns, OfTheSameEffect) {
  Studies draws(11);
  Rate fisher, q, odds, difference, average;
  for (int i = 0; i < studies(4'000); ++i) {
    const int first = draws.binomial(48, 0.6), second = draws.binomial(32, 0.6);
    const auto shares = compare_shares(first, 48, second, 32, 0.95);
    fisher.count(shares.p <= kLevel);
    if (shares.odds_ratio_interval)
      odds.count(shares.odds_ratio_interval->lower <= 1 && 1 <= shares.odds_ratio_interval->upper);
    difference.count(shares.difference_interval.lower <= 0 && 0 <= shares.difference_interval.upper);
    std::vector<Effect> effects;
    for (const double error : {0.2, 0.3, 0.5, 0.4}) effects.push_back({1 + error * draws.normal(), error});
    q.count(heterogeneity(effects, 0.95).p <= kLevel);
    for (Effect& effect : effects) effect.estimate += 0.5 * draws.normal();
    const auto interval = heterogeneity(effects, 0.95).average_interval;
    average.count(interval.lower <= 1 && 1 <= interval.upper);
  }
  expect_at_most("fisher", fisher, kLevel);
  EXPECT_GE(odds.value(), 0.95);
  expect_rate("newcombe", difference, 0.95);
  expect_rate("q", q, kLevel);
  expect_rate("average", average, 0.9354);
}

}  // namespace
