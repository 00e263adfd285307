#include <gtest/gtest.h>

#include "refusal.h"
#include "seal/chain.h"
#include "sitting/chain/chain_reader.h"
#include "sitting/held_sitting.h"
#include "sitting/unsealed_sitting.h"

namespace sitting {
namespace {

/// A log that somebody has been at with another program.
class ForgedLog : public EventLog {
 public:
  std::vector<std::vector<LoggedEvent>> sittings{2};

  explicit ForgedLog(const EventLog& original) {
    for (int sitting : {0, 1}) sittings[static_cast<std::size_t>(sitting)] = original.events(sitting);
  }
  std::vector<LoggedEvent> events(int sitting) const override {
    return sittings.at(static_cast<std::size_t>(sitting));
  }
  void append(int, int, const LoggedEvent&) override { FAIL() << "nothing is written to this log"; }

  /// Makes the chain of sitting 1 fit again from its start, as anybody can who knows how.
  void mend(const seal::Digest& commitment) {
    seal::Digest head = seal::chain_start(commitment, 1);
    for (LoggedEvent& event : sittings[1]) {
      head = seal::chain_next(head, event.text);
      event.head_hex = seal::to_hex(head);
    }
  }
};

struct PlayedSitting : HeldSitting {
  PlayedSitting() {
    sitting.open("live");
    sitting.contribute("ann", "k7");
    sitting.contribute("bob", "ü\"");
    sitting.begin();
    for (int trial = 0; trial < 4; ++trial) play_and_answer(trial % 2 == 0 ? "A" : "B");
    sitting.end();
  }
};

std::string read(const PlayedSitting& played, const EventLog& log) {
  return refusal([&] { read_chain(log, played.sealed.commitment, 1); });
}

// Golden: an old chain can be followed for ever. The same head comes from tests/independent/chain.py.
TEST(Chain, HeadOfAPlayedSittingIsAsReleased) {
  const PlayedSitting played;
  EXPECT_EQ(played.events(), 25u);
  EXPECT_EQ(seal::to_hex(played.sealed.commitment),
            "3d1ee10eb66e02a4ae7567076d1f9b814726d06df731b1565258cb4e692ec891");
  EXPECT_EQ(played.sitting.head(), "52f839d4e189680fa8a12ad975a689a62464c262bb543016127afcac415a3938");
}

TEST(Chain, AChangedBitIsFoundInAnyEventAndHead) {
  const PlayedSitting played;
  ForgedLog forged(played.log);
  for (std::size_t i = 0; i < forged.sittings[1].size(); ++i) {
    const std::string message =
        "sitting 1, event " + std::to_string(i + 1) +
        " does not fit the hash chain: the file was changed by something other than blindswap\n"
        "go back to a copy that was made before";
    for (std::string* part : {&forged.sittings[1][i].text, &forged.sittings[1][i].head_hex})
      for (std::size_t place = i % 7; place < part->size(); place += 7) {
        const std::string before = *part;
        (*part)[place] ^= 1;
        ASSERT_EQ(read(played, forged), message) << *part;
        *part = before;
      }
  }
  EXPECT_EQ(read(played, forged), "(not refused)");
}

TEST(Chain, EventsTakenOutExchangedOrFromElsewhereAreFound) {
  const PlayedSitting played;
  const std::string at_5 = "sitting 1, event 5 ";
  ForgedLog shorter(played.log);
  shorter.sittings[1].erase(shorter.sittings[1].begin() + 4);
  EXPECT_TRUE(read(played, shorter).starts_with(at_5));
  ForgedLog exchanged(played.log);
  std::swap(exchanged.sittings[1][4], exchanged.sittings[1][5]);
  EXPECT_TRUE(read(played, exchanged).starts_with(at_5));
  ForgedLog moved(played.log);
  moved.sittings[1] = moved.sittings[0];
  EXPECT_TRUE(read(played, moved).starts_with("sitting 1, event 1 "));
}

TEST(Chain, ASittingThatDoesNotFitItsChainIsNotOpened) {
  const PlayedSitting played;
  ForgedLog forged(played.log);
  forged.sittings[1][20].text += " ";
  EXPECT_TRUE(refusal([&] {
                Sitting(played.plan, played.sealed, 1, forged, played.clock.reading());
              }).starts_with("sitting 1, event 21 does not fit the hash chain"));
  forged.sittings[0][0].text += " ";
  EXPECT_TRUE(
      refusal([&] { story_of(forged, played.sealed); }).starts_with("sitting 0, event 1 does not fit"));
}

TEST(Chain, EventsThatFitButMeanNothingAreRefused) {
  const PlayedSitting played;
  const auto refused = [&](const std::string& text) {
    ForgedLog forged(played.log);
    forged.sittings[1][20].text = text;
    forged.mend(played.sealed.commitment);
    return refusal([&] { Sitting(played.plan, played.sealed, 1, forged, played.clock.reading()); });
  };
  EXPECT_EQ(refused(R"({"type":"sang"})"),
            "event \"sang\" is not known; a newer blindswap wrote this sitting");
  EXPECT_EQ(refused(R"({"type":"answered","who":"ann","word":"A"})"),
            "an event names trial 0, which this sitting has not");
  EXPECT_EQ(refused(R"({"trial":-3,"type":"spoiled"})"),
            "an event names trial -3, which this sitting has not");
  EXPECT_EQ(refused(R"({"trial":7,"type":"missing"})"), "an event names trial 7, which this sitting has not");
  EXPECT_EQ(refused(R"({"trial":1,"type":"presented"})"),
            "an event names presentation 0, which no trial has");
  EXPECT_EQ(refused(R"({"presentation":999999999,"trial":1,"type":"presented"})"),
            "an event names presentation 999999999, which no trial has");
}

TEST(Unsealed, ASittingRewrittenAfterUnsealingIsFoundEvenIfItsChainFits) {
  PlayedSitting played;
  unseal(played.log, played.plan, played.sealed, played.clock.reading());
  ForgedLog forged(played.log);
  for (LoggedEvent& event : forged.sittings[1])
    if (const auto place = event.text.find("\"word\":\"A\""); place != std::string::npos)
      event.text[place + 8] = 'B';
  forged.mend(played.sealed.commitment);
  EXPECT_EQ(read(played, forged), "(not refused)");
  const std::string changed = "sitting 1 is not what it was when the plan was unsealed: the file was changed";
  EXPECT_EQ(refusal([&] { UnsealedSitting(played.plan, played.sealed, 1, forged); }), changed);
  ForgedLog cut(played.log);
  cut.sittings[1].pop_back();
  EXPECT_EQ(refusal([&] { UnsealedSitting(played.plan, played.sealed, 1, cut); }), changed);
  EXPECT_NO_THROW(UnsealedSitting(played.plan, played.sealed, 1, played.log));
}

TEST(Unsealed, AnotherSeedIsFound) {
  PlayedSitting played;
  unseal(played.log, played.plan, played.sealed, played.clock.reading());
  plan::SealedPlan exchanged = played.sealed;
  exchanged.seed = seal::sha256("a better seed");
  EXPECT_EQ(refusal([&] { UnsealedSitting(played.plan, exchanged, 1, played.log); }),
            "plan \"pilot\" and its seed do not give its commitment: the file was changed");
}

TEST(MemoryLog, TheSecondOfTwoWritersLosesCleanly) {
  HeldSitting held;
  Sitting other(held.plan, held.sealed, 1, held.log, held.clock.reading());
  held.sitting.open("live");
  EXPECT_EQ(refusal([&] { other.open("paper"); }), "another writer was first; nothing was kept, try again");
  EXPECT_EQ(held.events(), 1u);
  EXPECT_EQ(other.state().way, "live") << "it has read what the first wrote";
}

}  // namespace
}  // namespace sitting
