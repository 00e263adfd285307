// One person alone: the program plays everybody else.
#include <gtest/gtest.h>

#include "browser/hosted_program.h"
#include "tier.h"
#include "whole/sample_campaign.h"

namespace {

TEST(Demonstration, NeedsOneListenerAndABrowser) {
  if (tier() == "quick") GTEST_SKIP() << "half a minute at the pace of the clock";
  const Folder folder;
  make_campaign(folder);
  expect_done(folder, {"plan",
                       "first",
                       "--rig",
                       "hall",
                       "--compare",
                       "thick-pair/bell-wire",
                       "--trials",
                       "5",
                       "--swap",
                       "1",
                       "--listen",
                       "1",
                       "--practice",
                       "0",
                       "--listener",
                       "Ada",
                       "--listener",
                       "Bela",
                       "--supplied-seed",
                       std::string(64, '5')});
  browser::HostedProgram program(folder, {"--stand-in", "helper", "--stand-in", "Bela"});
  const browser::Driver driver;
  browser::Browser ada(driver), organiser(driver);
  ada.open(program.link("Ada"));
  organiser.open(program.link("organiser"));
  ada.type("#characters", "x7");
  ada.click("#contribute button");
  ada.click("#declare button.main");
  for (int trial = 1; trial <= 5; ++trial) {
    ada.expect("#heading", "Trial " + std::to_string(trial) + ": your answer");
    ada.click("#answers button");
    ada.expect("#kept", "Kept: A");
  }
  organiser.expect("#progress", "5 of 5");
  organiser.click("#end");
  browser::unseal_and_open_report(organiser);
  organiser.expect("body", "demonstration");
  EXPECT_EQ(program.stop(SIGTERM), 0);
}

TEST(Demonstration, IsTheOnlyPlaceForStandIns) {
  const Folder folder;
  make_campaign(folder);
  expect_done(folder,
              {"plan", "first", "--rig", "hall", "--compare", "thick-pair/bell-wire", "--listener", "Ada"});
  const auto host = [&](const std::string& stand_in) {
    return run_program(folder, {"sitting", "host", "1", "--port", "0", "--stand-in", stand_in});
  };
  const Ran ran = host("Ada");
  EXPECT_EQ(ran.status, 2);
  EXPECT_NE(ran.err.find("stand-ins are for demonstrations, and plan \"first\" is none\n"
                         "seal one with --supplied-seed"),
            std::string::npos)
      << ran.err;
}

}  // namespace
