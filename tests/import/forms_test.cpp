#include <gtest/gtest.h>

#include <cmath>

#include "import/answers.h"
#include "import/levels.h"
#include "import/manifest.h"
#include "import/refusal.h"
#include "import/times.h"

using namespace imported;

namespace {

const AnswerWords abx = {{"Anna", "Ben"}, {"A", "B"}, {"guess", "certain"}};

std::string manifest_refusal(const std::string& content) {
  return refusal([&] { parse_manifest(content, "m.csv").problems.refuse_if_any(); });
}

std::string answers_refusal(const std::string& content) {
  return refusal([&] { parse_answers(content, "a.csv", abx); });
}

std::string times_refusal(const std::string& content) {
  return refusal([&] { parse_times(content, "t.csv"); });
}

std::string spoilings_refusal(const std::string& content) {
  return refusal([&] { parse_spoilings(content, "s.csv", {"helper", "listener"}, {"wrong tag", "other"}); });
}

std::string levels_refusal(const std::string& content) {
  return refusal([&] { parse_levels(content, "l.csv"); });
}

}  // namespace

TEST(Manifest, NamesFilesAndWhatTheyAre) {
  const Manifest manifest = parse_manifest(
      "# readings of May\nFile;cable;rig;piece;condition;repeat\na.csv;bell "
      "wire;;left;warm;2\nz.s1p;;hall;;;\n",
      "m.csv");
  ASSERT_EQ(manifest.entries.size(), 2U);
  const ManifestEntry& first = manifest.entries[0];
  EXPECT_EQ(first.file, "a.csv");
  EXPECT_EQ(first.assignment.cable, "bell wire");
  EXPECT_EQ(first.assignment.piece, "left");
  EXPECT_EQ(first.assignment.condition, "warm");
  EXPECT_EQ(first.assignment.repeat, 2);
  EXPECT_EQ(first.place.line, 3);
  EXPECT_EQ(manifest.entries[1].assignment.rig, "hall");
  EXPECT_EQ(manifest.entries[1].assignment.repeat, 1);
  EXPECT_EQ(parse_manifest("file\na.csv\n", "m.csv").entries.size(), 1U);
}

TEST(Manifest, NamesCircumstances) {
  const Manifest manifest = parse_manifest(
      "file,cable,instrument,feature,state,bandwidth\na.csv,x,analyser,shield,on,1.46Hz\nb.csv,x,,,,\n",
      "m.csv");
  const Assignment& first = manifest.entries[0].assignment;
  EXPECT_EQ(first.instrument, "analyser");
  EXPECT_EQ(first.feature + "=" + first.state, "shield=on");
  EXPECT_EQ(first.bandwidth_hz, 1.46);
  EXPECT_EQ(manifest.entries[1].assignment.bandwidth_hz, 0);
  EXPECT_EQ(manifest_refusal("file,feature,state,bandwidth\na.csv,shield,,0Hz\n"),
            "m.csv:2:7: a feature needs its state, and a state its feature\n"
            "  a.csv,shield,,0Hz\n"
            "        ^^^^^^ write both, as feature shield and state on, or neither\n"
            "m.csv:2:15: bandwidth must be above 0, got \"0Hz\"\n"
            "  a.csv,shield,,0Hz\n"
            "                ^^^");
}

TEST(Manifest, LetsItsReaderAddProblems) {
  Manifest manifest = parse_manifest("file,cable\na.csv,x\n", "m.csv");
  manifest.problems.add(manifest.entries[0].place, "no such file", "beside the manifest");
  EXPECT_EQ(manifest.problems.report(), "m.csv:2:1: no such file\n  a.csv,x\n  ^^^^^ beside the manifest");
}

TEST(Manifest, ReportsEverythingWrong) {
  EXPECT_EQ(manifest_refusal("file,cabel\na.csv,x\n"),
            "m.csv:1:6: unknown column \"cabel\"; did you mean \"cable\"?\n"
            "  file,cabel\n"
            "       ^^^^^ columns: file, cable, rig, piece, condition, instrument, feature, state, "
            "bandwidth or repeat");
  EXPECT_EQ(manifest_refusal("cable\nx\n"),
            "m.csv:1:1: column file is missing\n"
            "  cable\n"
            "  ^^^^^ columns: file, cable, rig, piece, condition, instrument, feature, state, "
            "bandwidth or repeat");
  EXPECT_EQ(manifest_refusal("file,repeat\na.csv,two\n,1\na.csv,0\n"),
            "m.csv:2:7: repeat must be a whole number from 1, got \"two\"\n"
            "  a.csv,two\n"
            "        ^^^\n"
            "m.csv:3:1: file is empty\n"
            "  ,1\n"
            "  ^\n"
            "m.csv:4:1: file \"a.csv\" stands twice\n"
            "  a.csv,0\n"
            "  ^^^^^ first in line 2\n"
            "m.csv:4:7: repeat must be a whole number from 1, got \"0\"\n"
            "  a.csv,0\n"
            "        ^");
}

TEST(Answers, HaveAColumnForEachListener) {
  const KeyedAnswers keyed = parse_answers("trial;anna;Ben;note\n1;a;B;ok\n2;-;;\n", "a.csv", abx);
  ASSERT_EQ(keyed.answers.size(), 3U);  // the empty cell is not keyed yet
  EXPECT_EQ(keyed.answers[0].trial, 1);
  EXPECT_EQ(keyed.answers[0].listener, "Anna");
  EXPECT_EQ(keyed.answers[0].answer, "A");
  EXPECT_EQ(keyed.answers[0].note, "ok");
  EXPECT_EQ(keyed.answers[1].listener, "Ben");
  EXPECT_EQ(keyed.answers[1].answer_place.column, 5);
  EXPECT_EQ(keyed.answers[1].listener_place.line, 1);
  EXPECT_FALSE(keyed.answers[2].answer);
}

TEST(Answers, MayHaveARowForEachAnswer) {
  const KeyedAnswers keyed = parse_answers(
      "trial,listener,answer,sureness,note\n1,ben,b,Certain,\"hm, no\"\n1,anna,-,-,\n2,anna,,,\n", "a.csv",
      abx);
  ASSERT_EQ(keyed.answers.size(), 2U);
  EXPECT_EQ(keyed.answers[0].listener, "Ben");
  EXPECT_EQ(keyed.answers[0].answer, "B");
  EXPECT_EQ(keyed.answers[0].sureness, "certain");
  EXPECT_EQ(keyed.answers[0].note, "hm, no");
  EXPECT_FALSE(keyed.answers[1].answer);
  EXPECT_EQ(keyed.answers[1].sureness, "");
  EXPECT_EQ(parse_answers("trial,listener,answer\n1,x,any\n", "a.csv", {}).answers[0].answer, "any");
}

TEST(Answers, LetTheSittingAddProblems) {
  KeyedAnswers keyed = parse_answers("trial,anna\n17,A\n", "a.csv", abx);
  keyed.problems.add(keyed.answers[0].trial_place, "trial 17 is a spare that was not used");
  EXPECT_EQ(keyed.problems.report(), "a.csv:2:1: trial 17 is a spare that was not used\n  17,A\n  ^^");
}

TEST(Answers, ReportEverythingWrong) {
  EXPECT_EQ(answers_refusal("trial,anna,bne\n1,A,B\n"),
            "a.csv:1:12: no listener is called \"bne\"; did you mean \"Ben\"?\n"
            "  trial,anna,bne\n"
            "             ^^^ listeners: Anna or Ben");
  EXPECT_EQ(answers_refusal("trial,anna\n1,C\nx,A\n1,B\n"),
            "a.csv:2:3: answer must be A or B, got \"C\"\n"
            "  1,C\n"
            "    ^ write - for a missing answer, nothing for one to be keyed later\n"
            "a.csv:3:1: trial must be a whole number from 1, got \"x\"\n"
            "  x,A\n"
            "  ^\n"
            "a.csv:4:1: trial 1 of listener \"Anna\" stands twice\n"
            "  1,B\n"
            "  ^ first in line 2");
  EXPECT_EQ(answers_refusal("trial,listener,answer,sureness\n1,carl,A,very\n2,,B,guess\n"),
            "a.csv:2:3: no listener is called \"carl\"\n"
            "  1,carl,A,very\n"
            "    ^^^^ listeners: Anna or Ben\n"
            "a.csv:2:10: sureness must be guess or certain, got \"very\"\n"
            "  1,carl,A,very\n"
            "           ^^^^\n"
            "a.csv:3:3: listener is empty\n"
            "  2,,B,guess\n"
            "    ^ listeners: Anna or Ben");
  EXPECT_EQ(answers_refusal("trial,note\n1,x\n"),
            "a.csv:1:7: no column for a listener\n"
            "  trial,note\n"
            "        ^^^^ columns: trial and each listener, or trial, listener and answer");
  EXPECT_EQ(answers_refusal("trial,answer\n1,A\n"),
            "a.csv:1:7: column listener is missing\n"
            "  trial,answer\n"
            "        ^^^^^^ columns: trial, listener, answer, sureness or note");
}

TEST(Times, AreClockTimesOrMoments) {
  const KeyedTimes clock = parse_times("trial,presentation,started\n1,1,19:30:05\n1,2,19:31:35\n", "t.csv");
  ASSERT_EQ(clock.times.size(), 2U);
  EXPECT_EQ(clock.times[1].presentation, 2);
  EXPECT_EQ(*clock.times[1].time_of_day - *clock.times[0].time_of_day, std::chrono::seconds(90));
  EXPECT_FALSE(clock.times[0].moment);
  EXPECT_EQ(clock.times[0].as_typed, "19:30:05");
  EXPECT_EQ(parse_times("trial,presentation,started\n1,1,\n1,2,19:30:00\n", "t.csv").times.size(), 1U);
  const KeyedTimes moments =
      parse_times("trial,presentation,started\n1,1,2031-05-01T19:30:05+02:00\n", "t.csv");
  EXPECT_EQ(moments.times.at(0).moment, text::parse_rfc3339("2031-05-01T17:30:05Z"));
}

TEST(Times, ReportEverythingWrong) {
  EXPECT_EQ(times_refusal("trial,presentation,started\n1,1,19:30\n1,1,24:00:00\n0,2,7 pm\n"),
            "t.csv:2:5: started must be a time, got \"19:30\"\n"
            "  1,1,19:30\n"
            "      ^^^^^ write HH:MM:SS, or date and time such as 2031-05-01T19:30:00Z\n"
            "t.csv:3:1: presentation 1 of trial 1 stands twice\n"
            "  1,1,24:00:00\n"
            "  ^ first in line 2\n"
            "t.csv:3:5: started must be a time, got \"24:00:00\"\n"
            "  1,1,24:00:00\n"
            "      ^^^^^^^^ write HH:MM:SS, or date and time such as 2031-05-01T19:30:00Z\n"
            "t.csv:4:1: trial must be a whole number from 1, got \"0\"\n"
            "  0,2,7 pm\n"
            "  ^\n"
            "t.csv:4:5: started must be a time, got \"7 pm\"\n"
            "  0,2,7 pm\n"
            "      ^^^^ write HH:MM:SS, or date and time such as 2031-05-01T19:30:00Z");
  EXPECT_EQ(times_refusal("trial,presentation,started\n1,1,19:30:00\n1,2,2031-05-01T19:31:00Z\n"),
            "t.csv:3:5: times with and without a date in one table\n"
            "  1,2,2031-05-01T19:31:00Z\n"
            "      ^^^^^^^^^^^^^^^^^^^^ write all of them the same way");
}

TEST(Spoilings, HaveAReasonFromTheList) {
  const KeyedSpoilings keyed =
      parse_spoilings("trial,by,reason,words\n3,Helper,wrong TAG,\n4,listener,other,a car\n", "s.csv",
                      {"helper", "listener"}, {"wrong tag", "other"});
  ASSERT_EQ(keyed.spoilings.size(), 2U);
  EXPECT_EQ(keyed.spoilings[0].by, "helper");
  EXPECT_EQ(keyed.spoilings[0].reason, "wrong tag");
  EXPECT_EQ(keyed.spoilings[1].words, "a car");
  EXPECT_EQ(
      spoilings_refusal("trial,by,reason,words\n3,nobody,wrong tga,\n4,helper,other,\n4,helper,other,x\n"),
      "s.csv:2:3: by must be helper or listener, got \"nobody\"\n"
      "  3,nobody,wrong tga,\n"
      "    ^^^^^^\n"
      "s.csv:2:10: reason must be wrong tag or other, got \"wrong tga\"; did you mean \"wrong tag\"?\n"
      "  3,nobody,wrong tga,\n"
      "           ^^^^^^^^^\n"
      "s.csv:3:10: the reason \"other\" needs words\n"
      "  4,helper,other,\n"
      "           ^^^^^ say in the column words what it was\n"
      "s.csv:4:1: trial 4 stands twice\n"
      "  4,helper,other,x\n"
      "  ^ first in line 3");
}

TEST(Levels, AreKeptInDecibels) {
  const TerminalLevels levels = parse_levels(
      "tag,channel,when,level_dBV\n417,left,start,9.03\n417,right,start,\n417,Right,END,9\n", "l.csv");
  ASSERT_EQ(levels.levels.size(), 2U);
  EXPECT_EQ(levels.unit, text::Unit::decibel_volt);
  EXPECT_EQ(levels.levels[0].tag, "417");
  EXPECT_EQ(levels.levels[0].level_db, 9.03);
  EXPECT_EQ(levels.levels[1].channel, "right");
  EXPECT_EQ(levels.levels[1].moment, "end");
  EXPECT_EQ(parse_levels("tag,channel,when,level_dB\n417,left,start,-1\n", "l.csv").unit,
            text::Unit::decibel);
  const double volts =
      parse_levels("tag,channel,when,level_mV\n417,left,start,2830\n", "l.csv").levels[0].level_db;
  EXPECT_NEAR(volts, 20 * std::log10(2.83), 1e-12);
}

TEST(Levels, ReportEverythingWrong) {
  EXPECT_EQ(levels_refusal("tag,channel,when,level\n417,left,start,1\n"),
            "l.csv:1:18: column \"level\" names no unit of a level\n"
            "  tag,channel,when,level\n"
            "                   ^^^^^ write level_dBV, level_dBu, level_V or level_dB");
  EXPECT_EQ(levels_refusal("tag,channel,when\n417,left,start\n"),
            "l.csv:1:13: column level_dBV is missing\n"
            "  tag,channel,when\n"
            "              ^^^^ columns: tag, channel, when or level_dBV");
  EXPECT_EQ(levels_refusal("tag,channel,when,level_V\n41,left,start,1\n417,lefft,start,0\n417,lefft,start,1\n"
                           "417,left,start,1\n417,left,start,x\n"),
            "l.csv:2:1: tag must be three digits, got \"41\"\n"
            "  41,left,start,1\n"
            "  ^^\n"
            "l.csv:3:5: channel must be left, right or mono, got \"lefft\"; did you mean \"left\"?\n"
            "  417,lefft,start,0\n"
            "      ^^^^^\n"
            "l.csv:3:17: a level in volts must be above 0, got 0\n"
            "  417,lefft,start,0\n"
            "                  ^\n"
            "l.csv:4:5: channel must be left, right or mono, got \"lefft\"; did you mean \"left\"?\n"
            "  417,lefft,start,1\n"
            "      ^^^^^\n"
            "l.csv:6:1: a level of tag 417 stands twice for this channel and time\n"
            "  417,left,start,x\n"
            "  ^^^ first in line 5\n"
            "l.csv:6:16: level must be a number, got \"x\"\n"
            "  417,left,start,x\n"
            "                 ^ the header gives the unit");
}
