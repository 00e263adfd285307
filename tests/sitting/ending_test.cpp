#include <gtest/gtest.h>

#include "refusal.h"
#include "seal/chain.h"
#include "sitting/held_sitting.h"
#include "sitting/unsealed_sitting.h"

namespace sitting {
namespace {

plan::Plan two_sittings() {
  plan::Plan plan = sample_plan("abx", 2, 3, 2);
  plan.sittings = {{{0}, 3, {0, 1}}, {{1}, 3, {1}}};
  return plan;
}

TEST(Ending, WaitsForEveryAnswer) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  held.sitting.answer("ann", 1, "A", "", "");
  EXPECT_EQ(refusal([&] { sitting.end(); }),
            "sitting 1 cannot end: 4 trials wait for answers, first trial 1 for bob\n"
            "key them, mark them as missing, or end the sitting early with a reason");
  held.key_all("A");
  sitting.correct("bob", 4, "B", "misread");
  sitting.end();
  EXPECT_TRUE(sitting.state().ended);
  EXPECT_FALSE(sitting.state().ended_early);
}

TEST(Ending, EarlySaysWhoAndWhy) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  EXPECT_EQ(refusal([&] { sitting.end_early("", "rain", false); }), "who decided must not be empty");
  EXPECT_EQ(refusal([&] { sitting.end_early("ann", "", false); }), "the reason must not be empty");
  sitting.end_early("ann", "rain", false);
  EXPECT_TRUE(sitting.state().ended_early);
  EXPECT_EQ(sitting.state().ended_by, "ann");
  EXPECT_EQ(sitting.state().end_reason, "rain");
}

TEST(Ending, NothingIsTakenAfterIt) {
  for (const char* way : {"paper", "live"}) {
    HeldSitting held;
    Sitting& sitting = held.started(way).sitting;
    const int tag = sitting.tagging_list().front().tag;
    sitting.end_early("ann", "rain", false);
    const auto before = held.events();
    const std::string over = "sitting 1 has ended; nothing can be added to it";
    EXPECT_EQ(refusal([&] { sitting.answer("ann", 1, "A", "", ""); }), over);
    EXPECT_EQ(refusal([&] { sitting.correct("ann", 1, "A", "x"); }), over);
    EXPECT_EQ(refusal([&] { sitting.miss("ann", 1); }), over);
    EXPECT_EQ(refusal([&] { sitting.spoil("ann", 1, "interruption", ""); }), over);
    EXPECT_EQ(refusal([&] { sitting.present_next(); }), over);
    EXPECT_EQ(refusal([&] { sitting.close_trial(); }), over);
    EXPECT_EQ(refusal([&] { sitting.key_time(1, 1, "19:30"); }), over);
    EXPECT_EQ(refusal([&] { sitting.contribute("ann", "k"); }), over);
    EXPECT_EQ(refusal([&] { sitting.begin(); }), over);
    EXPECT_EQ(refusal([&] { sitting.declare("ann", "end", true, ""); }), over);
    EXPECT_EQ(refusal([&] { sitting.record_fact("seat", "1 m"); }), over);
    EXPECT_EQ(refusal([&] { sitting.record_level({tag, "left", "end", "70", "dB"}); }), over);
    EXPECT_EQ(refusal([&] { sitting.note("ann", "x"); }), over);
    EXPECT_EQ(refusal([&] { sitting.rest("ann"); }), over);
    EXPECT_EQ(refusal([&] { sitting.tell_cue("ann", "x"); }), over);
    EXPECT_EQ(refusal([&] { sitting.name_keyer("kim", false); }), over);
    EXPECT_EQ(refusal([&] { sitting.differ("kim", "ann", 1, "A"); }), over);
    EXPECT_EQ(refusal([&] { sitting.finish_second_entry("kim", 1); }), over);
    EXPECT_EQ(refusal([&] { sitting.name_tagger("kim"); }), over);
    EXPECT_EQ(refusal([&] { sitting.end(); }), over);
    EXPECT_EQ(refusal([&] { sitting.end_early("ann", "x", false); }), over);
    EXPECT_EQ(refusal([&] { sitting.open(way); }), "sitting 1 is open already");
    EXPECT_EQ(held.events(), before);
  }
}

TEST(Unsealing, WaitsForThePlansLastSitting) {
  HeldSitting held(two_sittings());
  const auto unsealing = [&] { unseal(held.log, held.plan, held.sealed, held.clock.reading()); };
  const auto unsealed = [&] { UnsealedSitting(held.plan, held.sealed, 1, held.log); };
  const std::string closed = "plan \"pilot\" is sealed; its findings open when it is unsealed";
  EXPECT_EQ(
      refusal(unsealing),
      "the order stays sealed: sitting 1 has not been held\nhold it, or end the plan early with a reason");
  held.started("paper").sitting.answer("ann", 1, "A", "", "");
  EXPECT_EQ(refusal(unsealing),
            "the order stays sealed: sitting 1 has not ended, 3 of its 3 trials wait for answers\n"
            "end it, or end it early and keep what was planned");
  held.key_all("A");
  held.sitting.end();
  EXPECT_EQ(
      refusal(unsealing),
      "the order stays sealed: sitting 2 has not been held\nhold it, or end the plan early with a reason");
  EXPECT_EQ(refusal(unsealed), closed);
  Sitting second(held.plan, held.sealed, 2, held.log, held.clock.reading());
  second.open("paper");
  second.begin();
  second.end_early("bob", "fire", false);
  EXPECT_EQ(refusal(unsealed), closed);
  unsealing();
  EXPECT_EQ(UnsealedSitting(held.plan, held.sealed, 1, held.log).trials().size(), 5u);
  EXPECT_EQ(refusal(unsealing), "plan \"pilot\" is unsealed already");
}

TEST(Unsealing, DisclosesTheSeedAndEachSittingsHead) {
  HeldSitting held;
  held.started("paper").key_all("A");
  held.sitting.end();
  unseal(held.log, held.plan, held.sealed, held.clock.reading());
  const PlanStory story = story_of(held.log, held.sealed);
  EXPECT_EQ(story.disclosed, seal::to_hex(held.sealed.seed) + " " + held.sitting.head());
  EXPECT_EQ(refusal([&] { record_shown(held.log, held.sealed, held.clock.reading(), "zoe", "letter"); }),
            "plan \"pilot\" is unsealed; nothing can be added to it");
}

TEST(PlanEndedEarly, EndsItsSittingsAndOpensNoMore) {
  HeldSitting held(two_sittings());
  held.started("live").play_and_answer("A");
  const auto end = [&](const std::string& who, const std::string& reason) {
    end_plan_early(held.log, held.plan, held.sealed, held.clock.reading(), who, reason, true);
  };
  EXPECT_EQ(refusal([&] { end("ann", ""); }), "the reason must not be empty");
  end("ann", "moved house");
  const PlanStory story = story_of(held.log, held.sealed);
  EXPECT_TRUE(story.ended_early);
  EXPECT_TRUE(story.ender_had_seen);
  EXPECT_EQ(story.end_reason, "moved house");
  EXPECT_EQ(refusal([&] { end("ann", "again"); }), "plan \"pilot\" has been ended early already");
  Sitting first(held.plan, held.sealed, 1, held.log, held.clock.reading());
  EXPECT_TRUE(first.state().ended_early);
  Sitting second(held.plan, held.sealed, 2, held.log, held.clock.reading());
  EXPECT_EQ(refusal([&] { second.open("paper"); }),
            "plan \"pilot\" is over; no further sitting can be opened");
  EXPECT_EQ(refusal([&] { held.sitting.answer("ann", 1, "B", "", ""); }),
            "another writer was first; nothing was kept, try again");
  unseal(held.log, held.plan, held.sealed, held.clock.reading());
  EXPECT_FALSE(UnsealedSitting(held.plan, held.sealed, 2, held.log).state().began);
  EXPECT_EQ(UnsealedSitting(held.plan, held.sealed, 1, held.log).trials().front().last.at("ann"), 0);
}

// A plan was ended early while the program stopped before it ended the running sitting: unsealing went through, and
// the sitting still took answers afterwards.
TEST(PlanEndedEarly, UnsealingStillWaitsForASittingThatRuns) {
  HeldSitting held(two_sittings());
  held.started("paper");
  const Event ended{.type = std::string(kind::ended_plan), .who = "ann", .text = "moved house"};
  const auto chain = held.log.events(0);
  const auto head = seal::chain_next(*seal::from_hex(chain.back().head_hex), text_of(ended));
  held.log.append(0, static_cast<int>(chain.size()) + 1, {text_of(ended), seal::to_hex(head)});
  EXPECT_EQ(refusal([&] { unseal(held.log, held.plan, held.sealed, held.clock.reading()); }),
            "the order stays sealed: sitting 1 has not ended, 3 of its 3 trials wait for answers\n"
            "end it, or end it early and keep what was planned");
  held.sitting.end_early("ann", "moved house", false);
  EXPECT_NO_THROW(unseal(held.log, held.plan, held.sealed, held.clock.reading()));
}

TEST(Sealing, IsRecordedOnceAndKeepsWhoWasShownTheCommitment) {
  HeldSitting held;
  EXPECT_EQ(refusal([&] { record_sealing(held.log, held.sealed, held.clock.reading()); }),
            "plan \"pilot\" is sealed already");
  EXPECT_EQ(refusal([&] { record_shown(held.log, held.sealed, held.clock.reading(), "", "letter"); }),
            "who received the commitment must not be empty");
  record_shown(held.log, held.sealed, held.clock.reading(), "zoe", "letter");
  const PlanStory story = story_of(held.log, held.sealed);
  EXPECT_EQ(story.sealed_at, "2000-01-01T00:00:00.000Z");
  ASSERT_EQ(story.shown_to.size(), 1u);
  EXPECT_EQ(story.shown_to[0].who, "zoe");
}

TEST(UnsealedSitting, TellsTheFateAndTheTruthOfEachTrial) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  sitting.spoil("helper", 2, "wrong tag", "");
  sitting.answer("ann", 3, "B", "", "");
  sitting.correct("ann", 3, "A", "misread");
  sitting.spoil("ann", 3, "interruption", "");
  sitting.miss("bob", 1);
  held.sitting.answer("ann", 1, "A", "", "");
  sitting.answer("bob", 3, "B", "", "");
  for (const int trial : {4, 5})
    for (const char* listener : {"ann", "bob"}) sitting.answer(listener, trial, "B", "", "");
  sitting.end();
  unseal(held.log, held.plan, held.sealed, held.clock.reading());
  const UnsealedSitting unsealed(held.plan, held.sealed, 1, held.log);
  const auto order = plan::order_of(held.plan, held.sealed.seed, 1, sitting.state().characters());
  const Fate fates[] = {Fate::counted, Fate::spoiled, Fate::late_spoiled,
                        Fate::counted, Fate::counted, Fate::not_played};
  ASSERT_EQ(unsealed.trials().size(), 6u);
  for (std::size_t i = 0; i < 6; ++i) {
    EXPECT_EQ(unsealed.trials()[i].fate, fates[i]) << i + 1;
    EXPECT_EQ(unsealed.trials()[i].coin, order.trials[i].coin);
    EXPECT_EQ(unsealed.trials()[i].sides, order.trials[i].sides);
  }
  EXPECT_EQ(unsealed.trials()[0].last, (std::map<std::string, int>{{"ann", 0}}));
  EXPECT_EQ(unsealed.trials()[2].last.at("ann"), 0);
  EXPECT_EQ(unsealed.trials()[2].first.at("ann"), 1);
  EXPECT_EQ(unsealed.head_hex(), sitting.head());
  for (const TagLine& line : sitting.tagging_list())
    EXPECT_EQ(plan::title_of(held.plan.specimens[static_cast<std::size_t>(unsealed.specimen_of(line.tag))]),
              line.specimen);
  EXPECT_EQ(unsealed.specimen_of(99), -1);
}

}  // namespace
}  // namespace sitting
