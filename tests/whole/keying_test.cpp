#include <gtest/gtest.h>

#include <regex>
#include "whole/sample_campaign.h"

namespace {

TEST(Prompts, TakeLettersSurenessMissingLaterAndStop) {
  Folder folder;
  begin_sitting(folder, {"Ada"});
  const Ran ran =
      run_program(folder, {"sitting", "key", "1", "--by", "Edda"}, "a\nB certain\nb f\n\nx\n-\nA maybe\n.\n");
  EXPECT_EQ(ran.status, 0);
  EXPECT_EQ(ran.out,
            "kept trial 1, Ada\nkept trial 2, Ada\nkept trial 3, Ada\nkept trial 5, Ada: missing\n4 answers "
            "kept\n");
  EXPECT_NE(ran.err.find("\"x\" is no answer\ntrial 5, Ada (A or B, then guess"), std::string::npos)
      << ran.err;
  EXPECT_NE(ran.err.find("\"A maybe\" is no answer\ntrial 6, Ada"), std::string::npos) << ran.err;
  const Ran again = run_program(folder, {"sitting", "key", "1", "--by", "Edda"}, ".\n");
  EXPECT_NE(again.err.find("trial 4, Ada"), std::string::npos) << again.err;
}

// The helper may read the status; so it tells where a second entry differed, never what was answered.
TEST(Status, TellsNoAnswer) {
  Folder folder;
  begin_sitting(folder, {"Ada"});
  folder.write("first.csv", "trial,Ada\n1,A\n2,-\n");
  folder.write("second.csv", "trial,Ada\n1,B\n2,A\n");
  expect_done(folder, {"sitting", "key", "1", "--by", "Edda", "--file", "first.csv"});
  expect_done(folder, {"sitting", "key", "1", "--by", "Finn", "--file", "second.csv", "--second"});
  const std::string status = expect_done(folder, {"sitting", "status", "1"});
  EXPECT_NE(status.find("corrected or confirmed after the second entry: trial 1, Ada\n"), std::string::npos)
      << status;
  EXPECT_EQ(status.find('"' + std::string("A") + '"'), std::string::npos) << status;
  expect_done(folder, {"sitting", "correct", "1", "--trial", "1", "--listener", "Ada", "--answer", "A",
                       "--why", "seen"});
  expect_done(folder, {"sitting", "correct", "1", "--trial", "2", "--listener", "Ada", "--answer", "-",
                       "--why", "seen"});
  EXPECT_EQ(expect_done(folder, {"sitting", "status", "1"}).find("second entry"), std::string::npos);
}

TEST(Keying, SaysWhichTrialsWereSpoiledTooLate) {
  Folder folder;
  begin_sitting(folder, {"Ada"});
  folder.write("answers.csv", "trial,Ada\n1,A\n");
  folder.write("spoiled.csv", "trial,by,reason,words\n1,helper,wrong tag,\n2,Ada,interruption,\n");
  expect_done(folder, {"sitting", "key", "1", "--by", "Edda", "--file", "answers.csv"});
  EXPECT_EQ(expect_done(folder, {"sitting", "spoil", "1", "--file", "spoiled.csv"}),
            "trial 1 is spoiled late: it counts as answered, and is shown\ntrial 2 is spoiled\n");
}

TEST(Keying, KeepsNothingOfATableWithANoteTooLong) {
  Folder folder;
  begin_sitting(folder, {"Ada"});
  folder.write("answers.csv",
               "trial,listener,answer,sureness,note\n1,Ada,A,,\n2,Ada,B,," + std::string(5000, 'x') + "\n");
  const Ran ran = run_program(folder, {"sitting", "key", "1", "--by", "Edda", "--file", "answers.csv"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_EQ(ran.out, "");
  EXPECT_EQ(ran.err.substr(0, ran.err.find('\n')),
            "answers.csv:3:7: a note may have 4000 bytes, this one has 5000");
}

TEST(Keying, RefusesAnotherSurenessAndSaysOnceWhatIsKept) {
  Folder folder;
  begin_sitting(folder, {"Ada"});
  folder.write("answers.csv", "trial,listener,answer,sureness\n1,Ada,A,guess\n");
  folder.write("other.csv", "trial,listener,answer,sureness\n1,Ada,A,certain\n");
  folder.write("times.csv", "trial,presentation,started\n1,1,14:00:00\n1,2,14:00:40\n");
  folder.write("dated.csv", "trial,presentation,started\n2,1,2031-05-01T14:10:00Z\n");
  expect_done(folder, {"sitting", "key", "1", "--by", "Edda", "--file", "answers.csv"});
  const Ran ran = run_program(folder, {"sitting", "key", "1", "--by", "Edda", "--file", "other.csv"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_EQ(ran.err,
            "other.csv:2:7: trial 1, Ada: sureness \"guess\" is recorded already, not \"certain\"\n"
            "  1,Ada,A,certain\n"
            "        ^\n");
  EXPECT_EQ(expect_done(folder, {"sitting", "times", "1", "--file", "times.csv"}), "2 times kept\n");
  EXPECT_EQ(expect_done(folder, {"sitting", "times", "1", "--file", "times.csv"}), "0 times kept\n");
  const Ran dated = run_program(folder, {"sitting", "times", "1", "--file", "dated.csv"});
  EXPECT_EQ(dated.status, 2);
  EXPECT_EQ(dated.err,
            "dated.csv:2:5: the times kept before are written like 14:00:00, these are not\n"
            "  2,1,2031-05-01T14:10:00Z\n"
            "      ^^^^^^^^^^^^^^^^^^^^ write all times of a sitting the same way\n");
}

/// Keys sixteen answers, ends, gives the head away and unseals.
void finish_sitting(const Folder& folder) {
  std::string table = "trial,Ada\n";
  for (int trial = 1; trial <= 16; ++trial) table += std::to_string(trial) + ",A\n";
  folder.write("answers.csv", table);
  expect_done(folder, {"sitting", "key", "1", "--by", "Edda", "--file", "answers.csv"});
  expect_done(folder, {"sitting", "end", "1", "--incomplete"});
}

TEST(Times, RunOnOverMidnight) {
  Folder folder;
  begin_sitting(folder, {"Ada"});
  std::string times = "trial,presentation,started\n";
  for (int i = 0; i < 48; ++i) {
    const int second = 23 * 3600 + 50 * 60 + 45 * i;
    char clock[16];
    std::snprintf(clock, sizeof clock, "%02d:%02d:%02d", second / 3600 % 24, second / 60 % 60, second % 60);
    times += std::to_string(i / 3 + 1) + "," + std::to_string(i % 3 + 1) + "," + clock + "\n";
  }
  folder.write("times.csv", times);
  expect_done(folder, {"sitting", "times", "1", "--file", "times.csv"});
  finish_sitting(folder);
  expect_done(folder, {"unseal"});
  const std::string report = expect_done(folder, {"report"});
  EXPECT_NE(report.find("mean 45.0 s"), std::string::npos) << report;
  // No time of a day less 45 s; the digits alone may stand in a commitment.
  EXPECT_FALSE(std::regex_search(report, std::regex("863[0-9]{2}(\\.[0-9]+)? s"))) << report;
}

TEST(Heads, AreGivenAwayAfterTheEndAndBeforeUnsealing) {
  Folder folder;
  begin_sitting(folder, {"Ada"});
  const std::vector<std::string> handover = {"sitting", "handover", "1", "--to", "the secretary"};
  EXPECT_EQ(run_program(folder, handover).err,
            "sitting 1 has not ended; its chain head is given away at the end\n");
  finish_sitting(folder);
  expect_done(folder, handover);
  EXPECT_NE(expect_done(folder, {"check"}).find("chain head of sitting 1: "), std::string::npos);
  expect_done(folder, {"unseal"});
  EXPECT_EQ(run_program(folder, handover).status, 1);
}

}  // namespace
