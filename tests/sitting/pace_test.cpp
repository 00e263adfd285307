#include <gtest/gtest.h>

#include <set>

#include "refusal.h"
#include "sitting/held_sitting.h"
#include "sitting/unsealed_sitting.h"

namespace sitting {
namespace {

using std::chrono::seconds;

// The plan's pace: 15 s of playing, 30 s for a swap.
TEST(KeptPace, EveryPresentationWaitsOutTheSwap) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  sitting.keep_pace();
  EXPECT_EQ(sitting.look().phase, "before");
  held.ready();
  EXPECT_EQ(sitting.look().phase, "ready");
  EXPECT_EQ(sitting.look().milliseconds_left, 30000);
  held.clock.pass(seconds(29));
  sitting.keep_pace();
  EXPECT_EQ(sitting.look().phase, "ready");
  held.clock.pass(seconds(1));
  sitting.keep_pace();
  EXPECT_EQ(sitting.look().phase, "play");
  EXPECT_EQ(sitting.look().milliseconds_left, 15000);
  EXPECT_EQ(sitting.look("ann").playing, "A");
  held.clock.pass(seconds(15));
  EXPECT_EQ(sitting.look("ann").playing, "");
  EXPECT_EQ(sitting.look().phase, "connect");
  EXPECT_EQ(sitting.look().milliseconds_left, 30000);
  held.clock.pass(seconds(100));
  sitting.keep_pace();
  EXPECT_EQ(sitting.look().presentation, 1) << "nothing starts that is not connected";
  held.ready();
  sitting.keep_pace();
  EXPECT_EQ(sitting.look().presentation, 2);
}

TEST(KeptPace, TheNextTrialWaitsForEverybodysAnswer) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  held.play();
  held.ready();
  held.clock.pass(seconds(60));
  sitting.keep_pace();
  EXPECT_EQ(sitting.state().current_trial(), 1);
  EXPECT_EQ(sitting.look().waiting_for, 2);
  sitting.answer("ann", 1, "A", "", "");
  sitting.answer("bob", 1, "A", "", "");
  sitting.keep_pace();
  EXPECT_EQ(sitting.state().current_trial(), 2);
}

TEST(KeptPace, ABreakIsFollowedByAWholeSwap) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  held.play_and_answer("A");
  held.clock.pass(seconds(600));
  sitting.rest("helper");
  held.ready();
  held.clock.pass(seconds(29));
  sitting.keep_pace();
  EXPECT_EQ(sitting.state().current_trial(), 1);
  held.clock.pass(seconds(1));
  sitting.keep_pace();
  EXPECT_EQ(sitting.state().current_trial(), 2);
}

TEST(KeptPace, OnlyWhatComesNextCanBeReady) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  EXPECT_EQ(refusal([&] { sitting.ready(1, 2); }),
            "presentation 2 of trial 1 does not come next; look again at what to connect");
  sitting.ready(1, 1);
  held.clock.pass(seconds(60));
  sitting.keep_pace();
  EXPECT_EQ(refusal([&] { sitting.ready(1, 1); }),
            "presentation 1 of trial 1 does not come next; look again at what to connect");
  EXPECT_EQ(refusal([&] { sitting.ready(-1, 1); }), "practice is over");
}

// What was connected for a trial must not start the one that takes its place.
TEST(KeptPace, ASpoiledTrialAsksForAnotherLook) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  sitting.present_next();
  held.ready();
  sitting.spoil("helper", 1, "interruption", "");
  held.clock.pass(seconds(600));
  sitting.keep_pace();
  EXPECT_EQ(sitting.state().current_trial(), 1);
  held.ready();
  sitting.keep_pace();
  EXPECT_EQ(sitting.state().current_trial(), 2);
}

// Whoever asks for a break gets one: what was connected already does not start before the helper goes on.
TEST(KeptPace, ABreakAskedForStopsWhatIsReady) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  sitting.present_next();
  held.clock.pass(seconds(15));
  held.ready();
  sitting.rest("bob");
  held.clock.pass(seconds(600));
  sitting.keep_pace();
  EXPECT_EQ(sitting.look().presentation, 1);
  EXPECT_EQ(sitting.look().phase, "connect");
  EXPECT_EQ(sitting.look().resting, std::vector<std::string>{"bob"});
  EXPECT_TRUE(sitting.look("ann").resting);
  held.ready();
  sitting.keep_pace();
  EXPECT_EQ(sitting.look().presentation, 2);
  EXPECT_FALSE(sitting.look("ann").resting);
}

// Two programs on one sitting: the second to write loses, and knows afterwards what the first wrote.
TEST(TwoWriters, TheLoserReadsAnewAndGoesOn) {
  HeldSitting held;
  Sitting& hosted = held.started("live").sitting;
  Sitting other(held.plan, held.sealed, 1, held.log, held.clock.reading());
  other.note("ann", "a lorry");
  EXPECT_NE(refusal([&] { hosted.note("bob", "a bell"); }), "");
  ASSERT_EQ(hosted.state().notes.size(), 1u);
  EXPECT_EQ(hosted.state().notes[0].text, "a lorry");
  hosted.note("bob", "a bell");
  EXPECT_EQ(hosted.state().notes.size(), 2u);
  EXPECT_EQ(hosted.head(), Sitting(held.plan, held.sealed, 1, held.log, held.clock.reading()).head());
}

TEST(KeptPace, IsSlowerThanTheLongestRehearsedSwap) {
  HeldSitting held;
  Sitting& sitting = held.sitting;
  sitting.open("live");
  EXPECT_EQ(sitting.look().swap_seconds, 30);
  sitting.rehearse_swap(21.2);
  EXPECT_EQ(sitting.look().swap_seconds, 30);
  sitting.rehearse_swap(33.41);
  EXPECT_EQ(sitting.look().swap_seconds, 34);
  EXPECT_EQ(sitting.look().longest_rehearsed_swap_seconds, 33.5);
  sitting.rehearse_swap(25);
  EXPECT_EQ(sitting.look().swap_seconds, 34);
  EXPECT_EQ(sitting.state().facts,
            (std::vector<std::pair<std::string, std::string>>{{"longest-rehearsed-swap", "33.5 s"}}));
  EXPECT_EQ(refusal([&] { sitting.rehearse_swap(0); }),
            "a swap must take more than 0 and at most 3600 seconds, got 0");
  EXPECT_EQ(refusal([&] { sitting.ready(1, 1); }),
            "sitting 1 has not begun; take the listeners' characters, then begin it");
}

TEST(Practice, IsPlayedAndAnsweredButNeverCounts) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  for (int trial = -1; trial >= -2; --trial) {
    for (int presentation = 1; presentation <= 3; ++presentation) {
      const HelperStep announced = sitting.look().next_practice;
      sitting.ready(announced.trial, announced.presentation);
      held.clock.pass(seconds(60));
      sitting.keep_pace();
      EXPECT_EQ(sitting.look().now.trial, trial);
      EXPECT_EQ(sitting.look().now.tag, announced.tag);
      EXPECT_EQ(sitting.look("ann").trial, trial);
      EXPECT_EQ(sitting.look("ann").heard, presentation);
    }
    EXPECT_EQ(refusal([&] { sitting.answer("ann", 1, "A", "", ""); }), "trial 1 is not open for answers");
    sitting.answer("ann", trial, "B", "guess", "");
    EXPECT_EQ(sitting.look("ann").own_answer, "B");
  }
  EXPECT_EQ(refusal([&] { sitting.spoil("ann", -2, "interruption", ""); }),
            "a practice trial is not counted; there is nothing to spoil");
  EXPECT_EQ(refusal([&] { sitting.practise_next(); }), "practice is over");
  EXPECT_EQ(sitting.look("ann").settled, 0);
  EXPECT_EQ(sitting.state().settled_trials(), 0);
  held.play_and_answer("A");
  EXPECT_EQ(sitting.look("ann").trial, 1);
  EXPECT_EQ(refusal([&] { sitting.answer("ann", -2, "A", "", ""); }), "trial -2 is not open for answers");
  EXPECT_EQ(sitting.look().next_practice.trial, 0);
  held.play_and_answer("A"), held.play_and_answer("A"), held.play_and_answer("A");
  sitting.end();
  unseal(held.log, held.plan, held.sealed, held.clock.reading());
  const UnsealedSitting unsealed(held.plan, held.sealed, 1, held.log);
  EXPECT_EQ(unsealed.trials().size(), 6u);
  for (const ScoredTrial& trial : unsealed.trials()) EXPECT_GT(trial.number, 0);
}

// Practice has coins of its own under the sitting's tags: they are no part of the order, and the order is what it was.
TEST(Practice, IsDrawnApartFromTheOrder) {
  const plan::Plan plan = sample_plan("abx", 1, 4, 2);
  std::set<std::vector<int>> coins;
  for (int seed = 0; seed < 40; ++seed) {
    const seal::Digest digest = seal::sha256("seed " + std::to_string(seed));
    const std::vector<std::string> contributions = {"a", "b"};
    const protocols::Order order = plan::order_of(plan, digest, 1, contributions);
    const protocols::Order practice = plan::practice_of(plan, digest, 1, contributions);
    EXPECT_EQ(practice.tags, order.tags);
    ASSERT_EQ(practice.trials.size(), 2u);
    coins.insert({practice.trials[0].coin, practice.trials[1].coin, order.trials[0].coin});
  }
  EXPECT_EQ(coins.size(), 8u) << "practice and order fall independently";
}

}  // namespace
}  // namespace sitting
