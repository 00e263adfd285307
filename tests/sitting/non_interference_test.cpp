#include <gtest/gtest.h>

#include <functional>
#include <set>

#include "sitting/held_sitting.h"
#include "stats/random.h"
#include "text/error.h"

namespace sitting {
namespace {

/// What the listeners, the helper's order apart, do in a live sitting. It never asks for a tag.
class Script {
 public:
  Script(HeldSitting& held, std::uint64_t seed) : held_(held), door_(held.sitting), random_(seed) {}

  /// Plays the sitting to its end. Returns every byte that any listener was shown: all views after every event, and
  /// the words of every refusal.
  std::string play() {
    HelperDoor& helper = held_.sitting;
    act([&] { held_.sitting.open("live"); });
    for (const std::string& listener : held_.plan.listeners)
      act([&] { door_.contribute(listener, "same " + listener); });
    act([&] { held_.sitting.begin(); });
    act([&] { door_.declare("ann", "start", true, ""); });
    while (more()) {
      presentations(helper);
      answers();
      if (held_.sitting.look("ann").phase == "rest") act([&] { door_.rest("planned"); });
    }
    act([&] { door_.tell_cue("bob", "a click now and then"); });
    act([&] { door_.declare("ann", "end", true, ""); });
    act([&] { held_.sitting.end(); });
    return seen_;
  }

 private:
  bool more() const {
    return held_.sitting.state().current_trial() == 0 || held_.sitting.look().next.trial != 0;
  }
  bool happens(std::uint32_t once_in) { return random_.below(once_in) == 0; }
  std::string word() { return std::string(plan::protocol_of(held_.plan).answers()[random_.below(2)]); }
  int trial() const { return held_.sitting.state().current_trial(); }

  void presentations(HelperDoor& helper) {
    const auto labels = plan::protocol_of(held_.plan).labels(1).size();
    for (std::size_t i = 0; i < labels; ++i) {
      act([&] { helper.present_next(); });
      held_.clock.pass(std::chrono::seconds(45));
      if (!happens(20)) continue;
      act([&] { door_.spoil("cid", trial(), "interruption", "a telephone"); });
      return;
    }
  }

  void answers() {
    for (const std::string& listener : held_.plan.listeners) {
      if (!held_.sitting.look(listener).may_answer || happens(8)) continue;
      const std::string given = word();
      act([&] { door_.answer(listener, trial(), given, happens(3) ? "guess" : "", ""); });
      if (happens(5)) act([&] { door_.answer(listener, trial(), given, "", ""); });
      if (happens(5)) act([&] { door_.answer(listener, trial(), word(), "certain", ""); });
      if (happens(9)) act([&] { door_.answer(listener, trial() + 1, word(), "", ""); });
      if (happens(25)) act([&] { door_.spoil(listener, trial(), "audible fault", ""); });
    }
    if (!held_.sitting.state().waits_for(trial()).empty()) act([&] { held_.sitting.close_trial(); });
  }

  void act(const std::function<void()>& action) {
    try {
      action();
    } catch (const text::BadInput& refused) {
      seen_ += refused.what();
    } catch (const text::NotNow& refused) {
      seen_ += refused.what();
    }
    for (const std::string& listener : held_.plan.listeners) seen_ += bytes_of(door_.look(listener)) + "\n";
  }

  HeldSitting& held_;
  ListenerDoor& door_;
  stats::Random random_;
  std::string seen_;
};

std::string order_text(const HeldSitting& held) {
  std::string text;
  for (const SheetTrial& trial : held.sitting.sheet())
    for (const HelperStep& step : trial.steps) text += std::to_string(step.tag) + " ";
  return text;
}

class NonInterference : public testing::TestWithParam<const protocols::Protocol*> {};

// For the same actions, every byte a listener is shown is the same whatever the seed. Each script has spoiled trials,
// rests, missing answers, corrections, repeats and refused calls; the orders themselves do differ.
TEST_P(NonInterference, EveryByteIsTheSameForEverySeed) {
  plan::Plan plan = sample_plan(GetParam()->name(), 3, 5, 3);
  plan.block_trials = 4;
  plan.levels = "trimmed";
  plan.volume_step_db = "0.5";
  plan.specimens[1].trim_steps = 2;
  plan.excerpts = {{"one", "0:10", "0:25"}, {"two", "1:00", "1:15"}};
  int spoiled = 0, late = 0, missing = 0, corrected = 0, rests = 0;
  for (std::uint64_t script = 0; script < 3; ++script) {
    std::set<std::string> orders, seen;
    for (int seed = 0; seed < 24; ++seed) {
      HeldSitting held(plan, "seed " + std::to_string(seed));
      seen.insert(Script(held, script).play());
      ASSERT_EQ(seen.size(), 1u) << "script " << script << ", seed " << seed;
      ASSERT_TRUE(held.sitting.state().ended) << "script " << script << ", seed " << seed;
      orders.insert(order_text(held));
      rests += held.sitting.state().rested_after != 0;
      for (const TrialState& trial : held.sitting.state().trials) {
        spoiled += trial.spoiled;
        late += trial.late_spoiled;
        missing += !trial.missing.empty();
        for (const auto& [who, answer] : trial.answers) corrected += answer.first != answer.last;
      }
    }
    EXPECT_EQ(orders.size(), 24u);
  }
  EXPECT_GT(spoiled, 0);
  EXPECT_GT(late, 0);
  EXPECT_GT(missing, 0);
  EXPECT_GT(corrected, 0);
  EXPECT_GT(rests, 0);
}

INSTANTIATE_TEST_SUITE_P(Protocols, NonInterference,
                         testing::ValuesIn(protocols::catalogue().begin(), protocols::catalogue().end()),
                         [](const auto& instance) { return std::string(instance.param->name()); });

}  // namespace
}  // namespace sitting
