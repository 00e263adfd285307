#include <gtest/gtest.h>

#include "whole/sample_campaign.h"

namespace {

const std::vector<std::string> seat = {"--sensitivity", "88dB", "--distance", "2.5m"};

std::vector<std::string> noise_words(std::vector<std::string> words,
                                     const std::vector<std::string>& more = seat) {
  words.insert(words.begin(), "noise");
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

void expect_status_2(const Folder& folder, const std::vector<std::string>& words,
                     const std::string& message) {
  const Ran ran = run_program(folder, words);
  EXPECT_EQ(ran.status, 2) << message;
  EXPECT_EQ(ran.err, message + "\n");
  EXPECT_EQ(ran.out, "") << message;
}

TEST(CircuitCommands, RefuseWhatIsNotThere) {
  Folder folder;
  make_campaign(folder);
  expect_status_2(folder, {"phase", "bellwire"},
                  "no cable is called \"bellwire\"; did you mean \"bell-wire\"?");
  expect_status_2(folder, {"phase", "bell-wire"},
                  "cable \"bell-wire\" has no phase reading\n"
                  "import a table: cable,frequency_Hz,phase_deg,rig");
  expect_status_2(folder, noise_words({"bellwire"}),
                  "no cable is called \"bellwire\"; did you mean \"bell-wire\"?");
  expect_status_2(folder, noise_words({"bell-wire", "--rig", "hal"}),
                  "no rig is called \"hal\"; did you mean \"hall\"?");
  expect_status_2(
      folder, noise_words({"bell-wire", "--rig", "hall"}),
      "cable \"bell-wire\" has no noise reading on rig \"hall\"\n"
      "import one: frequency_Hz,density_nV_per_sqrtHz, or frequency_Hz,level_dBV with --bandwidth");
  expect_status_2(folder, noise_words({"bell-wire"}, {"--sensitivity", "88", "--distance", "2.5m"}),
                  "\"88\" has no unit: write 88dB");
  expect_done(folder, {"new", "--title", "empty", "-c", "empty"});
  expect_status_2(folder, {"tradeoff", "-c", "empty"},
                  "the campaign has no cable yet\n"
                  "import a table of them: cable,length_m,resistance_ohm,inductance_uH,capacitance_pF");
  expect_done(folder, {"cable", "unread", "-c", "empty"});
  EXPECT_NE(expect_done(folder, {"tradeoff", "-c", "empty"}).find("unread"), std::string::npos);
  expect_status_2(folder, {"tradeoff", "-c", "empty", "-o", "x.html"},
                  "no cable can be drawn: inductance and capacitance are known of none\n"
                  "import them: cable,length_m,resistance_ohm,inductance_uH,capacitance_pF");
  EXPECT_FALSE(std::filesystem::exists(folder / "x.html"));
}

TEST(CircuitCommands, RefuseAnImpossibleSeatAndASpectrumWithoutABand) {
  Folder folder;
  make_campaign(folder);
  folder.write("noise.csv", "frequency_Hz,density_nV_per_sqrtHz\n100,5\n110,5\n");
  expect_done(folder, {"import", "noise.csv", "--cable", "bell-wire"});
  expect_status_2(folder, noise_words({"bell-wire"}, {"--sensitivity", "8dB", "--distance", "2.5m"}),
                  "sensitivity_db must be from 40 to 130, got 8");
  expect_status_2(folder, noise_words({"bell-wire", "--loudspeakers", "0"}),
                  "loudspeakers must be from 1 to 100, got 0");
  expect_status_2(
      folder, noise_words({"bell-wire"}),
      "reading 3 (noise.csv): a noise spectrum must hold at least one third-octave band from 20 Hz "
      "to 16 kHz, got 100 to 110 Hz");
}

TEST(CircuitCommands, PrintTextAndJson) {
  Folder folder;
  make_campaign(folder);
  folder.write("noise.csv", "frequency_Hz,density_nV_per_sqrtHz\n20,5\n20000,5\n");
  folder.write("phase.csv", "cable,frequency_Hz,phase_deg,rig\nbell-wire,1000,1,hall\n");
  expect_done(folder, {"import", "noise.csv", "--cable", "bell-wire", "--rig", "hall"});
  expect_done(folder, {"import", "phase.csv"});
  for (const auto& [words, part] : std::vector<std::pair<std::vector<std::string>, std::string>>{
           {{"tradeoff"}, "thick-pair"},
           {noise_words({"bell-wire"}), "not what its quasi-peak meter reads"},
           {{"phase", "bell-wire"}, "source 100 mohm, load 3.5ohm + 0.13mH + [31ohm||430uF||23mH]"}}) {
    EXPECT_NE(expect_done(folder, words).find(part), std::string::npos) << part;
    std::vector<std::string> as_json = words;
    as_json.push_back("--json");
    const std::string json = expect_done(folder, as_json);
    EXPECT_TRUE(json.starts_with("{\n")) << json;
    EXPECT_NE(json.find("\"schema\": 1"), std::string::npos) << json;
    const std::string help = expect_done(folder, {words[0], "--help"});
    EXPECT_NE(help.find("Example: blindswap " + words[0]), std::string::npos) << help;
  }
}

TEST(CircuitCommands, WriteThePictureAndReplaceNothingByAccident) {
  Folder folder;
  make_campaign(folder);
  const std::vector<std::string> words = {"tradeoff", "-o", "cables.html", "--svg", "cables.svg"};
  EXPECT_NE(expect_done(folder, words).find("page written to cables.html\npicture written to cables.svg\n"),
            std::string::npos);
  EXPECT_NE(content_of(folder / "cables.html").find("bell-wire"), std::string::npos);
  EXPECT_TRUE(content_of(folder / "cables.svg").starts_with("<?xml"));
  expect_status_2(
      folder, {"tradeoff", "-o", "cables.csv"},
      "cables.csv exists already and holds something else\nchoose another name, or say --replace");
  EXPECT_EQ(content_of(folder / "cables.csv"), sample_cables);
}

}  // namespace
