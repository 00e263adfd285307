// Differences of means against SciPy's permutation_test and R's t.test; signed ranks and repeated measures against R's
// wilcox.test and every order counted in Python.
#include "reference/draws.h"
#include "stats/samples/mean_difference.h"
#include "stats/samples/rank_sum.h"
#include "stats/samples/repeated_ranks.h"
#include "stats/samples/signed_rank.h"

namespace reference {
namespace {

using SamplesR = AgainstR;
using SamplesPython = AgainstPython;

std::vector<Call> samples(int plain, int many, int least, int most) {
  return drawn(plain, many, [=](Draws& draws) -> std::vector<Numbers> {
    const auto sample = [&, ties = draws.one_in(2)] {
      const int count = draws.whole(least, most);
      return ties ? draws.wholes(count, 0, 4) : draws.numbers(count, -100, 100);
    };
    Numbers x = sample();
    return {x, sample(), {draws.confidence()}};
  });
}

TEST_F(SamplesR, WelchsIntervalIsThatOfTTest) {
  const auto ours = [](const Call& call) -> Numbers {
    const auto limits = stats::welch_interval(call.list(0), call.list(1), call.number(2));
    return {stats::mean_difference(call.list(0), call.list(1)), limits ? limits->lower : kNothing,
            limits ? limits->upper : kNothing};
  };
  // Limits near 0 are differences of numbers up to 100.
  expect_alike({"samples.R", "welch", "x,y,confidence"}, samples(500, 10'000, 1, 30), ours, {1e-11, 1e-12});
}

TEST_F(SamplesPython, PermutationOfMeansIsThatOfSciPy) {
  auto calls = samples(60, 2'000, 2, 6);  // SciPy asks for two values or more
  for (Call& call : calls) call.arguments.pop_back();
  const auto ours = [](const Call& call) {
    Numbers all;
    for (const auto alternative : kAlternatives)
      all.push_back(stats::mean_difference_test(call.list(0), call.list(1), alternative).p);
    return all;
  };
  expect_alike({"samples.py", "permuted", "x,y"}, calls, ours, {1e-12});
}

Numbers rank_sum_and_p(const Call& call) {
  Numbers all;
  for (const auto alternative : kAlternatives) {
    const auto found = stats::rank_sum(call.list(0), call.list(1), alternative);
    if (all.empty()) all = {found.pairs_won};
    all.push_back(found.test.p);
    EXPECT_TRUE(found.test.exact);
  }
  return all;
}

TEST_F(SamplesPython, RankSumsAreThoseOfEveryDivision) {
  auto calls = samples(60, 2'000, 1, 6);
  for (Call& call : calls) call.arguments.pop_back();
  expect_alike({"samples.py", "rank_sum", "x,y"}, calls, rank_sum_and_p, {1e-12});
}

TEST_F(SamplesR, RankSumsAreThoseOfAPackage) {
  if (!has_package("exactRankTests"))
    GTEST_SKIP() << "needs exactRankTests: Debian package r-cran-exactranktests";
  auto calls = samples(60, 1'000, 5, 30);
  for (Call& call : calls) call.arguments.pop_back();
  const auto ours = [](const Call& call) {
    Numbers all = rank_sum_and_p(call);
    all.pop_back();
    return all;
  };
  expect_alike({"samples.R", "rank_sum", "x,y"}, calls, ours, {1e-9});
}

Numbers signed_rank_and_p(const Numbers& differences) {
  Numbers all;
  for (const auto alternative : kAlternatives) {
    const auto found = stats::signed_rank(differences, alternative);
    if (all.empty()) all = {double(found.zeros), found.positive_sum};
    all.push_back(found.test.p);
    EXPECT_TRUE(found.test.exact);
  }
  return all;
}

TEST_F(SamplesPython, SignedRanksAreThoseOfEverySign) {
  const auto calls = drawn(100, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    const int count = draws.whole(1, 10);
    return {draws.one_in(2) ? draws.wholes(count, -4, 4) : draws.numbers(count, -1, 2)};
  });
  const auto ours = [](const Call& call) { return signed_rank_and_p(call.list(0)); };
  expect_alike({"samples.py", "signed_rank", "differences"}, calls, ours, {1e-12});
}

TEST_F(SamplesR, SignedRanksWithoutTiesAreThoseOfWilcoxTest) {
  const auto calls = drawn(100, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    return {draws.numbers(draws.whole(1, 49), -1, 2)};
  });
  const auto ours = [](const Call& call) { return signed_rank_and_p(call.list(0)); };
  expect_alike({"samples.R", "signed_rank", "differences"}, calls, ours, {1e-11});
}

TEST_F(SamplesPython, RepeatedRanksAreThoseOfEveryOrder) {
  const auto calls = drawn(25, 400, [](Draws& draws) -> std::vector<Numbers> {
    const int items = draws.whole(2, 4), listeners = draws.whole(1, items == 4 ? 3 : 5);
    const int count = items * listeners;
    return {draws.one_in(2) ? draws.wholes(count, 1, 4) : draws.numbers(count, 0, 1),
            {double(listeners), double(items)}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    std::vector<std::vector<double>> rows;
    for (std::size_t i = 0; i < call.list(0).size(); i += std::size_t(call.wholes(1)[1]))
      rows.emplace_back(call.list(0).begin() + std::ptrdiff_t(i),
                        call.list(0).begin() + std::ptrdiff_t(i) + call.wholes(1)[1]);
    const auto found = stats::friedman(rows);
    if (!found) return Numbers(6, kNothing);
    Numbers all{found->chi_square, found->test.p, stats::page(rows)->statistic};
    for (const auto alternative : kAlternatives) all.push_back(stats::page(rows, alternative)->test.p);
    return all;
  };
  expect_alike({"samples.py", "repeated_ranks", "values,shape"}, calls, ours, {1e-11, 1e-13});
}

}  // namespace
}  // namespace reference
