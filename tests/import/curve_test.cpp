#include <gtest/gtest.h>

#include "import/import.h"
#include "import/refusal.h"

using namespace imported;

namespace {

using Columns = std::vector<std::string>;
using Values = std::vector<std::vector<double>>;

const Columns response_columns = {"frequency_hz", "level_db"};
const Values two_levels = {{20, 20000}, {-0.9, -0.3}};

}  // namespace

TEST(Response, IsReadTheSameInEveryTolerantForm) {
  for (const std::string content : {
           "frequency_Hz,level_dB\n20,-0.9\n20000,-0.3\n",
           "frequency_Hz;level_dB\n20;-0,9\n20000;-0,3\n",
           "frequency_Hz\tlevel_dB\r\n20\t-0,9\r\n20000\t-0,3\r\n",
           "\xEF\xBB\xBF"
           "Frequency (kHz), Level [dB]\r0.02, -0.9\r20, -0.3",
           "# swept sine\n\n frequency/Hz ; LEVEL_db ;\n# first\n20; -9e-1;\n;\n2e4; -.3;\n",
           "\"frequency_Hz\",\"level_dB\"\n\"20\",\"-0,9\"\n\"20000\",\"-0,3\"\n",
           "level_dB,frequency_khz\n-0.9,0.02\n-0.3,20\n",
           "frequency_Hz,level_dB,note\n20,-0.9,\"mains, a little\"\n20000,\xE2\x88\x92"
           "0.3,\n",
       }) {
    const Reading reading = one(content);
    EXPECT_EQ(reading.kind, "response") << content;
    EXPECT_EQ(reading.columns, response_columns) << content;
    EXPECT_EQ(reading.values, two_levels) << content;
  }
}

TEST(Response, KeepsItsNamesAndItsPhase) {
  const Assignment assignment = {"star quad", "hall", "left", "warm", 3};
  const Parsed parsed = parse({"r.csv", "frequency_Hz,level_dB,phase_deg\n20,0,1\n2000,0,-2\n"}, assignment);
  const Reading& reading = parsed.readings.at(0);
  EXPECT_EQ(reading.cable, "star quad");
  EXPECT_EQ(reading.rig, "hall");
  EXPECT_EQ(reading.piece, "left");
  EXPECT_EQ(reading.condition, "warm");
  EXPECT_EQ(reading.repeat, 3);
  EXPECT_EQ(reading.file, "r.csv");
  EXPECT_EQ(reading.sha256_hex, "");
  EXPECT_EQ(reading.columns, (Columns{"frequency_hz", "level_db", "phase_deg"}));
  EXPECT_EQ(reading.values, (Values{{20, 2000}, {0, 0}, {1, -2}}));
  EXPECT_TRUE(reading.as_typed.empty());
}

TEST(Impedance, IsChosenByItsMagnitude) {
  const Reading reading = one("frequency_Hz,magnitude_ohm,phase_deg\n20,7.5,30\n2000,3.2,-40\n");
  EXPECT_EQ(reading.kind, "impedance");
  EXPECT_EQ(reading.columns, (Columns{"frequency_hz", "magnitude_ohm", "phase_deg"}));
  EXPECT_EQ(reading.values, (Values{{20, 2000}, {7.5, 3.2}, {30, -40}}));
}

TEST(Noise, HasTheBandwidthThatComesWithItsFile) {
  Assignment assignment = {"star quad", "", "", "", 1};
  const Source levels = {"n.csv", "frequency_Hz,level_dBV\n50,-110\n2000,-130\n"};
  const Parsed without = parse(levels, assignment);
  EXPECT_EQ(without.readings.at(0).columns, (Columns{"frequency_hz", "level_dbv"}));
  ASSERT_EQ(without.warnings.size(), 1u);
  EXPECT_TRUE(without.warnings[0].starts_with("n.csv:2:4: the bandwidth of the levels is not known"));
  assignment.bandwidth_hz = 1.5;
  const Parsed with = parse(levels, assignment);
  EXPECT_EQ(with.readings.at(0).values[2], (std::vector<double>{1.5, 1.5}));
  EXPECT_TRUE(with.warnings.empty());
  EXPECT_NE(refusal([&] {
              parse({"n.csv", "frequency_Hz,level_dBV,bandwidth_Hz\n50,-110,1\n60,-1,1\n"}, assignment);
            }),
            "accepted");
  EXPECT_NE(refusal([&] {
              parse({"r.csv", "frequency_Hz,level_dB\n50,-1\n60,-1\n"}, assignment);
            }),
            "accepted");
}

TEST(Noise, IsALevelOrADensity) {
  const Reading level = one("frequency_Hz,level_dBV,bandwidth_Hz\n50,-110,11.5\n2000,-130,460\n");
  EXPECT_EQ(level.kind, "noise");
  EXPECT_EQ(level.columns, (Columns{"frequency_hz", "level_dbv", "bandwidth_hz"}));
  const Reading density = one("frequency_Hz,density_nV_per_sqrtHz\n50,40\n2000,4\n");
  EXPECT_EQ(density.kind, "noise");
  EXPECT_EQ(density.columns, (Columns{"frequency_hz", "density_volt_per_sqrt_hz"}));
  EXPECT_EQ(density.values, (Values{{50, 2000}, {40e-9, 4e-9}}));
  // 0 dBu is sqrt(0.6) V: 10 log10(0.6) = -2.2185 dBV (common usage in audio; recomputed).
  EXPECT_NEAR(one("frequency_Hz,level_dBu,bandwidth_Hz\n50,-110,1\n2000,-130,1\n").values[1][0], -112.2185,
              1e-4);
}

TEST(Curve, NeedsTheNameOfWhatItBelongsTo) {
  const auto unnamed = [](const std::string& content) {
    return refusal([&] { parse({"f.csv", content}, {}); });
  };
  EXPECT_EQ(unnamed("frequency_Hz,level_dB\n20,0\n200,0\n"),
            "f.csv: a response belongs to a cable, and none is named\n"
            "  name it with the file, or in the column cable of a manifest");
  EXPECT_EQ(unnamed("frequency_Hz,level_dBV\n20,-90\n200,-90\n"),
            "f.csv: a noise spectrum belongs to a cable, and none is named\n"
            "  name it with the file, or in the column cable of a manifest");
  EXPECT_EQ(unnamed("frequency_Hz,magnitude_ohm,phase_deg\n20,8,0\n200,8,0\n"),
            "f.csv: an impedance belongs to a rig, and none is named\n"
            "  name it with the file, or in the column rig of a manifest");
}

TEST(Curve, MustRiseInFrequency) {
  EXPECT_EQ(curve_refusal("frequency_Hz,level_dB\n20,0\n40,0\n30,0\n10,0\n"),
            "f.csv:4:1: frequency must rise from row to row, here it falls from 40 Hz\n"
            "  30,0\n"
            "  ^^ sort the rows by frequency, one row each");
  EXPECT_EQ(curve_refusal("frequency_Hz,level_dB\n20,0\n20,0\n"),
            "f.csv:3:1: frequency must rise from row to row, here it repeats 20 Hz\n"
            "  20,0\n"
            "  ^^ sort the rows by frequency, one row each");
  EXPECT_EQ(curve_refusal("frequency_Hz,level_dB\n20,0\n"),
            "f.csv:2:1: one row is not a curve\n"
            "  20,0\n"
            "  ^^ give two frequencies or more");
}

TEST(Curve, ReportsEveryBadCell) {
  EXPECT_EQ(
      curve_refusal(
          "frequency_Hz;magnitude_ohm;phase_deg\n0;8;0\n-5;8;0\n20;0;0\n30; 8 ohm;0\n40;x;\n50;inf;0x1\n"),
      "f.csv:2:1: frequency must be above 0, got 0\n"
      "  0;8;0\n"
      "  ^\n"
      "f.csv:3:1: frequency must be above 0, got -5\n"
      "  -5;8;0\n"
      "  ^^\n"
      "f.csv:4:4: magnitude must be above 0, got 0\n"
      "  20;0;0\n"
      "     ^\n"
      "f.csv:5:5: magnitude must be a number in ohm, got \"8 ohm\"\n"
      "  30; 8 ohm;0\n"
      "      ^^^^^ the header gives the unit: write 8\n"
      "f.csv:6:4: magnitude must be a number in ohm, got \"x\"\n"
      "  40;x;\n"
      "     ^\n"
      "f.csv:6:6: phase is missing\n"
      "  40;x;\n"
      "       ^ write a number in deg\n"
      "f.csv:7:4: magnitude must be a number in ohm, got \"inf\"\n"
      "  50;inf;0x1\n"
      "     ^^^\n"
      "f.csv:7:8: phase must be a number in deg, got \"0x1\"\n"
      "  50;inf;0x1\n"
      "         ^^^");
}

TEST(Curve, ReportsNamesShapeOrderAndCellsTogether) {
  EXPECT_EQ(refusal([] {
              Assignment unnamed;
              unnamed.bandwidth_hz = 1;
              parse({"f.csv", "frequency_Hz,level_dB\n20,0\nabc,0\n30\n10,0\n"}, unnamed);
            }),
            "f.csv: a response belongs to a cable, and none is named\n"
            "  name it with the file, or in the column cable of a manifest\n"
            "f.csv: a bandwidth is given with the file, but only levels of a noise spectrum have one\n"
            "  leave the bandwidth out\n"
            "f.csv:3:1: frequency must be a number in Hz, got \"abc\"\n"
            "  abc,0\n"
            "  ^^^\n"
            "f.csv:4:1: 1 cell in this row, the header has 2\n"
            "  30\n"
            "  ^^ nothing for \"level_dB\"\n"
            "f.csv:5:1: frequency must rise from row to row, here it falls from 20 Hz\n"
            "  10,0\n"
            "  ^^ sort the rows by frequency, one row each");
  EXPECT_EQ(curve_refusal("frequency_Hz,level_dB\n20,0\n30\n"),
            "f.csv:3:1: 1 cell in this row, the header has 2\n"
            "  30\n"
            "  ^^ nothing for \"level_dB\"");
}

TEST(Curve, RefusesDecimalCommasBetweenCommas) {
  EXPECT_EQ(curve_refusal("frequency_Hz,level_dB\n20,5,-0,1\n"),
            "f.csv:2:6: 4 cells in this row, the header has 2\n"
            "  20,5,-0,1\n"
            "       ^^ decimal commas? then separate the cells by ; or tab, in the header too");
}

TEST(Curve, WarnsOfWhatIsNotLikely) {
  const auto warnings = [](const std::string& content) { return parse({"f.csv", content}, named).warnings; };
  EXPECT_EQ(warnings("frequency_Hz,level_dB\n0.02,0\n20,0\n"),
            Columns{"f.csv:3:1: the highest frequency is 20 Hz\n  20,0\n  ^^ was kHz meant?"});
  EXPECT_EQ(warnings("frequency_kHz,level_dB\n20,0\n200000,0\n"),
            Columns{"f.csv:3:1: the highest frequency is 200000000 Hz\n  200000,0\n  ^^^^^^ was Hz meant?"});
  EXPECT_EQ(
      warnings("frequency_Hz,level_dB\n20,0\n2000,-300\n"),
      Columns{
          "f.csv:3:6: a level beyond 200 dB is not likely\n  2000,-300\n       ^^^^ is the column in dB?"});
  EXPECT_EQ(
      warnings("frequency_Hz,magnitude_ohm,phase_deg\n20,0.008,0\n2000,8,100\n"),
      (Columns{
          "f.csv:2:4: an impedance of this size is not likely for a load\n  20,0.008,0\n     ^^^^^ was "
          "another "
          "unit meant?",
          "f.csv:3:6: a phase of 100 deg is not that of a passive load\n  2000,8,100\n       ^ is the phase "
          "wrapped, or of the other sign?"}));
  EXPECT_EQ(warnings("frequency_Hz,density_V_per_sqrtHz\n20,4\n2000,4e-9\n"),
            Columns{"f.csv:2:4: a noise density of this size is not likely\n  20,4\n     ^ was nV meant?"});
}

TEST(Curve, CountsWarningsBeyondTwenty) {
  std::string content = "frequency_Hz,level_dB\n";
  for (int i = 0; i < 23; ++i) content += std::to_string(1000 + i) + ",999\n";
  const auto warnings = parse({"f.csv", content}, named).warnings;
  EXPECT_EQ(warnings.size(), 21U);
  EXPECT_EQ(warnings.back(), "f.csv: and 3 more warnings");
}
