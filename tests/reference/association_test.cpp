// Rank correlations against R's cor.test and, with ties, against every order counted in Python.
#include "reference/draws.h"
#include "stats/association/item_permutation.h"
#include "stats/association/kendall.h"
#include "stats/association/partial_rho.h"
#include "stats/association/spearman.h"
#include "stats/association/theil_sen.h"

namespace reference {
namespace {

using AssociationR = AgainstR;
using AssociationPython = AgainstPython;

/// A coefficient and its three p.
template <typename Test, typename Coefficient>
Numbers coefficient_and_p(const Test& test, Coefficient coefficient) {
  Numbers all{kNothing};
  for (const auto alternative : kAlternatives) {
    const auto found = test(alternative);
    all.push_back(found ? found->test.p : kNothing);
    all.front() = found ? std::invoke(coefficient, *found) : kNothing;
    EXPECT_TRUE(!found || found->test.exact);
  }
  return all;
}

Numbers spearman_and_p(const Numbers& x, const Numbers& y) {
  return coefficient_and_p([&](auto alternative) { return stats::spearman(x, y, alternative); },
                           &stats::RankCorrelation::rho);
}

Numbers kendall_and_p(const Numbers& x, const Numbers& y) {
  return coefficient_and_p([&](auto alternative) { return stats::kendall(x, y, alternative); },
                           &stats::KendallCorrelation::tau_b);
}

TEST_F(AssociationR, SpearmanWithoutTiesIsThatOfCorTest) {
  const auto calls = drawn(150, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    const int pairs = draws.whole(2, 9), kind = draws.whole(1, 10);
    const Numbers x = draws.order(pairs);
    return {x, kind == 1 ? x : draws.order(pairs)};
  });
  const auto ours = [](const Call& call) { return spearman_and_p(call.list(0), call.list(1)); };
  // rho by R may miss 0 by rounding.
  expect_alike({"association.R", "spearman", "x,y"}, calls, ours, {1e-13, 1e-15});
}

TEST_F(AssociationR, SmallestRhoOfManyPairsIsByStudentsT) {
  const auto calls = drawn(300, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{double(12 + draws.size(9'988))}, {draws.level()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::smallest_significant_rho(call.whole(0), call.number(1)).value().rho};
  };
  expect_alike({"association.R", "approximate_rho", "n,level"}, calls, ours, {1e-11});
}

TEST_F(AssociationR, PartialRhoIsThatOfWhatLmLeaves) {
  const auto calls = drawn(150, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    const int items = draws.whole(6, 30);
    const bool ties = draws.one_in(2);
    const auto values = [&] { return ties ? draws.wholes(items, 0, 9) : draws.numbers(items, -1, 1); };
    Numbers first = values(), second = values(), x = values(), y = values();
    for (std::size_t i = 0; i < x.size(); ++i) y[i] += draws.whole(0, 1) * first[i];
    return {x, y, first, second};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found =
        stats::partial_rho(call.list(0), call.list(1), {call.list(2), call.list(3)}, {.draws = 1});
    if (!found) return {kNothing, kNothing};
    return {found->rho, found->t_p};
  };
  expect_alike({"association.R", "partial", "x,y,first,second"}, calls, ours, {1e-9, 1e-11});
}

/// Values of which many are equal, sometimes all.
Numbers tied(Draws& draws, int count) { return draws.wholes(count, 1, draws.whole(1, 6)); }

TEST_F(AssociationPython, SpearmanWithTiesIsThatOfEveryOrder) {
  const auto calls = drawn(25, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    const int pairs = draws.whole(2, 7);
    return {tied(draws, pairs), draws.one_in(4) ? draws.order(pairs) : tied(draws, pairs), {draws.level()}};
  });
  const auto ours = [](const Call& call) {
    Numbers all = spearman_and_p(call.list(0), call.list(1));
    for (const auto alternative : kAlternatives)
      all.push_back(stats::smallest_attainable_p(call.list(0), call.list(1), alternative).value_or(kNothing));
    const auto smallest = stats::smallest_significant_rho(call.list(0), call.list(1), call.number(2));
    all.push_back(smallest ? smallest->rho : kNothing);
    return all;
  };
  expect_alike({"association.py", "spearman", "x,y,level"}, calls, ours, {1e-12, 1e-15});
}

TEST_F(AssociationPython, SpearmanOfTwelvePairsIsThatOfAllPairingsCounted) {
  const auto calls = drawn(2, 60, [](Draws& draws) -> std::vector<Numbers> {
    const int pairs = tier() == "long" ? draws.whole(10, 12) : 10;
    Numbers x = draws.order(pairs);
    if (draws.one_in(2))
      for (double& rank : x) rank = std::ceil(rank / 3);
    return {x, draws.order(pairs)};
  });
  const auto ours = [](const Call& call) { return spearman_and_p(call.list(0), call.list(1)); };
  expect_alike({"association.py", "spearman_counted", "x,y"}, calls, ours, {1e-12, 1e-15});
}

TEST_F(AssociationR, KendallWithoutTiesIsThatOfCorTest) {
  const auto calls = drawn(150, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    const int pairs = draws.whole(2, 49), kind = draws.whole(1, 10);
    const Numbers x = draws.order(pairs);
    return {x, kind == 1 ? x : draws.order(pairs)};
  });
  const auto ours = [](const Call& call) { return kendall_and_p(call.list(0), call.list(1)); };
  // R takes an upper tail from 1, so that its small ones, negative at times, are off by rounding.
  expect_alike({"association.R", "kendall", "x,y"}, calls, ours, {1e-12, 1e-14});
}

TEST_F(AssociationPython, KendallWithTiesIsThatOfEveryOrder) {
  const auto calls = drawn(25, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    const int pairs = draws.whole(2, 7);
    return {tied(draws, pairs), draws.one_in(4) ? draws.order(pairs) : tied(draws, pairs)};
  });
  const auto ours = [](const Call& call) { return kendall_and_p(call.list(0), call.list(1)); };
  expect_alike({"association.py", "kendall", "x,y"}, calls, ours, {1e-12, 1e-15});
}

TEST_F(AssociationPython, TheilSenIsThatOfSciPy) {
  const auto calls = drawn(100, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    const int pairs = draws.whole(2, 30);
    Numbers x = draws.one_in(2) ? tied(draws, pairs) : draws.numbers(pairs, -5, 5);
    x[0] = x[1] + 1;  // SciPy asks for two different x
    return {x, draws.numbers(pairs, -5, 5)};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found = stats::theil_sen(call.list(0), call.list(1), 0.5);
    return {found->slope, found->intercept};
  };
  expect_alike({"association.py", "theil_sen", "x,y"}, calls, ours, {1e-11, 1e-12});
}

std::vector<Numbers> pairs_of_items(Draws& draws) {
  const int items = draws.whole(2, 6), pairs = draws.whole(2, 10);
  const bool ties = draws.one_in(2);
  Numbers first, second;
  for (int i = 0; i < pairs; ++i) {
    first.push_back(draws.whole(0, items - 1));
    second.push_back(std::fmod(first.back() + draws.whole(1, items - 1), items));
  }
  return {ties ? tied(draws, items) : draws.numbers(items, -5, 5),
          first,
          second,
          draws.one_in(2) ? tied(draws, pairs) : draws.numbers(pairs, 0, 1),
          {double(draws.whole(0, 1))},
          {draws.level()}};
}

Numbers by_item(const Call& call) {
  std::vector<stats::ItemPair> pairs;
  for (std::size_t i = 0; i < call.list(1).size(); ++i)
    pairs.push_back({call.wholes(1)[i], call.wholes(2)[i], call.list(3)[i]});
  const auto value =
      call.whole(4) ? stats::PairValue::signed_difference : stats::PairValue::absolute_difference;
  Numbers all{kNothing};
  for (const auto alternative : kAlternatives) {
    const auto found = stats::permute_by_item(call.list(0), pairs, value, alternative);
    all.push_back(found ? found->test.p : kNothing);
    all.front() = found ? found->rho : kNothing;
  }
  for (const auto alternative : kAlternatives)
    all.push_back(
        stats::smallest_attainable_p_by_item(call.list(0), pairs, value, alternative).value_or(kNothing));
  all.push_back(
      stats::smallest_significant_rho_by_item(call.list(0), pairs, value, call.number(5)).value_or(kNothing));
  return all;
}

TEST_F(AssociationPython, PermutationByItemIsThatOfEveryOrder) {
  expect_alike({"association.py", "by_item", "values,first,second,outcomes,signed,level"},
               drawn(30, 2'000, pairs_of_items), by_item, {1e-12, 1e-12});
}

}  // namespace
}  // namespace reference
