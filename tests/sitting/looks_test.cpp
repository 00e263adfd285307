// A plan that looks at a claim's answers as they come and stops it when it is supported.
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <map>
#include <set>

#include "plan/looks.h"
#include "refusal.h"
#include "seal/chain.h"
#include "sitting/held_sitting.h"
#include "sitting/simulated/stand_ins.h"
#include "sitting/unsealed_sitting.h"
#include "text/error.h"

namespace sitting {
namespace {

/// Looks after 5, 8 and 12 trials at a level of 0.05 in all: 5 of 5 may stop it.
plan::Plan looked_at(int claims, int listeners = 1) {
  plan::Plan plan = sample_plan("abx", claims, 12, listeners);
  plan.level = "0.2";
  plan.stopping_rule = plan::rule_text({{5, 8, 12}, stats::Spending::pocock});
  return plan;
}

/// Which answer is right, as nobody in a real sitting can know: from the sheet, X has the tag of the first or the second.
std::string right_answer(const Sitting& sitting, int trial) {
  const SheetTrial sheet = sitting.sheet()[static_cast<std::size_t>(trial - 1)];
  int tag_of_a = 0, tag_of_x = 0;
  for (const HelperStep& step : sheet.steps) {
    if (step.label == "A") tag_of_a = step.tag;
    if (step.label == "X") tag_of_x = step.tag;
  }
  return tag_of_a == tag_of_x ? "A" : "B";
}

std::string wrong_answer(const Sitting& sitting, int trial) {
  return right_answer(sitting, trial) == "A" ? "B" : "A";
}

/// Plays the next trial; everybody answers rightly or wrongly.
int play(HeldSitting& held, bool rightly) {
  held.play();
  const int trial = held.sitting.state().current_trial();
  for (const std::string& listener : held.sitting.state().listeners)
    held.sitting.answer(listener, trial,
                        rightly ? right_answer(held.sitting, trial) : wrong_answer(held.sitting, trial), "",
                        "");
  held.sitting.take_look();
  return trial;
}

std::string look_after_trial(const HeldSitting& held, int trial) {
  return held.sitting.state().at(trial).looked;
}

TEST(LookedAtSitting, StopsAClaimThatIsSupportedAndGoesOnWithTheNext) {
  HeldSitting held(looked_at(2));
  held.started("live");
  for (int trial = 1; trial <= 5; ++trial) EXPECT_EQ(play(held, true), trial);
  EXPECT_EQ(look_after_trial(held, 5), "stop");
  EXPECT_EQ(held.sitting.look("ann").planned, 24 - 7);
  EXPECT_EQ(held.sitting.look().next.trial, 15) << "the next block, twelve trials and two spares later";
  for (int trial = 15; trial <= 26; ++trial) EXPECT_EQ(play(held, trial % 2 == 0), trial);
  EXPECT_EQ(look_after_trial(held, 19), "continue");
  EXPECT_EQ(look_after_trial(held, 22), "continue");
  EXPECT_EQ(look_after_trial(held, 26), "") << "the last look is the end itself";
  EXPECT_TRUE(held.sitting.look("ann").finished);
  held.sitting.end();
  unseal(held.log, held.plan, held.sealed, held.clock.reading());
  const UnsealedSitting unsealed(held.plan, held.sealed, 1, held.log);
  int counted = 0;
  for (const ScoredTrial& trial : unsealed.trials()) counted += trial.fate == Fate::counted;
  EXPECT_EQ(counted, 17);
}

TEST(LookedAtSitting, NeverStopsAControl) {
  plan::Plan plan = looked_at(2);
  plan.comparisons[1].kind = plan::Kind::known_difference;
  HeldSitting held(plan);
  held.started("live");
  int trials = 0, stops = 0, continues = 0;
  for (; held.sitting.look().next.trial != 0; ++trials) {
    const std::string word = look_after_trial(held, play(held, true));
    stops += word == "stop", continues += word == "continue";
  }
  EXPECT_EQ(trials, 5 + 12);
  EXPECT_EQ(stops, 1);
  EXPECT_EQ(continues, 2);
}

// An answer may be changed, and its sureness given, for as long as anywhere else: until the next presentation is due.
TEST(LookedAtSitting, LooksWhenTheNextPresentationWouldBegin) {
  HeldSitting held(looked_at(2));
  held.started("live");
  for (int trial = 1; trial <= 4; ++trial) play(held, true);
  for (int i = 0; i < 3; ++i) {
    if (i > 0) held.clock.pass(std::chrono::seconds(45));
    held.sitting.present_next();
  }
  held.sitting.answer("ann", 5, wrong_answer(held.sitting, 5), "", "");
  held.ready();
  held.sitting.keep_pace();
  EXPECT_EQ(look_after_trial(held, 5), "") << "the pace still runs";
  held.sitting.answer("ann", 5, right_answer(held.sitting, 5), "certain", "");
  held.clock.pass(std::chrono::seconds(45));
  held.sitting.keep_pace();
  EXPECT_EQ(look_after_trial(held, 5), "stop");
  EXPECT_EQ(held.sitting.state().current_trial(), 5) << "what is connected is of the claim that was stopped";
  EXPECT_EQ(held.sitting.look().next.trial, 15);
  held.ready();
  held.sitting.keep_pace();
  EXPECT_EQ(held.sitting.state().current_trial(), 15);
}

TEST(LookedAtSitting, IsHeldToItsEndAtItsPace) {
  HeldSitting held(looked_at(2, 2));
  Sitting& sitting = held.sitting;
  sitting.open("live");
  StandIns all(sitting, sitting, {"helper", "ann", "bob"}, 1);
  for (int second = 0; second < 8000 && sitting.look().phase != "done"; ++second) {
    all.act();
    sitting.keep_pace();
    held.clock.pass(std::chrono::seconds(1));
  }
  int looks = 0;
  for (const TrialState& trial : sitting.state().trials) looks += !trial.looked.empty();
  EXPECT_GE(looks, 2);
  EXPECT_EQ(sitting.state().settled_trials(), sitting.state().planned_trials());
  sitting.end();
  unseal(held.log, held.plan, held.sealed, held.clock.reading());
  EXPECT_EQ(UnsealedSitting(held.plan, held.sealed, 1, held.log).trials().size(), 28u);
}

TEST(LookedAtSitting, MayEndWhereTheLastClaimIsStopped) {
  HeldSitting held(looked_at(1));
  held.started("live");
  for (int trial = 1; trial <= 4; ++trial) play(held, true);
  held.play();
  held.sitting.answer("ann", 5, right_answer(held.sitting, 5), "", "");
  held.sitting.end();
  EXPECT_EQ(look_after_trial(held, 5), "stop");
}

TEST(LookedAtSitting, MakesTheAnswersFinalAtTheLook) {
  HeldSitting held(looked_at(1, 2));
  held.started("live");
  for (int trial = 1; trial <= 4; ++trial) play(held, false);
  held.play();
  const std::string answer = wrong_answer(held.sitting, 5);
  held.sitting.answer("ann", 5, answer, "", "");
  held.sitting.take_look();
  EXPECT_TRUE(held.sitting.look("ann").may_answer) << "bob has not answered: nobody has looked";
  held.sitting.answer("bob", 5, answer, "", "");
  held.sitting.take_look();
  EXPECT_EQ(look_after_trial(held, 5), "continue");
  EXPECT_FALSE(held.sitting.look("ann").may_answer);
  EXPECT_EQ(held.sitting.look("ann").phase, "wait");
  EXPECT_EQ(refusal([&] { held.sitting.answer("ann", 5, right_answer(held.sitting, 5), "", ""); }),
            "trial 5 is final: the plan looked at its answers");
  held.sitting.answer("ann", 5, answer, "", "");  // sent twice
}

TEST(LookedAtSitting, CountsNeitherSpoiledTrialsNorThoseWithoutAnswers) {
  HeldSitting held(looked_at(1));
  held.started("live");
  play(held, true);
  held.play();
  held.sitting.spoil("ann", 2, "interruption", "");
  held.play();
  held.sitting.close_trial();
  held.sitting.take_look();
  for (int trial = 4; trial <= 6; ++trial) play(held, true);
  EXPECT_EQ(look_after_trial(held, 6), "") << "four answers so far";
  play(held, true);
  EXPECT_EQ(look_after_trial(held, 7), "stop");
}

/// A log that loses its next event once told to.
class FailingLog : public MemoryLog {
 public:
  void append(int sitting, int number, const LoggedEvent& event) override {
    if (fails && event.text.find("\"looked\"") != std::string::npos) throw text::NotNow("the disk is full");
    MemoryLog::append(sitting, number, event);
  }
  bool fails = false;
};

TEST(LookedAtSitting, KeepsALookThatCouldNotBeKeptAtTheNextStep) {
  const plan::Plan plan = looked_at(1);
  const plan::SealedPlan sealed = sealed_with(plan, seal::sha256("a seed"));
  FailingLog log;
  HandClock clock;
  record_sealing(log, sealed, clock.reading());
  Sitting sitting(plan, sealed, 1, log, clock.reading());
  sitting.open("live");
  sitting.begin();
  log.fails = true;
  for (int trial = 1; trial <= 5; ++trial) {
    for (int i = 0; i < 3; ++i) sitting.present_next(), clock.pass(std::chrono::seconds(45));
    sitting.answer("ann", trial, right_answer(sitting, trial), "", "");
  }
  EXPECT_EQ(sitting.state().at(5).looked, "");
  EXPECT_EQ(refusal([&] { sitting.present_next(); }), "the disk is full")
      << "nothing goes on without the look";
  log.fails = false;
  sitting.take_look();
  EXPECT_EQ(sitting.state().at(5).looked, "stop");
}

// Where the looks say the same, a listener is shown the same for every order.
TEST(LookedAtSitting, ShowsAListenerNothingButTheWord) {
  std::map<std::string, std::set<std::string>> seen;  // by the words of the looks
  for (int seed = 0; seed < 12; ++seed) {
    HeldSitting held(looked_at(2), "seed " + std::to_string(seed));
    held.started("live");
    std::string bytes, words;
    while (held.sitting.look().next.trial != 0) {
      held.play_and_answer("A");
      words += look_after_trial(held, held.sitting.state().current_trial());
      bytes += bytes_of(held.sitting.look("ann")) + "\n";
    }
    seen[words].insert(bytes);
  }
  for (const auto& [words, bytes] : seen) EXPECT_EQ(bytes.size(), 1u) << words;
}

TEST(LookedAtSitting, IsHeldLiveOnly) {
  HeldSitting held(looked_at(1));
  EXPECT_EQ(refusal([&] { held.sitting.open("paper"); }),
            "plan \"pilot\" looks at the answers as they come: hold its sittings live (sitting host), on "
            "paper nobody may look");
}

/// The refusal of a sitting whose events were changed before it was unsealed, with a chain made to fit. Six trials were
/// played, all wrong; the plan looked after the fifth.
std::string refusal_of_forged(const std::function<void(std::vector<Event>&)>& change) {
  HeldSitting held(looked_at(1));
  held.started("live");
  for (int trial = 1; trial <= 6; ++trial) play(held, false);
  held.sitting.end_early("ann", "tired", false);
  std::vector<Event> events;
  for (const LoggedEvent& event : held.log.events(1)) events.push_back(event_of(event.text));
  change(events);
  MemoryLog forged;
  forged.append(0, 1, held.log.events(0).front());
  seal::Digest head = seal::chain_start(held.sealed.commitment, 1);
  int number = 0;
  for (const Event& event : events) {
    head = seal::chain_next(head, text_of(event));
    forged.append(1, ++number, {text_of(event), seal::to_hex(head)});
  }
  unseal(forged, held.plan, held.sealed, held.clock.reading());
  return refusal([&] { UnsealedSitting(held.plan, held.sealed, 1, forged); });
}

std::vector<Event>::iterator the_look(std::vector<Event>& events) {
  return std::find_if(events.begin(), events.end(),
                      [](const Event& event) { return event.type == kind::looked; });
}

TEST(LookedAtSitting, IsReadWhereNothingWasForged) {
  EXPECT_EQ(refusal_of_forged([](std::vector<Event>&) {}), "(not refused)");
}

TEST(LookedAtSitting, IsFoundOutWhenALookWasForged) {
  EXPECT_EQ(refusal_of_forged([](std::vector<Event>& events) { the_look(events)->word = "stop"; }),
            "the look after trial 5 says \"stop\", which the plan's rule does not: the file was changed");
}

TEST(LookedAtSitting, IsFoundOutWhenALookWasTakenAway) {
  EXPECT_EQ(refusal_of_forged([](std::vector<Event>& events) { events.erase(the_look(events)); }),
            "trial 6 begins without the look that the plan takes after trial 5: the file was changed");
}

TEST(LookedAtSitting, IsFoundOutWhenAnAnswerChangedAfterTheLook) {
  EXPECT_EQ(refusal_of_forged([](std::vector<Event>& events) {
              Event corrected;
              corrected.type = std::string(kind::corrected);
              corrected.trial = 5;
              corrected.who = "ann";
              corrected.word = "A";
              events.insert(the_look(events) + 1, corrected);
            }),
            "an answer to trial 5 changes after the plan's look at it: the file was changed");
}

TEST(LookedAtSitting, IsFoundOutWhenAClaimWentOnAfterItWasStopped) {
  HeldSitting held(looked_at(1));
  held.started("live");
  const auto answers = [&](std::vector<Event>& events) {
    const Sitting& sitting = held.sitting;
    for (Event& event : events) {
      if (event.type == kind::answered) event.word = right_answer(sitting, event.trial);
      if (event.type == kind::looked) event.word = "stop";
    }
  };
  EXPECT_EQ(refusal_of_forged(answers),
            "trial 6 was played although its claim was stopped: the file was changed");
}

}  // namespace
}  // namespace sitting
