// Permutations and resamples of agreement against every one of them in Python, and R's fisher.test.
#include "reference/draws.h"
#include "reference/tables.h"
#include "stats/agreement/concordance.h"
#include "stats/resampling/agreement_permutation.h"
#include "stats/resampling/alpha_permutation.h"
#include "stats/resampling/bootstrap_agreement.h"

namespace reference {
namespace {

using ResamplingR = AgainstR;
using ResamplingPython = AgainstPython;

stats::Marks marks_of(const Numbers& list) {
  stats::Marks marks;
  for (double mark : list) marks.push_back(std::isnan(mark) ? std::nullopt : std::optional(mark != 0));
  return marks;
}

TEST_F(ResamplingR, SharedMarksOfTwoRatersAreFishersExactTest) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(200);
    Numbers first = draws.wholes(trials, 0, draws.one_in(10) ? 0 : 1), second = draws.wholes(trials, 0, 1);
    if (draws.one_in(10)) second = first;
    return {first, second};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const std::vector<stats::Marks> raters{marks_of(call.list(0)), marks_of(call.list(1))};
    const auto shared = stats::permutation_agreement(raters);
    EXPECT_TRUE(shared.test.exact);
    return {double(shared.agreeing), shared.test.p};
  };
  expect_alike({"redraw.R", "agreement_of_two", "first,second"}, calls, ours, {1e-11});
}

/// Whole answers of some raters, a few missing.
Numbers drawn_ratings(Draws& draws, int entries, int least, int most) {
  Numbers answers = draws.wholes(entries, least, most);
  const int missing = draws.whole(0, 2);
  for (double& answer : answers)
    if (draws.whole(1, 8) <= missing) answer = kNothing;
  return answers;
}

TEST_F(ResamplingPython, SharedMarksAreThoseOfEveryArrangement) {
  const auto calls = drawn(40, 1'000, [](Draws& draws) -> std::vector<Numbers> {
    const int raters = draws.whole(2, 3), trials = draws.whole(1, raters == 2 ? 8 : 5);
    return {drawn_ratings(draws, raters * trials, 0, 1), {double(trials)}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    std::vector<stats::Marks> raters;
    for (const Numbers& rater : rows_of(call.list(0), call.whole(1))) raters.push_back(marks_of(rater));
    const auto shared = stats::permutation_agreement(raters);
    return {double(shared.agreeing), double(shared.pairs), shared.test.p};
  };
  expect_alike({"resampling.py", "shared_marks", "marks,trials"}, calls, ours, {1e-12});
}

TEST_F(ResamplingPython, PermutationOfAlphaIsThatOfEveryArrangement) {
  const auto calls = drawn(40, 1'000, [](Draws& draws) -> std::vector<Numbers> {
    const int raters = draws.whole(2, 3), subjects = draws.whole(1, raters == 2 ? 5 : 4);
    const int metric = draws.whole(0, 3);
    return {
        drawn_ratings(draws, raters * subjects, 0, draws.whole(1, 2)), {double(raters)}, {double(metric)}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found = stats::permute_alpha(ratings_of(call.list(0), call.whole(1)),
                                            static_cast<stats::Metric>(call.whole(2)));
    if (!found) return Numbers(2, kNothing);
    EXPECT_TRUE(found->test.exact);
    return {found->alpha, found->test.p};
  };
  expect_alike({"resampling.py", "permuted_alpha", "ratings,columns,metric"}, calls, ours, {1e-12, 1e-14});
}

TEST_F(ResamplingPython, BootstrapIsNearThatOfEveryResample) {
  const int draws_each = 200'000;
  const auto calls = drawn(10, 200, [](Draws& draws) -> std::vector<Numbers> {
    const int subjects = draws.whole(1, 4), categories = draws.whole(2, 3), raters = draws.whole(2, 4);
    Numbers counts(static_cast<std::size_t>(subjects * categories));
    for (int subject = 0; subject < subjects; ++subject)
      for (int i = 0; i < raters; ++i)
        ++counts[static_cast<std::size_t>(subject * categories + draws.whole(0, categories - 1))];
    return {counts, {double(categories)}};
  });
  const auto ours = [=](const Call& call) {
    const auto found = stats::bootstrap_agreement(whole_rows(call.list(0), call.whole(1)), 0.95,
                                                  {.seed = 1, .draws = draws_each});
    Numbers all;
    for (const auto& one : {found.alpha, found.fleiss_kappa, found.gwet_ac1}) {
      const Numbers three = one ? Numbers{one->mean, one->standard_error, double(one->undefined) / draws_each}
                                : Numbers(3, kNothing);
      all.insert(all.end(), three.begin(), three.end());
    }
    return all;
  };
  // The coefficients lie within 2 of each other here: five standard deviations of a mean of so many.
  expect_alike({"resampling.py", "resampled", "counts,columns"}, calls, ours,
               {0, 5 / std::sqrt(double(draws_each))});
}

TEST_F(ResamplingPython, ConcordanceIsThatOfEveryOrder) {
  const auto calls = drawn(30, 500, [](Draws& draws) -> std::vector<Numbers> {
    for (;;) {
      const int raters = draws.whole(2, 4), items = draws.whole(2, raters == 4 ? 3 : 4);
      const Numbers answers = draws.wholes(raters * items, 1, draws.whole(2, 9));
      if (stats::concordance(rows_of(answers, items), {.seed = 1, .draws = 1}))
        return {answers, {double(items)}};
    }
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found = stats::concordance(rows_of(call.list(0), call.whole(1))).value();
    EXPECT_TRUE(found.permutation.exact);
    return {found.permutation.p};
  };
  expect_alike({"resampling.py", "concordance", "answers,items"}, calls, ours, {1e-12});
}

}  // namespace
}  // namespace reference
