#include <gtest/gtest.h>

#include "desk/calculated.h"
#include "refusal.h"

namespace desk {
namespace {

TEST(Calculate, RefusesWhatIsOutsideItsRange) {
  EXPECT_EQ(refusal([] { calculated("right 17 16"); }), "correct must be between 0 and 16, got 17");
  EXPECT_EQ(refusal([] { calculated("right 0 0"); }), "trials must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { calculated("right 12 16 --level 5"); }),
            "level must be strictly between 0 and 1, got 5 (write 0.05 for 5 %)");
  EXPECT_EQ(refusal([] { calculated("right 12 16 --chance 0"); }),
            "chance must be strictly between 0 and 1, got 0");
  EXPECT_EQ(refusal([] { calculated("need 16 --chance 1"); }),
            "chance must be strictly between 0 and 1, got 1");
  EXPECT_EQ(refusal([] { calculated("need 16 --comparisons 0"); }),
            "comparisons must be between 1 and 1000000, got 0");
  EXPECT_EQ(refusal([] { calculated("size --share 0.7 --power 80"); }),
            "power must be strictly between 0 and 1, got 80 (write 0.8 for 80 %)");
  EXPECT_EQ(refusal([] { calculated("power 16 --share 1.2"); }), "share must be between 0 and 1, got 1.2");
  EXPECT_EQ(refusal([] { calculated("redraw 3:0 0:3 --observed 4"); }),
            "observed must be a total that the trials can give, got 4");
  EXPECT_EQ(refusal([] { calculated("adjust 0.5 1.5"); }), "p[1] must be between 0 and 1, got 1.5");
  EXPECT_EQ(refusal([] { calculated("fleiss 1,2;2,2"); }),
            "raters of a subject must be between 3 and 3, got 4");
  EXPECT_EQ(refusal([] { calculated("agree 1101"); }), "number of raters must be between 2 and 100, got 1");
  EXPECT_EQ(refusal([] { calculated("agree 10 01 --seed 1 --draws 0"); }),
            "draws must be between 1 and 100000000, got 0");
}

TEST(Calculate, RefusesWhatCannotBeRead) {
  EXPECT_EQ(refusal([] { calculated("right twelve 16"); }), "correct must be a whole number, got \"twelve\"");
  EXPECT_EQ(refusal([] { calculated("right 12 16 --chance 1/0"); }),
            "chance must be a number like 0.5 or a fraction like 1/3, got \"1/0\"");
  EXPECT_EQ(refusal([] { calculated("power 16 --share 70%"); }),
            "share must be a number like 0.5 or a fraction like 1/3, got \"70%\"");
  EXPECT_EQ(refusal([] { calculated("redraw 3:0 21 --observed 4"); }),
            "a trial must be counts with a colon between, like 2:1; got \"21\"");
  EXPECT_EQ(refusal([] { calculated("redraw 3:x --observed 3"); }),
            "a trial must be counts with a colon between, like 2:1; got \"3:x\"");
  EXPECT_EQ(refusal([] { calculated("adjust 0.01 o.04"); }), "p must be numbers, got \"o.04\" at place 2");
  EXPECT_EQ(refusal([] { calculated("adjust 0,01"); }),
            "p \"0,01\" may be one number or two; write 0.01 for one, \"0; 01\" for two");
  EXPECT_EQ(refusal([] { calculated("kappa 1,2;3,4.5"); }),
            "count of row 2 must be a whole number, got \"4.5\"");
  EXPECT_EQ(
      refusal([] { calculated("agree 1101 10x1"); }),
      "marks of listener 2 must be 1 for right, 0 for wrong, - for missing; got \"10x1\", wrong at place 3");
  EXPECT_EQ(refusal([] { calculated("differ --x 1 --y 2 --alternative lesser"); }),
            "alternative must be two-sided, greater or less, got \"lesser\"; did you mean \"less\"?");
  EXPECT_EQ(refusal([] { calculated("agree 10 01 --seed 1.5 --draws 9"); }),
            "seed must be a whole number, got \"1.5\"");
}

TEST(Calculate, RefusesListsThatDoNotFit) {
  EXPECT_EQ(refusal([] { calculated("adjust"); }), "p is missing\nsee blindswap calc adjust --help");
  EXPECT_EQ(refusal([] { calculated("differ --x 1 --y ' ; '"); }), "y needs at least one number");
  EXPECT_EQ(refusal([] { calculated("redraw --observed 3"); }),
            "trials is missing\nsee blindswap calc redraw --help");
  EXPECT_EQ(refusal([] { calculated("kappa ;"); }), "the table needs at least one row of counts");
  EXPECT_EQ(refusal([] { calculated("kappa 1,2,3;4,5"); }),
            "rows must have equally many counts: row 1 has 3, row 2 has 2");
  EXPECT_EQ(refusal([] { calculated("agree 1101 110"); }),
            "listeners must have equally many marks: listener 1 has 4, listener 2 has 3");
  EXPECT_EQ(refusal([] { calculated("correlate --x 1,2,3 --y '1 2'"); }),
            "x and y must be equally many, got 3 x and 2 y");
}

TEST(Calculate, RefusesWhatHasNoAnswer) {
  EXPECT_EQ(refusal([] { calculated("need 16 --chance 1/3 --two-sided"); }),
            "two-sided needs chance 0.5, got \"1/3\"; leave one of the two out");
  EXPECT_EQ(refusal([] { calculated("kappa 5,0;0,0"); }),
            "everything is in one category: kappa is 0/0 and says nothing of agreement");
  EXPECT_EQ(refusal([] { calculated("correlate --x '1 1 1' --y '1 2 3'"); }),
            "all x or all y are equal: there is no rank correlation");
}

}  // namespace
}  // namespace desk
