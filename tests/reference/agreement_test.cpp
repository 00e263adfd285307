// Agreement of raters against R: psych, friedman.test, and the coefficients of the papers written out with
// matrices.
#include "reference/draws.h"
#include "reference/tables.h"
#include "stats/agreement/concordance.h"
#include "stats/agreement/gwet.h"
#include "stats/agreement/intraclass.h"
#include "stats/agreement/kappa.h"
#include "stats/agreement/krippendorff.h"
#include "stats/agreement/weighted_kappa.h"

namespace reference {
namespace {

using Agreement = AgainstR;
using AgreementPsych = AgainstPsych;

stats::AgreementWeights drawn_weights(Draws& draws, int categories) {
  const int kind = draws.whole(1, 4);
  if (kind == 1) return stats::identity_weights(categories);
  if (kind == 2) return stats::linear_weights(categories);
  if (kind == 3) return stats::quadratic_weights(categories);
  auto weights = stats::identity_weights(categories);
  for (std::size_t i = 0; i < weights.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) weights[i][j] = weights[j][i] = draws.share();
  return weights;
}

/// A square table of two raters, often with empty rows, now and then with one cell alone.
std::vector<Numbers> drawn_square(Draws& draws) {
  const int categories = draws.whole(2, 6);
  Numbers counts = draws.wholes(categories * categories, 0, draws.whole(1, 40));
  if (draws.one_in(4))
    for (double& count : counts) count *= draws.whole(0, 1);
  if (draws.one_in(10)) std::fill(counts.begin(), counts.end(), 0);
  counts[static_cast<std::size_t>(draws.whole(0, categories * categories - 1))] += 1;
  return {counts, {double(categories)}, flat(drawn_weights(draws, categories))};
}

double variance(double standard_error, double expected_agreement) {
  return std::pow(standard_error * (1 - expected_agreement), 2);
}

Numbers two_raters(const Call& call) {
  const auto counts = whole_rows(call.list(0), call.whole(1));
  const auto plain = stats::cohen_kappa(counts);
  const auto weighted = stats::weighted_kappa(counts, rows_of(call.list(2), call.whole(1)));
  if (!plain || !weighted) return Numbers(9, kNothing);
  return {plain->kappa,
          variance(plain->standard_error, plain->expected_agreement),
          variance(plain->null_standard_error, plain->expected_agreement),
          plain->largest_kappa,
          weighted->kappa,
          variance(weighted->standard_error, weighted->expected_agreement),
          variance(weighted->null_standard_error, weighted->expected_agreement),
          weighted->observed_agreement,
          weighted->expected_agreement};
}

TEST_F(AgreementPsych, KappaOfTwoRatersIsThatOfCohenKappa) {
  // Kappa is 0 by cancellation in many small tables; its numerator is then a rounding.
  expect_alike({"agreement.R", "two_raters", "counts,columns,weights"}, drawn(300, 10'000, drawn_square),
               two_raters, {1e-10, 1e-14});
}

/// How many raters chose each category of each subject; rows of equal sums where asked.
std::vector<Numbers> drawn_subjects(Draws& draws, bool equal_sums) {
  const int subjects = draws.whole(1, 20), categories = draws.whole(2, 6), raters = draws.whole(2, 8);
  const int used = draws.whole(1, categories);
  Numbers counts(static_cast<std::size_t>(subjects * categories));
  for (int subject = 0; subject < subjects; ++subject)
    for (int answers = equal_sums ? raters : draws.whole(0, raters); answers > 0; --answers)
      ++counts[static_cast<std::size_t>(subject * categories + draws.whole(0, used - 1))];
  if (!equal_sums) counts[0] += 1;
  return {counts, {double(categories)}};
}

Numbers fleiss(const Call& call) {
  const auto counts = whole_rows(call.list(0), call.whole(1));
  const auto kappa = stats::fleiss_kappa(counts);
  Numbers all(4, kNothing);
  if (kappa)
    all = {kappa->kappa, kappa->observed_agreement, kappa->expected_agreement, kappa->null_standard_error};
  const auto by_category = stats::fleiss_category_kappas(counts);
  for (const auto& category : by_category) all.push_back(category.kappa.value_or(kNothing));
  all.push_back(by_category.front().null_standard_error);
  return all;
}

TEST_F(Agreement, FleissKappasAreThoseOfThePapers) {
  const auto calls = drawn(300, 10'000, [](Draws& draws) { return drawn_subjects(draws, true); });
  expect_alike({"agreement.R", "fleiss", "counts,columns"}, calls, fleiss, {1e-11, 1e-14});
}

TEST_F(Agreement, CongersKappaIsTheMeanOverPairsOfRaters) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    const int raters = draws.whole(2, 6);
    return {draws.wholes(raters * draws.whole(1, 15), 1, draws.whole(1, 4)), {double(raters)}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto kappa = stats::conger_kappa(ratings_of(call.list(0), call.whole(1)));
    if (!kappa) return Numbers(3, kNothing);
    return {kappa->kappa, kappa->observed_agreement, kappa->expected_agreement};
  };
  expect_alike({"agreement.R", "conger", "ratings,columns"}, calls, ours, {1e-11, 1e-14});
}

TEST_F(Agreement, GwetsCoefficientsAreThoseOfTheHandbook) {
  const auto calls = drawn(300, 10'000, [](Draws& draws) {
    auto call = drawn_subjects(draws, draws.one_in(2));
    call.push_back(flat(drawn_weights(draws, static_cast<int>(call[1][0]))));
    return call;
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto gwet =
        stats::gwet_ac2(whole_rows(call.list(0), call.whole(1)), rows_of(call.list(2), call.whole(1)));
    if (!gwet) return Numbers(5, kNothing);
    return {gwet->coefficient, gwet->observed_agreement, gwet->expected_agreement,
            gwet->standard_error.value_or(kNothing), double(gwet->subjects)};
  };
  expect_alike({"agreement.R", "gwet", "counts,columns,weights"}, calls, ours, {1e-11, 1e-13});
}

TEST_F(Agreement, AlphaIsThatOfTheCoincidenceMatrix) {
  const auto calls = drawn(150, 10'000, [](Draws& draws) -> std::vector<Numbers> {
    const int raters = draws.whole(2, 6), entries = raters * draws.whole(1, 15);
    Numbers ratings =
        draws.one_in(3) ? draws.numbers(entries, 0, 10) : draws.wholes(entries, 0, draws.whole(0, 5));
    const int missing = draws.whole(0, 3);
    for (double& rating : ratings)
      if (draws.whole(1, 6) <= missing) rating = kNothing;
    return {ratings, {double(raters)}, {double(draws.whole(0, 3))}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto alpha = stats::krippendorff_alpha(ratings_of(call.list(0), call.whole(1)),
                                                 static_cast<stats::Metric>(call.whole(2)));
    if (!alpha) return Numbers(5, kNothing);
    return {alpha->alpha, alpha->observed_disagreement, alpha->expected_disagreement, double(alpha->answers),
            double(alpha->pairable)};
  };
  expect_alike({"agreement.R", "alpha", "ratings,columns,metric"}, calls, ours, {1e-11, 1e-13});
}

std::vector<Numbers> drawn_scores(Draws& draws) {
  const int raters = draws.whole(2, 6), subjects = draws.whole(3, 15);
  const double of_subject = draws.between(0, 20), of_rater = draws.between(0, 10);
  const Numbers liking = draws.numbers(raters, -of_rater, of_rater);
  Numbers answers;
  for (int subject = 0; subject < subjects; ++subject) {
    const double level = draws.between(-of_subject, of_subject);
    for (const double rater : liking)
      answers.push_back(std::round(8 * (level + rater + draws.between(-10, 10))) / 8);
  }
  return {answers, {double(raters)}, {draws.share_or({0.95, 0.9, 0.99})}};
}

Numbers intraclass(const Call& call) {
  const auto icc = stats::intraclass(rows_of(call.list(0), call.whole(1)), call.number(2)).value();
  Numbers all{icc.between_subjects, icc.within_subjects, icc.between_raters, icc.residual};
  for (const auto& form : {icc.one_way_single, icc.one_way_mean, icc.random_single, icc.random_mean,
                           icc.fixed_single, icc.fixed_mean})
    all.insert(all.end(), {form.value, form.interval.lower, form.interval.upper});
  for (const auto& ratio : {icc.one_way_test, icc.two_way_test})
    all.insert(all.end(), {ratio.f, ratio.freedom, ratio.divisor_freedom, ratio.p});
  return all;
}

TEST_F(AgreementPsych, IntraclassCorrelationsAreThoseOfIcc) {
  // Rounding of R's analysis of variance, 1e-13 or so, is divided by what may be a small variance between
  // subjects.
  expect_alike({"agreement.R", "intraclass", "answers,columns,confidence"}, drawn(60, 2'000, drawn_scores),
               intraclass, {1e-11, 1e-12});
}

TEST_F(Agreement, ConcordanceIsThatOfFriedmanTest) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    const int items = draws.whole(2, 7);
    const int entries = items * draws.whole(2, items < 4 ? 10 : items == 4 ? 4 : 2);  // soon counted
    return {draws.one_in(2) ? draws.numbers(entries, 0, 1) : draws.wholes(entries, 0, draws.whole(0, 4)),
            {double(items)}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found = stats::concordance(rows_of(call.list(0), call.whole(1)), {.seed = 1, .draws = 1});
    if (!found) return Numbers(5, kNothing);
    return {found->w, found->sum_of_squares, found->chi_square, double(found->freedom), found->chi_square_p};
  };
  expect_alike({"agreement.R", "concordance", "answers,columns"}, calls, ours, {1e-11, 1e-13});
}

}  // namespace
}  // namespace reference
