#include "text/problem.h"

#include <gtest/gtest.h>

#include "text/error.h"

using namespace text;

TEST(Problems, ShowFileLineColumnLineCaretAndHint) {
  Problems problems("star-quad.csv", "# x\na;b;c\n2.0; 112 pF; 1000\n");
  problems.add({3, 6, 6}, "capacitance must be a number in pF, got \"112 pF\"",
               "the header gives the unit: write 112");
  EXPECT_EQ(problems.report(),
            "star-quad.csv:3:6: capacitance must be a number in pF, got \"112 pF\"\n"
            "  2.0; 112 pF; 1000\n"
            "       ^^^^^^ the header gives the unit: write 112");
}

TEST(Problems, ArePutInOrderAndCappedAtTwenty) {
  Problems problems("t.csv", std::string(30, '\n'));
  for (int line = 25; line >= 1; --line) problems.add({line, 1, 1}, "wrong " + std::to_string(line));
  const std::string report = problems.report();
  EXPECT_TRUE(report.starts_with("t.csv:1:1: wrong 1\n"));
  EXPECT_NE(report.find("t.csv:20:1: wrong 20\n"), std::string::npos);
  EXPECT_EQ(report.find("wrong 21"), std::string::npos);
  EXPECT_TRUE(report.ends_with("\nand 5 more"));
}

TEST(Problems, ThrowOnlyWhenThereAreAny) {
  Problems problems("t.csv", "a\n");
  EXPECT_NO_THROW(problems.refuse_if_any());
  problems.add({}, "is odd");
  EXPECT_THROW(problems.refuse_if_any(), BadInput);
  EXPECT_EQ(problems.report(), "t.csv: is odd");
}

TEST(Problems, KnowWhetherTheyReachTheHeader) {
  Problems problems("t.csv", "a\n1\n");
  EXPECT_FALSE(problems.any_up_to(1));
  problems.add({2, 1, 1}, "is odd");
  EXPECT_FALSE(problems.any_up_to(1));
  EXPECT_TRUE(problems.any_up_to(2));
  problems.add({}, "is odd");
  EXPECT_TRUE(problems.any_up_to(1));
}

TEST(Problems, KeepTheCaretUnderTabsAndWideLetters) {
  EXPECT_EQ(Problems("t", "\xC3\xA9\t12\n").formatted({{1, 3, 2}, "m", "h"}),
            "t:1:3: m\n  \xC3\xA9\t12\n   \t^^ h\n");
}

TEST(Problems, ShowThePartOfALongLineThatMatters) {
  const std::string line = std::string(200, 'a') + "X" + std::string(200, 'b');
  EXPECT_EQ(Problems("t", line).formatted({{1, 201, 1}, "m", ""}),
            "t:1:201: m\n  ..." + std::string(40, 'a') + "X" + std::string(59, 'b') + "...\n" +
                std::string(45, ' ') + "^\n");
}

TEST(Problems, PrintNoControlCharacters) {
  EXPECT_EQ(Problems("t\x1B", "a\x1B\xFFz").formatted({{1, 9, 9}, "m\x07", "h\x9B"}),
            "t?:1:9: m?\n  a??z\n      ^ h?\n");
}
