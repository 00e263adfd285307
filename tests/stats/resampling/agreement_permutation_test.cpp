#include "stats/resampling/agreement_permutation.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>

#include "stats/random.h"
#include "stats/refusal.h"

namespace stats {
namespace {

/// '1' right, '0' wrong, '-' not answered.
Marks marks(std::string_view text) {
  Marks all;
  for (char c : text) all.push_back(c == '-' ? std::nullopt : std::optional(c == '1'));
  return all;
}

std::int64_t agreeing(const std::vector<Marks>& raters) {
  std::int64_t pairs = 0;
  for (std::size_t i = 0; i < raters.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      for (std::size_t trial = 0; trial < raters[i].size(); ++trial)
        pairs += raters[i][trial].has_value() && raters[i][trial] == raters[j][trial];
  return pairs;
}

/// All arrangements of every rater, one inside the other.
void count_arrangements(std::vector<Marks>& raters, std::size_t next, std::int64_t seen,
                        std::array<double, 2>& counts) {
  if (next == raters.size()) {
    counts[0] += agreeing(raters) >= seen;
    counts[1] += 1;
    return;
  }
  std::vector<std::size_t> places;
  std::vector<char> given;
  const Marks kept = raters[next];
  for (std::size_t trial = 0; trial < kept.size(); ++trial) {
    if (!kept[trial]) continue;
    places.push_back(trial);
    given.push_back(*kept[trial]);
  }
  std::sort(given.begin(), given.end());
  do {
    for (std::size_t i = 0; i < places.size(); ++i) raters[next][places[i]] = given[i] != 0;
    count_arrangements(raters, next + 1, seen, counts);
  } while (std::next_permutation(given.begin(), given.end()));
  raters[next] = kept;
}

double by_brute_force(std::vector<Marks> raters) {
  std::array<double, 2> counts{};
  count_arrangements(raters, 0, agreeing(raters), counts);
  return counts[0] / counts[1];
}

// BIN-8: Fisher's tea tasting (1935) (memory; recomputed): two halves of 8 cups, all alike 1/70, at least
// three of four alike 17/70.
TEST(PermutationAgreement, IsFishersExactTestForTwoRaters) {
  const auto all = permutation_agreement(std::array{marks("11110000"), marks("11110000")});
  EXPECT_EQ(all.agreeing, 8);
  EXPECT_EQ(all.pairs, 8);
  EXPECT_TRUE(all.test.exact);
  EXPECT_NEAR(all.test.p, 1.0 / 70, 1e-15);
  const auto three_of_four = permutation_agreement(std::array{marks("11110000"), marks("11101000")});
  EXPECT_NEAR(three_of_four.test.p, .2428571428571, 5.1e-14);
}

TEST(PermutationAgreement, AgreesWithBruteForce) {
  const std::vector<std::vector<Marks>> cases = {
      {marks("110100"), marks("100110")},
      {marks("1101-0"), marks("-00110")},
      {marks("11--10"), marks("1-0-11")},
      {marks("1100"), marks("--10")},
      {marks("1101"), marks("1001"), marks("0111")},
      {marks("1-01"), marks("1001"), marks("01-1")},
      {marks("110100"), marks("110010"), marks("101100")},
      {marks("1101"), marks("1001"), marks("0111"), marks("1101")},
  };
  for (const auto& raters : cases) {
    const SharedMarks shared = permutation_agreement(raters);
    EXPECT_EQ(shared.agreeing, agreeing(raters));
    EXPECT_TRUE(shared.test.exact);
    EXPECT_NEAR(shared.test.p, by_brute_force(raters), 1e-14) << "case " << &raters - cases.data();
  }
}

TEST(PermutationAgreement, CountsOnlyTrialsThatBothAnswered) {
  const auto shared = permutation_agreement(std::array{marks("1-10"), marks("11-0"), marks("01-1")});
  EXPECT_EQ(shared.pairs, 3 + 1 + 0 + 3);  // by trial
  EXPECT_EQ(shared.agreeing, 1 + 1 + 0 + 1);
}

TEST(PermutationAgreement, IsOneWhereMarksCarryNoInformation) {
  EXPECT_EQ(permutation_agreement(std::array{marks("1111"), marks("0000")}).test.p, 1);
  EXPECT_EQ(permutation_agreement(std::array{marks("11--"), marks("--01")}).test.p, 1);
  EXPECT_EQ(permutation_agreement(std::array{marks("1111"), marks("1111"), marks("1110")}).test.p, 1);
  EXPECT_EQ(permutation_agreement(std::array{marks("--"), marks("--")}).test.p, 1);
}

TEST(PermutationAgreement, DrawsWhereThereIsTooMuchToCount) {
  const std::string one = "110101101110110111010111";
  const std::string other = "110111101110010111010101";
  const std::array four{marks(one), marks(other), marks(one), marks(other)};
  const auto shared = permutation_agreement(four, {.seed = 3, .draws = 999});
  EXPECT_FALSE(shared.test.exact);
  EXPECT_EQ(shared.test.draws, 999);
  EXPECT_EQ(shared.test.p, 1.0 / 1000);
  EXPECT_GT(shared.test.standard_error, 0);
}

// Recomputed: plain Python 3, whole numbers, tests/independent/exact.py agreement_p on these marks.
TEST(PermutationAgreement, CountsThreeRatersOfSixteenTrials) {
  const auto shared = permutation_agreement(
      std::array{marks("1101011011100101"), marks("1101011111000110"), marks("0101111011101100")});
  EXPECT_TRUE(shared.test.exact);
  EXPECT_NEAR(shared.test.p, 0.01824312051584779, 1e-12);
}

// A fourth rater who is right throughout changes nothing, but on a trial that only this one answered, nobody can be
// held still any more, and the arrangements are drawn.
TEST(PermutationAgreement, DrawnLiesWithinItsErrorOfTheExact) {
  const std::array exact{marks("110101101110"), marks("110101111100"), marks("010111101110")};
  const std::array drawn{marks("110101101110-"), marks("110101111100-"), marks("010111101110-"),
                         marks("1111111111111")};
  const auto counted = permutation_agreement(exact).test;
  const auto estimate = permutation_agreement(drawn, {.seed = 1, .draws = 9'999}).test;
  ASSERT_TRUE(counted.exact);
  ASSERT_FALSE(estimate.exact);
  EXPECT_NEAR(estimate.p, counted.p, 4 * estimate.standard_error);
  EXPECT_EQ(estimate.p, permutation_agreement(drawn, {.seed = 1, .draws = 9'999}).test.p);
  EXPECT_NE(estimate.p, permutation_agreement(drawn, {.seed = 2, .draws = 9'999}).test.p);
}

// Raters who are right independently of each other, with shares 1/2, 3/4 and 7/8 of 7 trials: p at or under 0.05 in no
// more than 5 % of 2,000 studies.
TEST(PermutationAgreement, HoldsItsLevelForIndependentRaters) {
  Random random(11);
  const int studies = 2'000;
  int supported = 0;
  for (int study = 0; study < studies; ++study) {
    std::vector<Marks> raters;
    for (std::uint32_t wrong_of_8 : {4u, 2u, 1u}) {
      Marks rater;
      for (int trial = 0; trial < 7; ++trial) rater.push_back(random.below(8) >= wrong_of_8);
      raters.push_back(rater);
    }
    supported += permutation_agreement(raters).test.p <= 0.05;
  }
  EXPECT_LE(supported, studies * 0.05 + 3 * 9.75);  // three standard deviations of the count
  EXPECT_GT(supported, 0);
}

TEST(PermutationAgreement, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] { permutation_agreement(std::array{marks("101")}); }),
            "number of raters must be between 2 and 100, got 1");
  EXPECT_EQ(refusal([] {
              permutation_agreement(std::array{marks("101"), marks("10")});
            }),
            "entries of a rater must be between 3 and 3, got 2");
  EXPECT_EQ(refusal([] {
              permutation_agreement(std::array{marks(""), marks("")});
            }),
            "number of trials must be between 1 and 1000, got 0");
  EXPECT_EQ(refusal([] {
              permutation_agreement(std::array{marks("1"), marks("1")}, {.draws = 0});
            }),
            "draws must be between 1 and 100000000, got 0");
}

// Three raters, 400 trials, each right once, on the same one: 1/400 for the second, 1/400 for the third
// (mathematics).
TEST(PermutationAgreement, CountsOverManyTrials) {
  Marks once(400, false);
  once[17] = true;
  const auto test = permutation_agreement(std::vector<Marks>(3, once)).test;
  EXPECT_TRUE(test.exact);
  EXPECT_NEAR(test.p * 160'000, 1, 1e-12);
}

}  // namespace
}  // namespace stats
