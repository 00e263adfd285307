#include <gtest/gtest.h>

#include "desk/sittings/hosting.h"
#include "sitting/simulated/rehearsal.h"
#include "whole/program.h"
#include "whole/sample_campaign.h"

namespace {

/// Holds a sitting of one listener: A in three trials of four, every level of sureness and none, times before X that vary.
void hold_alone(const Folder& folder, int number, const std::string& listener) {
  sitting::HandClock clock;
  desk::Hosting hosting({folder / "campaign.blindswap", "first", number}, clock.reading());
  sitting::Sitting& held = hosting.sitting();
  held.begin();
  int step = number;
  while (held.look().next.trial != 0) {
    do {
      held.present_next();
      clock.pass(std::chrono::seconds(50 + 7 * ++step % 13));
    } while (held.look().presentation < 3);
    const int trial = held.look().now.trial;
    const bool says_a = trial % 4 != number;
    const char* sureness[] = {"certain", "fairly sure", "guess", ""};
    held.answer(listener, trial, says_a ? "A" : "B", sureness[trial / 2 % 4], "");
  }
  held.end();
}

// What takes listeners as independent is there only where each has trials of their own.
TEST(Exploration, OfListenersOneAtATimeIsConfirmedIndependently) {
  Folder folder;
  make_campaign(folder);
  folder.write("impedance.csv",
               "frequency_Hz,magnitude_ohm,phase_deg\n10,4,10\n100,8,-20\n1000,5,5\n30000,12,40\n");
  expect_done(folder, {"rig", "booth", "--source", "0.1ohm", "--rated", "4ohm", "--volume-step", "0.5dB"});
  expect_done(folder, {"import", "impedance.csv", "--rig", "booth"});
  expect_done(folder, {"plan", "first", "--rig", "booth", "--compare", "thick-pair/bell-wire", "--trials",
                       "16", "--one-at-a-time", "--listener", "Ada", "--listener", "Bela", "--supplied-seed",
                       std::string(64, '7')});
  hold_alone(folder, 1, "Ada");
  hold_alone(folder, 2, "Bela");
  expect_done(folder, {"unseal"});
  expect_done(folder, {"report", "--json", "-o", "report.json"});
  const std::string check = PYTHON3 " " SOURCE_FOLDER "/tests/independent/check_report.py '" +
                            (folder / "campaign.blindswap").string() + "' first '" +
                            (folder / "report.json").string() + "' >'" + (folder / "check").string() +
                            "' 2>&1";
  EXPECT_EQ(std::system(check.c_str()), 0) << content_of(folder / "check");
  const std::string report = content_of(folder / "report.json");
  EXPECT_NE(report.find("no licence to pool"), std::string::npos);
  EXPECT_NE(report.find("without a level left out"), std::string::npos);
}

}  // namespace
