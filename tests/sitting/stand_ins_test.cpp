#include "sitting/simulated/stand_ins.h"

#include <gtest/gtest.h>

#include "sitting/held_sitting.h"

namespace sitting {
namespace {

TEST(StandIns, HoldAWholeSittingByThemselves) {
  HeldSitting held;
  Sitting& sitting = held.sitting;
  sitting.open("live");
  StandIns all(sitting, sitting, {"helper", "ann", "bob"}, 1);
  for (int second = 0; second < 4000 && sitting.look().phase != "done"; ++second) {
    all.act();
    sitting.keep_pace();
    held.clock.pass(std::chrono::seconds(1));
  }
  all.act();
  const State& state = sitting.state();
  EXPECT_EQ(state.settled_trials(), 4);
  EXPECT_EQ(state.practice[1].started.size(), 3u);
  EXPECT_EQ(state.at(3).answers.at("bob").sureness, "guess");
  for (const PersonView& person : sitting.look().people)
    EXPECT_TRUE(person.declared_start && person.declared_end && person.told_cues) << person.name;
  for (const Declaration& declaration : state.declarations)
    EXPECT_EQ(declaration.words, "a stand-in played by the program");
  sitting.end();
  all.act();
}

TEST(StandIns, WaitForTheOthers) {
  HeldSitting held;
  Sitting& sitting = held.sitting;
  sitting.open("live");
  StandIns some(sitting, sitting, {"helper", "bob"}, 1);
  const auto pass = [&](int count) {
    for (int second = 0; second < count; ++second) {
      some.act();
      sitting.keep_pace();
      held.clock.pass(std::chrono::seconds(1));
    }
  };
  pass(100);
  EXPECT_FALSE(sitting.state().began);
  sitting.contribute("ann", "x");
  sitting.declare("ann", "start", true, "");
  pass(3000);
  EXPECT_EQ(sitting.state().current_trial(), 1);
  EXPECT_EQ(sitting.state().at(1).answers.count("bob"), 1u);
  EXPECT_EQ(sitting.look().waiting_for, 1);
}

}  // namespace
}  // namespace sitting
