#include "plan/looks.h"

#include <gtest/gtest.h>

#include "plan/requirement.h"
#include "plan/sample_plan.h"
#include "refusal.h"

namespace plan {
namespace {

Plan looked_at(std::vector<int> after = {8, 16, 24}, int claims = 1) {
  Plan plan = sample_plan("abx", claims, after.back(), 2);
  plan.stopping_rule = rule_text({std::move(after), stats::Spending::pocock});
  return plan;
}

TEST(Looks, HaveOneText) {
  EXPECT_EQ(looked_at().stopping_rule, "looks after 8, 16, 24 trials, Pocock spending");
  EXPECT_EQ(looks_of(looked_at())->after, (std::vector<int>{8, 16, 24}));
  EXPECT_EQ(looks_of(looked_at())->spending, stats::Spending::pocock);
  EXPECT_EQ(looks_of(sample_plan("abx", 1, 4, 2)), std::nullopt);
  for (const std::string rule :
       {"", "looks", "looks after 8,16 trials, Pocock spending", "looks after 16, 8 trials, Pocock spending",
        "looks after 8, 16 trials", "looks after x trials, Pocock spending",
        "looks after 08 trials, Pocock spending", "looks after  trials, Pocock spending",
        "looks after 8, 16, trials, Pocock spending"}) {
    Plan plan = looked_at();
    plan.stopping_rule = rule;
    EXPECT_EQ(refusal([&] { check(plan); }), "plan: the stopping rule is \"" + rule +
                                                 "\"; expected \"fixed number of trials\" or \"looks after "
                                                 "8, 16, 24 trials, O'Brien-Fleming spending\"");
  }
}

TEST(Looks, AreForClaimsWithRightAnswersInOneSitting) {
  check(looked_at());
  Plan preference = sample_plan("preference", 1, 24, 2);
  preference.stopping_rule = looked_at().stopping_rule;
  EXPECT_NE(refusal([&] { check(preference); }).find("looks need a protocol with right answers"),
            std::string::npos);
  Plan shorter = looked_at();
  shorter.sittings.front().trials_each = 16;
  EXPECT_NE(refusal([&] { check(shorter); }).find("has 16 trials; with looks"), std::string::npos);
  Plan split = looked_at();
  split.sittings.push_back(split.sittings.front());
  EXPECT_NE(refusal([&] { check(split); }).find("has its trials in 2 sittings; with looks"),
            std::string::npos);
  EXPECT_NE(refusal([&] { check(split); }).find("plan it for one sitting with all its listeners"),
            std::string::npos);
}

// Recomputed in plain Python: level 0.05 spent by 0.05 ln(1 + (e - 1) t) at t = 1/3, 2/3 and 1; smallest counts by the
// exact recursion: 8 of 8, 13 of 16, 17 of 24.
TEST(Looks, NeedSoManyAtEach) {
  const Requirement requirement = requirements(looked_at()).front();
  using AtLook = std::pair<int, std::optional<int>>;
  EXPECT_EQ(requirement.at_looks, (std::vector<AtLook>{{8, 8}, {16, 13}, {24, 17}}));
  EXPECT_EQ(requirement.needed_trials, 17);
  Plan hopeless = looked_at({2, 4});
  EXPECT_NE(refusal([&] { refuse_hopeless(hopeless); }).find("could not be supported at any look"),
            std::string::npos);
}

TEST(Looks, StopWhereTheTotalReachesTheBound) {
  const Plan plan = looked_at();
  const Looks looks = *looks_of(plan);
  const std::vector<stats::Split> eight(8, {1, 0}), sixteen(16, {1, 0}), shared(8, {2, 0});
  EXPECT_TRUE(stops_at(plan, looks, eight, 8));
  EXPECT_FALSE(stops_at(plan, looks, eight, 7));
  EXPECT_TRUE(stops_at(plan, looks, sixteen, 13));
  EXPECT_FALSE(stops_at(plan, looks, sixteen, 12));
  EXPECT_TRUE(stops_at(plan, looks, shared, 16)) << "two listeners always alike are as one";
  EXPECT_FALSE(stops_at(plan, looks, shared, 14));
}

}  // namespace
}  // namespace plan
