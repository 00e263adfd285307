#include <gtest/gtest.h>

#include <algorithm>
#include <regex>

#include "findings/evidence_builder.h"
#include "findings/words/numbers.h"

namespace {

using findings::Fate;
using plan::Kind;

std::string sentence(const Builder& builder) { return builder.findings().comparisons.at(0).sentence; }

Builder seven_of(int first_score) {
  Builder builder;
  builder.claims({first_score, 8, 8, 8, 8, 8, 8});
  return builder;
}

TEST(Sentence, OfADifferenceNotShown) {
  // LEV-2: P(X >= 9 | 16, 1/2) = .4018. recomputed: scipy.stats.beta.ppf(.95, 10, 7) = .773; the share caught
  // is .9025 and binom.sf(13, 16, .9) = .789 (tests/findings/verdict_test.cpp).
  EXPECT_EQ(sentence(seven_of(9)),
            "Difference not shown: 9 of 16 right, exact one-sided p 0.4018, 1.0000 after Holm over 7 claims "
            "(level 0.05). "
            "One-sided 95 % upper limit of the share right: 0.77. "
            "Had the long-run share right been 0.91 or more, sittings like these (16 trials, level 0.0071 "
            "after Holm) would "
            "have supported it at least 80 times in 100. Right in 0.91 means hearing it in about 0.82 of "
            "trials and guessing "
            "the rest. At the share worth finding, 0.90: 78 times in 100. "
            "Presentations of 15 s with 30 s between them; quicker switching may show more. "
            "For these listeners, this rig and this pace.");
}

TEST(Sentence, OfASupportedDifference) {
  // BIN-4: 14 of 16 p .00209, times 7. recomputed: scipy.stats.beta.ppf(.05, 14, 3) = .656
  const std::string text = sentence(seven_of(14));
  EXPECT_EQ(text.find("Difference supported: 14 of 16 right, exact one-sided p 0.0021, 0.0146 after Holm "
                      "over 7 claims (level "
                      "0.05). One-sided 95 % lower limit of the share right: 0.66. Had"),
            0U)
      << text;
  EXPECT_EQ(text.find("quicker switching"), std::string::npos);
  EXPECT_NE(text.find("Presentations of 15 s with 30 s between them."), std::string::npos);
}

TEST(Sentence, OfSeveralListenersMakesNoClaimOfSimilarity) {
  Builder builder({"Ada", "Ben"});
  builder.trials(builder.claim("thin", "thick"), 9, 16);
  const std::string text = sentence(builder);
  EXPECT_NE(text.find("18 of 32 right (over 16 trials)"), std::string::npos) << text;
  EXPECT_NE(text.find("(treats all answers as independent)"), std::string::npos);
  EXPECT_NE(text.find("Pooled answers make no claim of similarity."), std::string::npos);
  EXPECT_NE(text.find("listeners answering alike"), std::string::npos);
}

TEST(Sentence, OfAPreference) {
  Builder builder({"Ada"}, "preference");
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  const std::string not_shown = sentence(builder);
  EXPECT_EQ(not_shown.find("Preference not shown: 12 of 16 answers for thin, exact two-sided p 0.0768"), 0U)
      << not_shown;
  EXPECT_NE(not_shown.find("This says nothing about whether a difference was heard."), std::string::npos);
  EXPECT_EQ(not_shown.find("hearing it in"), std::string::npos);
  builder.trial(0, {true});
  builder.trial(0, {true});
  const std::string supported = sentence(builder);
  EXPECT_EQ(supported.find("Preference supported: 14 of 18"), 0U) << supported;
}

TEST(Sentence, OfAFindingThatCannotBeJudgedGivesTheReason) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 3, 4);
  EXPECT_EQ(sentence(builder).find("Cannot be judged: too few answers: with 4 trials analysed"), 0U)
      << sentence(builder);
  builder.evidence.trials[0].clear();
  EXPECT_NE(sentence(builder).find("No answers."), std::string::npos);
}

TEST(Sentence, OfControls) {
  const auto of_control = [](Kind kind, int score) {
    Builder builder;
    builder.trials(builder.comparison(builder.specimen("thin"), builder.specimen("thin"), kind), score, 16);
    return sentence(builder);
  };
  EXPECT_EQ(
      of_control(Kind::identical_pair, 8).find("Identical pair not heard, as it should be: 8 of 16 right"),
      0U);
  EXPECT_EQ(of_control(Kind::identical_pair, 13)
                .find("Identical pair heard, though nothing was changed but the tag"),
            0U);
  EXPECT_EQ(of_control(Kind::known_difference, 13).find("Known difference heard: 13 of 16 right"), 0U);
  EXPECT_EQ(of_control(Kind::known_difference, 8).find("Known difference not heard: 8 of 16 right"), 0U);
  EXPECT_EQ(of_control(Kind::known_difference, 8).find("Holm"), std::string::npos);
}

TEST(Sentence, OfALevel) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 8, 16);
  EXPECT_EQ(builder.findings().comparisons[0].level_sentence,
            "Level not verified: neither measured nor predicted.");
  EXPECT_EQ(builder.findings().comparisons[0].response_sentence, "");
  builder.terminal_levels(0, 9, 9);
  builder.terminal_levels(1, 9.3, 9.1);
  EXPECT_EQ(builder.findings().comparisons[0].level_sentence,
            "Level measured, not matched: mean +0.20 dB, farthest +0.30 dB, second less first, against a "
            "tolerance of 0.10 dB.");
}

/// A sitting in which much went wrong.
Builder eventful() {
  Builder builder({"Ada", "Ben"});
  builder.evidence.commitment_shown_to.clear();
  builder.plan().seed_origin = "supplied";
  builder.plan().attendance = "together";
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  auto& trials = builder.evidence.trials[0];
  trials[1].fate = Fate::spoiled;
  trials[1].spoil_words = "interruption, by helper";
  trials[2].fate = Fate::late_spoiled;
  trials[2].spoil_words = "audible fault, by Ada";
  trials[3].missing = {1};
  trials[3].answers.erase(1);
  trials[4].first_answers.at(0) = 1 - trials[4].answers.at(0);
  auto& sitting = builder.sitting();
  sitting.facts = {{"Seat and distance from the loudspeakers", "middle, 3 m"}};
  sitting.ended_early = true;
  sitting.ended_by = "Olga";
  sitting.end_reason = "fuse blown";
  sitting.planned_trials = 32;
  sitting.settled_trials = 16;
  sitting.keyed_with_helpers_sheet = true;
  sitting.compared_answers = 30;
  sitting.differing_answers = 2;
  sitting.tagged_by = "";
  sitting.cues = {{"Ben", "a click before X"}};
  sitting.notes = {{"helper", "rain"}};
  sitting.head_hex = "beef";
  builder.evidence.plan_ended_early = true;
  builder.evidence.plan_ended_by = "Olga";
  builder.evidence.plan_end_reason = "fuse blown";
  builder.evidence.all_plans = {{"spring", "abx", "", "ended early", ""},
                                {"winter", "abx", "", "ended early", ""}};
  return builder;
}

TEST(Conditions, SayWhatWasRecorded) {
  const auto conditions = eventful().findings().conditions;
  for (const char* words :
       {"Protocol: ABX (\"Which one is X?\"), order rule abx-1; primary test pooled, level 0.05, Holm over 1 "
        "claim; stopping "
        "rule: fixed number of trials.",
        "Listeners: Ada and Ben, together.",
        "Rig: listening room.",
        "Presentations of 15 s with 30 s between them. Excerpts, used in turn: slow organ (0:12 to 0:27).",
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
  for (const char* words :
       {"the order's seed was supplied, not drawn: a demonstration, not evidence",
        "the commitment was shown to nobody",
        "the plan was ended early by Olga (fuse blown): 32 trials planned, 16 done",
        "sitting 1: ended early by Olga (fuse blown): 32 trials planned, 16 done",
        "sitting 1: who tagged the cables was not recorded",
        "sitting 1: answers were keyed by somebody who held the helper's sheet",
        "sitting 1: the second entry read 2 of 30 answers otherwise", "sitting 1: cues were told of (1)",
        "this campaign also holds 1 plan ended early: winter"})
    EXPECT_TRUE(says(cautions, words)) << words << "\n" << all_of(cautions);
}

TEST(PlanCautions, OfAPlanInOrderAreNone) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 8, 16);
  EXPECT_EQ(all_of(builder.findings().cautions), "");
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
  EXPECT_TRUE(
      says(shown,
           "The record shows that nothing was changed after the commitment had left the organiser's hands."));
  EXPECT_TRUE(says(shown, "It cannot show that nobody told the listener."));
  EXPECT_TRUE(says(shown, "file and a debugger"));
  builder.evidence.commitment_shown_to.clear();
  EXPECT_FALSE(says(builder.findings().limits_of_the_method, "The record shows"));
}

/// Claims that no finding may make; the control's own name, "identical pair", is none.
std::string forbidden_word_in(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? char(c + 32) : c; });
  text = std::regex_replace(text, std::regex("identical pair"), "control");
  for (const char* word :
       {"identical", "proved", "prove ", "proof", "because", "no difference", "the same sound"})
    if (text.find(word) != std::string::npos) return word;
  return "";
}

TEST(Words, NeverClaimMoreThanTheMethod) {
  EXPECT_EQ(forbidden_word_in("Proved Identical"), "identical");
  std::vector<Builder> builders = {eventful(), seven_of(9), seven_of(14), seven_of(2),
                                   Builder({"Ada", "Ben"}, "preference")};
  builders.back().trials(builders.back().claim("thin", "thick"), 15, 16);
  builders.back().trials(builders.back().claim("flat", "thick"), 8, 16);
  for (const int score : {8, 16}) {
    Builder controls;
    controls.trials(controls.claim("thin", "thick"), 8, 16);
    controls.trials(
        controls.comparison(controls.specimen("thin"), controls.specimen("thin"), Kind::identical_pair),
        score, 16);
    controls.trials(controls.comparison(controls.specimen("thin"), controls.specimen("thin", "0.22"),
                                        Kind::known_difference),
                    score, 16);
    builders.push_back(controls);
  }
  Builder measured = seven_of(9);
  for (std::size_t i = 0; i < measured.plan().specimens.size(); ++i)
    measured.evidence.cables[measured.plan().specimens[i].cable].line =
        electrical::Cable{.resistance_ohm_per_m = .01 * double(i + 1), .length_m = 3};
  measured.evidence.rig.source = electrical::Source{.resistance_ohm = .1};
  measured.evidence.rig.load = electrical::Resistor{8};
  builders.push_back(measured);
  std::size_t sentences = 0;
  for (const Builder& builder : builders)
    for (const std::string& text : every_sentence(builder.findings())) {
      EXPECT_EQ(forbidden_word_in(text), "") << text;
      ++sentences;
    }
  EXPECT_GT(sentences, 200U);
}

TEST(Numbers, AreWrittenForPeople) {
  EXPECT_EQ(findings::signed_db(.617), "+0.62 dB");
  EXPECT_EQ(findings::signed_db(-.004), "0.00 dB");
  EXPECT_EQ(findings::signed_db(-.1), "-0.10 dB");
  EXPECT_EQ(findings::p_words(.0384), "p 0.0384");
  EXPECT_EQ(findings::p_words(1e-9), "p below 0.0001");
  EXPECT_EQ(findings::percent(.95), "95 %");
  EXPECT_EQ(findings::percent(.975), "97.5 %");
  EXPECT_EQ(findings::rounded_up(.9025), .91);
  EXPECT_EQ(findings::rounded_up(.9), .9);
  EXPECT_EQ(findings::frequency_words(237.3), "237 Hz");
  EXPECT_EQ(findings::frequency_words(20000), "20.0 kHz");
  EXPECT_EQ(findings::listed({"a", "b", "c"}), "a, b and c");
  EXPECT_EQ(findings::typed_number("step", "0,5"), .5);
  EXPECT_EQ(findings::typed_number("step", ""), std::nullopt);
}

}  // namespace
