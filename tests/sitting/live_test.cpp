#include <gtest/gtest.h>

#include "refusal.h"
#include "sitting/held_sitting.h"

namespace sitting {
namespace {

TEST(Live, PresentationsFollowTheSheetAndTrialsOneAnother) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  const auto sheet = sitting.sheet();
  for (int trial = 1; trial <= 4; ++trial) {
    for (int presentation = 1; presentation <= 3; ++presentation) {
      const HelperStep announced = sitting.look().next;
      sitting.present_next();
      const HelperView view = sitting.look();
      EXPECT_EQ(view.now.trial, trial);
      EXPECT_EQ(view.presentation, presentation);
      EXPECT_EQ(view.now.tag, announced.tag);
      EXPECT_EQ(
          view.now.tag,
          sheet[static_cast<std::size_t>(trial - 1)].steps[static_cast<std::size_t>(presentation - 1)].tag);
      EXPECT_EQ(sitting.look("ann").playing, view.now.label);
      EXPECT_EQ(sitting.look("ann").may_answer, presentation == 3);
      EXPECT_EQ(sitting.look("ann").phase, presentation == 3 ? "answer" : "listen");
    }
    EXPECT_EQ(sitting.look().phase, "play");
    held.clock.pass(std::chrono::seconds(15));
    EXPECT_EQ(sitting.look("ann").playing, "");
    EXPECT_EQ(sitting.look().phase, "wait");
    EXPECT_EQ(sitting.look().waiting_for, 2);
    sitting.answer("ann", trial, "A", "", "");
    EXPECT_EQ(sitting.look("ann").phase, "wait");
    EXPECT_EQ(sitting.look("bob").phase, "answer");
    EXPECT_EQ(refusal([&] { sitting.present_next(); }),
              "trial " + std::to_string(trial) + " still waits for 1 of the listeners");
    sitting.answer("bob", trial, "B", "guess", "");
  }
  EXPECT_EQ(refusal([&] { sitting.present_next(); }), "every trial of this sitting has been played");
  EXPECT_EQ(sitting.look("bob").settled, 4);
  sitting.end();
  EXPECT_EQ(sitting.look("bob").phase, "over");
  EXPECT_EQ(sitting.look().phase, "over");
}

TEST(Live, AnswersAreTakenFromTheLastPresentationOn) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  sitting.present_next();
  EXPECT_EQ(refusal([&] { sitting.answer("ann", 1, "A", "", ""); }), "trial 1 is not open for answers");
  EXPECT_EQ(refusal([&] { sitting.answer("ann", 2, "A", "", ""); }), "trial 2 is not open for answers");
  held.play();
  sitting.answer("ann", 1, "A", "certain", "bright");
  const Answer& answer = sitting.state().at(1).answers.at("ann");
  EXPECT_EQ(answer.sureness, "certain");
  EXPECT_EQ(answer.note, "bright");
}

TEST(Live, WordsAreFromTheProtocolsList) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  held.play();
  EXPECT_EQ(refusal([&] { sitting.answer("ann", 1, "X", "", ""); }),
            "an answer must be \"A\", \"B\", got \"X\"");
  EXPECT_EQ(refusal([&] { sitting.answer("ann", 1, "A", "maybe", ""); }),
            "sureness must be \"guess\", \"fairly sure\", \"certain\", got \"maybe\"");
  EXPECT_EQ(refusal([&] { sitting.answer("zoe", 1, "A", "", ""); }), "no listener \"zoe\" attends sitting 1");
  EXPECT_EQ(refusal([&] { sitting.answer("ann", 0, "A", "", ""); }), "trial must be 1 to 6, got 0");
  EXPECT_EQ(refusal([&] { sitting.answer("ann", 7, "A", "", ""); }), "trial must be 1 to 6, got 7");
}

TEST(Live, TheSameAnswerSentAgainCountsOnceAlsoAfterTheTrial) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  held.play_and_answer("A");
  const auto before = held.events();
  sitting.answer("ann", 1, "A", "", "");
  EXPECT_EQ(held.events(), before);
  sitting.present_next();
  sitting.answer("ann", 1, "A", "", "");
  EXPECT_EQ(held.events(), before + 1);
}

TEST(Live, CorrectionsEndWhenTheNextTrialBegins) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  held.play_and_answer("A");
  sitting.answer("ann", 1, "B", "", "");
  EXPECT_EQ(sitting.state().at(1).answers.at("ann").first, "A");
  EXPECT_EQ(sitting.state().at(1).answers.at("ann").last, "B");
  EXPECT_EQ(sitting.look("ann").own_answer, "B");
  sitting.present_next();
  EXPECT_EQ(refusal([&] { sitting.answer("ann", 1, "A", "", ""); }), "trial 1 is not open for answers");
  EXPECT_EQ(refusal([&] { sitting.correct("ann", 1, "A", "slip"); }),
            "this sitting is live; a listener corrects by answering again");
}

TEST(Live, AClosedTrialHasMissingAnswersUntilTheNextBegins) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  EXPECT_EQ(refusal([&] { sitting.close_trial(); }), "no trial has begun");
  sitting.present_next();
  EXPECT_EQ(refusal([&] { sitting.close_trial(); }),
            "trial 1 is still being presented; play it to its end, or spoil it");
  EXPECT_EQ(refusal([&] { sitting.miss("ann", 1); }), "trial 1 is not open for answers");
  held.play();
  EXPECT_EQ(refusal([&] { sitting.miss("ann", 2); }), "trial 2 is not open for answers");
  sitting.answer("ann", 1, "A", "", "");
  sitting.close_trial();
  EXPECT_EQ(sitting.state().at(1).missing, std::vector<std::string>{"bob"});
  const auto before = held.events();
  sitting.close_trial();
  EXPECT_EQ(held.events(), before) << "nobody is left to wait for";
  sitting.answer("bob", 1, "B", "", "");
  EXPECT_TRUE(sitting.state().at(1).missing.empty());
  EXPECT_EQ(refusal([&] { sitting.miss("bob", 1); }), "trial 1, bob: there is an answer; it is not missing");
}

TEST(Live, ASpoiledTrialIsReplacedByTheNextSpareOfItsBlock) {
  HeldSitting held(sample_plan("abx", 2, 2, 2));  // trials 1 2, spares 3 4; trials 5 6, spares 7 8
  Sitting& sitting = held.started("live").sitting;
  held.play();
  sitting.spoil("ann", 1, "audible fault", "");
  EXPECT_EQ(sitting.look("bob").phase, "wait");
  EXPECT_FALSE(sitting.look("bob").may_answer);
  EXPECT_EQ(refusal([&] { sitting.answer("bob", 1, "A", "", ""); }), "trial 1 is not open for answers");
  held.play_and_answer("A");
  EXPECT_EQ(sitting.state().current_trial(), 2);
  sitting.present_next();
  EXPECT_EQ(sitting.state().current_trial(), 3);
  sitting.spoil("helper", 3, "wrong tag", "");
  held.play_and_answer("B");
  EXPECT_EQ(sitting.state().current_trial(), 4);
  held.play_and_answer("B");
  EXPECT_EQ(sitting.state().current_trial(), 5) << "a block's spares are used up";
  held.play_and_answer("B");
  EXPECT_EQ(sitting.state().current_trial(), 6);
  EXPECT_EQ(refusal([&] { sitting.present_next(); }), "every trial of this sitting has been played");
  EXPECT_EQ(sitting.look("ann").settled, 4);
  sitting.end();
}

TEST(Live, SpoilingIsLateOnceAnAnswerIsInOrTheNextTrialRuns) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  held.play();
  sitting.answer("ann", 1, "A", "", "");
  sitting.spoil("bob", 1, "interruption", "a telephone");
  EXPECT_TRUE(sitting.state().at(1).late_spoiled);
  EXPECT_FALSE(sitting.state().at(1).spoiled);
  EXPECT_FALSE(sitting.state().is_played(5));
  EXPECT_EQ(sitting.state().waits_for(1), std::vector<std::string>{"bob"}) << "it counts as answered";
  sitting.close_trial();
  held.play();
  sitting.close_trial();
  sitting.present_next();
  sitting.spoil("helper", 2, "pace overrun", "");
  EXPECT_TRUE(sitting.state().at(2).late_spoiled) << "nobody answered, but the trial after it runs";
}

TEST(Live, SpoilingNeedsAReasonFromTheListAndAPlayedTrial) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  sitting.present_next();
  EXPECT_EQ(
      refusal([&] { sitting.spoil("ann", 1, "boredom", ""); }),
      "a trial is spoiled for one of \"wrong tag\", \"audible fault\", \"interruption\", \"pace overrun\", "
      "\"other\", got \"boredom\"");
  EXPECT_EQ(refusal([&] { sitting.spoil("ann", 1, "other", ""); }), "the reason \"other\" needs words");
  EXPECT_EQ(refusal([&] { sitting.spoil("zoe", 1, "other", "x"); }), "no listener \"zoe\" attends sitting 1");
  EXPECT_EQ(refusal([&] { sitting.spoil("ann", 2, "interruption", ""); }),
            "trial 2 has not been played; there is nothing to spoil");
  EXPECT_EQ(refusal([&] { sitting.spoil("ann", 5, "interruption", ""); }),
            "trial 5 has not been played; there is nothing to spoil");
  sitting.spoil("ann", 1, "other", "a wasp");
  EXPECT_EQ(refusal([&] { sitting.spoil("bob", 1, "interruption", ""); }),
            "trial 1 is spoiled already: other");
}

TEST(Live, ARestIsDueAfterEachBlockUntilItIsTakenButNotAtTheEnd) {
  plan::Plan plan = sample_plan("abx", 1, 6, 2);
  plan.block_trials = 2;
  HeldSitting held(plan);
  Sitting& sitting = held.started("live").sitting;
  held.play_and_answer("A");
  EXPECT_EQ(sitting.look().phase, "connect");
  held.play_and_answer("A");
  EXPECT_EQ(sitting.look().phase, "rest");
  EXPECT_EQ(sitting.look("ann").phase, "rest");
  held.play_and_answer("A");  // the rest was left out
  EXPECT_EQ(sitting.look().phase, "connect");
  held.play_and_answer("A");
  EXPECT_EQ(sitting.look().phase, "rest");
  sitting.rest("planned");
  EXPECT_EQ(sitting.look().phase, "connect") << "one rest is enough, also when the one before was left out";
  EXPECT_EQ(sitting.look("ann").phase, "wait");
  held.play_and_answer("A");
  held.play_and_answer("A");
  EXPECT_EQ(sitting.look().phase, "done") << "nothing follows";
}

TEST(Live, TimesAreKeptByTheSittingItself) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  held.play();
  EXPECT_EQ(sitting.state().at(1).started,
            (std::vector<std::string>{"2000-01-01T00:00:00.000Z", "2000-01-01T00:00:45.000Z",
                                      "2000-01-01T00:01:30.000Z"}));
  EXPECT_EQ(refusal([&] { sitting.key_time(1, 1, "19:30"); }),
            "this sitting is live; it keeps its times itself");
}

TEST(HelperDoor, TrimsAreWholeStepsOfTheVolumeControlAndExcerptsTakeTurns) {
  plan::Plan plan = sample_plan("preference", 1, 3, 1);
  plan.levels = "trimmed";
  plan.volume_step_db = "0.1";
  plan.specimens[1].trim_steps = 3;
  plan.excerpts = {{"one", "0:10", "0:25"}, {"two", "", ""}};
  HeldSitting held(plan);
  const auto sheet = held.started("live").sitting.sheet();
  ASSERT_EQ(sheet.size(), 5u);
  EXPECT_FALSE(sheet[2].spare);
  EXPECT_TRUE(sheet[3].spare);
  const auto tags = held.sitting.tagging_list();
  ASSERT_EQ(tags.size(), 2u);
  EXPECT_LT(tags[0].tag, tags[1].tag);
  for (const SheetTrial& trial : sheet)
    for (const HelperStep& step : trial.steps) {
      const bool trimmed = step.tag == (tags[0].specimen == "cable-1" ? tags[0].tag : tags[1].tag);
      EXPECT_EQ(step.attenuation_db, trimmed ? "0.3" : "0") << "3 steps of 0.1 dB";
      EXPECT_EQ(step.excerpt, (trial.trial - 1) / 2 % 2 == 0 ? "one, from 0:10 to 0:25" : "two");
    }
}

TEST(Live, IsFinishedForAListenerWhenNoTrialIsLeftAlsoWithoutSpares) {
  plan::Plan plan = sample_plan("abx", 1, 4, 2);
  plan.spares_each = 0;
  HeldSitting held(plan);
  Sitting& sitting = held.started("live").sitting;
  for (int trial = 1; trial <= 3; ++trial) {
    held.play_and_answer("A");
    EXPECT_FALSE(sitting.look("ann").finished);
  }
  held.play();
  EXPECT_FALSE(sitting.look("ann").finished);
  sitting.spoil("ann", 4, "interruption", "");
  EXPECT_TRUE(sitting.look("ann").finished);
  EXPECT_TRUE(sitting.look("bob").finished);
  EXPECT_EQ(sitting.look("ann").settled, 3);
}

}  // namespace
}  // namespace sitting
