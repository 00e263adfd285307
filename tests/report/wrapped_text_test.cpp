#include "report/wrapped_text.h"

#include <gtest/gtest.h>

using namespace report;

TEST(Wrapped, BreaksAtSpacesAndIndents) {
  EXPECT_EQ(wrapped("one two three", 7), "one two\nthree\n");
  EXPECT_EQ(wrapped("one two three", 9, " - ", "   "), " - one\n   two\n   three\n");
  EXPECT_EQ(wrapped("", 10), "\n");
}

TEST(Wrapped, BreaksAWordOnlyWhenItAloneIsTooLong) {
  EXPECT_EQ(wrapped("a 0123456789 b", 4), "a\n0123\n4567\n89 b\n");
  EXPECT_EQ(wrapped("\u00E9\u00E9\u00E9\u00E9\u00E9", 3), "\u00E9\u00E9\u00E9\n\u00E9\u00E9\n");
}

TEST(WrappedTable, NarrowsTheWidestColumnAndWrapsItsCells) {
  const Table table{"", {{"Cable"}, {"p", true}}, {{"heavy pair of copper", "0.04"}, {"thin", "1"}}, {}};
  EXPECT_EQ(wrapped_table(table, 40, 2),
            "  Cable                    p\n"
            "  heavy pair of copper  0.04\n"
            "  thin                     1\n");
  EXPECT_EQ(wrapped_table(table, 20, 2),
            "  Cable          p\n"
            "  heavy pair  0.04\n"
            "  of copper\n"
            "  thin           1\n");
}

TEST(WrappedTable, KeepsCellsOnTheirLine) {
  const Table table{"", {{"a"}, {"b"}}, {{"one\ntwo", "x\ty"}}, {}};
  EXPECT_EQ(wrapped_table(table, 40, 0), "a        b\none two  x y\n");
}
