#include <gtest/gtest.h>

#include "findings/correlated_evidence.h"

namespace {

/// Seven cables of 1 to 7 ohm more than the baseline; the shares 9 8 11 10 15 12 14 of 16 have Spearman's rho
/// 0.821 with them, two-sided p .0341 (recomputed: all 7! pairings counted in Python).
Builder seven(const std::string& protocol = "abx") {
  Builder builder({"Ada"}, protocol);
  builder.claims({9, 8, 11, 10, 15, 12, 14});
  builder.evidence.cables["baseline"].line = of_resistance(1);
  for (int i = 1; i <= 7; ++i)
    builder.evidence.cables["cable " + std::to_string(i)].line = of_resistance(1 + i);
  return builder;
}

constexpr double kRho = 0.8214285714285715;
constexpr double kP = 0.034126984126984124;

TEST(Correlation, OfTheShareRightWithAnAbsoluteDifference) {
  const auto list = seven().findings().correlations;
  const auto found = with(list, "loop resistance, ohm");
  EXPECT_EQ(found.outcome, "share right");
  EXPECT_EQ(found.against, "absolute difference");
  ASSERT_EQ(found.x.size(), 7U);
  EXPECT_NEAR(found.x[2], 3, 1e-8);
  EXPECT_DOUBLE_EQ(found.y[2], 11.0 / 16);
  EXPECT_NEAR(*found.rho, kRho, 1e-12);
  EXPECT_NEAR(found.p, kP, 1e-12);
  EXPECT_FALSE(found.p_standard_error);
  EXPECT_FALSE(found.permuted_by_cable);
  EXPECT_FALSE(found.unequal_trials);
}

TEST(Correlation, AMeasureThatDoesNotVaryCountsAsPOfOneInTheList) {
  // Cables without inductance and capacitance do not differ there: three measures, two of them without rho.
  const auto list = seven().findings().correlations;
  ASSERT_EQ(list.size(), 3U);
  const auto inductance = with(list, "inductance, uH");
  EXPECT_FALSE(inductance.rho);
  EXPECT_EQ(inductance.p, 1);
  EXPECT_NE(inductance.sentence.find("cannot be said: one side does not vary"), std::string::npos);
  const auto resistance = with(list, "loop resistance, ohm");
  EXPECT_NEAR(resistance.p_adjusted, 3 * kP, 1e-12);  // Benjamini-Hochberg: smallest of three
  // recomputed: all 7! pairings counted in Python, smallest |rho| with two-sided p at most .05/3
  EXPECT_NEAR(*resistance.rho_needed, 0.8928571428571429, 1e-12);
  EXPECT_NE(resistance.sentence.find("it is not shown that share right goes with loop resistance, ohm"),
            std::string::npos);
  EXPECT_NE(resistance.sentence.find("rho of at least 0.893"), std::string::npos) << resistance.sentence;
}

TEST(Correlation, ThatIsSupportedGoesWith) {
  Builder builder = seven();
  for (auto& trials : builder.evidence.trials) trials.clear();
  const int score[] = {8, 9, 10, 11, 12, 14, 16};
  for (int i = 0; i < 7; ++i) builder.trials(i, score[i], 16);
  const auto list = builder.findings().correlations;
  const auto found = with(list, "loop resistance, ohm");
  EXPECT_NEAR(*found.rho, 1, 1e-12);
  EXPECT_NEAR(found.p, 2.0 / 5040, 1e-12);
  EXPECT_EQ(
      found.sentence.find("Exploratory: share right goes with loop resistance, ohm (absolute difference)"),
      0U)
      << found.sentence;
}

TEST(Correlation, OfFourComparisonsCannotReachTheLevel) {
  Builder builder;
  builder.claims({8, 9, 12, 14});
  builder.evidence.cables["baseline"].line = of_resistance(1);
  for (int i = 1; i <= 4; ++i)
    builder.evidence.cables["cable " + std::to_string(i)].line = of_resistance(1 + i);
  const auto list = builder.findings().correlations;
  const auto found = with(list, "loop resistance, ohm");
  EXPECT_NEAR(*found.smallest_attainable_p, 2.0 / 24, 1e-12);  // the method's [R]: .083
  EXPECT_FALSE(found.rho_needed);
  EXPECT_NE(found.sentence.find("cannot reach the level"), std::string::npos);
}

// recomputed: all 7! pairings of the mid-ranks counted in Python; two-sided p .0476 for rho .768. Of untied
// ranks .786 would be needed.
TEST(Correlation, WithTiesNeedsWhatTheseVeryRanksNeed) {
  Builder builder = seven();
  const int shares[] = {9, 12, 12, 12, 12, 14, 15};
  const double more_ohm[] = {1, 0, 2, 3, 4, 6, 5};
  for (int i = 0; i < 7; ++i) {
    builder.evidence.trials[static_cast<std::size_t>(i)].clear();
    builder.trials(i, shares[i], 16);
    builder.evidence.cables["cable " + std::to_string(i + 1)].line = of_resistance(1 + more_ohm[i]);
  }
  builder.plan().level = "0.15";  // three measures: .05 each at the first step
  const auto found = with(builder.findings().correlations, "loop resistance, ohm");
  EXPECT_NEAR(*found.rho, .7684076460831231, 1e-12);
  EXPECT_NEAR(found.p, .047619047619047616, 1e-12);
  EXPECT_NEAR(*found.rho_needed, .7684076460831231, 1e-12);
  EXPECT_TRUE(found.rho_needed_is_exact);
}

TEST(Correlation, OverManyComparisonsNeedsARhoByApproximationAndSaysSo) {
  Builder builder;
  builder.claims({8, 9, 8, 10, 9, 11, 12, 10, 12, 13, 11, 13, 14});
  builder.evidence.cables["baseline"].line = of_resistance(1);
  for (int i = 1; i <= 13; ++i)
    builder.evidence.cables["cable " + std::to_string(i)].line = of_resistance(1 + i);
  const auto found = with(builder.findings().correlations, "loop resistance, ohm");
  EXPECT_FALSE(found.rho_needed_is_exact);
  EXPECT_NE(found.sentence.find(" (approximately, for untied values), either way."), std::string::npos)
      << found.sentence;
}

TEST(Correlation, NeedsThreeComparisonsWithValues) {
  Builder builder;
  builder.claims({8, 9, 12});
  builder.evidence.cables["baseline"].line = of_resistance(1);
  for (int i = 1; i <= 2; ++i)
    builder.evidence.cables["cable " + std::to_string(i)].line = of_resistance(1 + i);
  EXPECT_TRUE(builder.findings().correlations.empty());
}

TEST(Correlation, UnequalNumbersOfTrialsAreSaid) {
  Builder builder = seven();
  builder.trial(3, {true});
  const auto list = builder.findings().correlations;
  EXPECT_TRUE(list.at(0).unequal_trials);
  EXPECT_NE(list.at(0).sentence.find("unequal numbers of trials"), std::string::npos);
}

TEST(Correlation, LeavesOutBarredClaimsAndNoOthers) {
  Builder builder = seven();
  builder.evidence.trials.at(6).clear();
  builder.evidence.plan.judging.known_difference_not_heard = true;
  const int control = builder.comparison(builder.specimen("baseline"), builder.specimen("baseline", "0.22"),
                                         plan::Kind::known_difference);
  builder.trials(control, 8, 16);  // turns every "not shown" into "cannot be judged"
  const auto all = builder.findings();
  EXPECT_EQ(all.comparisons.at(0).verdict, findings::Verdict::cannot_be_judged);
  EXPECT_EQ(with(all.correlations, "loop resistance, ohm").comparisons, (std::vector<int>{0, 1, 2, 3, 4, 5}));
}

TEST(Correlation, OfAPreferenceFollowsTheCableWhicheverIsNamedFirst) {
  Builder builder = seven("preference");
  const auto straight = with(builder.findings().correlations, "loop resistance, ohm");
  EXPECT_EQ(straight.outcome, "share for the cable set against baseline");
  EXPECT_EQ(straight.against, "signed difference, that cable less baseline");
  EXPECT_NEAR(straight.x[2], 3, 1e-8);
  EXPECT_NEAR(*straight.rho, kRho, 1e-12);
  EXPECT_NEAR(straight.p, kP, 1e-12);

  std::swap(builder.plan().comparisons[2].first, builder.plan().comparisons[2].second);
  builder.evidence.trials[2].clear();
  builder.trials(2, 16 - 11, 16);  // the same preference, told the other way round
  const auto turned = with(builder.findings().correlations, "loop resistance, ohm");
  EXPECT_NEAR(turned.x[2], 3, 1e-8);
  EXPECT_DOUBLE_EQ(turned.y[2], 11.0 / 16);
  EXPECT_NEAR(*turned.rho, kRho, 1e-12);
}

TEST(Correlation, MeasuresWithoutASignAreForSharesRightOnly) {
  for (const char* protocol : {"abx", "preference"}) {
    Builder builder = seven(protocol);
    builder.evidence.rig.source = electrical::Source{.resistance_ohm = 0.1};
    builder.evidence.rig.load = electrical::Resistor{8};
    const auto list = builder.findings().correlations;
    EXPECT_TRUE(has(list, "predicted level with the trims as set, dB"));
    EXPECT_TRUE(has(list, "largest predicted residual, dB"));
    EXPECT_EQ(has(list, "r.m.s. predicted residual, dB"), protocol == std::string("abx"));
  }
}

}  // namespace
