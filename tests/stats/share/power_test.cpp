#include "stats/share/power.h"

#include <gtest/gtest.h>

#include <cmath>

#include "stats/csv.h"
#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

// PW-2, recomputed: R x <- qbinom(1-alpha, n, .5) + 1; pbinom(x-1, n, p1, lower.tail=FALSE).
TEST(Power, RunsInTheRecomputedSawTooth) {
  for (const CsvRow& row : check_values("sawtooth_alpha05_p07.csv")) {
    const PowerOfTrials power = power_of_trials(0.7, row.whole("n"), 0.05, 0.5);
    EXPECT_EQ(power.trials, row.whole("n"));
    EXPECT_EQ(power.minimum_correct, row.whole("crit"));
    EXPECT_NEAR(power.size, row.number("size"), 5.1e-11) << row.whole("n");
    EXPECT_NEAR(power.power, row.number("power_p07"), 5.1e-11) << row.whole("n");
  }
}

// PW-1, recomputed: R pbinom and qbinom, searched to 3000.
TEST(SmallestTrials, AgreeWithTheRecomputedSearches) {
  for (const CsvRow& row : check_values("power_samplesize.csv")) {
    const double level = row.number("alpha");
    const double share = row.number("p1");
    const double target = row.number("target");
    const auto first = smallest_trials_first(target, share, level, 0.5).value();
    const auto stable = smallest_trials_stable(target, share, level, 0.5).value();
    const std::string place = "share " + std::to_string(share) + " target " + std::to_string(target);
    EXPECT_EQ(first.trials, row.whole("n_first")) << place;
    EXPECT_EQ(first.minimum_correct, row.whole("r_first")) << place;
    EXPECT_NEAR(first.power, row.number("power_first"), 5.1e-9) << place;
    EXPECT_NEAR(first.size, row.number("size_first"), 5.1e-9) << place;
    EXPECT_EQ(stable.trials, row.whole("n_stable")) << place;
    EXPECT_EQ(stable.minimum_correct, row.whole("r_stable")) << place;
    EXPECT_NEAR(stable.power, row.number("power_stable"), 5.1e-9) << place;
  }
}

// BIN-5: ISO 4120 table A.3 and ISO 10399 table A.3 (memory), recomputed: R pbinom.
TEST(SmallestTrials, AgreeWithTheNumberOfAssessorsNeeded) {
  for (const CsvRow& row : check_values("assessors_needed.csv")) {
    const double chance = row.number("guess");
    const double share = share_right(row.number("pd"), chance);
    const double level = row.number("alpha");
    const double target = 1 - row.number("beta");
    const std::string place = "chance " + std::to_string(chance) + " share " + std::to_string(share) +
                              " level " + std::to_string(level) + " target " + std::to_string(target);
    EXPECT_EQ(smallest_trials_first(target, share, level, chance).value().trials, row.whole("n_first"))
        << place;
    EXPECT_EQ(smallest_trials_stable(target, share, level, chance).value().trials, row.whole("n_stable"))
        << place;
  }
}

TEST(SmallestTrials, AreNothingBeyondTheLimit) {
  EXPECT_EQ(smallest_trials_first(0.8, 0.7, 0.05, 0.5, 36), std::nullopt);
  EXPECT_EQ(smallest_trials_first(0.8, 0.7, 0.05, 0.5, 37).value().trials, 37);
  EXPECT_EQ(smallest_trials_stable(0.8, 0.7, 0.05, 0.5, 41), std::nullopt);  // 41 has less than 0.8
  EXPECT_EQ(smallest_trials_stable(0.8, 0.7, 0.05, 0.5, 42).value().trials, 42);
  EXPECT_EQ(smallest_trials_first(0.8, 0.5, 0.05, 0.5), std::nullopt);
}

TEST(SmallestTrials, AreThoseThatSupportAtAllForASureListener) {
  EXPECT_EQ(smallest_trials_first(0.999, 1.0, 0.05, 0.5).value().trials, 5);
  EXPECT_EQ(smallest_trials_stable(0.999, 1.0, 0.05, 0.5).value().trials, 5);
}

TEST(Power, IsTheSizeAtChanceAndZeroWhereSupportIsImpossible) {
  const PowerOfTrials at_chance = power_of_trials(0.5, 16, 0.05, 0.5);
  EXPECT_EQ(at_chance.power, at_chance.size);
  const PowerOfTrials impossible = power_of_trials(1, 4, 0.05, 0.5);
  EXPECT_EQ(impossible.minimum_correct, std::nullopt);
  EXPECT_EQ(impossible.size, 0);
  EXPECT_EQ(impossible.power, 0);
  EXPECT_EQ(power_of_trials(1, 5, 0.05, 0.5).power, 1);
  EXPECT_EQ(power_of_trials(0, 5, 0.05, 0.5).power, 0);
}

TEST(SmallestShareCaught, InvertsThePower) {
  for (int trials : {5, 16, 100, 3'000})
    for (double level : {0.05, 0.05 / 31})
      for (double chance : {1.0 / 3, 0.5})
        for (double probability : {0.5, 0.8, 0.95}) {
          const auto share = smallest_share_caught(trials, level, chance, probability);
          ASSERT_EQ(share.has_value(), minimum_correct(trials, level, chance).has_value());
          if (!share) continue;
          // The share is right to 1e-12: a little less has less power, a little more has more.
          EXPECT_LT(power_of_trials(*share - 1e-12, trials, level, chance).power, probability);
          EXPECT_GT(power_of_trials(*share + 1e-12, trials, level, chance).power, probability);
        }
}

// One trial must be right: closed form, P = 1 - (1 - s)^n for a minimum of 1, and s^n for a minimum of n.
TEST(SmallestShareCaught, AgreesWithClosedForms) {
  EXPECT_NEAR(smallest_share_caught(5, 0.05, 0.5, 0.8).value(), std::pow(0.8, 1.0 / 5), 1e-13);
  EXPECT_NEAR(smallest_share_caught(3, 0.04, 0.01, 0.8).value(), 1 - std::pow(0.2, 1.0 / 3), 1e-13);
  EXPECT_EQ(smallest_share_caught(4, 0.05, 0.5, 0.8), std::nullopt);
}

TEST(ShareHeard, TranslatesBothWays) {
  EXPECT_DOUBLE_EQ(share_heard(0.9, 0.5), 0.8);
  EXPECT_DOUBLE_EQ(share_right(0.8, 0.5), 0.9);
  EXPECT_EQ(share_heard(0.5, 0.5), 0);
  EXPECT_EQ(share_heard(1, 1.0 / 3), 1);
  EXPECT_EQ(refusal([] { share_heard(0.4, 0.5); }), "share must be between 0.5 and 1, got 0.4");
  EXPECT_EQ(refusal([] { share_right(1.1, 0.5); }), "heard must be between 0 and 1, got 1.1");
}

TEST(Power, RefusesWithTheArgumentItsRangeAndItsValue) {
  EXPECT_EQ(refusal([] { power_of_trials(70, 4, 0.05, 0.5); }), "share must be between 0 and 1, got 70");
  EXPECT_EQ(refusal([] { smallest_trials_first(80, 0.7, 0.05, 0.5); }),
            "target must be strictly between 0 and 1, got 80 (write 0.8 for 80 %)");
  EXPECT_EQ(refusal([] { smallest_trials_stable(0.8, 0.7, 0.05, 0.5, 0); }),
            "limit must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { smallest_share_caught(4, 0.05, 0.5, 1); }),
            "probability must be strictly between 0 and 1, got 1");
}

}  // namespace
}  // namespace stats
