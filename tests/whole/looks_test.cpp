#include <gtest/gtest.h>

#include "desk/sittings/hosting.h"
#include "sitting/simulated/rehearsal.h"
#include "whole/program.h"
#include "whole/sample_campaign.h"

namespace {

/// Which answer is right, from the tags that the helper connects.
std::string right_answer(const sitting::SheetTrial& trial) {
  std::map<std::string, int> tags;
  for (const sitting::HelperStep& step : trial.steps) tags[step.label] = step.tag;
  return tags["X"] == tags["A"] ? "A" : "B";
}

/// Holds sitting 1 to its end: Ada is right in all trials up to `right`, then wrong, and Bela always says A.
void hold_sitting(const Folder& folder, int right) {
  sitting::HandClock clock;
  desk::Hosting hosting({folder / "campaign.blindswap", "first", 1}, clock.reading());
  sitting::Sitting& held = hosting.sitting();
  held.begin();
  const auto sheet = held.sheet();
  int step = 0;
  while (held.look().next.trial != 0) {
    do {
      held.present_next();
      clock.pass(std::chrono::seconds(50 + 7 * ++step % 13));  // no two alike, so that the pace has a spread
    } while (held.look().presentation < 3);
    const int trial = held.look().now.trial;
    const std::string rightly = right_answer(sheet[static_cast<std::size_t>(trial - 1)]);
    held.answer("Ada", trial, trial <= right ? rightly : rightly == "A" ? "B" : "A", "", "");
    held.answer("Bela", trial, "A", "", "");
    held.take_look();
  }
  held.end();
}

/// A plan with looks, sealed, held, unsealed; its report computed again by a plain Python program.
std::string report_of(const Folder& folder, const std::string& primary, int right) {
  make_campaign_with_booth(folder);
  const std::string sealed = expect_done(folder, {"plan",
                                                  "first",
                                                  "--rig",
                                                  "booth",
                                                  "--compare",
                                                  "thick-pair/bell-wire",
                                                  "--trials",
                                                  "16",
                                                  "--looks",
                                                  "6,11,16",
                                                  "--spending",
                                                  "pocock",
                                                  "--primary",
                                                  primary,
                                                  "--listener",
                                                  "Ada",
                                                  "--listener",
                                                  "Bela",
                                                  "--supplied-seed",
                                                  std::string(64, '7')});
  EXPECT_NE(sealed.find("A look may stop a claim: the sittings are held live"), std::string::npos) << sealed;
  hold_sitting(folder, right);
  expect_done(folder, {"unseal"});
  expect_done(folder, {"check"});
  return confirmed_report(folder);
}

TEST(Looks, StopAClaimAndTheReportIsConfirmedIndependently) {
  Folder folder;
  EXPECT_NE(report_of(folder, "Ada", 16).find("A look stopped it after 6 of 16 trials"), std::string::npos);
}

TEST(Looks, GoOnToTheEndWhereNothingIsSupported) {
  Folder folder;
  const std::string report = report_of(folder, "pooled", 4);
  EXPECT_NE(report.find("take the plan's looks into account"), std::string::npos) << report;
  EXPECT_EQ(report.find("A look stopped it"), std::string::npos);
}

}  // namespace
