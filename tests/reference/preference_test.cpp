// Consistency and agreement of preferences against every tournament and every table counted in Python; worths against R's
// glm, and whether they are finite against linear programmes of SciPy.
#include <set>

#include "reference/draws.h"
#include "stats/preference/circular_triads.h"
#include "stats/preference/preference_agreement.h"
#include "stats/worth/estimability.h"
#include "stats/worth/pairwise_tests.h"
#include "stats/worth/quasi_variance.h"
#include "stats/worth/worth.h"

namespace reference {
namespace {

using PreferencePython = AgainstPython;

/// @param wins  for the first of each pair of items, pair after pair, out of `each`.
stats::PreferenceTable table_of(int items, int each, const Numbers& wins) {
  const auto n = static_cast<std::size_t>(items);
  stats::PreferenceTable table(n, std::vector<int>(n));
  auto win = wins.begin();
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 1; j < n; ++j, ++win) {
      table[i][j] = static_cast<int>(*win);
      table[j][i] = each - table[i][j];
    }
  return table;
}

TEST_F(PreferencePython, CircularTriadsAreThoseOfEveryTournament) {
  const auto calls = drawn(40, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    const int items = draws.whole(3, 7);
    return {draws.wholes(items * (items - 1) / 2, draws.one_in(10) ? 1 : 0, 1), {double(items)}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found = stats::circular_triads(table_of(call.whole(1), 1, call.list(0)));
    return {double(found.triads), double(found.most), found.zeta, found.test.p};
  };
  expect_alike({"preference.py", "triads", "outcomes,items"}, calls, ours, {1e-13, 1e-16});
}

TEST_F(PreferencePython, AgreementIsThatOfEveryTable) {
  const auto calls = drawn(60, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    const int items = draws.whole(2, 6), listeners = draws.whole(2, 12);
    Numbers wins;
    const double share = draws.closed_share();
    for (int pair = 0; pair < items * (items - 1) / 2; ++pair)
      wins.push_back(draws.binomial(listeners, share));
    return {wins, {double(items), double(listeners)}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found =
        stats::preference_agreement(table_of(call.wholes(1)[0], call.wholes(1)[1], call.list(0)));
    return {double(found.agreements), found.u, found.test.p};
  };
  expect_alike({"preference.py", "agreement", "wins,shape"}, calls, ours, {1e-12, 1e-15});
}

using PreferenceR = AgainstR;

/// Pairs in both orders or one, with `most` answers each; some of them always the same.
struct Drawn {
  Numbers first, second, wins, ties, losses;
};

Drawn comparisons(Draws& draws, int items, int most, bool with_ties) {
  Drawn all;
  for (int i = 0; i < items; ++i)
    for (int j = 0; j < items; ++j) {
      if (i == j || draws.one_in(4)) continue;
      all.first.push_back(i);
      all.second.push_back(j);
      const bool steady = draws.one_in(5);
      all.wins.push_back(steady ? (i < j ? most : 0) : draws.whole(0, most));
      all.losses.push_back(steady ? most - all.wins.back() : draws.whole(0, most));
      all.ties.push_back(with_ties && draws.one_in(2) ? draws.whole(0, most) : 0);
    }
  return all;
}

std::vector<stats::PairCount> counts_of(const Numbers& first, const Numbers& second, const Numbers& wins,
                                        const Numbers& ties, const Numbers& losses) {
  std::vector<stats::PairCount> counts;
  for (std::size_t i = 0; i < first.size(); ++i)
    counts.push_back({int(first[i]), int(second[i]), std::int64_t(wins[i]), std::int64_t(ties[i]),
                      std::int64_t(losses[i])});
  return counts;
}

bool has_answers(const Drawn& one) {
  double sum = 0;
  for (const auto* part : {&one.wins, &one.ties, &one.losses})
    for (const double count : *part) sum += count;
  return sum > 0;
}

/// Calls of comparisons whose worths are finite: first, second, wins, (ties,) losses, items.
std::vector<Call> finite_calls(int plain, int many, bool with_ties, bool order_effect) {
  return drawn(plain, many, [=](Draws& draws) -> std::vector<Numbers> {
    for (;;) {
      const int items = draws.whole(2, 7);
      const Drawn one = comparisons(draws, items, draws.whole(1, 12), with_ties);
      if (!has_answers(one)) continue;
      const auto counts = counts_of(one.first, one.second, one.wins, one.ties, one.losses);
      if (stats::estimable_worths(items, counts, order_effect).estimability != stats::Estimability::finite)
        continue;
      std::vector<Numbers> arguments{one.first, one.second, one.wins};
      if (with_ties) arguments.push_back(one.ties);
      arguments.insert(arguments.end(), {one.losses, {double(items)}});
      return arguments;
    }
  });
}

Numbers fitted(const Call& call, bool with_ties, const stats::WorthOptions& options) {
  const std::size_t losses = with_ties ? 4 : 3;
  const int items = call.whole(losses + 1);
  const Numbers none(call.list(0).size());
  const auto counts =
      counts_of(call.list(0), call.list(1), call.list(2), with_ties ? call.list(3) : none, call.list(losses));
  const auto fit = stats::fit_worths(items, counts, 0, options);
  if (!fit) return {};
  Numbers all(fit->worth.begin() + 1, fit->worth.end());
  if (options.order_effect) all.push_back(*fit->order_effect);
  if (fit->tie_weight) all.push_back(std::log(*fit->tie_weight));
  if (options.bias_reduced) return all;
  for (int i = 1; i < items; ++i) all.push_back(fit->difference_error(i, 0));
  if (options.order_effect) all.push_back(*fit->order_error);
  if (fit->tie_weight) all.push_back(*fit->log_tie_error);
  all.push_back(fit->deviance);
  return all;
}

TEST_F(PreferenceR, WorthsWithOrderEffectAreThoseOfGlm) {
  const auto ours = [](const Call& call) { return fitted(call, false, {.order_effect = true}); };
  expect_alike({"preference.R", "bradley_terry", "first,second,wins,losses,items"},
               finite_calls(80, 3'000, false, true), ours, {1e-7, 1e-8});
}

TEST_F(PreferenceR, WorthsAreThoseOfPackages) {
  if (!has_package("BradleyTerry2") || !has_package("psychotools"))
    GTEST_SKIP()
        << "needs BradleyTerry2 and psychotools: Debian packages r-cran-bradleyterry2, r-cran-psychotools";
  const auto with_order = [](const Call& call) {
    Numbers all = fitted(call, false, {.order_effect = true});
    all.resize(static_cast<std::size_t>(call.whole(4)));
    return all;
  };
  expect_alike({"preference.R", "worths_of_package", "first,second,wins,losses,items"},
               finite_calls(30, 500, false, true), with_order, {1e-5, 1e-6});
  auto calls = finite_calls(30, 500, true, false);
  // It takes comparisons of all pairs only, and needs ties.
  std::erase_if(calls, [](const Call& call) {
    std::set<std::pair<double, double>> compared;
    double ties = 0;
    for (std::size_t i = 0; i < call.list(0).size(); ++i) {
      ties += call.list(3)[i];
      if (call.list(2)[i] + call.list(3)[i] + call.list(4)[i] > 0)
        compared.insert(std::minmax(call.list(0)[i], call.list(1)[i]));
    }
    const int items = call.whole(5);
    return ties == 0 || items < 3 || int(compared.size()) < items * (items - 1) / 2;
  });
  ASSERT_GT(calls.size(), 5u);
  const auto with_ties = [](const Call& call) {
    Numbers all = fitted(call, true, {});
    all.resize(static_cast<std::size_t>(call.whole(5)));
    return all;
  };
  expect_alike({"preference.R", "ties_of_package", "first,second,wins,ties,losses,items"}, calls, with_ties,
               {1e-4, 1e-4});
}

TEST_F(PreferenceR, NormalWorthsAreThoseOfGlm) {
  const auto ours = [](const Call& call) {
    return fitted(call, false, {.model = stats::PreferenceModel::normal});
  };
  expect_alike({"preference.R", "thurstone", "first,second,wins,losses,items"},
               finite_calls(80, 3'000, false, false), ours, {1e-6, 1e-7});
}

TEST_F(PreferenceR, WorthsWithTiesAreThoseOfALogLinearModel) {
  auto calls = finite_calls(80, 3'000, true, true);
  std::erase_if(calls, [](const Call& call) {
    return std::all_of(call.list(3).begin(), call.list(3).end(), [](double ties) { return ties == 0; });
  });
  ASSERT_GT(calls.size(), 40u);
  const auto ours = [](const Call& call) { return fitted(call, true, {.order_effect = true}); };
  expect_alike({"preference.R", "davidson", "first,second,wins,ties,losses,items"}, calls, ours,
               {1e-6, 1e-7});
}

TEST_F(PreferenceR, BiasReducedWorthsAreThoseOfHalfTheLeverage) {
  const auto calls = drawn(80, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    for (;;) {
      const int items = draws.whole(2, 6);
      const Drawn one = comparisons(draws, items, draws.whole(1, 8), false);
      if (!has_answers(one)) continue;
      const auto counts = counts_of(one.first, one.second, one.wins, one.ties, one.losses);
      if (stats::estimable_worths(items, counts, false).estimability == stats::Estimability::disconnected)
        continue;
      return {one.first, one.second, one.wins, one.losses, {double(items)}};
    }
  });
  const auto ours = [](const Call& call) { return fitted(call, false, {.bias_reduced = true}); };
  expect_alike({"preference.R", "firth", "first,second,wins,losses,items"}, calls, ours, {1e-8, 1e-9});
}

TEST_F(PreferenceR, PairwiseTestsAreDifferencesOfDeviance) {
  const auto ours = [](const Call& call) -> Numbers {
    const Numbers none(call.list(0).size());
    const auto tests = stats::pairwise_tests(
        call.whole(4), counts_of(call.list(0), call.list(1), call.list(2), none, call.list(3)));
    Numbers all, adjusted;
    for (const auto& test : *tests) {
      all.push_back(test.likelihood_ratio);
      adjusted.push_back(test.adjusted_p);
    }
    all.insert(all.end(), adjusted.begin(), adjusted.end());
    return all;
  };
  // The root in the tail makes p of a ratio near 0 uncertain by the root of its rounding.
  expect_alike({"preference.R", "pairwise", "first,second,wins,losses,items"},
               finite_calls(60, 1'000, false, false), ours, {1e-7, 1e-6});
}

/// Covariances of three items or more: of random sums, row by row.
std::vector<Call> covariance_calls(int plain, int many) {
  return drawn(plain, many, [](Draws& draws) -> std::vector<Numbers> {
    const int items = draws.whole(3, 9);
    std::vector<Numbers> roots;
    for (int i = 0; i < items; ++i) roots.push_back(draws.numbers(items + 2, -1, 1));
    Numbers covariance;
    for (const Numbers& a : roots)
      for (const Numbers& b : roots) {
        covariance.push_back(0);
        for (std::size_t k = 0; k < a.size(); ++k) covariance.back() += a[k] * b[k];
      }
    return {covariance, {double(items)}};
  });
}

Numbers quasi_of(const Call& call) {
  const auto items = static_cast<std::size_t>(call.whole(1));
  std::vector<Numbers> covariance(items);
  for (std::size_t i = 0; i < items; ++i)
    covariance[i].assign(call.list(0).begin() + std::ptrdiff_t(i * items),
                         call.list(0).begin() + std::ptrdiff_t((i + 1) * items));
  return stats::quasi_variances(covariance).variance;
}

TEST_F(PreferenceR, QuasiVariancesAreLeastSquares) {
  expect_alike({"preference.R", "quasi", "covariance,items"}, covariance_calls(60, 1'000), quasi_of,
               {1e-9, 1e-9});
}

TEST_F(PreferenceR, QuasiVariancesAreThoseOfAPackage) {
  if (!has_package("qvcalc")) GTEST_SKIP() << "needs qvcalc: Debian package r-cran-qvcalc";
  expect_alike({"preference.R", "quasi_of_package", "covariance,items"}, covariance_calls(60, 1'000),
               quasi_of, {1e-5, 1e-5});
}

TEST_F(PreferencePython, FiniteWorthsAreThoseOfLinearProgrammes) {
  const auto calls = drawn(300, 10'000, [](Draws& draws) -> std::vector<Numbers> {
    for (;;) {
      const int items = draws.whole(2, 5);
      const Drawn one = comparisons(draws, items, draws.whole(1, 2), draws.one_in(2));
      if (has_answers(one))
        return {one.first, one.second, one.wins,
                one.ties,  one.losses, {double(items), double(draws.whole(0, 1))}};
    }
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto counts = counts_of(call.list(0), call.list(1), call.list(2), call.list(3), call.list(4));
    return {double(stats::estimable_worths(call.wholes(5)[0], counts, call.wholes(5)[1] == 1).estimability)};
  };
  expect_alike({"preference.py", "estimable", "first,second,wins,ties,losses,shape"}, calls, ours, {0});
}

}  // namespace
}  // namespace reference
