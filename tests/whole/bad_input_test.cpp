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
           {{"new", "--title", "again"},
            "campaign.blindswap exists already\n"
            "choose another name, or go on with the campaign in it"},
           {{"cable", "thick-pair"},
            "there is a cable \"thick-pair\" already\n"
            "choose another name"},
           {{"cable", "x", "--built", "4mm2"},
            "--built \"4mm2\" cannot be read; write it like cross-section=4mm2"},
           {{"baseline", "thick-piar"}, "there is no cable \"thick-piar\"; did you mean \"thick-pair\"?"},
           {{"rig", "hut", "--source", "0.1"}, "source resistance: \"0.1\" has no unit: write 0.1ohm"},
           {{"rig", "hut", "--source", "3m"},
            "source resistance: \"3m\" is a length, expected a resistance such as 3ohm (m alone is metre)"},
           {{"rig", "hut", "--load", "8ohm||3m"},
            "load \"8ohm||3m\": \"3m\" is a length, expected a capacitance such as 3pF (m alone is metre)\n"
            "write a resistor (8ohm), a line input (47kohm||100pF) or a loudspeaker "
            "(3.0ohm + 0.1mH + [27ohm||475uF||21.3mH])"},
           {{"rig", "hut", "--volume-step", "-1dB"}, "volume step must be above 0, got \"-1dB\""},
           {{"import", "nowhere.csv"},
            "cannot read nowhere.csv: No such file or directory\n"
            "nothing was imported"},
           {{"import", "empty.csv"},
            "empty.csv: is empty\n"
            "  the first row names quantity and unit of each column\n"
            "nothing was imported"},
           {{"import", "unit.csv"},
            "unit.csv:1:16: \"mF\" is the unit of a capacitance, not of resistance\n"
            "  cable,length_m,resistance_mF\n"
            "                 ^^^^^^^^^^^^^ accepted: uohm, mohm, ohm, kohm, Mohm, uohm/m, mohm/m, ohm/km, "
            "ohm/m\n"
            "nothing was imported"},
           {{"import", "missing.csv"},
            "missing.csv:1:7: a table of cables needs a column length_m\n"
            "  cable,resistance_ohm\n"
            "        ^^^^^^^^^^^^^^ such a header is "
            "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF,frequency_Hz\n"
            "nothing was imported"},
           {{"import", "comma.csv"},
            "comma.csv:2:7: 4 cells in this row, the header has 3\n"
            "  x,3,0,05\n"
            "        ^^ decimal commas? then separate the cells by ; or tab, in the header too\n"
            "nothing was imported"},
           {{"import", "response.csv"},
            "response.csv: a response belongs to a cable, and none is named\n"
            "  name it with the file, or in the column cable of a manifest\n"
            "nothing was imported"},
           {{"import", "response.csv", "--cable", "bell-wire", "--bandwidth", "1Hz"},
            "response.csv: a bandwidth is given with the file, but only levels of a noise spectrum have one\n"
            "  leave the bandwidth out\n"
            "nothing was imported"},
           {{"import", "response.csv", "--cable", "bell-wire", "--bandwidth", "0Hz"},
            "--bandwidth must be above 0, got 0Hz"},
           {{"supersede", "9", "--why", "x"}, "there is no reading 9: they are numbered 1 to 2"},
           {{"import", "response.csv", "--cable", "bell-wie"},
            "response.csv: there is no cable \"bell-wie\"; did you mean \"bell-wire\"?\n"
            "add it first, or import its table\n"
            "response.csv:3:1: the highest frequency is 100 Hz\n"
            "  100,0\n"
            "  ^^^ was kHz meant?\n"
            "nothing was imported"},
           {{"cable", "thick/thin"},
            "a cable's name must be at most 80 characters without / : or =, got \"thick/thin\""},
           {{"import", std::string(300, 'x')},
            "cannot read " + std::string(300, 'x') + ": File name too long\nnothing was imported"},
           {{"import"}, "name files to import, or a manifest with --manifest, and not both"},
           {{"predict", "thick-pair", "bellwire", "--rig", "hall"},
            "no cable is called \"bellwire\"; did you mean \"bell-wire\"?"},
           {{"predict", "thick-pair", "bell-wire", "--rig", "hal"},
            "no rig is called \"hal\"; did you mean \"hall\"?"},
           {{"predict", "thick-pair", "bell-wire", "--rig", "hall", "--weighting", "pink-x"},
            "weighting must be one of 1khz, pink, pink-a, pink-k, programme, got \"pink-x\""},
           {{"lsit"}, "\"lsit\" is not known to blindswap; did you mean \"list\"?\nsee blindswap --help"},
           {{"list", "-c", "nowhere"},
            "there is no campaign nowhere\n"
            "look at the name, or create it"}})
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
           {plan({"--compare", "thick-pair"}),
            "\"thick-pair\" cannot be read; write it like heavy-pair/thin-pair"},
           {plan({"--compare", "thick-pair/thick-pair"}),
            "\"thick-pair/thick-pair\" compares a cable with itself; plan it as an identical pair"},
           {plan({"--compare", "thick-pair/bell-wire", "--trials", "4"}),
            "plan: thick-pair / bell-wire could not be supported with every answer right: 4 trials cannot "
            "reach the level 0.0500 that the family's first step needs\n"
            "give it at least 5 trials, or plan fewer comparisons"},
           {plan({"--compare", "thick-pair/bell-wire", "--level", "5"}),
            "plan: the level is \"5\"; expected a number above 0 and below 0.5, such as 0.05"},
           {plan({"--compare", "thick-pair/bell-wire", "--listener", "Ada"}),
            "plan: listener \"Ada\" is named twice; expected each name once"},
           {plan({"--compare", "thick-pair/bell-wire", "--primary", "Bela"}),
            "plan: the primary test is \"Bela\"; expected \"Ada\" or \"pooled\""},
           {plan({"--compare", "thick-pair/bell-wire", "--protocol", "abc"}),
            "no protocol is called \"abc\"; did you mean \"abx\"?"},
           {plan({"--compare", "thick-pair/bell-wire", "--sittings", "2"}),
            "1 comparison cannot be shared out over 2 sittings; plan fewer sittings, or split the trials"},
           {plan({"--known", "thick-pair:0.22"}),
            "known difference \"thick-pair:0.22\": \"0.22\" has no unit: write 0.22ohm"},
           {plan({"--compare", "thick-pair/bell-wire", "--do-not-judge-by", "weather"}),
            "no condition for judging is called \"weather\""},
           {plan({"--compare", "thick-pair/bell-wire", "--supplied-seed", "abc"}),
            "the supplied seed must be 64 hexadecimal digits, got \"abc\""},
           {plan({"--compare", "thick-pair/bell-wire", "--trials", "24", "--looks", "8,24,16"}),
            "--looks must be trials of a claim in rising order, 1 or more, got 8,24,16\n"
            "write them like --looks 8,16,24, the last as many as --trials"},
           {plan({"--compare", "thick-pair/bell-wire", "--trials", "24", "--looks", "8,16"}),
            "plan: thick-pair / bell-wire has 24 trials; with looks a claim has all its trials in one "
            "sitting, as "
            "many as the last look, 16\n"
            "set --trials, or the last of --looks, so that both agree"},
           {plan({"--compare", "thick-pair/bell-wire", "--excerpt", "Choir,0:57,0:42"}),
            "plan: excerpt \"Choir\" is over at 0:42 and begins at 0:57; expected an end after its start"},
           {plan({"--compare", "thick-pair/bell-wire", "--excerpt", "Choir,soon,0:42"}),
            "plan: excerpt \"Choir\", time is \"soon\"; expected minutes:seconds, such as 0:42"},
           {plan({"--compare", "thick-pair/bell-wire", "--dry-run", "--supplied-seed", "abc"}),
            "the supplied seed must be 64 hexadecimal digits, got \"abc\""},
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
           {{"sitting", "key", "1", "--by", "Edda", "--file", "unknown.csv"},
            "unknown.csv:1:7: no listener is called \"Eda\"; did you mean \"Ada\"?\n"
            "  trial,Eda\n"
            "        ^^^ listeners: Ada"},
           {{"sitting", "key", "1", "--by", "Edda", "--file", "range.csv"},
            "range.csv:2:1: this sitting has trials 1 to 18, not 19\n"
            "  19,A\n"
            "  ^^"},
           {{"sitting", "key", "1", "--by", "Edda", "--file", "spare.csv"},
            "spare.csv:2:4: trial 17 is a spare that was not needed: too few trials before it were spoiled\n"
            "  17,A\n"
            "     ^"},
           {{"sitting", "key", "1", "--by", "Edda", "--file", "word.csv"},
            "word.csv:2:3: answer must be A or B, got \"C\"\n"
            "  1,C\n"
            "    ^ write - for a missing answer, nothing for one to be keyed later"},
           {{"sitting", "key", "2", "--by", "Edda"}, "plan \"first\" has sittings 1 to 1, not 2"},
           {{"sitting", "spoil", "1", "--trial", "3", "--by", "helper", "--reason", "rain"},
            "a trial is spoiled for one of \"wrong tag\", \"audible fault\", \"interruption\", \"pace "
            "overrun\", \"other\", got \"rain\""},
           {{"sitting", "fact", "1", "--name", "saet", "--is", "row 2"},
            "no fact of a sitting is called \"saet\"; did you mean \"seat\"?"},
           {{"sitting", "correct", "1", "--trial", "3", "--listener", "Ada", "--answer", "A", "--why",
             "misread"},
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

// What was seen to lose something, or to end without a word.
TEST(Careful, NothingIsWrittenOverByAccident) {
  Folder folder;
  begin_sitting(folder, {"Ada"});
  const std::string campaign = content_of(folder / "campaign.blindswap");
  EXPECT_EQ(run_program(folder, {"report", "--dictionary", "-o", "campaign.blindswap"}).err,
            "campaign.blindswap is a campaign; it is never written over\n");
  EXPECT_EQ(run_program(folder, {"report", "--dictionary", "-o", "campaign.blindswap", "--replace"}).status,
            2);
  EXPECT_EQ(run_program(folder, {"report", "--dictionary", "-o", "cables.csv"}).err,
            "cables.csv exists already and holds something else\nchoose another name, or say --replace\n");
  EXPECT_EQ(content_of(folder / "cables.csv"), sample_cables);
  EXPECT_EQ(content_of(folder / "campaign.blindswap"), campaign);
  expect_done(folder, {"sitting", "sheets", "1", "--into", "papers"});
  folder.write("papers/first-1-answers-form.csv", "trial,Ada\n1,A\n");
  EXPECT_EQ(run_program(folder, {"sitting", "sheets", "1", "--into", "papers"}).status, 2);
  EXPECT_EQ(content_of(folder / "papers/first-1-answers-form.csv"), "trial,Ada\n1,A\n");
  EXPECT_EQ(run_program(folder, {"report", "--dictionary", "-o", "/dev/full"}).status, 1);
  EXPECT_TRUE(std::filesystem::is_character_file("/dev/full"));
}

TEST(Careful, ASittingBeginsWithEverybodysCharactersAndEndsWithEverythingSaid) {
  Folder folder;
  make_campaign(folder);
  expect_done(folder,
              {"plan", "first", "--rig", "hall", "--compare", "thick-pair/bell-wire", "--listener", "Ada"});
  expect_done(folder, {"sitting", "open", "1"});
  const Ran early = run_program(folder, {"sitting", "begin", "1"});
  EXPECT_EQ(early.status, 1);
  EXPECT_EQ(early.err,
            "listener \"Ada\" has added no characters to the order yet\n"
            "take them first, or say --without-characters; the report will say so\n");
  expect_done(folder, {"sitting", "begin", "1", "--without-characters"});
  std::string table = "trial,Ada\n", again = "trial,Ada\n";
  for (int trial = 1; trial <= 16; ++trial) {
    table += std::to_string(trial) + (trial == 4 ? ",-\n" : ",A\n");
    again += std::to_string(trial) + (trial == 5 ? ",-\n" : trial == 6 ? ",B\n" : ",A\n");
  }
  folder.write("answers.csv", table);
  folder.write("again.csv", again);
  expect_done(folder, {"sitting", "key", "1", "--by", "Edda", "--file", "answers.csv"});
  EXPECT_EQ(expect_done(folder, {"sitting", "key", "1", "--by", "Finn", "--file", "again.csv", "--second"}),
            "16 answers compared, 3 differ\n"
            "  trial 4, Ada: \"-\" first, \"A\" the second time\n"
            "  trial 5, Ada: \"A\" first, \"-\" the second time\n"
            "  trial 6, Ada: \"A\" first, \"B\" the second time\n"
            "look at the sheets again, then correct what was misread, or confirm it by correcting to the "
            "same answer\n");
  for (const auto& [trial, answer] :
       std::vector<std::pair<std::string, std::string>>{{"4", "A"}, {"5", "-"}, {"6", "A"}})
    expect_done(folder, {"sitting", "correct", "1", "--trial", trial, "--listener", "Ada", "--answer", answer,
                         "--why", "looked at the sheet again"});
  const Ran unsaid = run_program(folder, {"sitting", "end", "1"});
  EXPECT_EQ(unsaid.status, 1);
  EXPECT_EQ(unsaid.err,
            "sitting 1 lacks what nobody can add once it has ended\n"
            "not recorded:\n"
            "  who tagged the cables\n"
            "  separation declared by helper at the start\n"
            "  separation declared by Ada at the start\n"
            "  separation declared by helper at the end\n"
            "  separation declared by Ada at the end\n"
            "  what gave it away, asked of Ada\n"
            "record it, or say --incomplete\n");
  expect_done(folder, {"sitting", "end", "1", "--incomplete"});
  expect_done(folder, {"unseal"});
  const std::string report = expect_done(folder, {"report"});
  for (const char* words : {"Ada added no characters to the order", "the commitment was shown to nobody"})
    EXPECT_NE(report.find(words), std::string::npos) << words;
}

// A trim that is typed is one cable's; the others still go by what is predicted for all.
TEST(Trims, TypedForOneCableLeaveTheOthersAsPredicted) {
  Folder folder;
  make_campaign(folder);
  const auto trims = [&](const std::vector<std::string>& more) {
    std::vector<std::string> words = {"plan",       "first", "--rig",     "hall",
                                      "--listener", "Ada",   "--compare", "thick-pair/bell-wire",
                                      "--dry-run"};
    words.insert(words.end(), more.begin(), more.end());
    const std::string text = expect_done(folder, words);
    return text.substr(text.find("steps down"), text.find("\nsitting 1") - text.find("steps down"));
  };
  const std::string predicted = trims({});
  EXPECT_EQ(trims({"--trim", "bell-wire=0"}), predicted);
  EXPECT_NE(trims({"--trim", "bell-wire=1"}), predicted);
}

TEST(BadInput, APortThatIsNoneIsRefused) {
  const Folder folder;
  make_campaign(folder);
  const Ran ran = run_program(folder, {"sitting", "host", "1", "--port", "99999"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_NE(ran.err.find("--port: Value 99999 not in range"), std::string::npos) << ran.err;
}

}  // namespace
