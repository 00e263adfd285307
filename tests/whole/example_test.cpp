#include <gtest/gtest.h>

#include "whole/program.h"

namespace {

// The example runs as a user would run it; every statistic of its reports is computed again from the campaign file by a
// plain Python 3 program that shares nothing with ours.
TEST(Example, RunsAndEveryStatisticIsConfirmedIndependently) {
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
  for (const std::string plan : {"loop-listening", "which-we-like"}) {
    const std::string check = PYTHON3 " '" + root + "/tests/independent/check_report.py' '" + out +
                              "/campaign.blindswap' " + plan + " '" + out + "/" + plan + ".json' >'" +
                              (folder / "check").string() + "' 2>&1";
    EXPECT_EQ(std::system(check.c_str()), 0) << content_of(folder / "check");
    std::cout << content_of(folder / "check");
  }
}

}  // namespace
