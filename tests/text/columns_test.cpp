#include "text/columns.h"

#include <gtest/gtest.h>

#include <stdexcept>

using namespace text;

TEST(Columns, StandUnderEachOther) {
  Columns list({"cable", "loop", "note"}, {Align::left, Align::right});
  list.add({"bell wire", "0.60 ohm", "thin"});
  list.add({"caf\xC3\xA9", "48 mohm"});
  EXPECT_EQ(list.text(2),
            "  cable          loop  note\n"
            "  bell wire  0.60 ohm  thin\n"
            "  caf\xC3\xA9        48 mohm\n");
}

TEST(Columns, MayHaveNoTitles) {
  Columns list({"", ""});
  list.add({"a", "b"});
  EXPECT_EQ(list.text(), "a  b\n");
}

TEST(Columns, RefuseMoreCellsThanColumns) {
  Columns list({"a"});
  EXPECT_THROW(list.add({"1", "2"}), std::domain_error);
}
