#include <gtest/gtest.h>

#include "findings/eventful_evidence.h"

namespace {

using plan::Kind;

TEST(Conditions, SayWhatWasRecorded) {
  const auto conditions = eventful().findings().conditions;
  for (const char* words :
       {"Protocol: ABX (\"Which one is X?\"), order rule abx-1; primary test pooled, level 0.05, Holm over 1 "
        "claim; stopping "
        "rule: fixed number of trials.",
        "Listeners: Ada and Ben, together.",
        "Rig: listening room.",
        "Presentations of 15 s with 30 s between them. Excerpts, used in turn, two trials each: slow organ "
        "(0:12 to 0:27).",
        "Blocks of 12 trials, breaks of 10 minutes; 2 practice trials.",
        "Levels trimmed in steps of 0.5 dB",
        "the order's seed was supplied, not drawn: a demonstration, not evidence",
        "shown to nobody",
        "Sitting 1: paper, opened 2031-05-02T10:00:00Z, ended 2031-05-02T12:00:00Z early by Olga (fuse "
        "blown); 32 trials "
        "planned, 16 done.",
        "head of the event chain beef",
        "Seat and distance from the loudspeakers: middle, 3 m.",
        "who tagged the cables was not recorded",
        "helper declared at the start that the separation was kept.",
        "answers keyed by Kim, who held the helper's sheet.",
        "second entry of 30 answers, 2 read otherwise.",
        "pace recorded.",
        "trial 2 spoiled: interruption, by helper.",
        "trial 3 spoiled after its answers were in, counted as answered: audible fault, by Ada.",
        "trial 4: no answer by Ben.",
        "1 answer corrected before the next trial; the last answer counts.",
        "Ben on cues: \"a click before X\".",
        "note by helper: \"rain\"."})
    EXPECT_TRUE(says(conditions, words)) << words << "\n" << all_of(conditions);
}

TEST(Conditions, SayThatSomethingWasNotRecorded) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 8, 16);
  builder.plan().excerpts.clear();
  builder.plan().levels = "as connected";
  builder.sitting().declarations.clear();
  const auto conditions = builder.findings().conditions;
  for (const char* words :
       {"Excerpts: not recorded.", "Levels as connected: differences in level belong to the question.",
        "no facts of rig and room were recorded.", "cables tagged by Tom.",
        "nobody declared whether the separation was kept.", "who did not hold the helper's sheet.",
        "answers were entered once.", "no listener told of a cue.",
        "the order's seed was drawn from the operating system", "shown to a notary (letter)"})
    EXPECT_TRUE(says(conditions, words)) << words << "\n" << all_of(conditions);
}

TEST(PlanCautions, NameWhatAReaderShouldKnow) {
  const auto cautions = eventful().findings().cautions;
  for (const char* words : {"the order's seed was supplied, not drawn: a demonstration, not evidence",
                            "the commitment was shown to nobody",
                            "the plan was ended early by Olga (fuse blown): 32 trials planned, 16 done",
                            "sitting 1: ended early by Olga (fuse blown): 32 trials planned, 16 done",
                            "sitting 1: who tagged the cables was not recorded",
                            "sitting 1: answers were keyed by somebody who held the helper's sheet",
                            "sitting 1: the second entry read 2 of 30 answers otherwise",
                            "this campaign also holds 1 plan ended early: winter"})
    EXPECT_TRUE(says(cautions, words)) << words << "\n" << all_of(cautions);
}

TEST(PlanCautions, OfAPlanInOrderAreNone) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 8, 16);
  EXPECT_EQ(all_of(builder.findings().cautions), "");
}

TEST(PlanCautions, TellWhoDidTwoThingsAndWhatBindsTheAnswers) {
  Builder builder({"Ada", "Ben"});
  builder.trials(builder.claim("thin", "thick"), 8, 16);
  builder.sitting().head_shown_to.clear();
  builder.sitting().tagged_by = builder.sitting().helper = "Ben";
  const auto cautions = builder.findings().cautions;
  EXPECT_TRUE(says(cautions, "sitting 1: its chain head was given to nobody before unsealing"));
  EXPECT_TRUE(says(cautions, "sitting 1: Ben tagged the cables and listened"));
  EXPECT_TRUE(says(cautions, "sitting 1: Ben helped and listened"));
}

// binom.test(2, 16): p = .004181 (R; twice pbinom(2, 16, .5) = 137/65536); with 3 of 16 it is .0213.
TEST(Cautions, TellOfAnIdenticalPairSteadilyAnsweredTheWrongWay) {
  const auto cautions = [](int score) {
    Builder builder;
    builder.trials(
        builder.comparison(builder.specimen("thin"), builder.specimen("thin"), Kind::identical_pair), score,
        16);
    return builder.findings().comparisons.at(0).cautions;
  };
  EXPECT_TRUE(says(cautions(2), "Ada was right in only 2 of 16 (two-sided p 0.0042)"));
  EXPECT_TRUE(says(cautions(3), "Ada was right in only 3 of 16 (two-sided p 0.0213)"));
  EXPECT_FALSE(says(cautions(4), "Ada was right"));
}

TEST(PlanCautions, TellOfControls) {
  const auto cautions = [](Kind kind, int score, int trials) {
    Builder builder;
    builder.trials(builder.comparison(builder.specimen("thin"), builder.specimen("thin"), kind), score,
                   trials);
    return builder.findings().cautions;
  };
  EXPECT_TRUE(says(cautions(Kind::identical_pair, 13, 16), "identical pair thin / thin was heard"));
  EXPECT_TRUE(says(cautions(Kind::known_difference, 8, 16), "known difference thin / thin was not heard"));
  EXPECT_TRUE(
      says(cautions(Kind::known_difference, 4, 4), "control cannot be judged: known difference thin / thin"));
  EXPECT_EQ(all_of(cautions(Kind::identical_pair, 8, 16)), "");
}

TEST(LimitsOfTheMethod, SayWhatTheRecordCannotShow) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 8, 16);
  const auto shown = builder.findings().limits_of_the_method;
  EXPECT_TRUE(says(shown,
                   "The record shows that plan and order were not changed after the commitment had left the "
                   "organiser's hands"));
  EXPECT_TRUE(says(shown, "It cannot show that nobody told the listener."));
  EXPECT_TRUE(says(shown, "file can read the order"));
  builder.evidence.commitment_shown_to.clear();
  EXPECT_FALSE(says(builder.findings().limits_of_the_method, "The record shows"));
}

}  // namespace
