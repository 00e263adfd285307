#include <gtest/gtest.h>

#include <set>
#include <sstream>

#include "cli/console.h"
#include "desk/plans/planning.h"
#include "sitting/sitting.h"
#include "store/campaign.h"
#include "store/failing_vfs.h"
#include "whole/sample_campaign.h"

namespace {

Ran run_here(const std::vector<std::string>& words) {
  std::vector<const char*> arguments = {"blindswap"};
  for (const std::string& word : words) arguments.push_back(word.c_str());
  std::istringstream in;
  std::ostringstream out, err;
  const int status = cli::run(static_cast<int>(arguments.size()), arguments.data(), in, out, err);
  return {status, out.str(), err.str()};
}

std::set<std::string> kept_answers(const std::string& file) {
  const store::Campaign campaign = store::Campaign::open(file);
  const desk::OpenedPlan opened = desk::open_plan(campaign, "first");
  const auto log = campaign.log("first");
  const sitting::Sitting sitting(opened.plan, opened.sealed, 1, *log,
                                 [] { return std::chrono::system_clock::now(); });
  std::set<std::string> kept;
  for (int trial = 1; trial <= 18; ++trial)
    for (const auto& [listener, answer] : sitting.state().at(trial).answers)
      kept.insert("trial " + std::to_string(trial) + ", " + listener);
  return kept;
}

// The disk is full from the n-th write on, for every n until the whole keying fits: exit status 1, a message that says
// so, and every answer that was acknowledged is there when there is room again.
TEST(FullDisk, LosesNothingThatWasAcknowledged) {
  Folder folder;
  begin_sitting(folder, {"Ada"});
  std::string table = "trial,Ada\n";
  for (int trial = 1; trial <= 16; ++trial) table += std::to_string(trial) + ",A\n";
  const std::string answers = folder.write("answers.csv", table), file = folder / "campaign.blindswap";
  const std::string pristine = content_of(file);
  int refused = 0;
  for (int steps = 0;; ++steps) {
    folder.write("campaign.blindswap", pristine);
    Ran ran;
    {
      store_test::FailingVfs disk;
      disk.fail_after(steps);
      ran = run_here({"sitting", "key", "1", "--by", "Edda", "--file", answers, "-c", file});
      disk.work();
    }
    const auto promised = acknowledged(ran.out);
    const auto kept = kept_answers(file);
    for (const std::string& what : promised) ASSERT_TRUE(kept.contains(what)) << steps << ": " << what;
    ASSERT_LE(kept.size(), promised.size() + 1) << steps;
    if (ran.status == 0) break;
    ++refused;
    ASSERT_EQ(ran.status, 1) << steps << ": " << ran.err;
    ASSERT_NE(ran.err.find("full"), std::string::npos) << steps << ": " << ran.err;
    ASSERT_LT(steps, 10000);
  }
  std::cout << refused << " places at which the disk was full\n";
  EXPECT_GT(refused, 30);
  EXPECT_EQ(kept_answers(file).size(), 16u);
}

TEST(FullDisk, AReportIsWrittenWholeOrNotAtAll) {
  if (access("/dev/full", W_OK) != 0) GTEST_SKIP() << "no /dev/full here";
  std::istringstream in;
  std::ofstream out("/dev/full");
  std::ostringstream err;
  const char* const words[] = {"blindswap", "--version"};
  EXPECT_EQ(cli::run(2, words, in, out, err), 1);
  EXPECT_EQ(err.str(), "the output could not be written; is the disk full?\n");
}

}  // namespace
