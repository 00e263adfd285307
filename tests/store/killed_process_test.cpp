#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <functional>
#include <random>

#include "store/campaign.h"
#include "store/sample.h"

namespace {

using store::Campaign;
using store_test::Folder;
using store_test::Links;
using store_test::sealed_plan;
using store_test::whole_chain;

using Acknowledge = std::function<void(int)>;

/// Runs `work` in a process of its own, which is killed this long after its first acknowledgement, or after
/// its start; the last number that it acknowledged, or 0.
int last_before_kill(bool after_first, int microseconds,
                     const std::function<void(const Acknowledge&)>& work) {
  int ends[2];
  if (pipe(ends) != 0) return 0;
  const pid_t child = fork();
  if (child == 0) {
    close(ends[0]);
    try {
      work([&](int number) {
        if (write(ends[1], &number, sizeof number) != sizeof number) _exit(1);
      });
    } catch (...) {
      _exit(1);
    }
    _exit(0);
  }
  close(ends[1]);
  int last = 0, number = 0;
  if (after_first && read(ends[0], &number, sizeof number) == sizeof number) last = number;
  usleep(static_cast<useconds_t>(microseconds));
  kill(child, SIGKILL);
  while (read(ends[0], &number, sizeof number) == sizeof number) last = number;
  close(ends[0]);
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFSIGNALED(status) || WEXITSTATUS(status) == 0);
  return last;
}

void answer_for_ever(const std::filesystem::path& file, const plan::SealedPlan& plan,
                     const Acknowledge& acknowledge) {
  const Campaign campaign = Campaign::open(file);
  const auto log = campaign.log(plan.name);
  Links links(plan, 1);
  const std::size_t there = log->events(1).size();
  for (std::size_t at = 0; at < there; ++at) links.next("answer");
  for (;;) {
    const sitting::LoggedEvent event = links.next("answer");
    log->append(1, links.number(), event);
    acknowledge(links.number());
  }
}

TEST(KilledProcess, LosesNoAcknowledgedEvent) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  const plan::SealedPlan plan = sealed_plan("spring");
  { Campaign::create(file, "t").add_plan(plan); }
  std::mt19937 engine(20310501);
  int found = 0;
  for (int round = 0; round < 40; ++round) {
    const bool after_first = round % 4 != 0;
    const int last =
        last_before_kill(after_first, static_cast<int>(engine() % 6000),
                         [&](const Acknowledge& acknowledge) { answer_for_ever(file, plan, acknowledge); });
    if (after_first) {
      EXPECT_GT(last, found) << "round " << round;
    }
    const int before = std::max(found, last);
    found = whole_chain(*Campaign::open(file).log("spring"), plan, 1);
    EXPECT_GE(found, before) << "round " << round;
    EXPECT_LE(found, before + 1) << "round " << round;
  }
  EXPECT_EQ(folder.files(), 1);
}

TEST(KilledProcess, LeavesACampaignOrNoneWhenKilledInCreation) {
  std::mt19937 engine(20310502);
  for (int round = 0; round < 40; ++round) {
    const Folder folder;
    const auto file = folder / "a.campaign";
    const int last = last_before_kill(round % 4 == 0, static_cast<int>(engine() % 3000),
                                      [&](const Acknowledge& acknowledge) {
                                        const Campaign campaign = Campaign::create(file, "t");
                                        acknowledge(1);
                                        usleep(100'000);
                                      });
    try {
      EXPECT_EQ(Campaign::open(file).title(), "t");
    } catch (const text::BadInput& error) {
      const std::string words = error.what();
      EXPECT_EQ(last, 0) << words;
      EXPECT_TRUE(words.starts_with("there is no campaign") || words.ends_with("or it is empty")) << words;
    }
  }
}

}  // namespace
