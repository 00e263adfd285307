#include "stats/worth/worth.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "stats/random.h"
#include "stats/refusal.h"
#include "stats/worth/published_preferences.h"
#include "stats/worth/row_means.h"

namespace stats {
namespace {

using Numbers = std::vector<double>;

/// Shares that sum to 1, in proportion to e^worth.
Numbers shares_of(const WorthFit& fit) {
  Numbers shares;
  for (const double worth : fit.worth) shares.push_back(std::exp(worth));
  const double sum = std::accumulate(shares.begin(), shares.end(), 0.0);
  for (double& share : shares) share /= sum;
  return shares;
}

void expect_near(const Numbers& found, const Numbers& expected, double error) {
  ASSERT_EQ(found.size(), expected.size());
  for (std::size_t i = 0; i < found.size(); ++i) EXPECT_NEAR(found[i], expected[i], error) << i;
}

Numbers errors_of(const WorthFit& fit) {
  Numbers errors;
  for (int i = 1; i < int(fit.worth.size()); ++i) errors.push_back(fit.difference_error(i, 0));
  return errors;
}

/// Of one judge of the pork tasting; 0: both.
std::vector<PairCount> pork(int judge) {
  const std::vector<std::string> items{"C", "Cp", "CP"};
  std::vector<PairCount> counts{{0, 1, 0, 0, 0}, {0, 2, 0, 0, 0}, {1, 2, 0, 0, 0}};
  for (const CsvRow& row : check_values("bradley_terry1952_pork.csv")) {
    if (judge != 0 && row.whole("judge") != judge) continue;
    const int winner = place_of(row.cells.at("winner"), items);
    for (PairCount& count : counts) {
      if (count.first == winner) count.first_preferred += row.whole(items[std::size_t(count.second)]);
      if (count.second == winner) count.second_preferred += row.whole(items[std::size_t(count.first)]);
    }
  }
  return counts;
}

// PC-4: Bradley and Terry (1952) (data confirmed: R package eba; recomputed; printed .05 .47 .47 from memory).
TEST(Worths, OfThePorkTasting) {
  const auto first = fit_worths(3, pork(1)).value();
  expect_near(shares_of(first), {1.0 / 19, 9.0 / 19, 9.0 / 19}, 1e-10);
  EXPECT_NEAR(first.log_likelihood, -6.71656564, 5.1e-9);
  const auto second = fit_worths(3, pork(2)).value();
  expect_near(shares_of(second), {.53242700, .29931114, .16826186}, 5.1e-9);
  EXPECT_NEAR(second.log_likelihood, -9.28958226, 5.1e-9);
  const auto pooled = fit_worths(3, pork(0)).value();
  expect_near(shares_of(pooled), {.24793675, .42677415, .32528910}, 5.1e-9);
  expect_near(pooled.worth, {0, .54308128, .27154064}, 5.1e-9);
  expect_near(errors_of(pooled), {.53062539, .52354584}, 5.1e-9);
  EXPECT_NEAR(pooled.log_likelihood, -20.25625320, 5.1e-9);
  EXPECT_NEAR(pooled.deviance, .56933314, 5.1e-9);
  EXPECT_EQ(pooled.degrees_of_freedom, 1);
  EXPECT_NEAR(pooled.log_likelihood + (pooled.deviance - pooled.null_deviance) / 2, -20.79441542, 5.1e-9);
}

// PC-5: baseball, Agresti, without and with home effect (data confirmed: R package BradleyTerry2; recomputed). Standard errors
// by R's glm with epsilon 1e-15; at its default 1e-8 they are those of the step before and differ in the seventh digit.
TEST(Worths, OfBaseball) {
  const auto fit = fit_worths(7, baseball()).value();
  expect_near(fit.worth, {0, 1.1076977, .6838528, 1.4364084, 1.5813559, 1.2476178, 1.2944851}, 5.1e-8);
  expect_near(errors_of(fit),
              {.333878206989, .331876672711, .339568506378, .343255981594, .335860922525, .336669401422},
              5.1e-11);
  EXPECT_NEAR(fit.deviance, 44.05346123, 5.1e-9);
  EXPECT_EQ(fit.degrees_of_freedom, 36);
  const auto home = fit_worths(7, baseball(), 0, {.order_effect = true}).value();
  EXPECT_NEAR(home.order_effect.value(), .302260655529, 5.1e-13);
  EXPECT_NEAR(home.order_error.value(), .130943707456, 5.1e-12);
  EXPECT_NEAR(home.deviance, 38.642852144, 5.1e-10);
}

// PC-6: citations, Stigler (1994) and Agresti (data confirmed: R package BradleyTerry2; recomputed).
TEST(Worths, OfCitations) {
  const auto fit =
      fit_worths(4, counts_of_table("citations1994.csv", {"Biometrika", "Comm Statist", "JASA", "JRSS-B"}))
          .value();
  expect_near(fit.worth, {0, -2.94907250, -.47956977, .26895406}, 5.1e-9);
  expect_near(errors_of(fit), {.10254534, .06058873, .07082997}, 5.1e-9);
  EXPECT_NEAR(fit.deviance, 4.293384, 5.1e-7);
  EXPECT_EQ(fit.degrees_of_freedom, 3);
  EXPECT_NEAR(fit.null_deviance, 1925.232850, 5.1e-7);
  EXPECT_NEAR(fit.log_likelihood, -1622.88980883, 5.1e-9);
}

// PC-7: sound fields with ties, Kousgaard (1984), Davidson's model (data confirmed: R package BradleyTerry2; recomputed).
// Kousgaard's printed table (confirmed) equals half of the centred worths.
TEST(Worths, OfSoundFieldsWithTies) {
  const auto fit = fit_worths(8, flutes()).value();
  expect_near(fit.worth, {0, -.915905, 1.855803, 1.573009, 1.713584, 1.855803, 1.784434, 1.433258}, 5.1e-7);
  EXPECT_NEAR(fit.tie_weight.value(), .455287, 5.1e-7);
  EXPECT_NEAR(fit.log_likelihood, -122.49709079, 5.1e-9);
  const double mean = std::accumulate(fit.worth.begin(), fit.worth.end(), 0.0) / 8;
  Numbers half;
  for (const double worth : fit.worth) half.push_back((worth - mean) / 2);
  expect_near(half, {-.581, -1.039, .347, .205, .276, .347, .311, .135}, 5.1e-4);
}

// PC-9: Thurstone's case V and Bradley-Terry, David (1988) p. 116 (data confirmed: R package eba; recomputed by Newton's
// method in NumPy and SciPy to the last digit: R's glm at its default epsilon is off in the sixth).
TEST(Worths, OfTasteByBothModels) {
  const auto counts = counts_of_table("david1988_taste.csv", {"A1", "A2", "A3", "A4"});
  const auto normal = fit_worths(4, counts, 0, {.model = PreferenceModel::normal}).value();
  expect_near(normal.worth, {0, .94526149663471, .7682091870391, 1.3873654332383}, 1e-12);
  expect_near(errors_of(normal), {.26573283521889, .26149489495993, .28329197757861}, 1e-12);
  EXPECT_NEAR(normal.deviance, 4.532664696, 5.1e-10);
  EXPECT_EQ(normal.degrees_of_freedom, 3);
  const auto logistic = fit_worths(4, counts).value();
  expect_near(logistic.worth, {0, 1.613042600, 1.300991339, 2.357115851}, 5.1e-10);
  EXPECT_NEAR(logistic.deviance, 4.239895446, 5.1e-10);
}

// PC-10: 783 sets of comparisons of sound, Choisel and Wickelmaier (2007) (data confirmed: R package psychotools; recomputed).
TEST(Worths, OfSoundQuality) {
  const auto fit =
      fit_worths(8, counts_of_table("soundquality_counts.csv", {"Mono", "PhantomMono", "Stereo", "WideStereo",
                                                                "Matrix", "Upmix1", "Upmix2", "Original"}))
          .value();
  expect_near(fit.worth,
              {0, .58286223, 2.61142015, 2.28969175, 2.47956687, 2.35365178, 2.10990149, 2.47574887}, 5.1e-9);
  EXPECT_NEAR(fit.difference_error(1, 0), .04982736, 5.1e-9);
  EXPECT_NEAR(fit.log_likelihood, -11840.84628, 5.1e-6);
  expect_near(shares_of(fit),
              {.01451811, .02600423, .19771310, .14332124, .17328951, .15278758, .11973708, .17262916},
              5.1e-9);
}

// PC-9: Thurstone's own row means (data confirmed; recomputed).
TEST(RowMeans, OfTaste) {
  PreferenceTable table(4, std::vector<int>(4));
  for (const PairCount& count : counts_of_table("david1988_taste.csv", {"A1", "A2", "A3", "A4"})) {
    table[std::size_t(count.first)][std::size_t(count.second)] = int(count.first_preferred);
    table[std::size_t(count.second)][std::size_t(count.first)] = int(count.second_preferred);
  }
  expect_near(thurstone_row_means(table).value(), {0, .9215225475, .7800707652, 1.361571154}, 5.1e-10);
  table[0][1] = 0;
  EXPECT_FALSE(thurstone_row_means(table));
}

// PC-7: half a preference to either instead of ties (recomputed: R package BradleyTerry2, BTm on win1.adj and win2.adj).
TEST(Worths, OfSoundFieldsWithHalvedTies) {
  const auto fit = fit_worths(8, flutes(), 0, {.ties_as_halves = true}).value();
  expect_near(fit.worth, {0, -.7155938, 1.4852054, 1.2569397, 1.3704071, 1.4852054, 1.4275998, 1.1441955},
              5.1e-8);
  EXPECT_FALSE(fit.tie_weight);
  // Counts that are doubled instead have the same worths and standard errors smaller by the root of 2.
  auto doubled = flutes();
  for (PairCount& count : doubled)
    count = {count.first, count.second, 2 * count.first_preferred + count.ties, 0,
             2 * count.second_preferred + count.ties};
  const auto twice = fit_worths(8, doubled).value();
  expect_near(twice.worth, fit.worth, 1e-10);
  EXPECT_NEAR(fit.difference_error(1, 0), std::sqrt(2) * twice.difference_error(1, 0), 1e-10);
  EXPECT_NEAR(2 * fit.deviance, twice.deviance, 1e-9);
  const auto normal = fit_worths(8, flutes(), 0, {.model = PreferenceModel::normal, .ties_as_halves = true});
  const auto twice_normal = fit_worths(8, doubled, 0, {.model = PreferenceModel::normal});
  expect_near(normal->worth, twice_normal->worth, 1e-10);
  // A tie alone keeps halves finite.
  EXPECT_TRUE(fit_worths(2, std::vector<PairCount>{{0, 1, 3, 1, 0}}, 0, {.ties_as_halves = true}));
}

TEST(Worths, OfTwoItemsAreTheLogOdds) {
  const std::vector<PairCount> counts{{0, 1, 3, 0, 12}};
  EXPECT_NEAR(fit_worths(2, counts)->worth[1], std::log(4), 1e-12);
  EXPECT_NEAR(fit_worths(2, counts)->difference_error(0, 1), std::sqrt(1 / 3.0 + 1 / 12.0), 1e-12);
  EXPECT_NEAR(fit_worths(2, counts)->deviance, 0, 1e-12);
  // Half an answer to each side: J. Haldane (1956) and Firth (1993), section 3.3.
  const auto reduced = fit_worths(2, counts, 0, {.bias_reduced = true}).value();
  EXPECT_NEAR(reduced.worth[1], std::log(12.5 / 3.5), 1e-10);
  const std::vector<PairCount> one{{0, 1, 1, 0, 0}};
  EXPECT_NEAR(fit_worths(2, one, 1, {.bias_reduced = true})->worth[0], std::log(1.5 / 0.5), 1e-10);
}

// Half an answer to each of three kinds: their probabilities are as free as the parameters. Source: Firth (1993), section 3.3.
TEST(Worths, OfTwoItemsWithATieHaveHalfAnAnswerMore) {
  const std::vector<PairCount> counts{{0, 1, 1, 1, 0}};
  const auto reduced = fit_worths(2, counts, 1, {.bias_reduced = true}).value();
  EXPECT_NEAR(reduced.worth[0], std::log(1.5 / 0.5), 1e-10);
  EXPECT_NEAR(reduced.tie_weight.value(), 1.5 / std::sqrt(1.5 * 0.5), 1e-10);
}

// With both orders: log odds of 8:2 for 0 first and 5:5 for 1 first are worth and order together and apart.
TEST(Worths, HaveAnOrderEffect) {
  const std::vector<PairCount> counts{{0, 1, 8, 0, 2}, {1, 0, 5, 0, 5}};
  const auto fit = fit_worths(2, counts, 1, {.order_effect = true}).value();
  EXPECT_NEAR(fit.worth[0], std::log(4) / 2, 1e-12);
  EXPECT_NEAR(fit.order_effect.value(), std::log(4) / 2, 1e-12);
  EXPECT_NEAR(fit.order_error.value(), std::sqrt(1 / 8. + 1 / 2. + 1 / 5. + 1 / 5.) / 2, 1e-12);
  EXPECT_EQ(fit.degrees_of_freedom, 0);
}

// Two items, ties: nu is ties over the geometric mean of the preferences.
TEST(Worths, HaveATieWeight) {
  const std::vector<PairCount> counts{{0, 1, 9, 6, 4}};
  const auto fit = fit_worths(2, counts, 1).value();
  EXPECT_NEAR(fit.worth[0], std::log(9 / 4.), 1e-12);
  EXPECT_NEAR(fit.tie_weight.value(), 6 / std::sqrt(36.), 1e-12);
  EXPECT_NEAR(fit.deviance, 0, 1e-12);
}

TEST(Worths, DoNotDependOnTheReference) {
  const auto one = fit_worths(8, flutes(), 0).value(), other = fit_worths(8, flutes(), 5).value();
  for (int i = 0; i < 8; ++i) {
    EXPECT_NEAR(one.worth[std::size_t(i)] - one.worth[5], other.worth[std::size_t(i)], 1e-10);
    if (i != 3) {
      EXPECT_NEAR(one.difference_error(i, 3), other.difference_error(i, 3), 1e-10);
    }
  }
  EXPECT_NEAR(one.deviance, other.deviance, 1e-9);
}

// Bias-reduced worths are finite where those of maximum likelihood are not.
TEST(Worths, AreNothingWhereInfinite) {
  const std::vector<PairCount> ranked{{0, 1, 3, 0, 0}, {0, 2, 3, 0, 0}, {1, 2, 3, 0, 0}};
  EXPECT_FALSE(fit_worths(3, ranked));
  const auto reduced = fit_worths(3, ranked, 2, {.bias_reduced = true}).value();
  EXPECT_GT(reduced.worth[0], reduced.worth[1]);
  EXPECT_GT(reduced.worth[1], 0);
  EXPECT_NEAR(reduced.worth[0], 2 * reduced.worth[1], 1e-9);
  const std::vector<PairCount> apart{{0, 1, 3, 0, 1}, {2, 3, 2, 0, 2}};
  EXPECT_FALSE(fit_worths(4, apart));
  EXPECT_FALSE(fit_worths(4, apart, 0, {.bias_reduced = true}));
}

// Coverage of 95 % intervals of a difference by simulation, 4 items, 20 comparisons of each pair.
TEST(Worths, CoverTheTrueDifference) {
  Random random(7);
  int holding = 0, fitted = 0;
  for (int repeat = 0; repeat < 1'000; ++repeat) {
    const auto counts = drawn_answers(random);
    if (const auto fit = fit_worths(4, counts)) {
      ++fitted;
      holding += std::abs(fit->worth[3] - 1.2) < 1.959964 * fit->difference_error(3, 0);
    }
  }
  EXPECT_GT(fitted, 990);
  EXPECT_NEAR(double(holding) / fitted, 0.95, 0.028);  // 4 standard deviations
}

TEST(Worths, RefuseImpossibleArguments) {
  EXPECT_EQ(refusal([] {
              fit_worths(1, std::vector<PairCount>{{0, 1, 1, 0, 1}});
            }),
            "number of items must be between 2 and 100, got 1");
  EXPECT_EQ(refusal([] {
              fit_worths(2, std::vector<PairCount>{{0, 1, 1, 0, 1}, {1, 2, 1, 0, 1}});
            }),
            "second item of row 2 must be between 0 and 1, got 2");
  EXPECT_EQ(refusal([] {
              fit_worths(2, std::vector<PairCount>{{1, 1, 1, 0, 1}});
            }),
            "the items of row 1 must be different");
  EXPECT_EQ(refusal([] {
              fit_worths(2, std::vector<PairCount>{{0, 1, 0, 0, 0}});
            }),
            "no preference was given: all counts are 0");
  EXPECT_EQ(refusal([] {
              fit_worths(2, std::vector<PairCount>{{0, 1, 1, 0, -1}});
            }),
            "preferences for the second of row 1 must be between 0 and 1000000, got -1");
  EXPECT_EQ(refusal([] {
              fit_worths(2, std::vector<PairCount>{{0, 1, 1, 0, 1}}, 2);
            }),
            "reference must be between 0 and 1, got 2");
  EXPECT_EQ(refusal([] {
              fit_worths(2, std::vector<PairCount>{{0, 1, 1, 1, 1}}, 0, {.model = PreferenceModel::normal});
            }),
            "a model of ties and bias reduction need the logistic model");
}

}  // namespace
}  // namespace stats
