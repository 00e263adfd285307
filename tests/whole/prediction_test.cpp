#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "whole/sample_campaign.h"

namespace {

// A multimeter and a tape measure: 0.13 ohm of three metres.
TEST(WholePrediction, FromAMultimeterAlone) {
  Folder folder;
  make_campaign(folder);
  expect_done(folder, {"cable", "zip-cord", "--built", "geometry=parallel pair"});
  folder.write("multimeter.csv", "cable,length_m,resistance_ohm\nzip-cord,3,0.13\n");
  expect_done(folder, {"import", "multimeter.csv"});
  const std::string text = expect_done(folder, {"predict", "thick-pair", "zip-cord", "--rig", "hall"});
  for (const char* expected : {"loop resistance 130 mohm, inductance unknown, capacitance unknown",
                               "inductance and capacitance of zip-cord", "common practice, no source",
                               "skin effect of two round", "in whole steps of 0.5 dB", "auditory bands"})
    EXPECT_NE(text.find(expected), std::string::npos) << expected << " is missing in\n" << text;
  const auto json = nlohmann::json::parse(
      expect_done(folder, {"predict", "thick-pair", "zip-cord", "--rig", "hall", "--json"}));
  EXPECT_EQ(json.at("schema"), 1);
  EXPECT_EQ(json.at("left_open").at("unknown"),
            nlohmann::json::array({"inductance and capacitance of zip-cord"}));
  EXPECT_EQ(json.at("second").at("loop_resistance_ohm"), 0.13);
  EXPECT_LT(json.at("left_open").at("level_difference_dB_least"),
            json.at("left_open").at("level_difference_dB_greatest"));
}

TEST(WholePrediction, RefusesWhatIsNotKnown) {
  Folder folder;
  make_campaign(folder);
  expect_done(folder, {"cable", "bare"});
  const auto refused = [&](const std::vector<std::string>& words) {
    const Ran ran = run_program(folder, words);
    EXPECT_EQ(ran.status, 2);
    EXPECT_EQ(ran.out, "");
    return ran.err;
  };
  EXPECT_EQ(
      refused({"predict", "thick-pair", "bare", "--rig", "hall"}),
      "cable \"bare\" has no reading of its resistance, and its construction gives none\n"
      "import a table: cable,length_m,resistance_ohm, with inductance_uH and capacitance_pF where they are "
      "known;\nor add a cable whose construction says what is missing here: geometry=pair, "
      "cross-section=2.5mm2 (or awg=12) and length=3m\n");
  EXPECT_EQ(refused({"cable", "odd", "--built", "geometry=pair", "--built", "spacing=4"}),
            "cable \"odd\" cannot be built so as a pair:\nspacing \"4\": \"4\" has no unit: write 4m\n");
  EXPECT_EQ(
      refused({"predict", "thick-pair", "bell-wire", "--rig", "hall", "--weighting", "loud"}).substr(0, 9),
      "weighting");
}

}  // namespace
