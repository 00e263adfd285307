#include <gtest/gtest.h>

#include "whole/sample_campaign.h"

// What a user with many readings is led to: the gap, the mistaken reading, the feature that is on and off.
namespace {

void expect_in(const std::string& text, const std::string& words) {
  std::string flat;
  for (const char c : text)
    if (c != '\n' && c != ' ') flat += c;
  std::string wanted;
  for (const char c : words)
    if (c != ' ') wanted += c;
  EXPECT_NE(flat.find(wanted), std::string::npos) << words << "\nin\n" << text;
}

/// Runs it and expects a refusal with all of these in it; gives all that was told.
std::string expect_faults(const Folder& folder, const std::vector<std::string>& words,
                          const std::vector<std::string>& faults) {
  const Ran ran = run_program(folder, words);
  EXPECT_EQ(ran.status, 2);
  for (const std::string& fault : faults) expect_in(ran.err, fault);
  return ran.err;
}

TEST(Bench, LeadsToGapsMistakesAndFeatures) {
  Folder folder;
  make_campaign(folder);
  folder.write("mistaken.csv", "cable,length_m,resistance_ohm,repeat\nbell-wire,3,580,2\n");
  const Ran mistaken = run_program(folder, {"import", "mistaken.csv"});
  EXPECT_EQ(mistaken.status, 0);
  expect_in(mistaken.err, "can hardly be: blindswap examine");
  std::string manifest = "file,cable,feature,state,bandwidth,repeat\n";
  for (const std::string state : {"on", "off"})
    for (const std::string repeat : {"1", "2", "3"}) {
      const std::string name = state + repeat + ".csv";
      folder.write(name, "frequency_Hz,level_dBV\n20," + std::string(state == "on" ? "-12" : "-10") + repeat +
                             "\n20000,-13" + repeat + "\n");
      manifest += name + ",thick-pair,shield," + state + ",1.5Hz," + repeat + "\n";
    }
  folder.write("noise.csv", manifest);
  expect_in(expect_done(folder, {"import", "--manifest", "noise.csv"}), "imported 6 readings, 6 noise");
  expect_in(expect_done(folder, {"import", "--manifest", "noise.csv"}), "6 readings are there already");

  expect_in(expect_done(folder, {"coverage"}), "noise: missing of bell-wire");
  const std::string examined = expect_done(folder, {"examine"});
  expect_in(
      examined,
      "bell-wire, reading 3 (mistaken.csv, repeat 2): 580 ohm for 3.00 m is not usual, 580 mohm would be.");
  expect_in(examined, "thick-pair, noise: shield on less off (3 against 3 readings)");
  expect_in(examined, "so few readings cannot go below 0.100");

  folder.write("again.csv", "cable,length_m,resistance_mohm,repeat\nbell-wire,3,579,3\n");
  expect_done(folder, {"import", "again.csv"});
  expect_done(folder, {"supersede", "3", "--with", "10", "--why", "ohm for mohm"});
  expect_in(expect_done(folder, {"coverage"}), "bell-wire 2 (1 superseded) missing");
  expect_in(expect_done(folder, {"examine"}), "Nothing: no reading disagrees");
  expect_in(expect_done(folder, {"examine", "--json"}), "\"doubts\": []");
  expect_in(expect_done(folder, {"coverage", "--html"}), "<!DOCTYPE html>");
  expect_in(expect_done(folder, {"check"}), "fit their checksums");
}

TEST(Bench, NamesEveryFaultOfAManifestAndImportsNothing) {
  Folder folder;
  make_campaign(folder);
  folder.write("good.csv", "frequency_Hz,level_dB\n20,0\n20000,0\n");
  folder.write("words.csv", "frequency_Hz,level_dB\n20,x\n30,0\n40,y\n");
  folder.write("empty.csv", "");
  folder.write("all.csv", "file,cable\ngood.csv,thick-pair\nwords.csv,thick-pair\nempty.csv,thick-pair\n");
  const std::string before = expect_done(folder, {"list"});
  expect_faults(folder, {"import", "--manifest", "all.csv"},
                {"words.csv:2:4: level must be a number in dB, got \"x\"",
                 "words.csv:4:4:", "empty.csv: is empty", "nothing was imported"});
  EXPECT_EQ(expect_done(folder, {"list"}), before);
}

// Faults of the manifest itself, of names, and what looks odd in the files that could be read: all in one go.
TEST(Bench, NamesFaultsOfEveryStageAtOnce) {
  Folder folder;
  make_campaign(folder);
  folder.write("good.csv", "frequency_Hz,level_dB\n20,0\n20000,0\n");
  folder.write("odd.csv", "cable,length_m,resistance_ohm,repeat\nbell-wire,3,580,2\n");
  folder.write(
      "all.csv",
      "file,cable,rig,repeat\ngood.csv,thick-pear,hal,1\ngood.csv,thick-pair,,2\nmissing.csv,thick-pair,,x\n"
      "odd.csv,,,1\n");
  expect_faults(
      folder, {"import", "--manifest", "all.csv"},
      {"all.csv:3:1: file \"good.csv\" stands twice", "all.csv:4:25:", "cannot read missing.csv",
       "good.csv: there is no cable \"thick-pear\"; did you mean \"thick-pair\"?",
       "good.csv: there is no rig \"hal\"; did you mean \"hall\"?", "odd.csv:2:13:", "nothing was imported"});
}

// A refused file hides no mistaken name, and a refused table of cables makes no name mistaken.
TEST(Bench, NamesOfRefusedFilesAreLookedAt) {
  Folder folder;
  make_campaign(folder);
  folder.write("words.csv", "frequency_Hz,level_dB\n20,x\n30,0\n40\n");
  folder.write("good.csv", "frequency_Hz,level_dB\n20,0\n20000,0\n");
  folder.write("new.csv", "cable,length_m,resistance_ohm\nnew-pair,3,x\n");
  folder.write("all.csv", "file,cable,rig\nwords.csv,thick-pear,hal\ngood.csv,new-pair,\nnew.csv,,\n");
  const std::string told =
      expect_faults(folder, {"import", "--manifest", "all.csv"},
                    {"words.csv:2:4:", "words.csv:4:1:", "new.csv:2:12:",
                     "words.csv: there is no cable \"thick-pear\"; did you mean \"thick-pair\"?",
                     "words.csv: there is no rig \"hal\"; did you mean \"hall\"?"});
  EXPECT_EQ(told.find("good.csv"), std::string::npos) << told;
  folder.write("new.csv", "cable,length_m,resistance_ohm\nnew-pair,3,0,1\n");
  EXPECT_EQ(run_program(folder, {"import", "--manifest", "all.csv"}).err.find("there is no cable"),
            std::string::npos);
}

TEST(Bench, NamesAnImpossibleCableBesideOtherFaults) {
  Folder folder;
  make_campaign(folder);
  folder.write("slash.csv", "cable,length_m,resistance_ohm\na/b,3,0.1\n");
  expect_faults(folder, {"import", "slash.csv", "missing.csv"},
                {"slash.csv: a cable's name must be", "cannot read missing.csv"});
}

TEST(Bench, GivesNoPerCentOfAMistakenRepeat) {
  Folder folder;
  make_campaign(folder);
  folder.write("zip.csv", "cable,length_m,resistance_ohm,repeat\nzip,3,0.1,1\nzip,3,100,2\n");
  expect_done(folder, {"import", "zip.csv"});
  expect_in(expect_done(folder, {"examine"}),
            "One standard deviation of repeats: resistance more than ten times");
}

// Of logarithms: the limit is Student's t of 2 degrees of freedom, 4.302653 (0.975), times ln(1.2)/sqrt(2),
// 0.554702, which is 74.1 % more or 42.6 % less; then 0.304 % against a difference of 0.330 %. recomputed.
TEST(Bench, ShowsTheLimitOnTheSideOfTheDifferenceAndTellsThemApart) {
  const auto examined = [](const std::string& rows) {
    Folder folder;
    expect_done(folder, {"new", "--title", "Limits"});
    folder.write("cables.csv", "cable,length_m,resistance_mohm,repeat\n" + rows);
    expect_done(folder, {"import", "cables.csv"});
    expect_done(folder, {"baseline", "a"});
    return expect_done(folder, {"examine"});
  };
  expect_in(examined("a,3,100,1\na,3,120,2\nb,3,70,1\nb,3,84,2\n"),
            "resistance \u221230.0 %, within repeatability 42.6 %");
  expect_in(examined("a,3,100,1\na,3,100.1,2\nb,3,100.33,1\nb,3,100.43033,2\n"),
            "resistance +0.33 %, beyond repeatability 0.30 %");
}

TEST(Bench, WarnsOfACopyThatIsGivenOutAsARepeat) {
  Folder folder;
  make_campaign(folder);
  folder.write("one.csv", "frequency_Hz,level_dB\n20,0\n20000,0\n");
  folder.write("two.csv", "frequency_Hz,level_dB\n20,0\n20000,0\n");
  folder.write("three.csv", "frequency_Hz,level_dB\n20,0\n20000,0.01\n");
  const auto imported = [&](const char* file, const char* repeat) {
    return run_program(folder, {"import", file, "--cable", "bell-wire", "--rig", "hall", "--repeat", repeat})
        .err;
  };
  EXPECT_EQ(imported("one.csv", "1").find("copy"), std::string::npos);
  expect_in(imported("two.csv", "2"), "two.csv, repeat 2, is a copy of reading 3 (one.csv)");
  EXPECT_EQ(imported("three.csv", "3").find("copy"), std::string::npos);
}

TEST(Bench, ListsReadingsWithTheirNumbers) {
  Folder folder;
  make_campaign(folder);
  folder.write("again.csv", "cable,length_m,resistance_mohm,repeat\nbell-wire,3,579,3\n");
  expect_done(folder, {"import", "again.csv", "--instrument", "meter"});
  expect_done(folder, {"supersede", "3", "--why", "not warm yet"});
  const std::string listed = expect_done(folder, {"list", "--readings"});
  expect_in(listed, "     3 cable-lcr bell-wire meter, repeat 3 again.csv superseded: not warm yet");
}

}  // namespace
