#include "stats/pooled/trend.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string_view>

#include "stats/refusal.h"
#include "stats/samples/division_count.h"

namespace stats {
namespace {

using AnswersInOrder = std::vector<std::vector<bool>>;

/// One rater's answers, 1 for right.
std::vector<bool> marks_in_order(std::string_view marks) {
  std::vector<bool> answers;
  for (const char mark : marks) answers.push_back(mark == '1');
  return answers;
}

// Recomputed: R t <- seq_along(r); wilcox.test(t[r==1], t[r==0], alternative=a, exact=TRUE).
TEST(Trend, OfOneRaterIsTheExactRankSumTest) {
  const AnswersInOrder sixteen{marks_in_order("0100101101110111")};
  const Trend late = trend_over_trials(sixteen, Alternative::greater);
  EXPECT_EQ(late.sum, 100);
  EXPECT_EQ(late.expected, 10 * 17 / 2.0);
  EXPECT_TRUE(late.p.exact);
  EXPECT_NEAR(late.p.p, .0589410589410589, 1e-15);
  EXPECT_NEAR(trend_over_trials(sixteen, Alternative::less).p.p, .953296703296703, 1e-14);
  EXPECT_NEAR(trend_over_trials(sixteen, Alternative::two_sided).p.p, .117882117882118, 1e-14);
}

TEST(Trend, OfSixtyTrialsIsTheExactRankSumTest) {
  const AnswersInOrder sixty{marks_in_order("010011001100000010011111101010111111011110111111111100101111")};
  ASSERT_EQ(sixty.front().size(), 60u);
  const Trend late = trend_over_trials(sixty, Alternative::greater);
  EXPECT_EQ(late.sum, 1363);
  EXPECT_NEAR(late.p.p, .0033045574560086, 5.1e-16);
  EXPECT_NEAR(trend_over_trials(sixty, Alternative::less).p.p, .996855819772172, 5.1e-15);
  EXPECT_NEAR(trend_over_trials(sixty, Alternative::two_sided).p.p, .00660911491201721, 5.1e-16);
}

TEST(Trend, AgreesWithDivisionsOfTheTrialNumbers) {
  const AnswersInOrder one{marks_in_order("0110100111011")};
  std::vector<double> numbers;
  for (const bool right : {true, false})
    for (std::size_t i = 0; i < one[0].size(); ++i)
      if (one[0][i] == right) numbers.push_back(double(i + 1));
  for (const auto alternative : {Alternative::greater, Alternative::less, Alternative::two_sided})
    EXPECT_NEAR(trend_over_trials(one, alternative).p.p, share_of_divisions(numbers, 8, alternative).value(),
                1e-14);
}

/// Sums of trial numbers over every placement of as many right answers.
std::vector<std::int64_t> sums_of_placements(std::vector<bool> answers) {
  std::sort(answers.begin(), answers.end());
  std::vector<std::int64_t> sums;
  do {
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < answers.size(); ++i) sum += answers[i] ? static_cast<std::int64_t>(i) + 1 : 0;
    sums.push_back(sum);
  } while (std::next_permutation(answers.begin(), answers.end()));
  return sums;
}

TEST(Trend, OfSeveralRatersAgreesWithEveryPlacement) {
  const AnswersInOrder raters{marks_in_order("01011"), marks_in_order("0010111"), marks_in_order("111"),
                              marks_in_order("0011")};
  std::vector<std::int64_t> sums{0};
  std::int64_t seen = 0, doubled_mean = 0;
  for (const auto& answers : raters) {
    std::vector<std::int64_t> next;
    for (const std::int64_t so_far : sums)
      for (const std::int64_t sum : sums_of_placements(answers)) next.push_back(so_far + sum);
    sums = next;
    for (std::size_t i = 0; i < answers.size(); ++i)
      if (answers[i]) seen += static_cast<std::int64_t>(i) + 1, doubled_mean += std::ssize(answers) + 1;
  }
  for (const auto alternative : {Alternative::greater, Alternative::less, Alternative::two_sided}) {
    const auto counted = std::count_if(sums.begin(), sums.end(), [=](std::int64_t sum) {
      return counts_against(2 * sum - doubled_mean, 2 * seen - doubled_mean, alternative);
    });
    const Trend found = trend_over_trials(raters, alternative);
    EXPECT_EQ(found.sum, seen);
    EXPECT_EQ(found.expected, double(doubled_mean) / 2);
    EXPECT_NEAR(found.p.p, double(counted) / double(sums.size()), 1e-14);
  }
}

TEST(Trend, TurnsRoundWithTheOrder) {
  const AnswersInOrder forth{marks_in_order("0100101101110111")}, back{marks_in_order("1110111011010010")};
  EXPECT_NEAR(trend_over_trials(forth, Alternative::greater).p.p,
              trend_over_trials(back, Alternative::less).p.p, 1e-15);
}

TEST(Trend, DrawsWhereCountingTakesTooLong) {
  std::vector<bool> answers(900);
  for (std::size_t i = 0; i < answers.size(); ++i) answers[i] = i % 2 == 0 || i % 45 == 1;
  const AnswersInOrder raters{answers};
  const Trend drawn = trend_over_trials(raters, Alternative::two_sided, {5, 2'000});
  EXPECT_FALSE(drawn.p.exact);
  EXPECT_GT(drawn.p.p, 0.3);
  std::sort(answers.begin(), answers.end());
  EXPECT_EQ(trend_over_trials(AnswersInOrder{answers}, Alternative::greater, {5, 999}).p.p, 1 / 1000.0);
}

TEST(Trend, OfAllAlikeIsCertain) {
  for (const auto alternative : {Alternative::greater, Alternative::less, Alternative::two_sided}) {
    EXPECT_EQ(
        trend_over_trials(AnswersInOrder{marks_in_order("1111"), marks_in_order("00")}, alternative).p.p, 1);
    EXPECT_EQ(trend_over_trials(AnswersInOrder{marks_in_order("0")}, alternative).p.p, 1);
  }
}

TEST(Trend, RefusesBadArguments) {
  EXPECT_EQ(refusal([] { trend_over_trials({}, Alternative::less); }),
            "number of raters must be between 1 and 100, got 0");
  EXPECT_EQ(refusal([] { trend_over_trials(AnswersInOrder{{}}, Alternative::less); }),
            "answers of a rater must be between 1 and 1000, got 0");
  EXPECT_EQ(refusal([] {
              trend_over_trials(AnswersInOrder{{true}}, Alternative::less, {1, -1});
            }),
            "draws must be between 1 and 100000000, got -1");
}

}  // namespace
}  // namespace stats
