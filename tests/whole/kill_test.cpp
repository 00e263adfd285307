#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <map>
#include <random>
#include <thread>

#include "desk/plans/planning.h"
#include "sitting/sitting.h"
#include "store/campaign.h"
#include "whole/sample_campaign.h"

namespace {

const std::vector<std::string> listeners = {"Ada", "Bela", "Cleo"};

/// Sixteen rows of answers, and what each listener answered.
std::string answers_table(std::mt19937& random, std::map<std::string, std::string>& answers) {
  std::string table = "trial,Ada,Bela,Cleo\n";
  for (int trial = 1; trial <= 16; ++trial) {
    table += std::to_string(trial);
    for (const std::string& listener : listeners) {
      const std::string answer = random() % 2 == 0 ? "A" : "B";
      answers["trial " + std::to_string(trial) + ", " + listener] = answer;
      table += "," + answer;
    }
    table += "\n";
  }
  return table;
}

struct Read {
  std::map<std::string, std::string> answers;
  std::string order;
};

/// What the campaign holds now: every answer, and the order as the helper's sheet shows it.
Read read_back(const Folder& folder) {
  const store::Campaign campaign = store::Campaign::open(folder / "campaign.blindswap");
  const desk::OpenedPlan opened = desk::open_plan(campaign, "first");
  const auto log = campaign.log("first");
  const sitting::Sitting sitting(opened.plan, opened.sealed, 1, *log,
                                 [] { return std::chrono::system_clock::now(); });
  Read read;
  for (int trial = 1; trial <= 18; ++trial)
    for (const auto& [listener, answer] : sitting.state().at(trial).answers)
      read.answers["trial " + std::to_string(trial) + ", " + listener] = answer.last;
  for (const sitting::SheetTrial& trial : sitting.sheet())
    for (const sitting::HelperStep& step : trial.steps)
      read.order += step.label + std::to_string(step.tag) + " ";
  return read;
}

/// Waits until that many answers are acknowledged, or the program has ended.
void wait_for_lines(const Folder& folder, pid_t child, int lines) {
  for (int i = 0; i < 20000; ++i) {
    const std::string out = content_of(folder / "stdout");
    siginfo_t ended{};
    waitid(P_PID, static_cast<id_t>(child), &ended, WEXITED | WNOHANG | WNOWAIT);
    if (ended.si_pid == child || std::count(out.begin(), out.end(), '\n') >= lines) return;
    std::this_thread::sleep_for(std::chrono::microseconds(200));
  }
}

// The process is killed at random moments while it keys; every acknowledged answer (a line flushed to the output after
// its commit) is there afterwards, nothing else is, and the order is the same.
TEST(Kill, KeepsEveryAcknowledgedAnswerAndTheOrder) {
  int kills = 0, interrupted = 0;
  for (unsigned seed = 1; kills < 200 || interrupted <= 100; ++seed) {
    ASSERT_LT(seed, 400u);
    std::mt19937 random(seed);
    Folder folder;
    begin_sitting(folder, listeners);
    std::map<std::string, std::string> answers;
    folder.write("answers.csv", answers_table(random, answers));
    const std::string order = read_back(folder).order;
    std::map<std::string, std::string> promised;
    for (bool done = false; !done;) {
      const pid_t child =
          start_program(folder, {"sitting", "key", "1", "--by", "Edda", "--file", "answers.csv"});
      wait_for_lines(folder, child, static_cast<int>(random() % 8));
      std::this_thread::sleep_for(std::chrono::microseconds(random() % 2000));
      kill(child, SIGKILL);
      const Ran ran = finished(folder, child);
      done = ran.status == 0;
      kills += ran.status == 128 + SIGKILL;
      const auto lines = acknowledged(ran.out);
      interrupted += !done && !lines.empty();
      for (const std::string& line : lines) promised[line] = answers.at(line);
      const Read read = read_back(folder);
      ASSERT_EQ(read.order, order) << "seed " << seed;
      for (const auto& [what, answer] : promised)
        ASSERT_TRUE(read.answers.contains(what) && read.answers.at(what) == answer)
            << "seed " << seed << ": " << what;
      for (const auto& [what, answer] : read.answers) ASSERT_EQ(answer, answers.at(what)) << "seed " << seed;
      ASSERT_LE(read.answers.size(), promised.size() + 1)
          << "seed " << seed << ": one may be kept and not yet said";
      for (const auto& [what, answer] : read.answers) promised[what] = answer;
    }
    EXPECT_EQ(read_back(folder).answers, answers) << "seed " << seed;
  }
  std::cout << kills << " kills, " << interrupted << " of them between two answers\n";
}

}  // namespace
