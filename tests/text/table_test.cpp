#include "text/table.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "text/error.h"
#include "text/lines.h"

using namespace text;

namespace {

std::vector<std::vector<std::string>> cells(const Table& table) {
  std::vector<std::vector<std::string>> rows;
  for (const Row& row : table.rows) {
    rows.emplace_back();
    for (const Cell& cell : row.cells) rows.back().push_back(cell.text);
  }
  return rows;
}

std::string refusal(const std::string& content) {
  try {
    parse_table(content, "t.csv").problems.refuse_if_any();
  } catch (const BadInput& error) {
    return error.what();
  }
  return "accepted";
}

using Rows = std::vector<std::vector<std::string>>;
const Rows one_two = {{"1", "2"}};

}  // namespace

TEST(Table, ReadsTheSameCellsFromEverySeparatorAndLineEnd) {
  for (const std::string separator : {",", ";", "\t"})
    for (const std::string end : {"\n", "\r\n", "\r"})
      for (const std::string mark : {"", "\xEF\xBB\xBF"})
        for (const std::string& last : {std::string(), end}) {
          const Table table =
              parse_table(mark + "a" + separator + "b" + end + "1" + separator + "2" + last, "t.csv");
          EXPECT_TRUE(table.problems.empty());
          EXPECT_EQ(table.separator, separator[0]);
          EXPECT_EQ(cells(table), one_two);
          EXPECT_EQ(table.rows[0].cells[1].place.line, 2);
          EXPECT_EQ(table.rows[0].cells[1].place.column, 3);
        }
}

TEST(Table, PassesOverBlankLinesCommentsAndLinesOfSeparators) {
  const Table table =
      parse_table("# made by hand\n\n a ; b \n  # more; still a comment\n;\n ; \n1;2\n\n", "t.csv");
  EXPECT_TRUE(table.problems.empty());
  EXPECT_EQ(cells(table), one_two);
  EXPECT_EQ(table.header[1].text, "b");
  EXPECT_EQ(table.rows[0].line, 7);
}

TEST(Table, DropsEmptyCellsBeyondTheHeader) {
  EXPECT_EQ(cells(parse_table("a;b;\n1;2;;\n", "t.csv")), one_two);
  EXPECT_TRUE(parse_table("a;b\n1;\n", "t.csv").problems.empty());
}

TEST(Table, KeepsSeparatorsAndQuotesInsideQuotes) {
  const Table table = parse_table("\"a, first\",b\n \"1,5\" ,\"say \"\"x\"\"\"\n5\" jack,2\n", "t.csv");
  EXPECT_TRUE(table.problems.empty()) << table.problems.report();
  EXPECT_EQ(table.header[0].text, "a, first");
  EXPECT_EQ(cells(table), (Rows{{"1,5", "say \"x\""}, {"5\" jack", "2"}}));
  EXPECT_EQ(table.rows[0].cells[0].place.column, 2);
  EXPECT_EQ(table.rows[0].cells[0].place.width, 5);
}

TEST(Table, CountsColumnsInCharacters) {
  const Table table = parse_table("name;b\n\xC3\xA9t\xC3\xA9\xE2\x82\xAC;2\n", "t.csv");
  EXPECT_EQ(table.rows[0].cells[0].place.width, 4);
  EXPECT_EQ(table.rows[0].cells[1].place.column, 6);
}

TEST(Table, FindsColumnsInAnyCase) {
  const Table table = parse_table("Cable,Length_m\nx,3\n", "t.csv");
  EXPECT_EQ(table.column("cable"), 0U);
  EXPECT_EQ(table.column("LENGTH_M"), 1U);
  EXPECT_FALSE(table.column("length"));
}

TEST(Table, RefusesWhatIsNoTable) {
  EXPECT_EQ(refusal(""), "t.csv: is empty\n  the first row names quantity and unit of each column");
  EXPECT_EQ(refusal("# only\n\n"),
            "t.csv: has no header row\n  the first row names quantity and unit of each column");
  EXPECT_EQ(refusal("a,b\n"), "t.csv:1:1: a header, but no rows under it\n  a,b\n  ^");
}

TEST(Table, RefusesTextThatIsNotPlainUtf8) {
  EXPECT_EQ(refusal("\xFF\xFE"
                    "a\0b"),
            "t.csv: is UTF-16, expected UTF-8 text\n  save it as UTF-8");
  EXPECT_EQ(refusal(std::string("a,b\n1,\0\n", 8)),
            "t.csv:2:3: a NUL byte, expected UTF-8 text\n  1,?\n    ^ a binary file or UTF-16? save it as "
            "UTF-8 text");
  EXPECT_EQ(refusal("a,b\nd\xE9j\xE0,2\n"),
            "t.csv:2:2: byte 0xE9 is not UTF-8 text\n  d?j?,2\n   ^ saved as Latin-1 or by an old program? "
            "save it as "
            "UTF-8");
  EXPECT_EQ(refusal("a,b\n1,\x1B[2J\n"),
            "t.csv:2:3: control character 0x1B, expected text\n  1,?[2J\n    ^ remove it");
  EXPECT_EQ(refusal(std::string(longest_line_bytes + 1, 'x')),
            "t.csv:1:1: the line is longer than 65536 bytes\n  " + std::string(100, 'x') +
                "...\n  ^ is this a text table, one row a line?");
  EXPECT_EQ(refusal(std::string(largest_file_bytes + 1, '\n')), "t.csv: is larger than 64 MiB\n  split it");
}

TEST(Table, ReportsEveryBadRowAtOnce) {
  EXPECT_EQ(refusal("a,b,c\n1,2\n1,2,3,x\n\"1,2,3\n\"1\"2,3,4\n1,5,2,5,3,5\n1,2,3\n"),
            "t.csv:2:3: 2 cells in this row, the header has 3\n"
            "  1,2\n"
            "    ^ nothing for \"c\"\n"
            "t.csv:3:7: 4 cells in this row, the header has 3\n"
            "  1,2,3,x\n"
            "        ^ put quotes around a cell that holds the separator\n"
            "t.csv:4:1: this quote is not closed on its line\n"
            "  \"1,2,3\n"
            "  ^ close it; a cell ends on its line\n"
            "t.csv:5:4: text after a closing quote\n"
            "  \"1\"2,3,4\n"
            "     ^ inside quotes write \"\" for a quote\n"
            "t.csv:6:7: 6 cells in this row, the header has 3\n"
            "  1,5,2,5,3,5\n"
            "        ^ decimal commas? then separate the cells by ; or tab, in the header too");
}

TEST(Table, RefusesHeadersThatDoNotNameEveryColumnOnce) {
  EXPECT_EQ(refusal("a,,b,A\n1,2,3,4\n"),
            "t.csv:1:3: this column has no name\n"
            "  a,,b,A\n"
            "    ^ name it in the header or remove it\n"
            "t.csv:1:6: column \"A\" stands twice in the header\n"
            "  a,,b,A\n"
            "       ^ first at column 1");
  EXPECT_EQ(
      refusal("\"a,b\n1,2\n"),
      "t.csv:1:1: this quote is not closed on its line\n  \"a,b\n  ^ close it; a cell ends on its line");
}

TEST(Table, RefusesMoreCellsThanItsLimit) {
  std::string wide = "a";
  for (int i = 0; i < 2000; ++i) wide += ",a" + std::to_string(i);
  std::string content = wide + "\n";
  std::string row = "1";
  for (int i = 0; i < 2000; ++i) row += ",1";
  for (int i = 0; i < 2000; ++i) content += row + "\n";
  try {
    parse_table(content, "t.csv");
    FAIL() << "accepted";
  } catch (const BadInput& error) {
    EXPECT_TRUE(std::string(error.what()).starts_with("t.csv:2000:1: more than 4000000 cells\n"))
        << error.what();
  }
}
