#include <gtest/gtest.h>

#include "tier.h"
#include "whole/program.h"

namespace {

/// Gaps, the mistaken reading and its correction, the feature that is on and off, the changed sign, the cable of which only
/// resistance and length are known.
void expect_leads(const std::string& out) {
  const auto holds = [&](const std::string& file, const std::string& words) {
    EXPECT_NE(content_of(out + "/" + file).find(words), std::string::npos) << file << ": " << words;
  };
  holds("examine-at-first.html", "reading 35 (cables-third-evening.csv, repeat 3): a loop of 42.0 mohm");
  holds("examine-at-first.html", "the value of one conductor taken for that of the loop");
  EXPECT_EQ(content_of(out + "/examine.html").find("reading 35"), std::string::npos);
  holds("examine.html", "reading 61 (phases.csv, repeat 2): with the sign of its phase changed");
  holds("examine.html", "screen connected on less off (4 against 4 readings)");
  holds("examine.html", "p 0.0286");
  holds("examine.html", "so few readings cannot go below 0.100");
  holds("coverage.html", "3 (1 superseded)");
  holds("coverage.html", "response on hall: missing of lamp-flex");
  holds("noise.txt", "each band is below the published threshold");
  holds("phase.txt", "reading 61 of the other sign?");
  holds("all-cables.txt", "lamp-flex *");
  holds("lamp-flex.txt", "left open: inductance and capacitance of lamp-flex");
  holds("tradeoff.html", "<svg");
}

// The example runs as a user would run it; every statistic of its reports is computed again from the campaign file by a
// plain Python 3 program that shares nothing with ours.
TEST(Example, RunsAndEveryStatisticIsConfirmedIndependently) {
  if (tier() == "quick") GTEST_SKIP() << "half a minute: the whole example";
  Folder folder;
  const std::string root = SOURCE_FOLDER, out = (folder / "out").string();
  const std::string run = "BLINDSWAP_BUILD='" BUILD_FOLDER "' BLINDSWAP_OUT='" + out + "' '" + root +
                          "/example_sessions/run' >'" + (folder / "log").string() + "' 2>&1 </dev/null";
  ASSERT_EQ(std::system(run.c_str()), 0) << content_of(folder / "log");
  EXPECT_TRUE(content_of(folder / "log").ends_with(out + "/loop-listening.html\n"));
  const std::string report = content_of(out + "/loop-listening.txt");
  EXPECT_NE(report.find("Predicted from, pair-4mm2"), std::string::npos);
  EXPECT_NE(report.find("skin effect of two round conductors"), std::string::npos);
  EXPECT_NE(report.find("none is calculated for geometry"), std::string::npos);
  expect_leads(out);
  for (const std::string plan : {"loop-listening", "which-we-like"}) {
    const std::string check = PYTHON3 " '" + root + "/tests/independent/check_report.py' '" + out +
                              "/campaign.blindswap' " + plan + " '" + out + "/" + plan + ".json' >'" +
                              (folder / "check").string() + "' 2>&1";
    EXPECT_EQ(std::system(check.c_str()), 0) << content_of(folder / "check");
    std::cout << content_of(folder / "check");
  }
}

}  // namespace
