// Evidence that may be looked at after every trial, against its definitions in R.
#include "reference/draws.h"
#include "stats/evidence/betting.h"
#include "stats/evidence/confidence_sequence.h"
#include "stats/evidence/e_process.h"
#include "stats/evidence/hedged_capital.h"
#include "stats/evidence/shared_e_process.h"

namespace reference {
namespace {

using Evidence = AgainstR;

/// Some right of some trials, which may be none at all, against chance.
std::vector<Numbers> drawn_progress(Draws& draws) {
  const int trials = draws.one_in(20) ? 0 : draws.size(5'000);
  return {{double(draws.right_of(trials))}, {double(trials)}, {draws.chance()}};
}

double drawn_weight(Draws& draws) {
  return draws.one_in(2) ? 1 : draws.one_in(2) ? 0.5 : draws.between(0.05, 50);
}

TEST_F(Evidence, LikelihoodRatioIsThatOfDbinom) {
  const auto calls = drawn(300, 10'000, [](Draws& draws) {
    auto call = drawn_progress(draws);
    call.push_back({draws.share()});
    return call;
  });
  const auto ours = [](const Call& call) -> Numbers {
    if (call.whole(1) == 0) return {0};
    return {stats::log_likelihood_ratio(call.whole(0), call.whole(1), call.number(2), call.number(3))};
  };
  // A logarithm of e: its absolute error is e's relative one. dbinom's logarithm has one of some 1e-16 of its
  // size, here up to 1e5.
  expect_alike({"evidence.R", "log_ratio", "correct,trials,chance,alternative"}, calls, ours, {1e-12, 1e-10});
}

TEST_F(Evidence, BetaMixturesAreThoseOfLbetaAndPbeta) {
  const auto calls = drawn(300, 10'000, [](Draws& draws) {
    auto call = drawn_progress(draws);
    if (call[1][0] == 0) call[1][0] = 1;
    call.push_back({drawn_weight(draws)});
    call.push_back({drawn_weight(draws)});
    return call;
  });
  const auto ours = [](const Call& call) -> Numbers {
    const int correct = call.whole(0), trials = call.whole(1);
    const double chance = call.number(2), a = call.number(3), b = call.number(4);
    return {stats::log_beta_mixture(correct, trials, chance, a, b),
            stats::log_upper_beta_mixture(correct, trials, chance, a, b)};
  };
  expect_alike({"evidence.R", "mixtures", "correct,trials,chance,a,b"}, calls, ours, {1e-12, 1e-10});
}

TEST_F(Evidence, CalibratorsAreThoseOfTheFormulas) {
  const auto calls = drawn(100, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{draws.one_in(2) ? draws.closed_share() : std::pow(10, draws.between(-30, 0))}, {draws.share()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::calibrated_e(call.number(0), call.number(1)), stats::vovk_sellke_bound(call.number(0))};
  };
  expect_alike({"evidence.R", "calibrators", "p,kappa"}, calls, ours, {1e-13});
}

TEST_F(Evidence, ConfidenceSequenceIsTheRootOfTheMixture) {
  const auto calls = drawn(150, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(5'000);
    const double weight = drawn_weight(draws);
    return {{double(draws.right_of(trials))},
            {double(trials)},
            {draws.share_or({0.95, 0.9, 0.99})},
            {weight},
            {weight}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto limits = stats::beta_confidence_sequence(call.whole(0), call.whole(1), call.number(2),
                                                        call.number(3), call.number(4));
    return {limits.lower, limits.upper};
  };
  expect_alike({"evidence.R", "confidence_sequence", "correct,trials,confidence,a,b"}, calls, ours,
               {0, 1e-11});
}

/// Observations from 0 to 1: answers, or ratings.
Numbers drawn_observations(Draws& draws, int most) {
  Numbers observations;
  const bool answers = draws.one_in(2);
  const double share = draws.share();
  for (int left = draws.size(most); left > 0; --left)
    observations.push_back(answers ? double(draws.share() < share) : draws.closed_share());
  return observations;
}

TEST_F(Evidence, HoeffdingSequenceIsThatOfThePaper) {
  const auto calls = drawn(60, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    return {drawn_observations(draws, 100), {draws.level()}};
  });
  const auto ours = [](const Call& call) {
    Numbers all;
    for (const auto& step : stats::hoeffding_sequence(call.list(0), call.number(1)))
      all.insert(all.end(), {step.centre, step.half_width});
    return all;
  };
  expect_alike({"evidence.R", "hoeffding", "observations,level"}, calls, ours, {1e-12, 1e-15});
}

TEST_F(Evidence, KellyCapitalIsThatOfThePaper) {
  const auto calls = drawn(60, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    return {drawn_observations(draws, 100), {draws.chance()}, {draws.share_or({0.5, 0.75})}};
  });
  const auto ours = [](const Call& call) {
    return stats::log_kelly_capital(call.list(0), call.number(1), call.number(2));
  };
  expect_alike({"evidence.R", "kelly", "observations,mean,cap"}, calls, ours, {1e-11, 1e-12});
}

TEST_F(Evidence, HedgedCapitalIsThatOfThePaper) {
  const auto calls = drawn(60, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    return {drawn_observations(draws, 100), {draws.chance()}, {draws.level()}, {draws.share_or({0.5, 0.75})}};
  });
  const auto ours = [](const Call& call) {
    return stats::log_hedged_capital(call.list(0), call.number(1), call.number(2), call.number(3));
  };
  expect_alike({"evidence.R", "hedged", "observations,mean,level,cap"}, calls, ours, {1e-11, 1e-12});
}

TEST_F(Evidence, SurvivorsAreTheCandidatesWhoseCapitalStayedLow) {
  const auto calls = drawn(30, 1'000, [](Draws& draws) -> std::vector<Numbers> {
    Numbers candidates = stats::candidate_midpoints(draws.whole(1, 40));
    return {drawn_observations(draws, 60), candidates, {draws.share_or({0.05, 0.1, 0.3})}, {0.5}};
  });
  const auto ours = [](const Call& call) {
    Numbers all;
    for (const auto& left :
         stats::hedged_survivors(call.list(0), call.list(1), call.number(2), call.number(3))) {
      const Numbers three =
          left.none() ? Numbers{kNothing, kNothing, 0}
                      : Numbers{double(left.first), double(left.last), double(left.last - left.first + 1)};
      all.insert(all.end(), three.begin(), three.end());
    }
    return all;
  };
  expect_alike({"evidence.R", "survivors", "observations,candidates,level,cap"}, calls, ours, {0});
}

std::vector<Numbers> drawn_shared(Draws& draws, int most_trials) {
  const int trials = draws.size(most_trials), raters = draws.whole(1, 6);
  Numbers right, wrong;
  for (int i = 0; i < trials; ++i) {
    const int answered = draws.whole(0, raters);
    right.push_back(draws.right_of(answered));
    wrong.push_back(answered - right.back());
  }
  return {right, wrong};
}

double log_value(stats::SharedEProcess process, const Call& call) {
  for (std::size_t i = 0; i < call.list(0).size(); ++i) process.add(call.wholes(0)[i], call.wholes(1)[i]);
  return process.log_value();
}

TEST_F(Evidence, SharedEProcessOfOneBetIsTheProduct) {
  const auto calls = drawn(100, 3'000, [](Draws& draws) {
    auto call = drawn_shared(draws, 200);
    call.push_back({draws.one_in(6) ? draws.whole(-1, 1) : draws.between(-1, 1)});
    return call;
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {log_value(stats::SharedEProcess(call.number(2)), call)};
  };
  expect_alike({"evidence.R", "shared_fixed", "right,wrong,bet"}, calls, ours, {1e-12, 1e-12});
}

TEST_F(Evidence, SharedEProcessOfAllBetsIsTheIntegral) {
  const auto calls = drawn(60, 2'000, [](Draws& draws) { return drawn_shared(draws, 119); });
  const auto ours = [](const Call& call) -> Numbers { return {log_value(stats::SharedEProcess(), call)}; };
  // integrate() is asked for 1e-12.
  expect_alike({"evidence.R", "shared_mean", "right,wrong"}, calls, ours, {1e-11, 1e-11});
}

}  // namespace
}  // namespace reference
