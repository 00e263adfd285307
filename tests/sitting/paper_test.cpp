#include <gtest/gtest.h>

#include "refusal.h"
#include "sitting/held_sitting.h"

namespace sitting {
namespace {

TEST(Paper, AnswersAreKeyedInAnyOrderAndOnce) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  sitting.answer("bob", 4, "B", "guess", "dull");
  sitting.answer("ann", 1, "A", "", "");
  const auto before = held.events();
  sitting.answer("ann", 1, "A", "", "");
  sitting.answer("bob", 4, "B", "", "");
  EXPECT_EQ(held.events(), before);
  EXPECT_EQ(
      refusal([&] { sitting.answer("ann", 1, "B", "", ""); }),
      "trial 1, ann: \"A\" is recorded already, \"B\" differs\ncorrect it with a reason if it was misread");
  EXPECT_EQ(refusal([&] { sitting.answer("bob", 4, "B", "certain", ""); }),
            "trial 4, bob: \"B\", \"guess\" is recorded already, \"certain\" differs");
  EXPECT_EQ(held.events(), before);
}

TEST(Paper, ACorrectionNeedsAnAnswerAndAReason) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  sitting.answer("ann", 1, "A", "certain", "");
  EXPECT_EQ(refusal([&] { sitting.correct("ann", 1, "B", ""); }), "a correction needs its reason");
  EXPECT_EQ(refusal([&] { sitting.correct("bob", 1, "B", "misread"); }),
            "trial 1, bob: there is no answer to correct");
  sitting.correct("ann", 1, "B", "misread");
  const Answer& answer = sitting.state().at(1).answers.at("ann");
  EXPECT_EQ(answer.first, "A");
  EXPECT_EQ(answer.last, "B");
  EXPECT_EQ(answer.sureness, "certain");
  EXPECT_EQ(answer.correction, "misread");
  const auto before = held.events();
  EXPECT_EQ(refusal([&] { sitting.correct("ann", 1, "B", "misread again"); }),
            "trial 1, ann: \"B\" is what is recorded; there is nothing to correct");
  EXPECT_EQ(held.events(), before);
}

// An answer withdrawn is still known, so it cannot be made to vanish: neither from the first answers, nor by spoiling.
TEST(Paper, AnAnswerCorrectedToNoneStaysKnown) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  sitting.answer("ann", 1, "A", "certain", "");
  sitting.correct("ann", 1, "-", "a blot");
  const TrialState& trial = sitting.state().at(1);
  EXPECT_EQ(trial.word_of("ann"), "-");
  EXPECT_EQ(trial.answers.at("ann").first, "A");
  EXPECT_EQ(trial.answers.at("ann").last, "");
  EXPECT_EQ(trial.answers.at("ann").correction, "a blot");
  EXPECT_EQ(trial.missing, std::vector<std::string>{"ann"});
  EXPECT_EQ(refusal([&] { sitting.answer("ann", 1, "B", "", ""); }),
            "trial 1, ann: it is recorded that there is no answer\ncorrect it with a reason");
  sitting.correct("ann", 1, "B", "held against the light");
  EXPECT_EQ(trial.answers.at("ann").first, "A");
  EXPECT_EQ(trial.word_of("ann"), "B");
  sitting.correct("ann", 1, "-", "a blot after all");
  sitting.spoil("helper", 1, "interruption", "");
  EXPECT_FALSE(trial.spoiled);
  EXPECT_TRUE(trial.late_spoiled);
}

TEST(Paper, ADifferenceOfASecondEntryStandsUntilItIsSettledAfterwards) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  sitting.answer("ann", 1, "A", "", "");
  sitting.miss("bob", 1);
  sitting.correct("ann", 1, "B", "misread");
  sitting.differ("kim", "ann", 1, "A");
  sitting.differ("kim", "bob", 1, "B");
  EXPECT_EQ(sitting.state().standing_differences.size(), 2u);
  sitting.correct("ann", 1, "B", "it is a B");
  sitting.correct("bob", 1, "-", "nothing is marked");
  EXPECT_EQ(sitting.state().standing_differences.size(), 0u);
  EXPECT_EQ(sitting.state().differences.size(), 2u);
}

TEST(Paper, MissingAnswersAreKeyedOneByOne) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  sitting.miss("ann", 2);
  const auto before = held.events();
  sitting.miss("ann", 2);
  EXPECT_EQ(held.events(), before);
  EXPECT_EQ(refusal([&] { sitting.miss("ann", 5); }),
            "trial 5 is a spare that was not played; nothing is missing there");
  EXPECT_EQ(refusal([&] { sitting.close_trial(); }),
            "this sitting is on paper; missing answers are keyed one by one");
  EXPECT_EQ(refusal([&] { sitting.present_next(); }),
            "this sitting is on paper; its presentations are keyed with their times");
}

TEST(Paper, SparesTakeAnswersOnlyForSpoiledTrials) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  EXPECT_EQ(refusal([&] { sitting.answer("ann", 5, "A", "", ""); }),
            "trial 5 is a spare, and too few trials before it were spoiled for it to be played; "
            "key the spoiled trials from the helper's sheet first");
  sitting.spoil("helper", 2, "wrong tag", "");
  EXPECT_TRUE(sitting.state().at(2).spoiled);
  sitting.answer("ann", 5, "A", "", "");
  EXPECT_THROW(sitting.answer("ann", 6, "A", "", ""), std::exception);
  sitting.answer("ann", 1, "A", "", "");
  sitting.spoil("helper", 1, "wrong tag", "");
  EXPECT_TRUE(sitting.state().at(1).late_spoiled) << "its answer was keyed before";
  EXPECT_FALSE(sitting.state().is_played(6));
  EXPECT_EQ(sitting.state().open_trials(), (std::vector<int>{1, 3, 4, 5}));
}

TEST(Paper, TimesAreKeyedAsWritten) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  sitting.key_time(1, 2, "19:31");
  sitting.key_time(1, 1, "19:30");
  const auto before = held.events();
  sitting.key_time(1, 1, "19:30");
  EXPECT_EQ(held.events(), before);
  EXPECT_EQ(sitting.state().at(1).started, (std::vector<std::string>{"19:30", "19:31"}));
  EXPECT_EQ(refusal([&] { sitting.key_time(1, 4, "19:32"); }), "presentation must be 1 to 3, got 4");
  EXPECT_EQ(refusal([&] { sitting.key_time(1, 3, ""); }), "the time must not be empty");
  EXPECT_EQ(refusal([&] { sitting.key_time(7, 1, "19:32"); }), "trial must be 1 to 6, got 7");
  EXPECT_EQ(
      refusal([&] { sitting.key_time(5, 1, "19:32"); }),
      "trial 5 is a spare, and too few trials before it were spoiled for it to be played; key the spoiled "
      "trials from the helper's sheet first");
}

TEST(Paper, TheKeyersAreKeptWithWhetherTheyHeldTheHelpersSheet) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  sitting.name_keyer("kim", false);
  sitting.name_keyer("kim", false);
  EXPECT_EQ(sitting.state().keyed_by.size(), 1u);
  EXPECT_FALSE(sitting.state().keyed_with_helpers_sheet);
  sitting.name_keyer("kim", true);
  EXPECT_TRUE(sitting.state().keyed_with_helpers_sheet);
  sitting.name_keyer("lea", false);
  EXPECT_TRUE(sitting.state().keyed_with_helpers_sheet);
  EXPECT_EQ(refusal([&] { sitting.name_keyer("", false); }), "the name of who keys must not be empty");
}

TEST(Paper, ASecondEntryCountsWhatItReadOtherwiseAndChangesNothing) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  held.key_all("A");
  sitting.differ("lea", "ann", 2, "B");
  sitting.differ("lea", "bob", 2, "");
  sitting.finish_second_entry("lea", 8);
  sitting.differ("mia", "ann", 2, "B");
  sitting.finish_second_entry("mia", 8);
  const State& state = sitting.state();
  ASSERT_EQ(state.second_entries.size(), 2u);
  EXPECT_EQ(state.second_entries[0].compared, 8);
  EXPECT_EQ(state.second_entries[0].differing, 2);
  EXPECT_EQ(state.second_entries[1].differing, 1);
  EXPECT_EQ(state.at(2).answers.at("ann").last, "A");
  EXPECT_EQ(refusal([&] { sitting.differ("lea", "ann", 2, "C"); }),
            "an answer must be \"A\", \"B\", got \"C\"");
  EXPECT_EQ(refusal([&] { sitting.differ("", "ann", 2, "A"); }), "the name of who keys must not be empty");
  EXPECT_EQ(refusal([&] { sitting.finish_second_entry("lea", -1); }), "compared must be 0 or more, got -1");
}

}  // namespace
}  // namespace sitting
