#include "text/utf8.h"

#include <gtest/gtest.h>

using namespace text;

TEST(Utf8, AcceptsEveryLengthOfSequence) {
  EXPECT_TRUE(is_valid_utf8(""));
  EXPECT_TRUE(is_valid_utf8("a\xC3\xA9\xE2\x82\xAC\xF0\x9F\x94\x8A"));
  EXPECT_TRUE(is_valid_utf8("\xF4\x8F\xBF\xBF"));  // U+10FFFF
}

TEST(Utf8, RefusesIllFormedSequencesAtTheirFirstByte) {
  const char* const cases[] = {
      "ab\x80",              // continues nothing
      "ab\xC3",              // cut short
      "ab\xC3z",             // not continued
      "ab\xC0\x80",          // overlong, two bytes
      "ab\xE0\x80\x80",      // overlong, three
      "ab\xF0\x80\x80\x80",  // overlong, four
      "ab\xED\xA0\x80",      // a surrogate
      "ab\xF4\x90\x80\x80",  // above U+10FFFF
      "ab\xFF",
  };
  for (const char* text : cases) EXPECT_EQ(first_invalid_utf8(text), 2U) << text;
}

TEST(Utf8, CountsCharacters) {
  EXPECT_EQ(length_in_characters(""), 0U);
  EXPECT_EQ(length_in_characters("a\xC3\xA9\xE2\x82\xAC\xF0\x9F\x94\x8A"), 4U);
}

TEST(Printable, ReplacesControlCharactersAndInvalidBytes) {
  EXPECT_EQ(printable("a\tb\x1B\x7F\xC2\x9B\xFF\xC3\xA9"), "a\tb????\xC3\xA9");
}

TEST(Trimmed, TakesSpacesTabsAndNoBreakSpacesOffBothEnds) {
  EXPECT_EQ(trimmed(" \t\xC2\xA0 a b\xE2\x80\xAF\t "), "a b");
  EXPECT_EQ(trimmed(" \xC2\xA0\t"), "");
}

TEST(LowerCase, ChangesAsciiLettersOnly) { EXPECT_EQ(lower_case("AbZ\xC3\x89_9"), "abz\xC3\x89_9"); }
