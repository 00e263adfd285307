#include "stats/sequential/alpha_spending.h"

#include <gtest/gtest.h>

#include "stats/refusal.h"

namespace stats {
namespace {

// SEQ-3, recomputed from the two formulas, 8 decimals.
TEST(LevelSpent, AgreesWithRecomputedValues) {
  const struct {
    double fraction, obrien_fleming, pocock;
  } rows[] = {{.2, .00001173, .01476973},
              {.4, .00194191, .02615686},
              {.5, .00557460, .03100573},
              {.6, .01139642, .03542565},
              {.8, .02842963, .04324199}};
  for (const auto& row : rows) {
    EXPECT_NEAR(level_spent(Spending::obrien_fleming, 0.05, row.fraction), row.obrien_fleming, 5.1e-9);
    EXPECT_NEAR(level_spent(Spending::pocock, 0.05, row.fraction), row.pocock, 5.1e-9);
  }
}

TEST(LevelSpent, IsNothingAtFirstAndAllAtTheEndAndNeverFalls) {
  for (const auto spending : {Spending::obrien_fleming, Spending::pocock})
    for (double level : {0.001, 0.05, 0.3}) {
      EXPECT_EQ(level_spent(spending, level, 0), 0);
      EXPECT_EQ(level_spent(spending, level, 1), level);
      EXPECT_NEAR(level_spent(spending, level, 1 - 1e-14), level, 1e-13);
      for (int i = 0; i < 100; ++i)
        EXPECT_LE(level_spent(spending, level, i / 100.0), level_spent(spending, level, (i + 1) / 100.0));
    }
}

TEST(LevelSpent, RefusesImpossibleArguments) {
  EXPECT_EQ(refusal([] { level_spent(Spending::pocock, 5, 0.5); }),
            "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
  EXPECT_EQ(refusal([] { level_spent(Spending::pocock, 0.05, 1.5); }),
            "fraction must be between 0 and 1, got 1.5");
}

}  // namespace
}  // namespace stats
