#include <gtest/gtest.h>

#include "whole/sample_campaign.h"

// Every kind of bad input ends with exit status 2 and its whole message; nothing is changed by it.
namespace {

struct Bad {
  std::vector<std::string> words;
  std::string message;
};

void expect_refused(const Folder& folder, const Bad& bad) {
  const std::string before = expect_done(folder, {"list"});
  const Ran ran = run_program(folder, bad.words);
  std::string all;
  for (const std::string& word : bad.words) all += word + " ";
  EXPECT_EQ(ran.status, 2) << all;
  EXPECT_EQ(ran.err, bad.message + "\n") << all;
  EXPECT_EQ(ran.out, "") << all;
  EXPECT_EQ(expect_done(folder, {"list"}), before) << all;
}

TEST(BadInput, OnTheShelf) {
  Folder folder;
  make_campaign(folder);
  folder.write("empty.csv", "");
  folder.write("unit.csv", "cable,length_m,resistance_mF\nx,3,5\n");
  folder.write("missing.csv", "cable,resistance_ohm\nx,0.5\n");
  folder.write("comma.csv", "cable,length_m,resistance_ohm\nx,3,0,05\n");
  folder.write("response.csv", "frequency_Hz,level_dB\n20,0\n100,0\n");
  for (const Bad& bad : std::vector<Bad>{
           {{"new", "--title", "again"}, "NEW"},
           {{"cable", "thick-pair"}, "DUPLICATE"},
           {{"cable", "x", "--built", "4mm2"}, "--built \"4mm2\" cannot be read; write it like cross-section=4mm2"},
           {{"baseline", "thick-piar"}, "BASELINE"},
           {{"rig", "hut", "--source", "0.1"}, "RIG1"},
           {{"rig", "hut", "--source", "3m"}, "RIG2"},
           {{"rig", "hut", "--load", "8ohm||3m"}, "RIG3"},
           {{"rig", "hut", "--volume-step", "-1dB"}, "RIG4"},
           {{"import", "nowhere.csv"}, "IMPORT1"},
           {{"import", "empty.csv"}, "IMPORT2"},
           {{"import", "unit.csv"}, "IMPORT3"},
           {{"import", "missing.csv"}, "IMPORT4"},
           {{"import", "comma.csv"}, "IMPORT5"},
           {{"import", "response.csv"}, "IMPORT6"},
           {{"import", "cables.csv"}, "IMPORT7"},
           {{"import"}, "name files to import, or a manifest with --manifest, and not both"},
           {{"predict", "thick-pair", "bellwire", "--rig", "hall"},
            "no cable is called \"bellwire\"; did you mean \"bell-wire\"?"},
           {{"predict", "thick-pair", "bell-wire", "--rig", "hal"},
            "no rig is called \"hal\"; did you mean \"hall\"?"},
           {{"predict", "thick-pair", "bell-wire", "--rig", "hall", "--weighting", "pink-x"}, "WEIGHTING"},
           {{"lsit"}, "\"lsit\" is not known to blindswap; did you mean \"list\"?\nsee blindswap --help"},
           {{"list", "-c", "nowhere"}, "NOWHERE"}})
    expect_refused(folder, bad);
}

TEST(BadInput, InPlans) {
  Folder folder;
  make_campaign(folder);
  const auto plan = [](std::vector<std::string> more) {
    std::vector<std::string> words = {"plan", "first", "--rig", "hall", "--listener", "Ada"};
    words.insert(words.end(), more.begin(), more.end());
    return words;
  };
  for (const Bad& bad : std::vector<Bad>{
           {plan({"--compare", "thick-pair"}), "PLAN1"},
           {plan({"--compare", "thick-pair/thick-pair"}), "PLAN2"},
           {plan({"--compare", "thick-pair/bell-wire", "--trials", "4"}), "PLAN3"},
           {plan({"--compare", "thick-pair/bell-wire", "--level", "5"}), "PLAN4"},
           {plan({"--compare", "thick-pair/bell-wire", "--listener", "Ada"}), "PLAN5"},
           {plan({"--compare", "thick-pair/bell-wire", "--primary", "Bela"}), "PLAN6"},
           {plan({"--compare", "thick-pair/bell-wire", "--protocol", "abc"}), "PLAN7"},
           {plan({"--compare", "thick-pair/bell-wire", "--sittings", "2"}), "PLAN8"},
           {plan({"--known", "thick-pair:0.22"}), "PLAN9"},
           {plan({"--compare", "thick-pair/bell-wire", "--do-not-judge-by", "weather"}), "PLAN10"},
           {plan({"--compare", "thick-pair/bell-wire", "--supplied-seed", "abc"}), "PLAN11"},
           {{"report"}, "this campaign has no plan yet; seal one first"},
           {{"unseal", "spring"}, "this campaign has no plan yet; seal one first"}})
    expect_refused(folder, bad);
}

TEST(BadInput, WhileKeying) {
  Folder folder;
  begin_sitting(folder, {"Ada"});
  folder.write("unknown.csv", "trial,Eda\n1,A\n");
  folder.write("range.csv", "trial,Ada\n19,A\n");
  folder.write("spare.csv", "trial,Ada\n17,A\n");
  folder.write("word.csv", "trial,Ada\n1,C\n2,A\n");
  for (const Bad& bad : std::vector<Bad>{
           {{"sitting", "key", "1", "--by", "Edda", "--file", "unknown.csv"}, "KEY1"},
           {{"sitting", "key", "1", "--by", "Edda", "--file", "range.csv"}, "KEY2"},
           {{"sitting", "key", "1", "--by", "Edda", "--file", "spare.csv"}, "KEY3"},
           {{"sitting", "key", "1", "--by", "Edda", "--file", "word.csv"}, "KEY4"},
           {{"sitting", "key", "2", "--by", "Edda"}, "plan \"first\" has sittings 1 to 1, not 2"},
           {{"sitting", "spoil", "1", "--trial", "3", "--by", "helper", "--reason", "rain"}, "SPOIL1"},
           {{"sitting", "fact", "1", "--name", "saet", "--is", "row 2"},
            "no fact of a sitting is called \"saet\"; did you mean \"seat\"?"},
           {{"sitting", "correct", "1", "--trial", "3", "--listener", "Ada", "--answer", "A", "--why", "misread"},
            "trial 3, Ada: there is no answer to correct"}})
    expect_refused(folder, bad);
}

// At the wrong moment: exit status 1, and again nothing changes.
TEST(NotNow, WhileSealed) {
  Folder folder;
  begin_sitting(folder, {"Ada"});
  const auto refused = [&](const std::vector<std::string>& words, const std::string& message) {
    const Ran ran = run_program(folder, words);
    EXPECT_EQ(ran.status, 1) << ran.out;
    EXPECT_EQ(ran.err, message + "\n");
  };
  refused({"report"}, "plan \"first\" is sealed; its findings open when it is unsealed");
  refused({"unseal"},
          "the order stays sealed: sitting 1 has not ended, 16 of its 16 trials wait for answers\n"
          "end it, or end it early and keep what was planned");
  refused({"sitting", "begin", "1"}, "sitting 1 has begun already");
  refused({"sitting", "end", "1"},
          "sitting 1 cannot end: 16 trials wait for answers, first trial 1 for Ada\n"
          "key them, mark them as missing, or end the sitting early with a reason");
  refused({"sitting", "characters", "1", "--listener", "Ada", "--add", "y"},
          "the order is drawn; characters can no longer be added");
}

}  // namespace
