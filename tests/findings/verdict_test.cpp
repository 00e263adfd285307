#include <gtest/gtest.h>

#include "findings/evidence_builder.h"

namespace {

using findings::Fate;
using findings::Verdict;
using plan::Kind;

/// A claim of 14 of 16, and what a test does to it.
findings::ComparisonFinding judged(const std::function<void(Builder&)>& change, int score = 14) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), score, 16);
  change(builder);
  return builder.findings().comparisons.at(0);
}

TEST(Verdict, OneClaimAtTheUndividedLevel) {
  const auto supported = judged([](Builder&) {}, 12);
  EXPECT_EQ(supported.verdict, Verdict::supported);
  EXPECT_NEAR(*supported.p_adjusted, k12Of16, 1e-15);
  const auto not_shown = judged([](Builder&) {}, 11);
  EXPECT_EQ(not_shown.verdict, Verdict::not_shown);
  EXPECT_TRUE(not_shown.reasons.empty());
}

TEST(Verdict, SevenClaimsGoThroughHolm) {
  Builder builder;
  builder.claims({14, 12, 12, 8, 9, 10, 7});
  const auto all = builder.findings();
  EXPECT_EQ(all.family, 7);
  EXPECT_NEAR(*all.comparisons[0].p_adjusted, 7 * k14Of16, 1e-14);  // Holm's first step: 7 p
  EXPECT_EQ(all.comparisons[0].verdict, Verdict::supported);
  EXPECT_NEAR(*all.comparisons[1].p_adjusted, 6 * k12Of16, 1e-14);  // and its second: 6 p, also for the tie
  EXPECT_NEAR(*all.comparisons[2].p_adjusted, 6 * k12Of16, 1e-14);
  EXPECT_EQ(all.comparisons[1].verdict, Verdict::not_shown);
}

TEST(Verdict, AClaimThatWasNotPlayedCountsAsPOfOne) {
  Builder builder;
  builder.claims({14});
  builder.claim("cable 2", "baseline");
  const auto all = builder.findings();
  EXPECT_NEAR(*all.comparisons[0].p_adjusted, 2 * k14Of16, 1e-14);
  EXPECT_EQ(*all.comparisons[1].p_adjusted, 1);
  EXPECT_EQ(all.comparisons[1].verdict, Verdict::cannot_be_judged);
  EXPECT_TRUE(says(all.comparisons[1].reasons, "too few answers: with 0 trials analysed"));
}

TEST(Verdict, ABarredClaimCountsAsPOfOneInItsFamily) {
  // Two claims of 12 of 16 would have 2 p = .0768 each; the barred one leaves 2 p for the other all the same.
  Builder builder;
  builder.claims({12});
  builder.add_sitting();
  builder.plan().sittings.back().comparisons = {1};
  builder.sitting().wrong_tag_reported = true;
  builder.trials(builder.claim("cable 2", "baseline"), 16, 16);
  const auto all = builder.findings();
  EXPECT_EQ(all.comparisons[1].verdict, Verdict::cannot_be_judged);
  EXPECT_EQ(*all.comparisons[1].p_adjusted, 1);
  EXPECT_LT(all.comparisons[1].primary.p, 1e-4);
  EXPECT_NEAR(*all.comparisons[0].p_adjusted, 2 * k12Of16, 1e-14);
}

TEST(Verdict, TooFewAnswersToReachTheFamilysFirstStep) {
  // 2^-7 = .0078 is above .05/7 = .0071, 2^-8 = .0039 below.
  Builder builder;
  builder.claims({16, 8, 8, 8, 8, 8});
  const int few = builder.claim("cable 7", "baseline");
  builder.trials(few, 7, 7);
  const auto barred = builder.findings().comparisons.at(static_cast<std::size_t>(few));
  EXPECT_EQ(barred.verdict, Verdict::cannot_be_judged);
  EXPECT_TRUE(says(
      barred.reasons,
      "too few answers: with 7 trials analysed, not even all answers alike would reach the level 0.0071"));
  EXPECT_EQ(barred.would_have_been_caught.needed, 8);
  EXPECT_FALSE(barred.would_have_been_caught.share);

  builder.trial(few, {true});
  const auto judged = builder.findings().comparisons.at(static_cast<std::size_t>(few));
  EXPECT_EQ(judged.verdict, Verdict::supported);
}

TEST(Verdict, SpoiledTrialsAreNotAmongThoseAnalysed) {
  const auto finding = judged([](Builder& builder) {
    for (std::size_t i = 0; i < 12; ++i) builder.evidence.trials[0][i].fate = Fate::spoiled;
  });
  EXPECT_EQ(finding.verdict, Verdict::cannot_be_judged);
  EXPECT_EQ(finding.would_have_been_caught.trials, 4);
}

TEST(Verdict, AWrongTagBarsWhatWasPlayedInItsSitting) {
  const auto change = [](Builder& builder) { builder.sitting().wrong_tag_reported = true; };
  EXPECT_EQ(judged(change).verdict, Verdict::cannot_be_judged);
  EXPECT_TRUE(says(judged(change).reasons, "in sitting 1 a wrong tag was reported"));
  EXPECT_EQ(judged([&](Builder& builder) {
              change(builder);
              builder.plan().judging.tags_or_trims_wrong = false;
            }).verdict,
            Verdict::supported);
  EXPECT_EQ(judged([](Builder& builder) {
              builder.add_sitting();
              builder.sitting().wrong_tag_reported = true;
            }).verdict,
            Verdict::supported);
}

TEST(Verdict, ASeparationThatWasNotKeptBars) {
  const auto change = [](Builder& builder) {
    builder.sitting().declarations.push_back({"Ada", "end", "saw the helper's sheet", false});
  };
  const auto barred = judged(change);
  EXPECT_EQ(barred.verdict, Verdict::cannot_be_judged);
  EXPECT_TRUE(says(barred.reasons,
                   "Ada declared at the end that the separation was not kept: \"saw the helper's sheet\""));
  EXPECT_EQ(judged([&](Builder& builder) {
              change(builder);
              builder.plan().judging.separation_not_kept = false;
            }).verdict,
            Verdict::supported);
}

TEST(Verdict, AMissingDeclarationIsACautionOnly) {
  Builder builder;
  builder.trials(builder.claim("thin", "thick"), 14, 16);
  EXPECT_FALSE(says(builder.findings().cautions, "no declaration"));
  builder.sitting().declarations.pop_back();
  const auto all = builder.findings();
  EXPECT_EQ(all.comparisons[0].verdict, Verdict::supported);
  EXPECT_TRUE(says(all.cautions, "sitting 1: no declaration of the separation by Ada at the end"));
}

int add_control(Builder& builder, Kind kind, int score) {
  const bool known = kind == Kind::known_difference;
  const int control =
      builder.comparison(builder.specimen("thin"), builder.specimen("thin", known ? "0.22" : ""), kind);
  builder.trials(control, score, 16);
  return control;
}

TEST(Verdict, AnIdenticalPairThatWasHeardBarsEveryClaim) {
  const auto heard = [](Builder& builder) { add_control(builder, Kind::identical_pair, 12); };
  const auto barred = judged(heard);
  EXPECT_EQ(barred.verdict, Verdict::cannot_be_judged);
  EXPECT_TRUE(says(barred.reasons, "an identical pair was heard (thin / thin: 12 of 16, p 0.0384)"));
  EXPECT_EQ(judged(heard, 8).verdict, Verdict::cannot_be_judged);
  EXPECT_EQ(judged([&](Builder& builder) {
              heard(builder);
              builder.plan().judging.identical_pair_heard = false;
            }).verdict,
            Verdict::supported);
  EXPECT_EQ(judged([](Builder& builder) { add_control(builder, Kind::identical_pair, 11); }).verdict,
            Verdict::supported);
}

/// A control played alone, in a second sitting whose separation was broken.
std::function<void(Builder&)> with_barred_control(Kind kind, int score) {
  return [=](Builder& builder) {
    builder.add_sitting();
    builder.sitting().declarations.push_back({"Ada", "end", "", false});
    builder.plan().sittings.back().comparisons = {1};
    add_control(builder, kind, score);
  };
}

const std::string kNotKept = "(in sitting 2 Ada declared at the end that the separation was not kept)";

TEST(Verdict, AnIdenticalPairThatWasHeardAndIsItselfBarredIsNoProofOfALeak) {
  const auto barred = judged(with_barred_control(Kind::identical_pair, 12));
  EXPECT_EQ(barred.verdict, Verdict::cannot_be_judged);
  EXPECT_TRUE(says(barred.reasons,
                   "an identical pair was heard (thin / thin: 12 of 16, p 0.0384) "
                   "and could not itself be judged " +
                       kNotKept));
  EXPECT_FALSE(says(barred.reasons, "told them apart"));
}

TEST(Verdict, AKnownDifferenceThatCouldNotBeJudgedBarsNotShownAndIsNotCalledUnheard) {
  const auto unjudged = with_barred_control(Kind::known_difference, 16);
  EXPECT_EQ(judged(unjudged, 14).verdict, Verdict::supported);
  const auto barred = judged(unjudged, 9);
  EXPECT_EQ(barred.verdict, Verdict::cannot_be_judged);
  EXPECT_TRUE(
      says(barred.reasons, "the known difference thin / thin + 0.22 ohm could not be judged " + kNotKept));
  EXPECT_FALSE(says(barred.reasons, "was not heard"));
}

TEST(Verdict, AKnownDifferenceThatWasNotHeardBarsOnlyNotShown) {
  const auto missed = [](Builder& builder) { add_control(builder, Kind::known_difference, 11); };
  EXPECT_EQ(judged(missed, 14).verdict, Verdict::supported);
  const auto barred = judged(missed, 9);
  EXPECT_EQ(barred.verdict, Verdict::cannot_be_judged);
  EXPECT_TRUE(
      says(barred.reasons, "the known difference thin / thin + 0.22 ohm was not heard (11 of 16, p 0.1051)"));
  EXPECT_EQ(judged(
                [&](Builder& builder) {
                  missed(builder);
                  builder.plan().judging.known_difference_not_heard = false;
                },
                9)
                .verdict,
            Verdict::not_shown);
  EXPECT_EQ(judged([](Builder& builder) { add_control(builder, Kind::known_difference, 12); }, 9).verdict,
            Verdict::not_shown);
}

TEST(Verdict, ControlsStandOutsideTheFamilyAtTheUndividedLevel) {
  Builder builder;
  builder.claims({14, 8, 8});
  const auto known = static_cast<std::size_t>(add_control(builder, Kind::known_difference, 12));
  const auto same = static_cast<std::size_t>(add_control(builder, Kind::identical_pair, 9));
  const auto all = builder.findings();
  EXPECT_EQ(all.family, 3);
  EXPECT_FALSE(all.comparisons[known].p_adjusted);
  EXPECT_EQ(all.comparisons[known].verdict, Verdict::supported);  // .0384 <= .05, though above .05/3
  EXPECT_EQ(all.comparisons[known].would_have_been_caught.level, .05);
  EXPECT_EQ(all.comparisons[known].would_have_been_caught.needed, 12);
  EXPECT_EQ(all.comparisons[same].verdict, Verdict::not_shown);
  EXPECT_NEAR(*all.comparisons[0].p_adjusted, 3 * k14Of16, 1e-14);
}

TEST(Verdict, APlanEndedBySomebodyWhoHadSeenSupportsNothing) {
  const auto ended = [](bool seen) {
    return [seen](Builder& builder) {
      builder.evidence.plan_ended_early = true;
      builder.evidence.plan_ended_by = "Olga";
      builder.evidence.plan_end_reason = "hours spent";
      builder.evidence.ender_had_seen = seen;
    };
  };
  const auto barred = judged(ended(true));
  EXPECT_EQ(barred.verdict, Verdict::cannot_be_judged);
  EXPECT_TRUE(says(barred.reasons, "Olga, who had seen both answers and order"));
  EXPECT_EQ(judged(ended(true), 9).verdict, Verdict::not_shown);
  EXPECT_EQ(judged(ended(false)).verdict, Verdict::supported);

  for (const Kind kind : {Kind::known_difference, Kind::identical_pair}) {
    Builder builder;
    const auto heard = static_cast<std::size_t>(add_control(builder, kind, 12));
    const auto missed = static_cast<std::size_t>(add_control(builder, kind, 9));
    ended(true)(builder);
    const auto controls = builder.findings().comparisons;
    EXPECT_EQ(controls[heard].verdict, Verdict::cannot_be_judged);
    EXPECT_TRUE(says(controls[heard].reasons, "it supports no finding"));
    EXPECT_EQ(controls[missed].verdict, Verdict::not_shown);
  }
}

TEST(Verdict, OfASittingEndedBySomebodyWhoHadSeenBothSupportsNothing) {
  const auto finding = judged([](Builder& builder) {
    builder.sitting().ended_early = builder.sitting().ender_had_seen = true;
    builder.sitting().ended_by = "Olga";
  });
  EXPECT_EQ(finding.verdict, Verdict::cannot_be_judged);
  EXPECT_EQ(finding.reasons, std::vector<std::string>{
                                 "sitting 1 was ended early by Olga, who had seen both answers and order: it "
                                 "supports no finding"});
}

}  // namespace
