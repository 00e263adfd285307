// Stopping rules against every path counted in Python, and normal boundaries against Simpson's rule.
#include "reference/draws.h"
#include "stats/evidence/e_process.h"
#include "stats/sequential/alpha_spending.h"
#include "stats/sequential/group_sequential.h"
#include "stats/sequential/rules_on_counts.h"
#include "stats/sequential/sequential_power.h"
#include "stats/sequential/shared_stopping.h"
#include "stats/sequential/spending_rule.h"
#include "stats/sequential/sprt.h"
#include "stats/sequential/stagewise_p.h"

namespace reference {
namespace {

using Sequential = AgainstPython;

/// Gains of some trials, as three lists: {right, wrong, chance} for one answer each, or answers of several
/// raters.
std::vector<Numbers> drawn_gains(Draws& draws, int most_trials) {
  const int trials = draws.size(most_trials), kind = draws.whole(1, 3);
  const Numbers one(static_cast<std::size_t>(trials), 1), none(static_cast<std::size_t>(trials), 0);
  if (kind == 1) return {one, none, Numbers(static_cast<std::size_t>(trials), draws.closed_share())};
  if (kind == 2) return {draws.wholes(trials, 0, 4), draws.wholes(trials, 0, 4), draws.numbers(trials, 0, 1)};
  return {draws.wholes(trials, 0, 4), draws.wholes(trials, 0, 4),
          Numbers(static_cast<std::size_t>(trials), 0.5)};
}

std::vector<stats::Gain> gains_of(const Call& call) {
  std::vector<stats::Gain> gains;
  for (std::size_t i = 0; i < call.list(0).size(); ++i)
    gains.push_back({call.wholes(0)[i], call.wholes(1)[i], call.list(2)[i]});
  return gains;
}

/// Bounds that a total of these trials may reach; nothing for none. `give_up` stays below `support`.
std::vector<Numbers> drawn_bounds(Draws& draws, std::size_t trials, int answers, bool give_up) {
  Numbers support, below;
  for (std::size_t n = 1; n <= trials; ++n) {
    const int most = static_cast<int>(n) * answers + 1;
    support.push_back(draws.one_in(2) ? kNothing : draws.whole(most / 2, most));
    const int limit = std::isnan(support.back()) ? most / 2 : static_cast<int>(support.back()) - 1;
    below.push_back(!give_up || limit < 0 || draws.one_in(2) ? kNothing
                                                             : draws.whole(0, std::min(limit, most / 2)));
  }
  return {support, below};
}

std::optional<int> bound_of(double number) {
  return std::isnan(number) ? std::nullopt : std::optional(static_cast<int>(number));
}

stats::StoppingRule rule_of(const Numbers& support, const Numbers& give_up) {
  stats::StoppingRule rule;
  for (std::size_t i = 0; i < support.size(); ++i)
    rule.looks.push_back({bound_of(support[i]), bound_of(give_up[i])});
  return rule;
}

stats::StoppingRule support_rule(const Numbers& support) {
  return rule_of(support, Numbers(support.size(), kNothing));
}

Numbers supports_of(const stats::StoppingRule& rule) {
  Numbers bounds;
  for (const auto& look : rule.looks) bounds.push_back(look.support ? *look.support : kNothing);
  return bounds;
}

TEST_F(Sequential, OperationIsThatOfEveryPath) {
  const auto calls = drawn(150, 5'000, [](Draws& draws) {
    auto call = drawn_gains(draws, 11);
    const auto bounds = drawn_bounds(draws, call[0].size(), draws.whole(1, 3), true);
    call.insert(call.end(), bounds.begin(), bounds.end());
    return call;
  });
  const auto ours = [](const Call& call) {
    const auto found = stats::operate(rule_of(call.list(3), call.list(4)), gains_of(call));
    Numbers all{found.support, found.give_up, found.undecided, found.expected_trials};
    all.insert(all.end(), found.support_after.begin(), found.support_after.end());
    all.insert(all.end(), found.give_up_after.begin(), found.give_up_after.end());
    return all;
  };
  expect_alike({"sequential.py", "operate", "one,other,chance,support,give_up"}, calls, ours, {1e-12});
}

/// Rising looks up to the last of so many trials, with what is spent.
std::vector<Numbers> drawn_spending(Draws& draws, std::size_t trials) {
  Numbers looks, spent;
  for (std::size_t n = 1; n <= trials; ++n)
    if (n == trials || draws.one_in(3)) looks.push_back(double(n));
  for (std::size_t i = 0; i < looks.size(); ++i) spent.push_back(draws.one_in(6) ? 0 : draws.between(0, 0.3));
  std::sort(spent.begin(), spent.end());
  return {looks, spent};
}

TEST_F(Sequential, SpendingRuleIsThatOfEveryPath) {
  const auto calls = drawn(150, 5'000, [](Draws& draws) {
    auto call = drawn_gains(draws, 11);
    const auto plan = drawn_spending(draws, call[0].size());
    call.insert(call.end(), plan.begin(), plan.end());
    return call;
  });
  const auto ours = [](const Call& call) {
    const auto looks = call.wholes(3);
    const Numbers bounds = supports_of(stats::spending_rule(looks, call.list(4), gains_of(call)));
    Numbers at_looks;
    for (int look : looks) at_looks.push_back(bounds[static_cast<std::size_t>(look) - 1]);
    return at_looks;
  };
  expect_alike({"sequential.py", "spending", "one,other,chance,looks,spent"}, calls, ours, {0});
}

TEST_F(Sequential, StagewisePIsThatOfEveryPath) {
  const auto calls = drawn(150, 5'000, [](Draws& draws) {
    auto call = drawn_gains(draws, 11);
    const auto bounds = drawn_bounds(draws, call[0].size(), 2, false);
    call.push_back(bounds[0]);
    call.push_back({double(draws.whole(0, static_cast<int>(2 * call[0].size())))});
    return call;
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::stagewise_p(support_rule(call.list(3)), gains_of(call), call.whole(4))};
  };
  expect_alike({"sequential.py", "stagewise", "one,other,chance,support,observed"}, calls, ours, {1e-12});
}

TEST_F(Sequential, StagewiseLimitsAreWhereEveryPathReachesTheConfidence) {
  const auto calls = drawn(60, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(10);
    const auto bounds = drawn_bounds(draws, static_cast<std::size_t>(trials), 1, false);
    return {bounds[0], {double(draws.right_of(trials))}, {draws.confidence()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto rule = support_rule(call.list(0));
    return {stats::stagewise_lower(rule, call.whole(1), call.number(2)),
            stats::stagewise_upper(rule, call.whole(1), call.number(2))};
  };
  expect_alike({"sequential.py", "stagewise_limits", "support,observed,confidence"}, calls, ours, {0, 1e-9});
}

TEST_F(Sequential, PowerOfSharedTrialsIsThatOfEveryPath) {
  const auto calls = drawn(60, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(10);
    const Numbers answers = draws.wholes(trials, 0, 4);
    return {
        answers, drawn_bounds(draws, answers.size(), 2, false)[0], {draws.closed_share()}, {draws.share()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto rule = support_rule(call.list(1));
    return {stats::sequential_power(rule, call.wholes(0), call.number(2)),
            stats::sequential_share_caught(rule, call.wholes(0), call.number(3)).value_or(kNothing)};
  };
  expect_alike({"sequential.py", "power", "answers,support,share,probability"}, calls, ours, {0, 1e-9});
}

TEST_F(Sequential, UnadjustedRuleIsTheSmallestTailAtEveryLook) {
  const auto calls = drawn(40, 500, [](Draws& draws) -> std::vector<Numbers> {
    return {{double(draws.size(80))}, {draws.level()}, {draws.chance()}};
  });
  const auto ours = [](const Call& call) {
    return supports_of(stats::unadjusted_rule(call.whole(0), call.number(1), call.number(2)));
  };
  expect_alike({"sequential.py", "unadjusted", "trials,level,chance"}, calls, ours, {0});
}

TEST_F(Sequential, ScoreRuleIsTheSmallestCountBeyondTheBoundary) {
  const auto calls = drawn(60, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    const Numbers looks = drawn_spending(draws, static_cast<std::size_t>(draws.size(60)))[0];
    return {looks, draws.numbers(static_cast<int>(looks.size()), -1, 4), {draws.chance()}};
  });
  const auto ours = [](const Call& call) {
    const auto looks = call.wholes(0);
    const Numbers bounds = supports_of(stats::score_rule(looks, call.list(1), call.number(2)));
    Numbers at_looks;
    for (int look : looks) at_looks.push_back(bounds[static_cast<std::size_t>(look) - 1]);
    return at_looks;
  };
  expect_alike({"sequential.py", "score_rule", "looks,boundary,chance"}, calls, ours, {0});
}

TEST_F(Sequential, RuleOfAnEProcessIsTheSmallestCountWithSuchARatio) {
  const auto calls = drawn(40, 1'000, [](Draws& draws) -> std::vector<Numbers> {
    const double chance = draws.share_or({1. / 2, 1. / 3});
    return {{double(draws.size(60))}, {draws.level()}, {chance}, {draws.between(chance, 1)}};
  });
  const auto ours = [](const Call& call) {
    return supports_of(stats::e_process_rule(call.whole(0), call.number(1), [&](int correct, int trials) {
      return stats::log_likelihood_ratio(correct, trials, call.number(2), call.number(3));
    }));
  };
  expect_alike({"sequential.py", "ratio_rule", "trials,level,chance,alternative"}, calls, ours, {0});
}

TEST_F(Sequential, SharedTrialsAreThoseOfEveryFallOfTheCoins) {
  const auto calls = drawn(60, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    const int trials = draws.size(10);
    const auto plan = drawn_spending(draws, static_cast<std::size_t>(trials));
    return {draws.wholes(trials, 0, 4),
            draws.wholes(trials, 0, 4),
            drawn_bounds(draws, static_cast<std::size_t>(trials), 3, false)[0],
            plan[0],
            plan[1],
            {draws.level()}};
  });
  const auto ours = [](const Call& call) {
    std::vector<stats::Split> splits;
    for (std::size_t i = 0; i < call.list(0).size(); ++i)
      splits.push_back({call.wholes(0)[i], call.wholes(1)[i]});
    const auto looks = call.wholes(3);
    Numbers all{stats::operate_shared(support_rule(call.list(2)), splits).support};
    const Numbers spending = supports_of(stats::shared_spending_rule(splits, looks, call.list(4)));
    for (int look : looks) all.push_back(spending[static_cast<std::size_t>(look) - 1]);
    const Numbers own = supports_of(stats::unadjusted_shared_rule(splits, call.number(5)));
    all.insert(all.end(), own.begin(), own.end());
    return all;
  };
  expect_alike({"sequential.py", "shared", "one,other,support,looks,spent,level"}, calls, ours, {1e-12});
}

TEST_F(Sequential, LevelSpentIsThatOfTheFormulas) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    return {{double(draws.whole(0, 1))}, {draws.level()}, {draws.closed_share()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::level_spent(static_cast<stats::Spending>(call.whole(0)), call.number(1), call.number(2))};
  };
  expect_alike({"sequential.py", "level_spent", "kind,level,fraction"}, calls, ours, {1e-11});
}

std::vector<Numbers> drawn_sprt(Draws& draws) {
  for (;;) {
    const double chance = draws.chance(), alternative = draws.share();
    const double alpha = draws.share_or({0.05, 0.1}), beta = draws.share_or({0.05, 0.2});
    if (alternative > chance + 0.01 && alternative < 0.99 && alpha + beta < 0.95)
      return {{chance}, {alternative}, {alpha}, {beta}};
  }
}

stats::Sprt sprt_of(const Call& call) {
  return {call.number(0), call.number(1), call.number(2), call.number(3)};
}

TEST_F(Sequential, SprtIsThatOfTheLogarithmsOfTheRatio) {
  const auto calls = drawn(60, 2'000, [](Draws& draws) {
    for (;;) {
      auto call = drawn_sprt(draws);
      call.push_back({20});
      if (stats::sprt_look(sprt_of({call}), 20).support.value() < 50) return call;  // as far as Python looks
    }
  });
  const auto ours = [](const Call& call) {
    const auto lines = stats::sprt_lines(sprt_of(call));
    Numbers all{lines.log_upper, lines.log_lower, lines.slope, lines.upper_intercept, lines.lower_intercept};
    for (int n = 1; n <= call.whole(4); ++n) {
      const auto look = stats::sprt_look(sprt_of(call), n);
      all.push_back(look.support.value());
      all.push_back(look.give_up ? *look.give_up : kNothing);
    }
    return all;
  };
  expect_alike({"sequential.py", "sprt", "chance,alternative,alpha,beta,trials"}, calls, ours,
               {1e-12, 1e-14});
}

TEST_F(Sequential, WaldsApproximationsAreThoseOfTheRootH) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) {
    for (;;) {
      auto call = drawn_sprt(draws);
      call.push_back({draws.closed_share()});
      // where the ratio does not drift h is 0 and the formulas are 0/0: the root loses digits beside it
      if (std::abs(call[4][0] - stats::sprt_lines(sprt_of({call})).slope) > 0.01) return call;
    }
  });
  const auto ours = [](const Call& call) -> Numbers {
    return {stats::sprt_give_up_wald(sprt_of(call), call.number(4)),
            stats::sprt_expected_trials_wald(sprt_of(call), call.number(4))};
  };
  // The root near no drift is known to some 1e-13 only.
  expect_alike({"sequential.py", "wald", "chance,alternative,alpha,beta,share"}, calls, ours, {1e-10, 1e-12});
}

std::vector<Numbers> drawn_information(Draws& draws, int most_looks) {
  Numbers information;
  for (int looks = draws.whole(1, most_looks); looks > 0; --looks)
    information.push_back((information.empty() ? 0 : information.back()) + draws.between(0.2, 1));
  for (double& time : information) time /= information.back();
  return {information, {double(draws.whole(0, 1))}};
}

stats::Sides sides_of(double two_sided) { return two_sided != 0 ? stats::Sides::two : stats::Sides::one; }

TEST_F(Sequential, ExitProbabilitiesAreThoseOfSimpsonsRule) {
  const auto calls = drawn(6, 60, [](Draws& draws) -> std::vector<Numbers> {
    const auto times = drawn_information(draws, 4);
    return {draws.numbers(static_cast<int>(times[0].size()), 0.5, 4), times[0], times[1]};
  });
  const auto ours = [](const Call& call) {
    return stats::exit_probabilities(call.list(0), call.list(1), sides_of(call.number(2)));
  };
  // 3,000 steps of Simpson's rule over up to 18 standard deviations: 50 to the spread of the smallest jump,
  // 1/50^4/180.
  expect_alike({"sequential.py", "exits", "boundary,information,two_sided"}, calls, ours, {0, 1e-10});
}

TEST_F(Sequential, ConstantsHaveTheirLevelBySimpsonsRule) {
  const auto calls = drawn(1, 12, [](Draws& draws) -> std::vector<Numbers> {
    return {{double(draws.whole(2, tier() == "long" ? 5 : 2))},
            {draws.between(0.005, 0.2)},
            {double(draws.whole(0, 1))}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto sides = sides_of(call.number(2));
    return {stats::pocock_constant(call.whole(0), call.number(1), sides),
            stats::obrien_fleming_constant(call.whole(0), call.number(1), sides)};
  };
  expect_alike({"sequential.py", "constants", "looks,level,two_sided"}, calls, ours, {0, 1e-9});
}

TEST_F(Sequential, SpendingBoundaryIsThatOfSimpsonsRule) {
  const auto calls = drawn(4, 60, [](Draws& draws) -> std::vector<Numbers> {
    const auto times = drawn_information(draws, 4);
    return {{double(draws.whole(0, 1))}, {draws.between(0.005, 0.2)}, times[0], times[1]};
  });
  const auto ours = [](const Call& call) {
    return stats::spending_boundary(static_cast<stats::Spending>(call.whole(0)), call.number(1), call.list(2),
                                    sides_of(call.number(3)));
  };
  // Far out a boundary's probability is small, and an error of 1e-12 moves it more.
  expect_alike({"sequential.py", "spending_boundary", "kind,level,fractions,two_sided"}, calls, ours,
               {0, 1e-9});
}

}  // namespace
}  // namespace reference
