// Detection theory against R: pnorm, integrate, uniroot, wilcox.test.
#include "reference/draws.h"
#include "stats/discrimination/answer_bias.h"
#include "stats/discrimination/d_prime.h"
#include "stats/discrimination/hits_interval.h"
#include "stats/discrimination/roc.h"
#include "stats/discrimination/share_right.h"

namespace reference {
namespace {

using Discrimination = AgainstR;

constexpr int kLastLink = static_cast<int>(stats::kLinks.size()) - 1;

stats::Link link_of(const Call& call) { return static_cast<stats::Link>(call.whole(0)); }

TEST_F(Discrimination, ShareRightIsTheIntegral) {
  const auto calls = drawn(300, 10'000, [](Draws& draws) -> std::vector<Numbers> {
    const double d_prime = draws.one_in(10)  ? 0
                           : draws.one_in(4) ? draws.between(0, 0.1)
                                             : draws.between(0, 10);
    return {{double(draws.whole(0, kLastLink))}, {d_prime}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::link_chance(link_of(call)), stats::share_right_at(link_of(call), call.number(1)),
            stats::link_slope(link_of(call), call.number(1))};
  };
  // integrate() is asked for 1e-13 of the share and 1e-12 of the slope.
  expect_alike({"discrimination.R", "share_right", "link,d_prime"}, calls, ours, {1e-12, 1e-14});
}

TEST_F(Discrimination, DPrimeIsTheRootOfTheLink) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    const double share = draws.one_in(4) ? draws.closed_share() : draws.between(0.3, 1);
    return {{double(draws.whole(0, kLastLink))}, {share}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::d_prime_at(link_of(call), call.number(1))};
  };
  // As d_prime_at promises.
  expect_alike({"discrimination.R", "d_prime", "link,share"}, calls, ours, {1e-12, 1e-12});
}

TEST_F(Discrimination, ChoiceOfAnyNumberIsTheIntegral) {
  const auto calls = drawn(100, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{double(1 + draws.size(999))}, {draws.one_in(10) ? 0 : draws.between(0, 8)}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::choice_share_right(call.whole(0), call.number(1))};
  };
  expect_alike({"discrimination.R", "choice", "alternatives,d_prime"}, calls, ours, {1e-12, 1e-14});
}

TEST_F(Discrimination, DPrimeOfAChoiceIsItsRoot) {
  const auto calls = drawn(50, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{double(1 + draws.size(999))}, {draws.closed_share()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::choice_d_prime(call.whole(0), call.number(1))};
  };
  expect_alike({"discrimination.R", "choice_d_prime", "alternatives,share"}, calls, ours, {1e-12, 1e-12});
}

TEST_F(Discrimination, EstimateOfDPrimeIsTheLikelihoodIntervalTakenToIt) {
  const auto calls = drawn(100, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(500);
    return {{double(draws.whole(0, kLastLink))},
            {double(draws.right_of(trials))},
            {double(trials)},
            {draws.share_or({0.95, 0.9, 0.99})}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found = stats::estimate_d_prime(link_of(call), call.whole(1), call.whole(2), call.number(3));
    return {found.d_prime, found.standard_error.value_or(kNothing), found.limits.lower, found.limits.upper};
  };
  expect_alike({"discrimination.R", "estimate", "link,correct,trials,confidence"}, calls, ours,
               {1e-10, 1e-10});
}

TEST_F(Discrimination, AnswerBiasIsThatOfBinomTest) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    const int answers = draws.size(10'000);
    return {{double(draws.right_of(answers))}, {double(answers)}, {draws.confidence()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto bias = stats::answer_bias(call.whole(0), call.whole(1), call.number(2));
    return {bias.share, bias.p, bias.limits.lower, bias.limits.upper};
  };
  expect_alike({"discrimination.R", "answer_bias", "answers_a,answers,confidence"}, calls, ours, {1e-11});
}

/// Hits and false alarms of a model; `open`: no rate of 0 or 1, more hits than false alarms.
std::vector<Numbers> drawn_hits(Draws& draws, bool open) {
  const auto model = double(draws.whole(0, 4));
  for (;;) {
    const int signals = draws.size(100), noises = draws.size(100);
    const int hits = draws.right_of(signals), alarms = draws.right_of(noises);
    const bool is_open =
        hits > 0 && hits < signals && alarms > 0 && alarms < noises && hits * noises > alarms * signals;
    if (is_open || !open)
      return {{model}, {double(hits)}, {double(signals)}, {double(alarms)}, {double(noises)}};
  }
}

stats::HitCounts hit_counts(const Call& call) {
  return {call.whole(1), call.whole(2), call.whole(3), call.whole(4)};
}

TEST_F(Discrimination, MeasuresOfHitsAreThoseOfTheFormulas) {
  const auto calls = drawn(300, 10'000, [](Draws& draws) { return drawn_hits(draws, false); });
  const auto ours = [](const Call& call) -> Numbers {
    const auto model = static_cast<stats::HitModel>(call.whole(0));
    const auto seen = stats::hit_rates(hit_counts(call));
    return {stats::d_prime_of_rates(model, seen).value_or(kNothing),
            stats::d_prime_of_rates(model, stats::log_linear_rates(hit_counts(call))).value_or(kNothing),
            stats::criterion_c(seen).value_or(kNothing), stats::ln_beta(seen).value_or(kNothing)};
  };
  expect_alike({"discrimination.R", "rates", "model,hits,signals,false_alarms,noises"}, calls, ours,
               {1e-12, 1e-12});
}

TEST_F(Discrimination, IntervalOfHitsIsTheProfileLikelihood) {
  const auto calls = drawn(8, 1'000, [](Draws& draws) {
    auto call = drawn_hits(draws, true);
    call.push_back({draws.share_or({0.95, 0.9, 0.99})});
    return call;
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found = stats::estimate_d_prime_of_hits(static_cast<stats::HitModel>(call.whole(0)),
                                                       hit_counts(call), call.number(5));
    return {found.limits.lower, found.limits.upper};
  };
  // optimize() knows the place of the least only to the root of rounding, but its value far better.
  expect_alike({"discrimination.R", "hits_interval", "model,hits,signals,false_alarms,noises,confidence"},
               calls, ours, {1e-9, 1e-9});
}

stats::RatedAnswers rated(const Call& call) { return {call.wholes(0), call.wholes(1)}; }

TEST_F(Discrimination, AreaUnderTheRocIsTheShareOfAllPairs) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    const int categories = draws.whole(2, 6), most = draws.whole(0, 20);
    Numbers signal = draws.wholes(categories, 0, most), noise = draws.wholes(categories, 0, most);
    ++signal[static_cast<std::size_t>(draws.whole(0, categories - 1))];
    ++noise[static_cast<std::size_t>(draws.whole(0, categories - 1))];
    return {signal, noise};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto area = stats::roc_area(rated(call));
    return {area.area, area.standard_error.value_or(kNothing)};
  };
  expect_alike({"discrimination.R", "roc", "signal,noise"}, calls, ours, {1e-12, 1e-12});
}

TEST_F(Discrimination, TestOfTheRocIsThatOfWilcoxTestWithoutTies) {
  const auto calls = drawn(100, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    Numbers signal = draws.wholes(draws.whole(2, 14), 0, 1), noise;
    signal.front() = 1;
    signal.back() = 0;
    for (double used : signal) noise.push_back(1 - used);
    return {signal, noise};
  });
  const auto ours = [](const Call& call) {
    Numbers all;
    for (const auto alternative : kAlternatives) all.push_back(stats::roc_test(rated(call), alternative).p);
    return all;
  };
  expect_alike({"discrimination.R", "roc_p", "signal,noise"}, calls, ours, {1e-12});
}

}  // namespace
}  // namespace reference
