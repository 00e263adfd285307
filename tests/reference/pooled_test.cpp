// Counts of several subjects against SciPy's betabinom and combine_pvalues, R's tests, and exact fractions.
#include "reference/draws.h"
#include "reference/tables.h"
#include "stats/pooled/beta_binomial.h"
#include "stats/pooled/chance_corrected.h"
#include "stats/pooled/cochran_q.h"
#include "stats/pooled/combination.h"
#include "stats/pooled/overdispersion.h"
#include "stats/pooled/study_simulation.h"
#include "stats/pooled/trend.h"

namespace reference {
namespace {

using PooledR = AgainstR;
using PooledPython = AgainstPython;

TEST_F(PooledPython, BetaBinomialIsThatOfSciPy) {
  const auto calls = drawn(100, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{double(draws.size(1000))}, {draws.share()}, {draws.between(0.02, 0.98)}};
  });
  const auto ours = [](const Call& call) {
    return stats::beta_binomial(call.whole(0), call.number(1), call.number(2));
  };
  // SciPy takes differences of logarithms of the beta function, which are some thousands here.
  expect_alike({"pooled.py", "beta_binomial", "trials,mean,gamma"}, calls, ours, {1e-10});
}

TEST_F(PooledPython, ChanceCorrectedIsThatOfExactFractions) {
  const auto calls = drawn(100, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    const double small = std::pow(10, draws.between(-9, 0));
    return {{double(draws.size(12))},
            {draws.one_in(2) ? 0 : draws.chance()},
            {draws.closed_share()},
            {draws.one_in(3) ? small : draws.closed_share()}};
  });
  const auto ours = [](const Call& call) {
    const double chance = call.number(1), mean = call.number(2), gamma = call.number(3);
    const Numbers corrected = stats::chance_corrected(call.whole(0), chance, mean, gamma);
    if (chance == 0) {
      const Numbers plain = stats::beta_binomial(call.whole(0), mean, gamma);
      for (std::size_t i = 0; i < plain.size(); ++i) EXPECT_NEAR(plain[i], corrected[i], 1e-13);
    }
    return corrected;
  };
  expect_alike({"pooled.py", "chance_corrected", "trials,chance,mean,gamma"}, calls, ours, {1e-12});
}

/// Subjects' counts, sometimes of equal numbers of trials, sometimes of one subject.
std::vector<Numbers> drawn_counts(Draws& draws, int most_subjects, int most_trials) {
  const int subjects = draws.size(most_subjects), same = draws.whole(2, most_trials);
  const bool equal = draws.one_in(2), alike = draws.one_in(2);
  const double share = draws.share();
  Numbers correct, trials;
  for (int i = 0; i < subjects; ++i) {
    const int n = equal ? same : draws.size(most_trials);
    trials.push_back(n);
    correct.push_back(alike ? draws.binomial(n, share) : draws.right_of(n));
  }
  return {correct, trials};
}

std::vector<stats::SubjectCount> subjects_of(const Call& call) {
  std::vector<stats::SubjectCount> subjects;
  for (std::size_t i = 0; i < call.list(0).size(); ++i)
    subjects.push_back({call.wholes(0)[i], call.wholes(1)[i]});
  return subjects;
}

TEST_F(PooledR, SpreadOfSubjectsIsThatOfChisqTest) {
  const auto calls = drawn(300, 10'000, [](Draws& draws) { return drawn_counts(draws, 30, 40); });
  const auto ours = [](const Call& call) -> Numbers {
    const auto subjects = subjects_of(call);
    return {stats::pearson_dispersion(subjects).value_or(kNothing),
            stats::moment_gamma(subjects).value_or(kNothing), stats::tarone_z(subjects).value_or(kNothing),
            stats::tarone_normal_p(subjects).value_or(kNothing)};
  };
  // gamma and Z are differences.
  expect_alike({"pooled.R", "spread", "correct,trials"}, calls, ours, {1e-11, 1e-13});
}

TEST_F(PooledPython, TaronesExactPIsThatOfEveryPlacement) {
  const auto calls = drawn(60, 1'000, [](Draws& draws) {
    for (;;) {
      auto counts = drawn_counts(draws, 4, 6);
      if (stats::tarone_z(subjects_of({counts}))) return counts;
    }
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::tarone_exact(subjects_of(call)).value().p};
  };
  expect_alike({"pooled.py", "tarone", "correct,trials"}, calls, ours, {1e-12});
}

std::vector<Numbers> drawn_varying(Draws& draws) {
  for (;;) {
    auto call = drawn_counts(draws, 10, 12);
    call.push_back({draws.one_in(2) ? 0 : draws.one_in(2) ? 1. / 2 : 1. / 3});
    const double chance = call[2][0];
    const auto subjects = subjects_of({call});
    const auto fit = stats::fit_chance_corrected(subjects, chance);
    if (fit.gamma && fit.mean > 0 && fit.mean < 1) return call;
  }
}

TEST_F(PooledR, FitHasTheLargestLikelihood) {
  const auto ours = [](const Call& call) -> Numbers {
    const auto fit = stats::fit_chance_corrected(subjects_of(call), call.number(2));
    EXPECT_NEAR(fit.likelihood_ratio, 2 * (fit.log_likelihood - fit.binomial_log_likelihood), 1e-9);
    return {fit.log_likelihood, fit.binomial_log_likelihood};
  };
  // The search stops 1e-9 short of 0 and 1.
  expect_alike({"pooled.R", "largest_likelihoods", "correct,trials,chance"}, drawn(15, 1'000, drawn_varying),
               ours, {1e-10, 1e-8});
}

TEST_F(PooledR, PAtTheBoundaryIsHalfThatOfPchisq) {
  const auto fitted = [](const Call& call) {
    return stats::fit_chance_corrected(subjects_of(call), call.number(2));
  };
  const auto designs = drawn(15, 1'000, drawn_varying);
  std::vector<Call> calls;
  for (const Call& design : designs) calls.push_back({{{fitted(design).likelihood_ratio}}});
  std::size_t next = 0;
  const auto ours = [&](const Call&) -> Numbers { return {fitted(designs[next++]).half_chi_square_p}; };
  expect_alike({"pooled.R", "half_p", "ratio"}, calls, ours, {1e-11});
}

TEST_F(PooledR, EstimatesAreWhereTheLikelihoodIsLargest) {
  const auto ours = [](const Call& call) -> Numbers {
    const auto fit = stats::fit_chance_corrected(subjects_of(call), call.number(2));
    const bool inside = *fit.gamma > 0.01 && *fit.gamma < 0.9 && fit.mean > 0.02 && fit.mean < 0.98;
    return inside ? Numbers{fit.mean, *fit.gamma} : Numbers(2, kNothing);
  };
  // A search knows the place of a flat top only to the root of rounding.
  expect_alike({"pooled.R", "estimates", "correct,trials,chance"}, drawn(15, 1'000, drawn_varying), ours,
               {0, 1e-5});
}

TEST_F(PooledR, StandardErrorsOfTheFitAreThoseOfTheInformation) {
  const auto calls = drawn(40, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    for (;;) {
      auto call = drawn_varying(draws);
      const auto fit = stats::fit_beta_binomial(subjects_of({call}));
      if (!fit.gamma_error || *fit.gamma < 0.01 || *fit.gamma > 0.95 || fit.mean < 0.02 || fit.mean > 0.98)
        continue;
      return {call[0], call[1], {fit.mean}, {*fit.gamma}};
    }
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto fit = stats::fit_beta_binomial(subjects_of(call));
    return {fit.mean_error.value(), fit.gamma_error.value()};
  };
  // Differences over 2e-5 of slopes: an error of 1e-10 in its square and of 1e-11 by rounding, near the ends
  // more.
  expect_alike({"pooled.R", "errors", "correct,trials,mean,gamma"}, calls, ours, {1e-7});
}

std::vector<Numbers> drawn_answers(Draws& draws, int most_subjects, int conditions) {
  const int subjects = draws.whole(1, most_subjects);
  Numbers answers = draws.wholes(subjects * conditions, 0, 1);
  if (draws.one_in(8)) std::fill(answers.begin(), answers.end(), draws.whole(0, 1));
  return {answers, {double(conditions)}};
}

TEST_F(PooledR, CochransQIsThatOfFriedmanTest) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) {
    auto call = drawn_answers(draws, 12, draws.whole(2, 6));
    if (double(call[0].size()) == call[1][0]) call[0].insert(call[0].end(), call[0].begin(), call[0].end());
    return call;  // friedman.test asks for two subjects
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found = stats::cochran_q(truth_rows(call.list(0), call.whole(1)), {.seed = 1, .draws = 1});
    if (!found) return Numbers(3, kNothing);
    return {found->q, double(found->degrees_of_freedom), found->chi_square_p};
  };
  expect_alike({"pooled.R", "cochran", "answers,columns"}, calls, ours, {1e-11, 1e-13});
}

double permuted_q(const Numbers& answers, int conditions) {
  const auto found = stats::cochran_q(truth_rows(answers, conditions));
  return found ? found->permutation.p : kNothing;
}

TEST_F(PooledR, CochransQOfTwoConditionsIsMcNemarsExactTest) {
  const auto calls = drawn(
      200, 5'000, [](Draws& draws) -> std::vector<Numbers> { return {drawn_answers(draws, 60, 2)[0]}; });
  const auto ours = [](const Call& call) -> Numbers { return {permuted_q(call.list(0), 2)}; };
  expect_alike({"pooled.R", "mcnemar", "answers"}, calls, ours, {1e-11});
}

TEST_F(PooledPython, CochransPIsThatOfEveryPlacement) {
  const auto calls = drawn(40, 1'000, [](Draws& draws) {
    for (;;) {
      auto call = drawn_answers(draws, 5, draws.whole(2, 4));
      if (!std::isnan(permuted_q(call[0], static_cast<int>(call[1][0])))) return call;
    }
  });
  const auto ours = [](const Call& call) -> Numbers { return {permuted_q(call.list(0), call.whole(1))}; };
  expect_alike({"pooled.py", "placed", "answers,columns"}, calls, ours, {1e-12});
}

std::vector<Numbers> drawn_p(Draws& draws) {
  Numbers p, weights;
  for (int tests = draws.size(30); tests > 0; --tests) {
    p.push_back(draws.one_in(6) ? std::pow(10, draws.between(-300, -5)) : draws.share());
    weights.push_back(draws.between(0.1, 10));
  }
  if (draws.one_in(10)) p.front() = 1;
  return {p, weights};
}

TEST_F(PooledPython, FishersCombinationIsThatOfSciPy) {
  const auto calls =
      drawn(200, 5'000, [](Draws& draws) -> std::vector<Numbers> { return {drawn_p(draws)[0]}; });
  const auto ours = [](const Call& call) -> Numbers {
    const auto combined = stats::fisher_combination(call.list(0));
    return {combined.statistic, combined.p};
  };
  expect_alike({"pooled.py", "fisher", "p"}, calls, ours, {1e-11});
}

TEST_F(PooledPython, StouffersCombinationIsThatOfSciPy) {
  const auto ours = [](const Call& call) -> Numbers {
    const auto combined = stats::stouffer_combination(call.list(0), call.list(1));
    return {combined.statistic, combined.p};
  };
  // A tail far out takes z^2, up to some thousands, times z's relative error.
  expect_alike({"pooled.py", "stouffer", "p,weights"}, drawn(200, 5'000, drawn_p), ours, {1e-11, 1e-14});
}

TEST_F(PooledR, TrendOfOneRaterIsThatOfWilcoxTest) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    return {draws.wholes(draws.whole(1, 45), 0, draws.one_in(10) ? 0 : 1)};
  });
  const auto ours = [](const Call& call) {
    const std::vector<std::vector<bool>> raters{{call.list(0).begin(), call.list(0).end()}};
    const auto first = stats::trend_over_trials(raters, stats::Alternative::greater);
    Numbers all{double(first.sum), first.expected};
    for (const auto alternative : kAlternatives)
      all.push_back(stats::trend_over_trials(raters, alternative).p.p);
    return all;
  };
  expect_alike({"pooled.R", "trend", "right"}, calls, ours, {1e-12});
}

TEST_F(PooledR, TrendOfSeveralRatersIsTheirRankSumsAdded) {
  const auto calls =
      drawn(60, 2'000, [](Draws& draws) { return drawn_answers(draws, 5, draws.whole(1, 12)); });
  const auto ours = [](const Call& call) {
    Numbers all;
    for (const auto alternative : kAlternatives)
      all.push_back(stats::trend_over_trials(truth_rows(call.list(0), call.whole(1)), alternative).p.p);
    return all;
  };
  expect_alike({"pooled.R", "trend_of_all", "right,columns"}, calls, ours, {1e-12});
}

TEST_F(PooledR, SimulatedStudiesOfOneRaterAreThoseOfTheSum) {
  const std::int64_t studies = tier() == "long" ? 1'000'000 : 100'000;
  const auto calls = drawn(20, 100, [](Draws& draws) -> std::vector<Numbers> {
    const int comparisons = draws.whole(1, 3);
    return {{double(comparisons)}, {double(draws.whole(1, comparisons == 3 ? 8 : 16))},
            {draws.chance()},      {draws.level()},
            {draws.share()},       {draws.between(0.02, 0.9)}};
  });
  const auto ours = [=](const Call& call) {
    const auto found =
        stats::simulate_studies({1, call.whole(0), call.whole(1), call.number(2), call.number(3)},
                                {call.number(4), call.number(5)}, studies, 1);
    Numbers shares;
    for (const auto count : found.by_supported) shares.push_back(double(count) / double(studies));
    return shares;
  };
  // Five standard deviations of a share of that many studies.
  expect_alike({"pooled.R", "holm_of_one", "comparisons,trials,chance,level,mean,gamma"}, calls, ours,
               {0, 2.5 / std::sqrt(double(studies))});
}

}  // namespace
}  // namespace reference
