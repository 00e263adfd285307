#include <gtest/gtest.h>

#include "findings/evidence_builder.h"

namespace {

using plan::Kind;

std::string sentence(const Builder& builder) { return builder.findings().comparisons.at(0).sentence; }

TEST(Sentence, OfADifferenceNotShown) {
  // LEV-2: P(X >= 9 | 16, 1/2) = .4018. recomputed: scipy.stats.beta.ppf(.95, 10, 7) = .7733; the share
  // caught is .9025 and binom.sf(13, 16, .9) = .789 (tests/findings/verdict_test.cpp).
  EXPECT_EQ(sentence(seven_of(9)),
            "Difference not shown: 9 of 16 right, exact one-sided p 0.4018, 1.0000 after Holm over 7 claims "
            "(level 0.05). "
            "One-sided 95 % upper limit of the share right: 0.774. "
            "Had the long-run share right been 0.903 or more, sittings like these (16 trials, level 0.0071 "
            "after Holm) would "
            "have supported it at least 80 times in 100. Right in 0.903 means hearing it in about 0.806 of "
            "trials and guessing "
            "the rest. At the share worth finding, 0.90: 78 times in 100. "
            "Presentations of 15 s with 30 s between them; quicker switching may show more. "
            "For these listeners, this rig and this pace.");
}

TEST(Sentence, OfASupportedDifference) {
  // BIN-4: 14 of 16 p .00209, times 7. recomputed: scipy.stats.beta.ppf(.05, 14, 3) = .6562
  const std::string text = sentence(seven_of(14));
  EXPECT_EQ(text.find("Difference supported: 14 of 16 right, exact one-sided p 0.0021, 0.0146 after Holm "
                      "over 7 claims (level "
                      "0.05). One-sided 95 % lower limit of the share right: 0.656. Had"),
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
  EXPECT_NE(text.find("(16 trials with 32 answers, level 0.0500 after Holm, listeners answering alike)"),
            std::string::npos);
}

TEST(Sentence, OfListenersOneAtATimeSaysNothingOfAnsweringAlike) {
  Builder builder({"Ada", "Ben"});
  const int claim = builder.claim("thin", "thick");
  for (int i = 0; i < 16; ++i) builder.trial(claim, {i < 9}).answers = {{i % 2, i % 2}};
  const std::string text = sentence(builder);
  EXPECT_NE(text.find("(16 trials, level 0.0500 after Holm)"), std::string::npos) << text;
}

TEST(Sentence, OfAPreference) {
  Builder builder({"Ada"}, "preference");
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  const std::string not_shown = sentence(builder);
  EXPECT_EQ(not_shown.find("Preference not shown: 12 of 16 answers for thin, exact two-sided p 0.0768"), 0U)
      << not_shown;
  EXPECT_NE(not_shown.find("This says nothing about whether a difference was heard."), std::string::npos);
  EXPECT_EQ(not_shown.find("hearing it in"), std::string::npos);
  // tests/findings/tally_test.cpp: .4762 and .9273, rounded outwards
  EXPECT_NE(not_shown.find("Two-sided 95 % interval of the share for thin: 0.476 to 0.928."),
            std::string::npos);
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

}  // namespace
