#include "stats/agreement/intraclass.h"

#include <gtest/gtest.h>

#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <limits>

#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

std::vector<std::vector<double>> shrout_fleiss_answers() {
  std::vector<std::vector<double>> answers;
  for (const CsvRow& row : check_values("shrout_fleiss1979.csv"))
    answers.push_back(
        {row.number("judge1"), row.number("judge2"), row.number("judge3"), row.number("judge4")});
  return answers;
}

void expect_form(const IntraclassCorrelation& form, double value, double lower, double upper) {
  EXPECT_NEAR(form.value, value, 5.1e-10);
  EXPECT_NEAR(form.interval.lower, lower, 5.1e-10);
  EXPECT_NEAR(form.interval.upper, upper, 5.1e-10);
}

// AG-6: Shrout and Fleiss (1979), table 2 (printed .17 .29 .71 .44 .62 .91, memory; data confirmed from R
// package psych; recomputed). Intervals recomputed: psych::ICC(x, lmer = FALSE), psych 2.2.9.
TEST(Intraclass, AgreesWithShroutAndFleiss) {
  const auto icc = intraclass(shrout_fleiss_answers(), 0.95).value();
  EXPECT_NEAR(icc.between_subjects, 11.24166667, 5.1e-9);
  EXPECT_NEAR(icc.within_subjects, 6.26388889, 5.1e-9);
  EXPECT_NEAR(icc.between_raters, 32.48611111, 5.1e-9);
  EXPECT_NEAR(icc.residual, 1.01944444, 5.1e-9);
  expect_form(icc.one_way_single, .165741768405, -.132932324875, .722560062328);
  expect_form(icc.random_single, .289763779528, .0187865133747, .761084369649);
  expect_form(icc.fixed_single, .714840714841, .342464765034, .945858259955);
  expect_form(icc.one_way_mean, .442797133679, -.884442155238, .912415420341);
  expect_form(icc.random_mean, .620050547599, .0711368153025, .927232040168);
  expect_form(icc.fixed_mean, .909315542377, .675674713816, .985891678169);
}

TEST(Intraclass, TestsAgreeWithShroutAndFleiss) {
  const auto icc = intraclass(shrout_fleiss_answers(), 0.95).value();
  EXPECT_NEAR(icc.one_way_test.f, 1.794678, 5.1e-7);
  EXPECT_EQ(icc.one_way_test.freedom, 5);
  EXPECT_EQ(icc.one_way_test.divisor_freedom, 18);
  EXPECT_NEAR(icc.one_way_test.p, .1647688, 5.1e-8);
  EXPECT_NEAR(icc.two_way_test.f, 11.027248, 5.1e-7);
  EXPECT_EQ(icc.two_way_test.divisor_freedom, 15);
  EXPECT_NEAR(icc.two_way_test.p, .0001345665, 5.1e-11);
}

// Recomputed: psych::ICC(x, lmer = FALSE, alpha = .1).
TEST(Intraclass, AgreesWithPsychAtNinetyPerCent) {
  const auto icc = intraclass(shrout_fleiss_answers(), 0.9).value();
  EXPECT_NEAR(icc.one_way_single.interval.lower, -.0967222036577, 5.1e-12);
  EXPECT_NEAR(icc.random_single.interval.upper, .691070606618, 5.1e-12);
  EXPECT_NEAR(icc.random_mean.interval.lower, .152037053856, 5.1e-12);
  EXPECT_NEAR(icc.fixed_mean.interval.upper, .980366056047, 5.1e-12);
}

// Recomputed: psych::ICC(x, lmer = FALSE). There the lower limit of ICC(2,k) is 11.6, beyond the pole of the
// formula; here it is -infinity.
TEST(Intraclass, MayBeNegative) {
  const auto icc = intraclass({{4, 6, 9}, {9, 1, 2}, {2, 8, 3}, {7, 3, 8}, {5, 2, 7}}, 0.95).value();
  expect_form(icc.one_way_single, -.287591240876, -.446593448386, .389980936699);
  expect_form(icc.random_single, -.367441860465, -.573997652094, .396676715967);
  expect_form(icc.fixed_single, -.309803921569, -.458095228806, .348936040092);
  expect_form(icc.one_way_mean, -2.030927835052, -12.543220865961, .657285320311);
  EXPECT_NEAR(icc.random_mean.value, -4.157894736842, 5.1e-13);
  EXPECT_EQ(icc.random_mean.interval.lower, -kInfinite);
  EXPECT_NEAR(icc.random_mean.interval.upper, .663578147347, 5.1e-13);
  expect_form(icc.fixed_mean, -2.443298969072, -16.397723305149, .616541217971);
}

// Consistency does not care for a rater's own level, and nothing cares for the unit.
TEST(Intraclass, DoesNotChangeWithTheScale) {
  auto moved = shrout_fleiss_answers();
  for (auto& subject : moved) {
    for (double& answer : subject) answer = 1e8 + 3 * answer;
  }
  const auto icc = intraclass(moved, 0.95).value();
  EXPECT_NEAR(icc.random_single.value, .289763779528, 5.1e-11);
  for (auto& subject : moved) subject[1] += 77;
  EXPECT_NEAR(intraclass(moved, 0.95).value().fixed_mean.interval.lower, .675674713816, 5.1e-10);
  EXPECT_LT(intraclass(moved, 0.95).value().random_single.value, .1);
}

TEST(Intraclass, AtTheEdges) {
  EXPECT_FALSE(intraclass({{.1, .1, .1}, {.1, .1, .1}}, 0.95));
  const auto same = intraclass({{.1, .1, .1}, {.7, .7, .7}, {.3, .3, .3}}, 0.95).value();
  for (const auto& form : {same.one_way_single, same.random_single, same.fixed_single, same.one_way_mean,
                           same.random_mean, same.fixed_mean}) {
    EXPECT_EQ(form.value, 1);
    EXPECT_EQ(form.interval.lower, 1);
    EXPECT_EQ(form.interval.upper, 1);
  }
  EXPECT_EQ(same.two_way_test.f, kInfinite);
  EXPECT_EQ(same.two_way_test.p, 0);
  const auto shifted = intraclass({{.1, .2}, {.7, .8}, {.3, .4}}, 0.95).value();
  EXPECT_EQ(shifted.fixed_single.value, 1);
  EXPECT_LT(shifted.random_single.value, 1);
  EXPECT_LT(shifted.random_single.interval.lower, shifted.random_single.value);
  const auto level = intraclass({{1, 2, 3}, {2, 3, 1}, {3, 1, 2}}, 0.95).value();
  EXPECT_EQ(level.fixed_single.value, -.5);
  EXPECT_EQ(level.fixed_mean.value, -kInfinite);
  EXPECT_EQ(level.two_way_test.p, 1);
  EXPECT_EQ(intraclass({{0, 1}, {1, 0}}, 0.95).value().random_single.value, -kInfinite);
}

double normal_draw(Random& random) {
  return quantile(boost::math::normal(), (double(random.word() >> 11) + 0.5) * 0x1p-53);
}

bool covers(const Interval& interval, double value) {
  return interval.lower <= value && value <= interval.upper;
}

// Variances: subjects 1, raters 1/3, residual 2/3; so ICC(2,1) is 1/2 and ICC(3,1) is 3/5. That of ICC(3,1)
// is exact: within three standard deviations of 950. With the second the raters have no levels of their own,
// and ICC(1,1) is exact, 3/5 too. For ICC(2,1) NumPy covers in .9456 of 20,000 studies of its own.
TEST(Intraclass, CoversAsOftenAsIsSaid) {
  Random random(6);
  const int studies = 1'000;
  int random_raters = 0, fixed_raters = 0, one_way = 0;
  for (int study = 0; study < studies; ++study) {
    std::vector<std::vector<double>> answers(10, std::vector<double>(4)), level(answers);
    std::vector<double> raters(4);
    for (double& rater : raters) rater = normal_draw(random) * std::sqrt(1. / 3);
    for (std::size_t i = 0; i < answers.size(); ++i) {
      const double subject = normal_draw(random);
      for (std::size_t j = 0; j < raters.size(); ++j) {
        level[i][j] = subject + normal_draw(random) * std::sqrt(2. / 3);
        answers[i][j] = level[i][j] + raters[j];
      }
    }
    const auto icc = intraclass(answers, 0.95).value();
    random_raters += covers(icc.random_single.interval, 0.5);
    fixed_raters += covers(icc.fixed_single.interval, 0.6);
    one_way += covers(intraclass(level, 0.95).value().one_way_single.interval, 0.6);
  }
  EXPECT_EQ(random_raters, 941);
  EXPECT_NEAR(fixed_raters, 950, 3 * 6.9);
  EXPECT_NEAR(one_way, 950, 3 * 6.9);
}

TEST(Intraclass, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] {
              intraclass({{1, 2}}, 0.95);
            }),
            "number of subjects must be between 2 and 50000, got 1");
  EXPECT_EQ(refusal([] {
              intraclass({{1}, {2}}, 0.95);
            }),
            "number of raters must be between 2 and 1000, got 1");
  EXPECT_EQ(refusal([] {
              intraclass({{1, 2}, {1, 2, 3}}, 0.95);
            }),
            "entries of a subject must be between 2 and 2, got 3");
  EXPECT_EQ(refusal([] {
              intraclass({{1, 2}, {1, std::nan("")}}, 0.95);
            }),
            "answer must be between -1e+100 and 1e+100, got nan");
  EXPECT_EQ(refusal([] {
              intraclass({{1, 1}, {1, 1}}, 95);
            }),
            "confidence must be strictly between 0 and 1, got 95 (write 0.95 for 95 %)");
}

}  // namespace
}  // namespace stats
