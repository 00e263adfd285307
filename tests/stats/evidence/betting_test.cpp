#include "stats/evidence/betting.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "stats/refusal.h"

namespace stats {
namespace {

const std::vector<double> kTwelveOfSixteen{1, 1, 0, 1, 1, 1, 0, 1, 1, 1, 1, 0, 1, 1, 0, 1};

// SEQ-8 (formulas confirmed, numbers recomputed), 8 decimals.
TEST(HoeffdingSequence, AgreesWithRecomputedValues) {
  const auto steps = hoeffding_sequence(kTwelveOfSixteen, 0.05);
  ASSERT_EQ(steps.size(), 16u);
  EXPECT_NEAR(steps[7].centre - steps[7].half_width, .16389007, 5.1e-9);
  EXPECT_NEAR(steps[7].centre + steps[7].half_width, 1.33610993, 5.1e-9);
  EXPECT_NEAR(steps[15].centre - steps[15].half_width, .39240199, 5.1e-9);
  EXPECT_NEAR(steps[15].centre + steps[15].half_width, 1.11251845, 5.1e-9);
}

// SEQ-8, 8 decimals.
TEST(HedgedCapital, AgreesWithRecomputedValues) {
  const auto capital = log_hedged_capital(kTwelveOfSixteen, 0.5, 0.05);
  EXPECT_NEAR(std::exp(capital[3]), .84375, 1e-14);
  EXPECT_NEAR(std::exp(capital[7]), 1.42382812, 5.1e-9);
  EXPECT_NEAR(std::exp(capital[11]), 2.40270996, 5.1e-9);
  EXPECT_NEAR(std::exp(capital[15]), 4.00542678, 5.1e-9);
  // The means with a capital below 20 after all 16, on a grid of 1e-5: .40953 to .98127.
  const auto last = [](double mean) {
    return std::exp(log_hedged_capital(kTwelveOfSixteen, mean, 0.05).back());
  };
  EXPECT_GE(last(.40952), 20);
  EXPECT_LT(last(.40953), 20);
  EXPECT_LT(last(.98127), 20);
  EXPECT_GE(last(.98128), 20);
}

// SEQ-8, 8 decimals; the bets to 6.
TEST(KellyCapital, AgreesWithRecomputedValues) {
  const auto capital = log_kelly_capital(kTwelveOfSixteen, 0.5);
  EXPECT_NEAR(std::exp(capital[7]), 1.59308069, 5.1e-9);
  EXPECT_NEAR(std::exp(capital[15]), 4.50694196, 5.1e-9);
  EXPECT_NEAR(std::exp(log_kelly_capital(kTwelveOfSixteen, 0.5, 1)[15]), 1.16217929, 5.1e-9);
  const double bets[] = {0, 1, 1, .630197, .979525, 1};
  double before = 0;
  for (std::size_t t = 0; t < 6; ++t) {
    EXPECT_NEAR(std::expm1(capital[t] - before) / (kTwelveOfSixteen[t] - 0.5), bets[t], 5.1e-7);
    before = capital[t];
  }
}

/// Mean of the last capital over all sequences of 0 and 1 of that length, 1 with probability `share`.
template <typename Capital>
double mean_capital(int length, double share, Capital capital) {
  double mean = 0;
  for (unsigned bits = 0; bits < 1u << length; ++bits) {
    std::vector<double> observations;
    double probability = 1;
    for (int i = 0; i < length; ++i) {
      observations.push_back((bits >> i) & 1);
      probability *= (bits >> i) & 1 ? share : 1 - share;
    }
    mean += probability * std::exp(capital(observations).back());
  }
  return mean;
}

// Fair at the mean itself, losing below it: exact by every sequence.
TEST(KellyCapital, IsAnEProcess) {
  for (double cap : {0.5, 1.0})
    for (double mean : {0.3, 0.5}) {
      const auto capital = [=](const auto& x) { return log_kelly_capital(x, mean, cap); };
      EXPECT_NEAR(mean_capital(10, mean, capital), 1, 1e-13);
      EXPECT_LT(mean_capital(10, mean - 0.1, capital), 1);
    }
}

// The better of two halves is less than their sum, which is fair.
TEST(HedgedCapital, IsAnEProcess) {
  for (double mean : {0.2, 0.5, 0.8}) {
    const auto capital = [=](const auto& x) { return log_hedged_capital(x, mean, 0.05); };
    const double expected = mean_capital(10, mean, capital);
    EXPECT_LT(expected, 1);
    EXPECT_GT(expected, 0.5);
  }
}

TEST(HedgedCapital, Mirrors) {
  std::vector<double> turned;
  for (const double x : kTwelveOfSixteen) turned.push_back(1 - x);
  const auto one = log_hedged_capital(kTwelveOfSixteen, 0.7, 0.05);
  const auto other = log_hedged_capital(turned, 0.3, 0.05);
  for (std::size_t i = 0; i < 16; ++i) EXPECT_NEAR(one[i], other[i], 1e-13);
}

TEST(Betting, StandsTheEdges) {
  const std::vector<double> zeros(5, 0), ones(5, 1);
  std::vector<double> steady(20, 0.6);
  steady.insert(steady.end(), {0, 1});
  EXPECT_EQ(log_kelly_capital(steady, 0.5, 1).back(), -INFINITY);  // all lost at the 0
  EXPECT_EQ(log_hedged_capital(zeros, 0, 0.05).back(), std::log(0.5));
  EXPECT_EQ(log_hedged_capital(ones, 1, 0.05).back(), std::log(0.5));
  EXPECT_GT(log_hedged_capital(ones, 0, 0.05).back(), 0);
  const std::vector<double> many(100'000, 1);
  EXPECT_TRUE(std::isfinite(log_kelly_capital(many, 0.5).back()));
  EXPECT_TRUE(std::isfinite(log_hedged_capital(many, 0.5, 0.05).back()));
}

TEST(Betting, RefusesImpossibleArguments) {
  const std::vector<double> good{0.5, 1}, bad{0.5, 1.5};
  EXPECT_EQ(refusal([&] { hoeffding_sequence({}, 0.05); }),
            "number of observations must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([&] { hoeffding_sequence(bad, 0.05); }), "observation must be between 0 and 1, got 1.5");
  EXPECT_EQ(refusal([&] { hoeffding_sequence(good, 5); }),
            "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
  EXPECT_EQ(refusal([&] { log_kelly_capital(good, 0); }), "mean must be strictly between 0 and 1, got 0");
  EXPECT_EQ(refusal([&] { log_kelly_capital(good, 0.5, 0); }), "cap must be strictly between 0 and 1, got 0");
  EXPECT_EQ(refusal([&] { log_hedged_capital(good, -0.1, 0.05); }), "mean must be between 0 and 1, got -0.1");
  EXPECT_EQ(refusal([&] { log_hedged_capital(good, 0.5, 0.05, 2); }),
            "cap must be strictly between 0 and 1, got 2");
  EXPECT_EQ(refusal([&] { hedged_bets(std::vector{std::nan("")}, 0.05); }),
            "observation must be between 0 and 1, got nan");
}

}  // namespace
}  // namespace stats
