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

TEST(WholePrediction, SaysWhatAMeanHides) {
  Folder folder;
  make_campaign(folder);
  folder.write("three.csv", "cable,length_m,resistance_ohm\nzip,3,0.1\n");
  folder.write("more.csv", "cable,length_m,resistance_ohm\nzip,3,0.5\n");
  folder.write("six.csv", "cable,length_m,resistance_ohm,repeat\nzip,6,0.2,2\n");
  const auto predicted = [&] {
    return expect_done(folder, {"predict", "thick-pair", "zip", "--rig", "hall"});
  };
  expect_done(folder, {"import", "three.csv"});
  EXPECT_EQ(predicted().find("the mean of all"), std::string::npos);
  expect_done(folder, {"import", "more.csv"});
  EXPECT_NE(predicted().find("zip: readings 3 and 4 have the same names"), std::string::npos) << predicted();
  expect_done(folder, {"supersede", "4", "--why", "a bad joint"});
  expect_done(folder, {"import", "six.csv"});
  EXPECT_NE(predicted().find("zip: readings 3 and 5 are of different lengths"), std::string::npos)
      << predicted();
}

// The same numbers as each swap alone, the largest difference first; and their curves.
TEST(WholePrediction, OfAShelf) {
  using nlohmann::json;
  Folder folder;
  make_campaign_with_booth(folder);
  folder.write("more.csv", "cable,length_m,resistance_ohm\nzip-cord,3,0.13\n\"strip, flat\",3,0.05\n");
  expect_done(folder, {"import", "more.csv"});
  expect_done(folder, {"cable", "bare"});
  expect_done(folder, {"rig", "attic", "--load", "8ohm"});
  const json all = json::parse(expect_done(folder, {"predict", "--json"}));
  EXPECT_EQ(all.at("left_out"),
            json::array({"cable bare: its resistance is not known", "rig attic: its source is not known"}));
  EXPECT_EQ(all.at("unknown"), json::array({"zip-cord", "strip, flat"}));
  ASSERT_EQ(all.at("rigs").size(), 2U);
  for (const json& rig : all.at("rigs")) {
    std::vector<std::string> order;
    for (const json& swap : rig.at("swaps")) {
      order.push_back(swap.at("cable"));
      const json alone = json::parse(
          expect_done(folder, {"predict", "thick-pair", swap.at("cable"), "--rig", rig.at("rig"), "--json"}));
      EXPECT_EQ(swap.at("level_difference_dB"), alone.at("level_difference_dB").at("pink-k"));
      EXPECT_EQ(swap.at("residual"), alone.at("residual"));
      EXPECT_EQ(swap.at("smoothed"), alone.at("smoothed"));
      EXPECT_EQ(swap.at("left_by_steps_dB"), alone.at("stepped_trim").at("level_left_dB"));
      EXPECT_EQ(swap.at("left_open"), alone.at("left_open"));
    }
    EXPECT_EQ(order, (std::vector<std::string>{"bell-wire", "zip-cord", "strip, flat"}));
  }
  const std::string text = expect_done(folder, {"predict", "--rig", "booth", "--curves", "curves.csv"});
  EXPECT_NE(text.find("zip-cord *"), std::string::npos) << text;
  EXPECT_NE(text.find("* left open: "), std::string::npos) << text;
  EXPECT_EQ(text.find("rig hall"), std::string::npos);
  EXPECT_NE(text.find("published as just noticed"), std::string::npos);
  const std::string curves = content_of(folder / "curves.csv");
  EXPECT_TRUE(curves.starts_with("rig,cable,frequency_Hz,level_dB,difference_dB\nbooth,thick-pair,10.0000,-"))
      << curves.substr(0, 200);
  EXPECT_EQ(std::count(curves.begin(), curves.end(), '\n'), 1 + 4 * 2000);
  EXPECT_NE(curves.find("\nbooth,\"strip, flat\",30000.0,-"), std::string::npos);
}

TEST(WholePrediction, OfAShelfThatIsNotThere) {
  Folder folder;
  const auto refused = [&](const std::vector<std::string>& words) {
    const Ran ran = run_program(folder, words);
    EXPECT_EQ(ran.status, 2);
    EXPECT_EQ(ran.out, "");
    return ran.err.substr(0, ran.err.find('\n'));
  };
  expect_done(folder, {"new", "--title", "empty"});
  EXPECT_EQ(refused({"predict"}), "the campaign has no baseline to compare all cables with");
  folder.write("one.csv", "cable,length_m,resistance_ohm\none,3,0.13\n");
  expect_done(folder, {"import", "one.csv"});
  expect_done(folder, {"baseline", "one"});
  EXPECT_EQ(refused({"predict"}), "of no cable but the baseline is the resistance known");
  expect_done(folder, {"cable", "bare", "--baseline"});
  EXPECT_EQ(refused({"predict"}),
            "the baseline, \"bare\", has no reading of its resistance, and its construction gives none");
  expect_done(folder, {"baseline", "one"});
  folder.write("two.csv", "cable,length_m,resistance_ohm\ntwo,3,0.2\n");
  expect_done(folder, {"import", "two.csv"});
  expect_done(folder, {"rig", "attic", "--load", "8ohm"});
  EXPECT_EQ(refused({"predict"}), "no rig has both source and load");
  EXPECT_EQ(refused({"predict", "--rig", "atic"}), "no rig is called \"atic\"; did you mean \"attic\"?");
  EXPECT_EQ(refused({"predict", "one"}), "one cable is no swap");
  EXPECT_EQ(refused({"predict", "one", "two"}), "a swap is predicted on a rig");
  expect_done(folder, {"rig", "hall", "--source", "0.1ohm", "--load", "8ohm"});
  EXPECT_EQ(refused({"predict", "one", "two", "--rig", "hall", "--curves", "c.csv"}),
            "--curves writes those of all cables");
  folder.write("c.csv", "mine");
  EXPECT_NE(refused({"predict", "--curves", "c.csv"}).find("c.csv"), std::string::npos);
  EXPECT_EQ(content_of(folder / "c.csv"), "mine");
  expect_done(folder, {"predict", "--curves", "c.csv", "--replace"});
  EXPECT_NE(content_of(folder / "c.csv"), "mine");
}

}  // namespace
