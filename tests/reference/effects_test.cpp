// Effects of campaigns against R: fisher.test, and metafor.
#include "reference/draws.h"
#include "stats/effects/heterogeneity.h"
#include "stats/effects/two_shares.h"

namespace reference {
namespace {

using EffectsR = AgainstR;

TEST_F(EffectsR, TwoSharesAreFishers) {
  const auto calls = drawn(200, 5'000, [](Draws& draws) -> std::vector<Numbers> {
    const int first = draws.size(300), second = draws.size(300);
    return {{double(draws.right_of(first)), double(draws.right_of(second))},
            {double(first), double(second)},
            {draws.confidence()}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto right = call.wholes(0), trials = call.wholes(1);
    const auto found = stats::compare_shares(right[0], trials[0], right[1], trials[1], call.number(2));
    const auto limits =
        found.odds_ratio_interval.value_or(stats::Interval{0, std::numeric_limits<double>::infinity()});
    return {found.p, limits.lower, limits.upper};
  };
  expect_alike({"effects.R", "shares", "right,trials,confidence"}, calls, ours, {1e-9, 1e-12});
}

TEST_F(EffectsR, CampaignsAreThoseOfMetafor) {
  if (!has_package("metafor")) GTEST_SKIP() << "needs metafor: Debian package r-cran-metafor";
  const auto calls = drawn(40, 500, [](Draws& draws) -> std::vector<Numbers> {
    const int campaigns = draws.whole(2, 8);
    const double spread = draws.one_in(2) ? 0.3 : 3;
    return {draws.numbers(campaigns, -spread, spread),
            draws.numbers(campaigns, 0.1, 1.5),
            {draws.one_in(2) ? 0.95 : 0.8}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    std::vector<stats::Effect> effects;
    for (std::size_t i = 0; i < call.list(0).size(); ++i)
      effects.push_back({call.list(0)[i], call.list(1)[i]});
    const auto found = stats::heterogeneity(effects, call.number(2));
    return {found.q,
            found.p,
            found.between_variance,
            found.average.estimate,
            found.average.standard_error,
            found.average_interval.lower,
            found.average_interval.upper,
            found.common.estimate,
            found.common.standard_error,
            found.common_interval.lower,
            found.common_interval.upper};
  };
  expect_alike({"effects.R", "campaigns", "estimates,errors,confidence"}, calls, ours, {1e-6, 1e-7});
}

}  // namespace
}  // namespace reference
