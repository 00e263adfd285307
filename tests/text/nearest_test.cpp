#include "text/nearest.h"

#include <gtest/gtest.h>

using namespace text;

TEST(EditDistance, CountsInsertDeleteReplaceAndExchange) {
  EXPECT_EQ(edit_distance("", "abc"), 3U);
  EXPECT_EQ(edit_distance("level", "level"), 0U);
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3U);  // the textbook example (memory)
  EXPECT_EQ(edit_distance("lveel", "level"), 1U);
  EXPECT_EQ(edit_distance("ca", "abc"), 3U);  // optimal string alignment; unrestricted it would be 2 (memory)
}

TEST(Nearest, FindsMisspellingsAndNothingFarAway) {
  const std::vector<std::string> names = {"frequency", "level", "phase"};
  EXPECT_EQ(nearest("freqency", names), "frequency");
  EXPECT_EQ(nearest("PHASE", names), "phase");
  EXPECT_EQ(nearest("lvl", names), std::nullopt);
  EXPECT_EQ(nearest("capacitance", names), std::nullopt);
  EXPECT_EQ(nearest("level", names), std::nullopt);
  EXPECT_EQ(nearest(std::string(1000, 'x'), names), std::nullopt);
  EXPECT_EQ(nearest("x", {"y"}), std::nullopt);
}

TEST(DidYouMean, IsAHintOrNothing) {
  EXPECT_EQ(did_you_mean("levle", {"level"}), "; did you mean \"level\"?");
  EXPECT_EQ(did_you_mean("noise", {"level"}), "");
}
