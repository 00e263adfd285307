#include <gtest/gtest.h>

#include "refusal.h"
#include "sitting/held_sitting.h"
#include "text/error.h"

namespace sitting {
namespace {

TEST(Opening, IsOnPaperOrLiveAndOnce) {
  HeldSitting held;
  EXPECT_EQ(refusal([&] { held.sitting.open("radio"); }),
            "a sitting is \"paper\" or \"live\", got \"radio\"");
  held.sitting.open("live");
  EXPECT_EQ(held.sitting.state().way, "live");
  EXPECT_EQ(held.sitting.state().opened_at, "2000-01-01T00:00:00.000Z");
  EXPECT_EQ(refusal([&] { held.sitting.open("paper"); }), "sitting 1 is open already");
  EXPECT_EQ(held.events(), 1u);
}

TEST(Opening, ComesBeforeAnythingElse) {
  HeldSitting held;
  const std::string closed = "sitting 1 is not open yet; open it first";
  Sitting& sitting = held.sitting;
  EXPECT_EQ(refusal([&] { sitting.contribute("ann", "k7"); }), closed);
  EXPECT_EQ(refusal([&] { sitting.begin(); }), closed);
  EXPECT_EQ(refusal([&] { sitting.declare("ann", "start", true, ""); }), closed);
  EXPECT_EQ(refusal([&] { sitting.answer("ann", 1, "A", "", ""); }), closed);
  EXPECT_EQ(refusal([&] { sitting.end_early("ann", "rain", false); }), closed);
  EXPECT_EQ(sitting.look("ann").phase, "before");
  EXPECT_EQ(sitting.look().phase, "before");
  EXPECT_EQ(held.events(), 0u);
}

TEST(Opening, KnowsOnlyThePlansSittings) {
  HeldSitting held;
  EXPECT_EQ(refusal([&] { Sitting(held.plan, held.sealed, 2, held.log, held.clock.reading()); }),
            "sitting must be 1 to 1, got 2");
  EXPECT_EQ(refusal([&] { Sitting(held.plan, held.sealed, 0, held.log, held.clock.reading()); }),
            "sitting must be 1 to 1, got 0");
}

TEST(Characters, AreAddedOnceByThoseWhoAttendUntilTheOrderIsDrawn) {
  HeldSitting held;
  Sitting& sitting = held.sitting;
  sitting.open("live");
  sitting.contribute("bob", "k7ü");
  EXPECT_EQ(refusal([&] { sitting.contribute("bob", "x"); }),
            "listener \"bob\" has added characters already");
  EXPECT_EQ(refusal([&] { sitting.contribute("an", "x"); }),
            "no listener \"an\" attends sitting 1; did you mean \"ann\"?");
  EXPECT_EQ(refusal([&] { sitting.contribute("ann", ""); }), "the characters must not be empty");
  EXPECT_EQ(refusal([&] { sitting.contribute("ann", std::string(65, 'x')); }),
            "the characters must be 64 at most");
  EXPECT_EQ(refusal([&] { sitting.contribute("ann", "caf\xe9"); }),
            "the characters must be valid UTF-8 of at most 4000 bytes");
  EXPECT_EQ(sitting.state().characters(), (std::vector<std::string>{"", "k7ü"}));
  sitting.begin();
  EXPECT_EQ(refusal([&] { sitting.contribute("ann", "x"); }),
            "the order is drawn; characters can no longer be added");
  EXPECT_EQ(refusal([&] { sitting.begin(); }), "sitting 1 has begun already");
}

TEST(Characters, ChangeTheOrder) {
  HeldSitting one, other;
  one.sitting.open("live"), other.sitting.open("live");
  one.sitting.contribute("ann", "a"), other.sitting.contribute("ann", "b");
  one.sitting.begin(), other.sitting.begin();
  EXPECT_NE(one.sitting.tagging_list().front().tag, other.sitting.tagging_list().front().tag);
}

TEST(Beginning, ComesBeforeTrialsAndBeforeTheOrderIsShown) {
  HeldSitting held;
  Sitting& sitting = held.sitting;
  sitting.open("live");
  const std::string early = "sitting 1 has not begun; take the listeners' characters, then begin it";
  EXPECT_EQ(refusal([&] { sitting.present_next(); }), early);
  EXPECT_EQ(refusal([&] { sitting.answer("ann", 1, "A", "", ""); }), early);
  EXPECT_EQ(refusal([&] { sitting.rest("ann"); }), early);
  EXPECT_EQ(refusal([&] { sitting.end(); }), early);
  EXPECT_EQ(refusal([&] { sitting.tagging_list(); }), "the order is drawn when the sitting begins");
  EXPECT_EQ(refusal([&] { sitting.sheet(); }), "the order is drawn when the sitting begins");
}

TEST(Records, KeepDeclarationsFactsNotesTaggersLevelsAndCues) {
  HeldSitting held;
  Sitting& sitting = held.started("live").sitting;
  const int tag = sitting.tagging_list().front().tag;
  sitting.name_tagger("tess");
  sitting.declare("helper", "start", true, "");
  sitting.declare("ann", "end", false, "the door stood open");
  sitting.record_fact("seat", "2.6 m");
  sitting.record_level({tag, "left", "start", "71.25", "dBV"});
  sitting.name_tagger("tess");
  sitting.record_fact("seat", "2.6 m");
  sitting.record_level({tag, "left", "start", "71.25", "dBV"});
  sitting.note("helper", "a lorry");
  sitting.tell_cue("bob", "a click");
  const State& state = sitting.state();
  EXPECT_EQ(state.tagged_by, "tess");
  ASSERT_EQ(state.declarations.size(), 2u);
  EXPECT_FALSE(state.declarations[1].kept);
  EXPECT_EQ(state.declarations[1].words, "the door stood open");
  EXPECT_EQ(state.facts, (std::vector<std::pair<std::string, std::string>>{{"seat", "2.6 m"}}));
  ASSERT_EQ(state.levels.size(), 1u);
  EXPECT_EQ(state.levels[0].level, "71.25");
  EXPECT_EQ(state.notes.at(0).text, "a lorry");
  EXPECT_EQ(state.cues.at(0).who, "bob");
}

TEST(Records, AreReplacedOnlyWithAReasonThatIsKept) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  const int tag = sitting.tagging_list().front().tag;
  sitting.name_tagger("tess");
  sitting.record_fact("seat", "2.6 m");
  sitting.record_fact("other", "rain");
  sitting.record_level({tag, "left", "start", "3.5", "dB"});
  const auto before = held.events();
  EXPECT_EQ(refusal([&] { sitting.name_tagger("tom"); }),
            "who tagged the cables: \"tess\" is recorded already, \"tom\" differs; say why it is replaced");
  EXPECT_EQ(refusal([&] { sitting.record_fact("seat", "3 m"); }),
            "seat: \"2.6 m\" is recorded already, \"3 m\" differs; say why it is replaced");
  const std::string place = "level of tag " + std::to_string(tag) + ", left, start: ";
  EXPECT_EQ(refusal([&] {
              sitting.record_level({tag, "left", "start", "1.5", "dB"});
            }),
            place + "\"3.5\" is recorded already, \"1.5\" differs; say why it is replaced");
  EXPECT_EQ(refusal([&] {
              sitting.record_level({tag, "left", "end", "1.5", "dBV"});
            }),
            "the levels of sitting 1 are kept in dB, these are in dBV\nkey all of a sitting in one unit");
  EXPECT_EQ(held.events(), before);
  sitting.record_fact("other", "wind");
  sitting.record_fact("seat", "3 m", "measured again");
  sitting.record_level({tag, "left", "start", "1.5", "dB"}, "the meter's range");
  const State& state = sitting.state();
  EXPECT_EQ(state.facts, (std::vector<std::pair<std::string, std::string>>{
                             {"other", "rain"}, {"other", "wind"}, {"seat", "3 m"}}));
  ASSERT_EQ(state.levels.size(), 1u);
  EXPECT_EQ(state.levels[0].level, "1.5");
  ASSERT_EQ(state.notes.size(), 2u);
  EXPECT_EQ(state.notes[0].text, "seat: 2.6 m replaced by 3 m, measured again");
  EXPECT_EQ(state.notes[1].text, place + "3.5 replaced by 1.5, the meter's range");
}

TEST(Records, RefuseWhatTheyCannotMean) {
  HeldSitting held;
  Sitting& sitting = held.started("paper").sitting;
  const auto before = held.events();
  EXPECT_EQ(refusal([&] { sitting.declare("ann", "middle", true, ""); }),
            "the moment must be \"start\" or \"end\", got \"middle\"");
  EXPECT_EQ(refusal([&] { sitting.declare("zoe", "start", true, ""); }),
            "no listener \"zoe\" attends sitting 1");
  EXPECT_EQ(refusal([&] { sitting.record_fact("seet", "2 m"); }),
            "no fact of a sitting is called \"seet\"; did you mean \"seat\"?");
  EXPECT_EQ(refusal([&] { sitting.record_fact("seat", ""); }), "the value must not be empty");
  const int tag = sitting.tagging_list().front().tag;
  EXPECT_EQ(refusal([&] {
              sitting.record_level({tag, "top", "start", "70", "dBV"});
            }),
            "the channel must be \"left\", \"right\" or \"mono\", got \"top\"");
  EXPECT_EQ(refusal([&] {
              sitting.record_level({tag, "left", "start", "70 dB", "dBV"});
            }),
            "the level must be a number, got \"70 dB\"");
  EXPECT_EQ(refusal([&] {
              sitting.record_level({99, "left", "start", "70", "dBV"});
            }),
            "no cable of sitting 1 carries tag 99; see its tagging list");
  EXPECT_EQ(refusal([&] { sitting.note("helper", ""); }), "a note must not be empty");
  EXPECT_EQ(refusal([&] { sitting.note("helper", std::string(4001, 'x')); }),
            "a note must be valid UTF-8 of at most 4000 bytes");
  EXPECT_EQ(refusal([&] { sitting.tell_cue("helper", "x"); }), "no listener \"helper\" attends sitting 1");
  EXPECT_EQ(refusal([&] { sitting.name_tagger(""); }), "the name of who tagged must not be empty");
  EXPECT_EQ(held.events(), before);
}

}  // namespace
}  // namespace sitting
