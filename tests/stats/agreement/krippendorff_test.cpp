#include "stats/agreement/krippendorff.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <string_view>

#include "stats/agreement/kappa.h"
#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

constexpr std::array kMetrics{Metric::nominal, Metric::ordinal, Metric::interval, Metric::ratio};

Ratings four_observers() {
  const auto rows = check_values("krippendorff2011.csv");
  Ratings ratings(12, std::vector<std::optional<double>>(4));
  for (std::size_t unit = 0; unit < 12; ++unit)
    for (std::size_t observer = 0; observer < 4; ++observer)
      ratings[unit][observer] = rows[observer].find("u" + std::to_string(unit + 1));
  return ratings;
}

Ratings two_observers(std::string_view one, std::string_view other) {
  Ratings ratings;
  for (std::size_t i = 0; i < one.size(); ++i) ratings.push_back({double(one[i]), double(other[i])});
  return ratings;
}

/// The coincidence matrix, pair by pair, as Krippendorff writes it.
double alpha_by_pairs(const Ratings& ratings, Metric metric) {
  std::vector<double> pooled;
  for (const auto& subject : ratings) {
    std::vector<double> own;
    for (const auto& answer : subject)
      if (answer) own.push_back(*answer);
    if (own.size() > 1) pooled.insert(pooled.end(), own.begin(), own.end());
  }
  const auto difference = [&](double c, double k) {
    if (c == k) return 0.;
    if (metric == Metric::nominal) return 1.;
    if (metric == Metric::interval) return (c - k) * (c - k);
    if (metric == Metric::ratio) return std::pow((c - k) / (c + k), 2);
    double between = 0;
    for (const double g : pooled)
      if (g >= std::min(c, k) && g <= std::max(c, k)) between += g == c || g == k ? 0.5 : 1;
    return between * between;
  };
  double observed = 0, expected = 0;
  for (const auto& subject : ratings) {
    double sum = 0, answers = 0;
    for (const auto& one : subject) answers += one.has_value();
    for (const auto& one : subject)
      for (const auto& other : subject)
        if (one && other) sum += difference(*one, *other);
    if (answers > 1) observed += sum / (answers - 1);
  }
  for (const double one : pooled)
    for (const double other : pooled) expected += difference(one, other);
  return 1 - observed * double(pooled.size() - 1) / expected;
}

// AG-4: Krippendorff (2011), section C/D: nominal .743, interval .849 published (confirmed); digits
// recomputed. Ordinal and ratio recomputed: NumPy from the coincidence matrix (published .815 and .797,
// memory).
TEST(KrippendorffAlpha, AgreesWithKrippendorffsTable) {
  const auto nominal = krippendorff_alpha(four_observers(), Metric::nominal).value();
  EXPECT_NEAR(nominal.alpha, .7434210526, 5.1e-11);
  EXPECT_NEAR(nominal.observed_disagreement, .2, 1e-15);
  EXPECT_NEAR(nominal.expected_disagreement, .7794871795, 5.1e-11);
  EXPECT_EQ(nominal.answers, 41);
  EXPECT_EQ(nominal.pairable, 40);
  const auto interval = krippendorff_alpha(four_observers(), Metric::interval).value();
  EXPECT_NEAR(interval.alpha, .8491071429, 5.1e-11);
  EXPECT_NEAR(interval.observed_disagreement, .4333333333, 5.1e-11);
  EXPECT_NEAR(interval.expected_disagreement, 2.871794872, 5.1e-10);
  const auto ordinal = krippendorff_alpha(four_observers(), Metric::ordinal).value();
  EXPECT_NEAR(ordinal.alpha, .8153875038, 5.1e-11);
  EXPECT_NEAR(ordinal.observed_disagreement, 47.275, 1e-12);
  EXPECT_NEAR(ordinal.expected_disagreement, 256.0769230769, 5.1e-11);
  EXPECT_NEAR(krippendorff_alpha(four_observers(), Metric::ratio).value().alpha, .7974027747, 5.1e-11);
}

// AG-4: the same paper, section A (.095 confirmed) and section B (.692 memory); recomputed.
TEST(KrippendorffAlpha, AgreesWithKrippendorffsTwoObservers) {
  const auto binary = two_observers("0100000010", "1110010000");
  for (const Metric metric : {Metric::nominal, Metric::ordinal, Metric::interval})
    EXPECT_NEAR(krippendorff_alpha(binary, metric).value().alpha, .0952380952, 5.1e-11);
  EXPECT_NEAR(krippendorff_alpha(two_observers("aabbdcccedda",
                                               "babbbcccedd"
                                               "d"),
                                 Metric::nominal)
                  .value()
                  .alpha,
              .6919642857, 5.1e-11);
}

// AG-5: alpha of Gwet's tables (confirmed from a review; recomputed); undefined where nothing varies.
TEST(KrippendorffAlpha, FallsBelowZeroWhenNearlyAllIsInOneCategory) {
  Ratings ratings(118, {1, 1});
  ratings.insert(ratings.end(), 5, {1, 2});
  ratings.insert(ratings.end(), 2, {2, 1});
  EXPECT_NEAR(krippendorff_alpha(ratings, Metric::nominal).value().alpha, -.0246913580, 5.1e-11);
  EXPECT_FALSE(krippendorff_alpha(Ratings(10, {1, 1}), Metric::nominal));
}

TEST(KrippendorffAlpha, AgreesWithAllPairs) {
  Random random(40);
  for (int repeat = 0; repeat < 20; ++repeat) {
    Ratings ratings(9, std::vector<std::optional<double>>(4));
    for (auto& subject : ratings)
      for (auto& answer : subject)
        if (random.below(4) > 0) answer = double(random.below(5)) / 2;
    for (const Metric metric : kMetrics)
      EXPECT_NEAR(krippendorff_alpha(ratings, metric).value().alpha, alpha_by_pairs(ratings, metric), 1e-13);
  }
}

// Alpha of complete nominal answers is Fleiss' kappa with its chance agreement corrected for the sample:
// 1 - alpha = (1 - kappa)(1 - 1/n) for n answers (mathematics).
TEST(KrippendorffAlpha, IsNearlyFleissKappa) {
  const Ratings ratings{{1, 1, 2}, {3, 3, 3}, {2, 1, 2}, {2, 2, 2}, {1, 3, 2}};
  const double kappa = fleiss_kappa(count_ratings(ratings, std::array{1., 2., 3.})).value().kappa;
  EXPECT_NEAR(1 - krippendorff_alpha(ratings, Metric::nominal).value().alpha, (1 - kappa) * 14 / 15, 1e-15);
}

TEST(KrippendorffAlpha, DoesNotChangeWithTheScale) {
  const auto given = four_observers();
  for (const auto& [factor, shift] : {std::pair{2., 0.}, {-1., 0.}, {.1, 1e6}, {1e90, 0.}}) {
    Ratings moved = given;
    for (auto& subject : moved)
      for (auto& answer : subject)
        if (answer) answer = *answer * factor + shift;
    EXPECT_NEAR(krippendorff_alpha(moved, Metric::interval).value().alpha, .8491071429, 1e-8);
    EXPECT_NEAR(krippendorff_alpha(moved, Metric::ordinal).value().alpha, .8153875038, 5.1e-11);
    EXPECT_NEAR(krippendorff_alpha(moved, Metric::nominal).value().alpha, .7434210526, 5.1e-11);
  }
}

TEST(KrippendorffAlpha, AtTheEdges) {
  for (const Metric metric : kMetrics) {
    EXPECT_EQ(krippendorff_alpha({{1, 1}, {2, 2}}, metric).value().alpha, 1);
    EXPECT_FALSE(krippendorff_alpha({{1, std::nullopt}, {std::nullopt, 2}}, metric));
    EXPECT_FALSE(krippendorff_alpha({{1, 1}, {1, 1}, {2, std::nullopt}}, metric));
    EXPECT_FALSE(krippendorff_alpha({{std::nullopt, std::nullopt}}, metric));
  }
  EXPECT_NEAR(krippendorff_alpha({{1, 2}, {2, 1}}, Metric::nominal).value().alpha, -.5, 1e-15);
  EXPECT_EQ(krippendorff_alpha({{0, 0}, {0, 5}}, Metric::ratio).value().observed_disagreement, .5);
}

TEST(KrippendorffAlpha, RefusesImpossibleRatings) {
  const auto with = [](const Ratings& ratings, Metric metric = Metric::nominal) {
    return refusal([&] { krippendorff_alpha(ratings, metric); });
  };
  EXPECT_EQ(with({}), "number of subjects must be between 1 and 50000, got 0");
  EXPECT_EQ(with({{1}}), "number of raters must be between 2 and 1000, got 1");
  EXPECT_EQ(with({{1, 2}, {1}}), "entries of a subject must be between 2 and 2, got 1");
  EXPECT_EQ(with(Ratings(1'000, std::vector<std::optional<double>>(101))),
            "subjects times raters must be between 2 and 100000, got 101000");
  EXPECT_EQ(with({{1, std::numeric_limits<double>::quiet_NaN()}}),
            "answer must be between -1e+100 and 1e+100, got nan");
  EXPECT_EQ(with({{1, std::numeric_limits<double>::infinity()}}),
            "answer must be between -1e+100 and 1e+100, got inf");
  EXPECT_EQ(with({{1, -2}}, Metric::ratio), "answer on a ratio scale must be between 0 and 1e+100, got -2");
}

TEST(CountRatings, CountsCategoriesAlsoThoseThatNobodyChose) {
  const Ratings ratings{{1, 3, std::nullopt}, {3, 3, 1}};
  EXPECT_EQ(count_ratings(ratings, std::array{1., 2., 3.}), (CountTable{{1, 0, 1}, {1, 0, 2}}));
  EXPECT_EQ(refusal([&] {
              count_ratings(ratings, std::array{1., 2.});
            }),
            "answer must be one of the categories, got 3.000000");
  EXPECT_EQ(refusal([&] {
              count_ratings(ratings, std::array{1., 1.});
            }),
            "categories must all differ, got 1.000000 twice");
}

}  // namespace
}  // namespace stats
