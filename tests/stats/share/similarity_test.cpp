#include "stats/share/similarity.h"

#include <gtest/gtest.h>

#include <optional>
#include <string>

#include "stats/csv.h"
#include "stats/refusal.h"
#include "stats/share/binomial.h"
#include "stats/share/heard.h"

namespace stats {
namespace {

// BIN-6: the form of ISO 4120 table A.2 (memory for 18, 24 and 30 trials), recomputed: R pbinom.
TEST(Similarity, AgreesWithTheMaximumNumbersCorrect) {
  for (const CsvRow& row : check_values("similarity_max_correct.csv"))
    for (int percent : {10, 20, 30, 40, 50})
      EXPECT_EQ(most_correct_for_similarity(row.whole("n"), row.number("beta"), percent / 100.0,
                                            row.number("guess")),
                row.whole("pd" + std::to_string(percent)))
          << row.whole("n") << " at " << row.number("beta") << ", " << percent << " %";
}

struct SimilarityRow {
  double target, level, heard, chance;
  int first, first_correct;
  double first_power;
  int stable, stable_correct;
  double stable_power;
};

// Recomputed: R pbinom searched over n = 1 to 3000 for the largest x with pbinom(x, n, pc) <= level and the
// power pbinom(x, n, chance).
constexpr SimilarityRow kSimilarityRows[] = {
    {.8, .05, .3, 1.0 / 3, 39, 15, .8035337591458, 46, 18, .83920262255961},
    {.8, .05, .3, .5, 68, 37, .80193757985148, 77, 42, .81898410113017},
    {.9, .05, .3, .5, 96, 54, .90785706355982, 100, 56, .90332604775218},
    {.95, .05, .2, 1.0 / 3, 147, 58, .95026185997047, 154, 61, .9574106156371},
    {.9, .1, .4, .5, 39, 23, .9002045665402, 44, 26, .91291442636464},
    {.8, .05, .1, 1.0 / 3, 325, 115, .80098924184338, 347, 123, .8141615686977},
};

TEST(Similarity, AgreesWithTheRecomputedNumbersOfTrials) {
  for (const SimilarityRow& row : kSimilarityRows) {
    const auto first = smallest_similarity_trials_first(row.target, row.level, row.heard, row.chance).value();
    const auto stable =
        smallest_similarity_trials_stable(row.target, row.level, row.heard, row.chance).value();
    EXPECT_EQ(first.trials, row.first);
    EXPECT_EQ(first.most_correct, row.first_correct);
    EXPECT_NEAR(first.power, row.first_power, 1e-12);
    EXPECT_EQ(stable.trials, row.stable);
    EXPECT_EQ(stable.most_correct, row.stable_correct);
    EXPECT_NEAR(stable.power, row.stable_power, 1e-12);
  }
}

TEST(Similarity, HasItsLevelByEnumeration) {
  for (int trials = 1; trials <= 60; ++trials) {
    const double share = share_right(0.3, 0.5);
    const SimilarityOfTrials test = similarity_of_trials(trials, 0.05, 0.3, 0.5);
    int most = -1;
    for (double tail = 0; (tail += chance_of_exactly(most + 1, trials, share)) <= 0.05;) ++most;
    EXPECT_EQ(test.most_correct.value_or(-1), most) << trials;
    EXPECT_NEAR(test.size, most < 0 ? 0 : chance_of_at_most(most, trials, share), 1e-13);
    EXPECT_NEAR(test.power, most < 0 ? 0 : chance_of_at_most(most, trials, 0.5), 1e-13);
    EXPECT_LE(test.size, 0.05);
  }
}

// The test supports just where the one-sided limit lies at or below the share in question.
TEST(Similarity, GoesWithTheUpperLimitOfWhatIsHeard) {
  EXPECT_NEAR(similarity_p(9, 30, 0.3, 1.0 / 3), .008399551903548, 5.1e-15);  // recomputed: R pbinom
  for (int correct = 0; correct < 30; ++correct) {
    const double p = similarity_p(correct, 30, 0.3, 1.0 / 3);
    EXPECT_EQ(p <= 0.05, heard_upper(correct, 30, 1.0 / 3, 0.95) <= 0.3);
    EXPECT_NEAR(p, chance_of_at_most(correct, 30, share_right(0.3, 1.0 / 3)), 1e-13);
  }
  EXPECT_EQ(similarity_p(30, 30, 0.3, 1.0 / 3), 1);
}

TEST(Similarity, CannotBeShownByAFewTrials) {
  EXPECT_EQ(most_correct_for_similarity(3, 0.05, 0.2, 0.5), std::nullopt);  // 0.4^3 = 0.064
  EXPECT_EQ(most_correct_for_similarity(4, 0.05, 0.2, 0.5), 0);
  EXPECT_EQ(similarity_of_trials(3, 0.05, 0.2, 0.5).power, 0);
  EXPECT_EQ(smallest_similarity_trials_first(0.8, 0.05, 0.3, 1.0 / 3, 38), std::nullopt);
  EXPECT_EQ(smallest_similarity_trials_stable(0.8, 0.05, 0.3, 1.0 / 3, 45), std::nullopt);
}

TEST(Similarity, Refuses) {
  EXPECT_EQ(refusal([] { similarity_p(31, 30, 0.3, 0.5); }), "correct must be between 0 and 30, got 31");
  EXPECT_EQ(refusal([] { similarity_p(9, 30, 0, 0.5); }), "heard must be strictly between 0 and 1, got 0");
  EXPECT_EQ(refusal([] { similarity_of_trials(30, 0.05, 1, 0.5); }),
            "heard must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { most_correct_for_similarity(30, 0.05, 0.3, 1); }),
            "chance must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { most_correct_for_similarity(0, 0.05, 0.3, 0.5); }),
            "trials must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { smallest_similarity_trials_first(1, 0.05, 0.3, 0.5); }),
            "target must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { smallest_similarity_trials_stable(0.8, 5, 0.3, 0.5); }),
            "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
}

}  // namespace
}  // namespace stats
