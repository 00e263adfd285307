// Shares right against R's binom.test, prop.test, pbinom, qbeta, and roots by uniroot.
#include "reference/draws.h"
#include "stats/share/approximate_interval.h"
#include "stats/share/binomial.h"
#include "stats/share/coverage.h"
#include "stats/share/heard.h"
#include "stats/share/interval.h"
#include "stats/share/operating_table.h"
#include "stats/share/power.h"
#include "stats/share/similarity.h"

namespace reference {
namespace {

using Share = AgainstR;

std::vector<Call> counts_and_chance(int plain, int many, int most_trials) {
  return drawn(plain, many, [=](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(most_trials);
    return {{double(draws.right_of(trials))}, {double(trials)}, {draws.chance()}};
  });
}

std::vector<Call> counts_and_confidence(int plain, int many, int most_trials) {
  return drawn(plain, many, [=](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(most_trials);
    return {{double(draws.right_of(trials))}, {double(trials)}, {draws.confidence()}};
  });
}

TEST_F(Share, TailsAreThoseOfPbinom) {
  const auto ours = [](const Call& call) -> Numbers {
    const int correct = call.whole(0), trials = call.whole(1);
    return {stats::chance_of_at_least(correct, trials, call.number(2)),
            stats::chance_of_at_most(correct, trials, call.number(2)),
            stats::chance_of_exactly(correct, trials, call.number(2))};
  };
  expect_alike({"share.R", "tails", "correct,trials,chance"}, counts_and_chance(1000, 20'000, 10'000), ours,
               {1e-11});
}

TEST_F(Share, TwoSidedIsThatOfBinomTest) {
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::two_sided(call.whole(0), call.whole(1), call.number(2))};
  };
  expect_alike({"share.R", "two_sided", "correct,trials,chance"}, counts_and_chance(500, 20'000, 2'000), ours,
               {1e-11});
}

TEST_F(Share, MinimumCorrectIsTheSmallestWhoseTailReachesTheLevel) {
  const auto calls = drawn(500, 10'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{double(draws.size(1000))}, {draws.level()}, {draws.chance()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {or_nothing(stats::minimum_correct(call.whole(0), call.number(1), call.number(2)))};
  };
  expect_alike({"share.R", "minimum_correct", "trials,level,chance"}, calls, ours, {0});
}

TEST_F(Share, MinimumCorrectTwoSidedLikewise) {
  const auto calls = drawn(300, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{double(draws.size(1000))}, {draws.level()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {or_nothing(stats::minimum_correct_two_sided(call.whole(0), call.number(1)))};
  };
  expect_alike({"share.R", "minimum_correct_two_sided", "trials,level"}, calls, ours, {0});
}

TEST_F(Share, ClopperPearsonIsThatOfBinomTest) {
  const auto ours = [](const Call& call) -> Numbers {
    const int correct = call.whole(0), trials = call.whole(1);
    const stats::Interval both = stats::clopper_pearson(correct, trials, call.number(2));
    return {both.lower, both.upper, stats::clopper_pearson_lower(correct, trials, call.number(2)),
            stats::clopper_pearson_upper(correct, trials, call.number(2))};
  };
  expect_alike({"share.R", "clopper_pearson", "correct,trials,confidence"},
               counts_and_confidence(500, 10'000, 100'000), ours, {1e-11});
}

TEST_F(Share, WilsonIsThatOfPropTest) {
  const auto ours = [](const Call& call) -> Numbers {
    const int correct = call.whole(0), trials = call.whole(1);
    const stats::Interval both = stats::wilson(correct, trials, call.number(2));
    if (call.number(2) < 0.5) return {both.lower, both.upper};
    return {both.lower, both.upper, stats::wilson_lower(correct, trials, call.number(2)),
            stats::wilson_upper(correct, trials, call.number(2))};
  };
  // Limits near 0 are differences of numbers near 1.
  expect_alike({"share.R", "wilson", "correct,trials,confidence"},
               counts_and_confidence(500, 5'000, 1'000'000), ours, {1e-12, 1e-15});
}

TEST_F(Share, JeffreysIsQbeta) {
  const auto ours = [](const Call& call) -> Numbers {
    const int correct = call.whole(0), trials = call.whole(1);
    const stats::Interval both = stats::jeffreys(correct, trials, call.number(2));
    return {both.lower, both.upper, stats::jeffreys_lower(correct, trials, call.number(2)),
            stats::jeffreys_upper(correct, trials, call.number(2))};
  };
  // Ours takes the upper limit from 1, which leaves an absolute error of 1e-16 where it is near 0.
  expect_alike({"share.R", "jeffreys", "correct,trials,confidence"},
               counts_and_confidence(500, 10'000, 100'000), ours, {1e-11, 1e-15});
}

TEST_F(Share, MidPIsTheRootOfItsTails) {
  const auto ours = [](const Call& call) -> Numbers {
    const int correct = call.whole(0), trials = call.whole(1);
    const stats::Interval both = stats::mid_p(correct, trials, call.number(2));
    return {both.lower, both.upper, stats::mid_p_lower(correct, trials, call.number(2)),
            stats::mid_p_upper(correct, trials, call.number(2))};
  };
  // uniroot ends at an absolute error of some 1e-16.
  expect_alike({"share.R", "mid_p", "correct,trials,confidence"}, counts_and_confidence(200, 3'000, 10'000),
               ours, {1e-11, 1e-14});
}

TEST_F(Share, LikelihoodIntervalIsTheRootOfTheRatio) {
  const auto ours = [](const Call& call) -> Numbers {
    const auto both = stats::likelihood_interval(call.whole(0), call.whole(1), call.number(2));
    return {both.lower, both.upper};
  };
  expect_alike({"share.R", "likelihood", "correct,trials,confidence"},
               counts_and_confidence(200, 3'000, 10'000), ours, {1e-11, 1e-14});
}

TEST_F(Share, HeardIsTheIntervalOfBinomTestCorrectedForGuessing) {
  const auto calls = drawn(300, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(10'000);
    return {{double(draws.right_of(trials))}, {double(trials)}, {draws.chance()}, {draws.confidence()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const int correct = call.whole(0), trials = call.whole(1);
    const double chance = call.number(2), confidence = call.number(3);
    const auto heard = stats::estimate_heard(correct, trials, chance, confidence);
    return {heard.heard,
            double(heard.below_chance),
            heard.limits.lower,
            heard.limits.upper,
            stats::heard_lower(correct, trials, chance, confidence),
            stats::heard_upper(correct, trials, chance, confidence)};
  };
  // A difference of numbers below 1, divided by 1 - chance: below 1e-13 as long as chance is below 0.99.
  expect_alike({"share.R", "heard", "correct,trials,chance,confidence"}, calls, ours, {1e-11, 1e-12});
}

TEST_F(Share, PowerIsThatOfPbinom) {
  const auto calls = drawn(500, 10'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{draws.closed_share()}, {double(draws.size(2000))}, {draws.level()}, {draws.chance()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto power = stats::power_of_trials(call.number(0), call.whole(1), call.number(2), call.number(3));
    return {or_nothing(power.minimum_correct), power.size, power.power};
  };
  expect_alike({"share.R", "power", "share,trials,level,chance"}, calls, ours, {1e-11});
}

TEST_F(Share, ShareCaughtIsQbeta) {
  const auto calls = drawn(300, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{double(draws.size(2000))}, {draws.level()}, {draws.chance()}, {draws.share_or({0.8, 0.9})}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::smallest_share_caught(call.whole(0), call.number(1), call.number(2), call.number(3))
                .value_or(kNothing)};
  };
  expect_alike({"share.R", "share_caught", "trials,level,chance,probability"}, calls, ours, {0, 1e-12});
}

TEST_F(Share, SmallestTrialsAreThoseOfAllPowersTried) {
  const auto calls = drawn(40, 1'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{draws.share_or({0.8, 0.9})},
            {draws.closed_share()},
            {draws.level()},
            {draws.chance()},
            {double(draws.whole(1, 150))}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const double target = call.number(0), share = call.number(1), level = call.number(2),
                 chance = call.number(3);
    const auto first = stats::smallest_trials_first(target, share, level, chance, call.whole(4));
    const auto stable = stats::smallest_trials_stable(target, share, level, chance, call.whole(4));
    return {first ? first->trials : kNothing, stable ? stable->trials : kNothing};
  };
  expect_alike({"share.R", "smallest_trials", "target,share,level,chance,limit"}, calls, ours, {0});
}

TEST_F(Share, SimilarityIsTheLowerTail) {
  const auto calls = drawn(500, 10'000, [](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(2000);
    return {{double(draws.right_of(trials))},
            {double(trials)},
            {draws.level()},
            {draws.share()},
            {draws.chance()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const int trials = call.whole(1);
    const double level = call.number(2), heard = call.number(3), chance = call.number(4);
    const auto of_trials = stats::similarity_of_trials(trials, level, heard, chance);
    EXPECT_EQ(of_trials.most_correct, stats::most_correct_for_similarity(trials, level, heard, chance));
    return {stats::similarity_p(call.whole(0), trials, heard, chance), or_nothing(of_trials.most_correct),
            of_trials.size, of_trials.power};
  };
  expect_alike({"share.R", "similarity", "correct,trials,level,heard,chance"}, calls, ours, {1e-11});
}

TEST_F(Share, SmallestSimilarityTrialsAreThoseOfAllPowersTried) {
  const auto calls = drawn(40, 1'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{draws.share_or({0.8, 0.9})},
            {draws.level()},
            {draws.share()},
            {draws.chance()},
            {double(draws.whole(1, 150))}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const double target = call.number(0), level = call.number(1), heard = call.number(2),
                 chance = call.number(3);
    const auto first = stats::smallest_similarity_trials_first(target, level, heard, chance, call.whole(4));
    const auto stable = stats::smallest_similarity_trials_stable(target, level, heard, chance, call.whole(4));
    return {first ? first->trials : kNothing, stable ? stable->trials : kNothing};
  };
  expect_alike({"share.R", "smallest_similarity_trials", "target,level,heard,chance,limit"}, calls, ours,
               {0});
}

TEST_F(Share, OperatingTableIsThatOfPbinom) {
  const auto calls = drawn(20, 300, [](Draws& draws) -> std::vector<Numbers> {
    return {{double(draws.size(200))}, {draws.level()}, {draws.chance()}, {draws.closed_share()}};
  });
  const auto ours = [](const Call& call) {
    const Numbers shares = call.list(3);
    const auto table = stats::operating_table(call.whole(0), call.number(1), call.number(2), shares);
    Numbers rows;
    for (std::size_t i = 0; i < table.size.size(); ++i)
      rows.insert(rows.end(), {double(table.minimum_correct[i]), table.size[i], table.power[0][i]});
    return rows;
  };
  expect_alike({"share.R", "operating_table", "most_trials,level,chance,share"}, calls, ours, {0, 1e-12});
}

std::vector<Numbers> interval_design(Draws& draws) {
  return {{double(draws.whole(0, 4))}, {double(draws.size(60))}, {draws.share_or({0.95, 0.9, 0.99})}};
}

TEST_F(Share, CoverageIsTheSumOverRsIntervals) {
  const auto calls = drawn(50, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    auto call = interval_design(draws);
    call.push_back({draws.closed_share()});
    return call;
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::coverage(static_cast<stats::IntervalMethod>(call.whole(0)), call.whole(1), call.number(3),
                            call.number(2))};
  };
  expect_alike({"share.R", "coverage", "method,trials,confidence,share"}, calls, ours, {0, 1e-12});
}

TEST_F(Share, LeastCoverageIsTheLeastBesideRsLimits) {
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::least_coverage(static_cast<stats::IntervalMethod>(call.whole(0)), call.whole(1),
                                  call.number(2))
                .coverage};
  };
  expect_alike({"share.R", "least_coverage", "method,trials,confidence"}, drawn(40, 1'000, interval_design),
               ours, {0, 1e-10});
}

}  // namespace
}  // namespace reference
