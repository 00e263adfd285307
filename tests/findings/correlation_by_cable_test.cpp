#include <gtest/gtest.h>

#include "findings/correlated_evidence.h"

namespace {

/// Four cables of .05 .1 .3 .8 ohm, every pair: rho 1, p 1/24.
/// recomputed: all 4! orders of the values counted in Python; the largest |rho| are 1, .886, .714 and .714.
Builder round_robin() {
  Builder builder;
  const double ohm[] = {.05, .1, .3, .8};
  const std::string names = "abcd";
  const int score[] = {9, 12, 15, 10, 14, 13};
  for (std::size_t i = 0; i < 4; ++i) builder.evidence.cables[{names[i]}].line = of_resistance(ohm[i]);
  int pair = 0;
  for (std::size_t i = 0; i < 4; ++i)
    for (std::size_t j = i + 1; j < 4; ++j)
      builder.trials(builder.claim({names[i]}, {names[j]}), score[pair++], 16);
  return builder;
}

TEST(Correlation, WithoutACommonBenchmarkPermutesTheCables) {
  Builder builder = round_robin();
  builder.evidence.rig.source = electrical::Source{.resistance_ohm = 0.1};
  builder.evidence.rig.load = electrical::Resistor{8};
  const auto list = builder.findings().correlations;
  const auto found = with(list, "loop resistance, ohm");
  EXPECT_TRUE(found.permuted_by_cable);
  EXPECT_NEAR(*found.rho, 1, 1e-12);
  EXPECT_NEAR(found.p, 1.0 / 24, 1e-12);
  EXPECT_NEAR(*found.smallest_attainable_p, 1.0 / 24, 1e-12);
  EXPECT_FALSE(found.rho_needed);
  EXPECT_NE(found.sentence.find("the values were permuted among the cables. At the list's first step so few "
                                "cables cannot reach the level."),
            std::string::npos)
      << found.sentence;
  EXPECT_FALSE(has(list, "largest predicted residual, dB"));  // no difference of two cables' own values
}

TEST(Correlation, AmongTheCablesNeedsARho) {
  Builder builder = round_robin();
  builder.plan().level = "0.4";  // three measures: .133 each at the first step, which 3/24 would reach
  const auto found = with(builder.findings().correlations, "loop resistance, ohm");
  EXPECT_NEAR(*found.rho_needed, .8857142857142857, 1e-12);
  EXPECT_NE(found.sentence.find("a rho of at least 0.886, either way"), std::string::npos) << found.sentence;
}

TEST(Correlation, AmongManyCablesDoesNotComputeWhatIsNeeded) {
  Builder builder;
  for (int i = 1; i <= 9; ++i)
    builder.evidence.cables["cable " + std::to_string(i)].line = of_resistance(i * i);
  for (int i = 1; i <= 8; ++i)
    builder.trials(builder.claim("cable " + std::to_string(i), "cable " + std::to_string(i + 1)), 7 + i, 16);
  const auto found = with(builder.findings().correlations, "loop resistance, ohm");
  EXPECT_TRUE(found.p_standard_error);
  EXPECT_FALSE(found.smallest_attainable_p);
  EXPECT_FALSE(found.rho_needed);
  EXPECT_NE(found.sentence.find("The rho that the level needs was not computed: more than 8 cables."),
            std::string::npos)
      << found.sentence;
}

TEST(Correlation, OfACableWithItselfIsNoReasonToSayThatOneSideDoesNotVary) {
  Builder builder;
  builder.evidence.cables["a"].line = of_resistance(.1);
  builder.evidence.cables["b"].line = of_resistance(.3);
  builder.trials(builder.claim("a", "a"), 8, 16);
  builder.trials(builder.claim("b", "b"), 9, 16);
  builder.trials(builder.claim("a", "b"), 12, 16);
  const auto found = with(builder.findings().correlations, "loop resistance, ohm");
  EXPECT_FALSE(found.rho);
  EXPECT_NE(found.sentence.find("cannot be said: too few of them set different cables against each other."),
            std::string::npos)
      << found.sentence;
}

}  // namespace
