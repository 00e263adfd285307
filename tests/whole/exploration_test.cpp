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
  make_campaign_with_booth(folder);
  expect_done(folder, {"plan", "first", "--rig", "booth", "--compare", "thick-pair/bell-wire", "--trials",
                       "16", "--one-at-a-time", "--listener", "Ada", "--listener", "Bela", "--supplied-seed",
                       std::string(64, '7')});
  hold_alone(folder, 1, "Ada");
  hold_alone(folder, 2, "Bela");
  expect_done(folder, {"unseal"});
  const std::string report = confirmed_report(folder);
  EXPECT_NE(report.find("no licence to pool"), std::string::npos);
  EXPECT_NE(report.find("without a level left out"), std::string::npos);
}

}  // namespace
