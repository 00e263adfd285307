#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <stdexcept>

#include "store/campaign.h"
#include "store/encoding.h"
#include "store/sample.h"

namespace {

using imported::Reading;
using store::Campaign;
using store::NumberedReading;
using store::SourceFile;
using store_test::Folder;

SourceFile source(const std::string& name, const std::string& text) {
  return {name, seal::to_hex(seal::sha256(text)), text};
}

const SourceFile lcr = source("lcr.csv",
                              "\xef\xbb\xbf"
                              "cable;length_m\r\nbell wire;2,00\r\n");
const SourceFile curve =
    source("curve.csv", std::string("frequency_Hz,level_dB\n20,0\n\0 raw \xff bytes", 40));

Reading lcr_reading() {
  return {.kind = "cable-lcr",
          .cable = "bell wire",
          .rig = "",
          .piece = "left",
          .condition = "warm",
          .repeat = 2,
          .file = "lcr.csv",
          .sha256_hex = lcr.sha256_hex,
          .note = "second try",
          .columns = {"length_m"},
          .values = {{2.0}},
          .as_typed = {{"length_m", "2,00"}}};
}

Reading impedance(const std::string& rig) {
  return {.kind = "impedance",
          .cable = "",
          .rig = rig,
          .piece = "",
          .condition = "",
          .repeat = 1,
          .file = "curve.csv",
          .sha256_hex = curve.sha256_hex,
          .note = "",
          .columns = {"frequency_hz", "magnitude_ohm", "phase_deg"},
          .values = {{20, 0.1, 1e300}, {-0.0, std::numeric_limits<double>::infinity(), 5e-324}, {1, 2, 3}},
          .as_typed = {}};
}

class Readings : public testing::Test {
 protected:
  Readings() : campaign(Campaign::create(folder / "a.campaign", "t")) {
    campaign.add_cable({.name = "bell wire"});
    campaign.add_rig({.name = "desk", .kind = "line level"});
    campaign.add_rig({.name = "living room", .kind = "loudspeaker"});
  }
  std::vector<bool> add(const std::vector<Reading>& readings, const std::vector<SourceFile>& sources) {
    return campaign.add_readings(readings, sources);
  }
  static void expect_same(const Reading& one, const Reading& other) {
    EXPECT_EQ(
        std::tie(one.kind, one.cable, one.rig, one.piece, one.condition, one.repeat, one.file, one.sha256_hex,
                 one.note, one.columns, one.values, one.as_typed),
        std::tie(other.kind, other.cable, other.rig, other.piece, other.condition, other.repeat, other.file,
                 other.sha256_hex, other.note, other.columns, other.values, other.as_typed));
  }

  Folder folder;
  Campaign campaign;
};

TEST_F(Readings, AreKeptWholeAndNumbered) {
  add({lcr_reading()}, {lcr});
  add({impedance("desk"), impedance("living room")}, {curve});
  const Campaign again = Campaign::open(folder / "a.campaign");
  const std::vector<NumberedReading> all = again.readings();
  ASSERT_EQ(all.size(), 3u);
  for (int at = 0; at < 3; ++at) EXPECT_EQ(all[static_cast<std::size_t>(at)].number, at + 1);
  expect_same(all[0].reading, lcr_reading());
  expect_same(all[1].reading, impedance("desk"));
  EXPECT_TRUE(std::signbit(all[1].reading.values[1][0]));
  expect_same(all[2].reading, impedance("living room"));
}

TEST_F(Readings, CanBeChosenByCableKindAndRig) {
  add({lcr_reading(), impedance("desk"), impedance("living room")}, {lcr, curve});
  const auto numbers = [&](const store::ReadingFilter& filter) {
    std::vector<int> found;
    for (const NumberedReading& each : campaign.readings(filter)) found.push_back(each.number);
    return found;
  };
  EXPECT_EQ(numbers({.cable = "bell wire"}), (std::vector{1}));
  EXPECT_EQ(numbers({.cable = ""}), (std::vector{2, 3}));
  EXPECT_EQ(numbers({.kind = "impedance"}), (std::vector{2, 3}));
  EXPECT_EQ(numbers({.rig = "desk"}), (std::vector{2}));
  EXPECT_EQ(numbers({.rig = ""}), (std::vector{1}));
  EXPECT_EQ(numbers({.cable = "bell wire", .kind = "impedance"}), (std::vector<int>{}));
}

TEST_F(Readings, HaveTheirFilesKeptByteForByteAndOnce) {
  add({lcr_reading()}, {lcr});
  Reading again = lcr_reading();
  again.repeat = 3;
  again.file = "copy.csv";
  add({again}, {{"copy.csv", lcr.sha256_hex, lcr.text}});
  add({impedance("desk")}, {curve, curve});
  EXPECT_EQ(campaign.source(lcr.sha256_hex), lcr);
  EXPECT_EQ(campaign.source(curve.sha256_hex), curve);
  EXPECT_EQ(campaign.readings().at(1).reading.file, "copy.csv");
  EXPECT_EQ(store_test::Stranger(folder / "a.campaign").ask("SELECT count(*) FROM source"), "2\n");
}

TEST_F(Readings, RefuseAnUnknownCableAndKeepNothing) {
  Reading other = lcr_reading();
  other.cable = "Bell Wire";
  EXPECT_REFUSAL(
      add({lcr_reading(), other}, {lcr}), text::BadInput,
      "there is no cable \"Bell Wire\"; did you mean \"bell wire\"?\nnothing was imported; the first "
      "reading of it is cable-lcr of lcr.csv, cable \"Bell Wire\", piece \"left\", condition \"warm\", "
      "repeat 2");
  EXPECT_TRUE(campaign.readings().empty());
  EXPECT_EQ(store_test::Stranger(folder / "a.campaign").ask("SELECT count(*) FROM source"), "0\n");
}

TEST_F(Readings, RefuseAnUnknownRig) {
  EXPECT_REFUSAL(add({impedance("attic")}, {curve}), text::BadInput,
                 "there is no rig \"attic\"\nnothing was imported; the first reading of it is impedance of "
                 "curve.csv, rig \"attic\", repeat 1");
}

TEST_F(Readings, AreKeptOnceHoweverOftenTheyComeInOneImportOrInTwo) {
  EXPECT_EQ(add({lcr_reading(), lcr_reading()}, {lcr}), (std::vector{true, false}));
  EXPECT_EQ(add({impedance("desk"), lcr_reading()}, {curve, lcr}), (std::vector{true, false}));
  EXPECT_EQ(campaign.readings().size(), 2u);
  Reading other_piece = lcr_reading();
  other_piece.piece = "right";
  Reading other_state = lcr_reading();
  other_state.feature = "shield";
  other_state.state = "off";
  EXPECT_EQ(add({other_piece, other_state}, {lcr}), (std::vector{true, true}));
  EXPECT_EQ(campaign.readings()[3].reading.state, "off");
}

TEST_F(Readings, OfOneRowTellEachOtherApartByWhatWasTyped) {
  Reading higher = lcr_reading();
  higher.as_typed.front().second += "0";
  EXPECT_EQ(add({lcr_reading(), higher}, {lcr}), (std::vector{true, true}));
}

TEST_F(Readings, RefuseTheSameOneFromAnotherInstrument) {
  add({lcr_reading()}, {lcr});
  Reading other = lcr_reading();
  other.instrument = "bridge";
  EXPECT_REFUSAL(
      add({other}, {lcr}), text::BadInput,
      "the reading is there already with another instrument or bandwidth, as number 1: cable-lcr of lcr.csv, "
      "cable \"bell wire\", piece \"left\", condition \"warm\", repeat 2\nnothing was imported; to correct "
      "it, "
      "import it under another repeat and let that supersede it");
}

TEST_F(Readings, AreSupersededAndKept) {
  Reading again = lcr_reading();
  again.repeat = 3;
  add({lcr_reading(), again, impedance("desk")}, {lcr, curve});
  campaign.supersede(1, 2, "wrong range");
  ASSERT_EQ(campaign.readings().size(), 2u);
  EXPECT_EQ(campaign.readings()[0].number, 2);
  const auto all = campaign.readings({.superseded_too = true});
  ASSERT_EQ(all.size(), 3u);
  EXPECT_EQ(all[0].correction->by, 2);
  EXPECT_EQ(all[0].correction->why, "wrong range");
  EXPECT_FALSE(all[1].correction);
  campaign.supersede(3, std::nullopt, "not this loudspeaker");
  EXPECT_EQ(campaign.readings({.kind = "impedance"}).size(), 0u);
  EXPECT_EQ(campaign.readings({.superseded_too = true})[2].correction->by, 0);
}

TEST_F(Readings, AreNotSupersededByJustAnything) {
  Reading again = lcr_reading();
  again.repeat = 3;
  EXPECT_REFUSAL(campaign.supersede(1, 2, "x"), text::BadInput,
                 "there is no reading 1: none was imported yet");
  add({lcr_reading(), again, impedance("desk")}, {lcr, curve});
  EXPECT_REFUSAL(campaign.supersede(4, 2, "x"), text::BadInput,
                 "there is no reading 4: they are numbered 1 to 3");
  EXPECT_REFUSAL(campaign.supersede(1, 2, ""), text::BadInput, "why reading 1 is superseded must be said");
  EXPECT_THROW(campaign.supersede(1, 1, "itself"), text::BadInput);
  EXPECT_THROW(campaign.supersede(1, 3, "of another kind"), text::BadInput);
  campaign.supersede(1, 2, "wrong range");
  EXPECT_REFUSAL(campaign.supersede(1, 2, "again"), text::BadInput,
                 "reading 1 is superseded already by 2: wrong range");
  EXPECT_THROW(campaign.supersede(2, 1, "back"), text::BadInput);
}

TEST_F(Readings, RefuseChecksumsThatAreWrongAndColumnsThatAreNotEqual) {
  EXPECT_THROW(add({lcr_reading()}, {{"lcr.csv", lcr.sha256_hex, "another text"}}), std::invalid_argument);
  EXPECT_THROW(add({lcr_reading()}, {curve}), std::invalid_argument);
  Reading uneven = impedance("desk");
  uneven.values[1].pop_back();
  EXPECT_THROW(add({uneven}, {curve}), std::invalid_argument);
  uneven.values.clear();
  EXPECT_THROW(add({uneven}, {curve}), std::invalid_argument);
  EXPECT_TRUE(campaign.readings().empty());
}

TEST_F(Readings, KnowNoFileOfAnotherChecksum) {
  EXPECT_REFUSAL(campaign.source("ab"), text::BadInput, "no imported file has the checksum \"ab\"");
}

TEST_F(Readings, ShowAFileThatWasChangedFromOutside) {
  add({lcr_reading()}, {lcr});
  store_test::Stranger stranger(folder / "a.campaign");
  ASSERT_EQ(stranger.run("DROP TRIGGER source_never_changes; UPDATE source SET text = x'41'"), "");
  EXPECT_REFUSAL(
      campaign.source(lcr.sha256_hex), text::BadInput,
      "the imported file lcr.csv does not fit its checksum: the campaign was changed by something other "
      "than blindswap\ngo back to a copy that was made before");
}

// IEEE 754-2019, table 3.5 (binary64): 1.0 has the bits 0x3FF0000000000000, -2.0 the bits 0xC000000000000000.
TEST(Encoding, KeepsNumbersLowestByteFirst) {
  EXPECT_EQ(store::bytes_of_columns({{1.0}, {-2.0}}),
            std::string("\0\0\0\0\0\0\xf0\x3f\0\0\0\0\0\0\0\xc0", 16));
  EXPECT_THROW(store::columns_of_bytes("12345678", 2), text::BadInput);
  EXPECT_THROW(store::columns_of_bytes("12345678", 0), text::BadInput);
  EXPECT_EQ(store::columns_of_bytes("", 0), store::Columns{});
  EXPECT_EQ(store::columns_of_bytes("", 2), (store::Columns{{}, {}}));
}

TEST(Encoding, RefusesListsThatAreDamaged) {
  const std::string words =
      "the campaign is damaged: a list in it cannot be read\ngo back to a copy that was made before";
  EXPECT_REFUSAL(store::pairs_of_text("[[\"a\"]"), text::BadInput, words);
  EXPECT_REFUSAL(store::pairs_of_text("[\"a\"]"), text::BadInput, words);
  EXPECT_REFUSAL(store::names_of_text("[1]"), text::BadInput, words);
}

}  // namespace
