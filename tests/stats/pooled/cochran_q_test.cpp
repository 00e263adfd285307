#include "stats/pooled/cochran_q.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "stats/csv.h"
#include "stats/random.h"
#include "stats/refusal.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

using AnswerRows = std::vector<std::vector<bool>>;

AnswerRows answer_rows(const std::string& file, const std::vector<std::string>& columns) {
  AnswerRows rows;
  for (const CsvRow& row : check_values(file)) {
    std::vector<bool> answers;
    for (const std::string& column : columns) answers.push_back(row.whole(column) == 1);
    rows.push_back(answers);
  }
  return rows;
}

// AG-9 (a): Siegel (1956), 18 sets by 3 interviews (memory; printed 16.7; recomputed).
TEST(CochranQ, AgreesWithSiegel) {
  const auto found = cochran_q(answer_rows("cochran_q_siegel.csv", {"i1", "i2", "i3"})).value();
  EXPECT_EQ(found.column_sums, (std::vector{13, 13, 3}));
  EXPECT_NEAR(found.q, 16.66666667, 5.1e-9);
  EXPECT_EQ(found.degrees_of_freedom, 2);
  EXPECT_NEAR(found.chi_square_p, .0002403694764, 5.1e-14);
  EXPECT_TRUE(found.permutation.exact);
  EXPECT_NEAR(found.permutation.p, .0000903204683, 5.1e-14);
}

// AG-9 (b): Conover, 12 x 3 (confirmed: statsmodels test; recomputed). Exact p recomputed: every placement in
// Python's fractions, 32/81.
TEST(CochranQ, AgreesWithConover) {
  const auto found = cochran_q(answer_rows("cochran_q_conover.csv", {"t1", "t2", "t3"})).value();
  EXPECT_NEAR(found.q, 2.8, 1e-14);
  EXPECT_NEAR(found.chi_square_p, .246597, 5.1e-7);
  EXPECT_NEAR(found.permutation.p, 32.0 / 81, 1e-15);
}

TEST(CochranQ, OfTwoConditionsIsMcNemar) {
  AnswerRows rows(9, {true, false});
  rows.insert(rows.end(), 3, {false, true});
  rows.insert(rows.end(), 5, {true, true});
  const auto found = cochran_q(rows).value();
  EXPECT_DOUBLE_EQ(found.q, 36.0 / 12);
  EXPECT_NEAR(found.permutation.p, two_sided(9, 12, 0.5), 1e-14);
}

TEST(CochranQ, DrawnComesNearTheApproximation) {
  Random random(51);
  AnswerRows rows;
  for (int subject = 0; subject < 30; ++subject) {
    std::vector<bool> row;
    for (std::uint32_t condition = 0; condition < 10; ++condition)
      row.push_back(random.below(12) < 5 + condition / 5);
    rows.push_back(row);
  }
  const auto few = cochran_q(rows, {1, 20'000}).value(), many = cochran_q(rows, {2, 20'000}).value();
  EXPECT_FALSE(few.permutation.exact);
  EXPECT_EQ(few.permutation.draws, 20'000);
  EXPECT_NEAR(few.permutation.p, many.permutation.p, 5 * few.permutation.standard_error);
  EXPECT_NEAR(few.permutation.p, few.chi_square_p, 0.03);
}

/// Probability that Q reaches `critical` when every answer is right in 1/2: by the sums of the columns, in
/// order of size, and the sum of L (conditions - L).
double chi_square_size(int subjects, int conditions, double critical) {
  using State = std::pair<std::vector<int>, int>;
  std::map<State, double> states{{{std::vector<int>(static_cast<std::size_t>(conditions)), 0}, 1.0}};
  for (int subject = 0; subject < subjects; ++subject) {
    std::map<State, double> next;
    for (const auto& [state, weight] : states)
      for (unsigned row = 0; row < 1u << conditions; ++row) {
        auto [sums, spread] = state;
        const int right = std::popcount(row);
        for (std::size_t j = 0; j < sums.size(); ++j) sums[j] += static_cast<int>((row >> j) & 1);
        std::sort(sums.begin(), sums.end());
        next[{sums, spread + right * (conditions - right)}] += std::ldexp(weight, -conditions);
      }
    states = std::move(next);
  }
  double size = 0;
  for (const auto& [state, weight] : states) {
    int right = 0, squares = 0;
    for (const int sum : state.first) right += sum, squares += sum * sum;
    if (state.second > 0 &&
        (conditions - 1) * (conditions * squares - right * right) >= critical * state.second)
      size += weight;
  }
  return size;
}

// Critical values: R qchisq(.95, 1), (.95, 2), (.95, 3). Sizes recomputed: Python and SciPy's chi2.
TEST(CochranQ, ByChiSquareHasTheSizeStated) {
  EXPECT_NEAR(chi_square_size(8, 2, 3.841458820694124), .052032470703125, 1e-15);
  EXPECT_NEAR(chi_square_size(8, 3, 5.991464547107979), .04948246479034424, 1e-15);
  EXPECT_NEAR(chi_square_size(8, 4, 7.814727903251179), .03980796178802848, 1e-15);
}

TEST(CochranQ, IsNothingWhenNobodyTellsConditionsApart) {
  EXPECT_FALSE(cochran_q(AnswerRows{{true, true, true}, {false, false, false}}));
}

TEST(CochranQ, LeavesOutThoseWhoDoNot) {
  AnswerRows rows = answer_rows("cochran_q_siegel.csv", {"i1", "i2", "i3"});
  const auto before = cochran_q(rows).value();
  rows.insert(rows.end(), 7, {true, true, true});
  const auto after = cochran_q(rows).value();
  EXPECT_EQ(before.q, after.q);
  EXPECT_EQ(before.permutation.p, after.permutation.p);
  EXPECT_EQ(after.column_sums, (std::vector{20, 20, 10}));
}

TEST(CochranQ, RefusesBadTables) {
  EXPECT_EQ(refusal([] { cochran_q({}); }), "number of subjects must be between 1 and 50000, got 0");
  EXPECT_EQ(refusal([] { cochran_q(AnswerRows{{true}}); }),
            "number of conditions must be between 2 and 100, got 1");
  EXPECT_EQ(refusal([] {
              cochran_q(AnswerRows{{true, false}, {true}});
            }),
            "answers of a subject must be between 2 and 2, got 1");
  EXPECT_EQ(refusal([] {
              cochran_q(AnswerRows{{true, false}}, {1, 0});
            }),
            "draws must be between 1 and 100000000, got 0");
}

}  // namespace
}  // namespace stats
