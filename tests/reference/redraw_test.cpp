// Exact re-draws against whole numbers and fractions in Python, and R's fisher.test.
#include "stats/redraw/redraw.h"
#include "reference/draws.h"
#include "reference/tables.h"
#include "stats/redraw/poisson_binomial.h"
#include "stats/redraw/redraw_fixed.h"
#include "stats/redraw/redraw_layouts.h"
#include "stats/redraw/total.h"

namespace reference {
namespace {

using RedrawR = AgainstR;
using RedrawPython = AgainstPython;

/// The distribution and all that is read from it, as in redraw.py.
Numbers with_tails(const stats::TotalDistribution& distribution, int observed, double level) {
  Numbers all = distribution;
  all.insert(all.end(),
             {stats::total_at_least(distribution, observed), stats::total_at_most(distribution, observed),
              stats::total_two_sided_by_distance(distribution, observed),
              stats::total_two_sided_by_probability(distribution, observed),
              or_nothing(stats::total_minimum(distribution, level))});
  return all;
}

std::vector<stats::Split> splits_of(const Numbers& list) {
  std::vector<stats::Split> splits;
  for (const auto& pair : whole_rows(list, 2)) splits.push_back({pair[0], pair[1]});
  return splits;
}

/// Trials of that many layouts each, a total that is possible, a level.
std::vector<Numbers> drawn_layouts(Draws& draws, int layouts, int most_trials) {
  const int trials = draws.size(most_trials), raters = draws.whole(1, 5);
  const Numbers entries = draws.wholes(trials * layouts, 0, raters);
  double observed = 0;
  for (const auto& trial : whole_rows(entries, layouts))
    observed += trial[static_cast<std::size_t>(draws.whole(0, layouts - 1))];
  return {entries, {double(layouts)}, {observed}, {draws.level()}};
}

TEST_F(RedrawPython, RedrawIsThatOfEveryFallOfTheCoins) {
  const auto calls = drawn(150, 5'000, [](Draws& draws) { return drawn_layouts(draws, 2, 60); });
  const auto ours = [](const Call& call) {
    const auto splits = splits_of(call.list(0));
    const int observed = call.whole(2);
    const Numbers distribution = stats::redraw_distribution(splits);
    const std::vector<int> largest = [&] {
      std::vector<int> list;
      for (const auto& [one, other] : splits) list.push_back(std::max(one, other));
      return list;
    }();
    std::size_t places = 1;  // redraw_distribution has a place for each total up to the sum of all counts
    for (int count : largest) places += static_cast<std::size_t>(count);
    Numbers all = with_tails({distribution.begin(), distribution.begin() + std::ptrdiff_t(places)}, observed,
                             call.number(3));
    const std::size_t at = places;
    all[at] = stats::redraw_at_least(splits, observed);
    all[at + 1] = stats::redraw_at_most(splits, observed);
    all[at + 2] = stats::redraw_two_sided(splits, observed);
    all[at + 4] = or_nothing(stats::redraw_minimum(splits, call.number(3)));
    return all;
  };
  expect_alike({"redraw.py", "layouts", "entries,width,observed,level"}, calls, ours, {1e-13});
}

TEST_F(RedrawPython, LayoutsAreThoseOfEveryDraw) {
  const auto calls =
      drawn(150, 5'000, [](Draws& draws) { return drawn_layouts(draws, draws.whole(1, 6), 40); });
  const auto ours = [](const Call& call) {
    return with_tails(stats::redraw_layouts(whole_rows(call.list(0), call.whole(1))), call.whole(2),
                      call.number(3));
  };
  expect_alike({"redraw.py", "layouts", "entries,width,observed,level"}, calls, ours, {1e-12});
}

TEST_F(RedrawPython, FixedNumbersAreThoseOfEveryChoice) {
  const auto calls = drawn(100, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    auto call = drawn_layouts(draws, 2, 10);
    const int trials = static_cast<int>(call[0].size()) / 2;
    int top = 0;
    for (const auto& pair : whole_rows(call[0], 2)) top += std::max(pair[0], pair[1]);
    return {call[0], {double(draws.right_of(trials))}, {double(draws.whole(0, top))}, call[3]};
  });
  const auto ours = [](const Call& call) {
    return with_tails(stats::redraw_fixed(splits_of(call.list(0)), call.whole(1)), call.whole(2),
                      call.number(3));
  };
  expect_alike({"redraw.py", "fixed", "splits,ones,observed,level"}, calls, ours, {1e-12});
}

TEST_F(RedrawR, FixedNumbersOfOneRaterAreFishersExactTest) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(100), ones = draws.right_of(trials), called = draws.right_of(trials);
    const int least = std::max(0, ones + called - trials), most = std::min(ones, called);
    return {{double(trials)}, {double(ones)}, {double(called)}, {double(draws.whole(least, most))}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const int trials = call.whole(0), ones = call.whole(1), called = call.whole(2), hits = call.whole(3);
    std::vector<stats::Split> splits;
    for (int i = 0; i < trials; ++i) splits.push_back(i < called ? stats::Split{1, 0} : stats::Split{0, 1});
    const auto distribution = stats::redraw_fixed(splits, ones);
    const int right = 2 * hits + trials - ones - called;
    return {distribution[static_cast<std::size_t>(right)], stats::total_at_least(distribution, right),
            stats::total_at_most(distribution, right),
            stats::total_two_sided_by_probability(distribution, right)};
  };
  expect_alike({"redraw.R", "fixed_of_one", "trials,ones,called,hits"}, calls, ours, {1e-12});
}

/// Groups of trials with a chance each.
std::vector<Numbers> drawn_groups(Draws& draws, int most_groups, int most_trials) {
  Numbers trials, chances;
  for (int groups = draws.whole(1, most_groups); groups > 0; --groups) {
    trials.push_back(draws.whole(0, most_trials));
    chances.push_back(draws.one_in(3) ? draws.closed_share() : draws.chance());
  }
  return {trials, chances};
}

stats::TotalDistribution of_groups(const Call& call) {
  std::vector<stats::TrialGroup> groups;
  for (std::size_t i = 0; i < call.list(0).size(); ++i)
    groups.push_back({call.wholes(0)[i], call.list(1)[i]});
  return stats::poisson_binomial(groups);
}

TEST_F(RedrawPython, PoissonBinomialIsThatOfExactFractions) {
  const auto calls = drawn(50, 1'000, [](Draws& draws) {
    auto call = drawn_groups(draws, 4, 8);
    int trials = 0;
    for (double count : call[0]) trials += static_cast<int>(count);
    call.push_back({double(draws.whole(0, trials))});
    call.push_back({draws.level()});
    return call;
  });
  const auto ours = [](const Call& call) {
    return with_tails(of_groups(call), call.whole(2), call.number(3));
  };
  expect_alike({"redraw.py", "poisson_binomial", "trials,chances,observed,level"}, calls, ours, {1e-12});
}

TEST_F(RedrawPython, PoissonBinomialOfManyTrialsIsThatOfSciPysBinomialsConvolved) {
  const auto calls = drawn(30, 500, [](Draws& draws) { return drawn_groups(draws, 5, 200); });
  // SciPy's pmf is the exponential of logarithms up to some hundreds; tails below 1e-290 lose digits.
  expect_alike({"redraw.py", "many_trials", "trials,chances"}, calls, of_groups, {1e-11, 1e-290});
}

TEST_F(RedrawPython, PowerIsThatOfTheConvolution) {
  const auto calls = drawn(60, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(30);
    return {draws.wholes(trials, 1, draws.whole(1, 5)),
            {draws.level()},
            {draws.closed_share()},
            {draws.share_or({0.8, 0.9})}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::redraw_power(call.wholes(0), call.number(1), call.number(2)),
            stats::redraw_share_caught(call.wholes(0), call.number(1), call.number(3)).value_or(kNothing)};
  };
  expect_alike({"redraw.py", "power", "splits,level,share,probability"}, calls, ours, {1e-11, 1e-12});
}

}  // namespace
}  // namespace reference
