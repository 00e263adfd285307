// Differences of means against SciPy's permutation_test and R's t.test.
#include "reference/draws.h"
#include "stats/samples/mean_difference.h"

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

}  // namespace
}  // namespace reference
