#include <gtest/gtest.h>

#include "import/import.h"
#include "import/refusal.h"

using namespace imported;

namespace {

using Columns = std::vector<std::string>;
using Values = std::vector<std::vector<double>>;
using Typed = std::vector<std::pair<std::string, std::string>>;

std::vector<std::string> warnings(const std::string& content) {
  return parse({"c.csv", content}, {}).warnings;
}

TEST(PhaseTable, HasAReadingForEachRow) {
  const Parsed parsed = parse(
      {"p.csv", "cable;frequency_kHz;phase_deg;rig;instrument\nx;500;-12,5;hall;analyser\nx;20;0,4;hall;\n"},
      {});
  ASSERT_EQ(parsed.readings.size(), 2u);
  EXPECT_EQ(parsed.readings[0].kind, "phase");
  EXPECT_EQ(parsed.readings[0].columns, (std::vector<std::string>{"frequency_hz", "phase_deg"}));
  EXPECT_EQ(parsed.readings[0].values, (std::vector<std::vector<double>>{{500e3}, {-12.5}}));
  EXPECT_EQ(parsed.readings[0].rig, "hall");
  EXPECT_EQ(parsed.readings[0].instrument, "analyser");
  EXPECT_TRUE(parsed.warnings.empty());
  EXPECT_TRUE(cable_refusal("cable,phase_deg,rig\nx,3,hall\n")
                  .starts_with("c.csv:1:17: a table of phases needs a column frequency"));
}

TEST(CableTable, HasTwoStatesOfOneCable) {
  const Parsed parsed = parse(
      {"c.csv", "cable,length_m,resistance_ohm,feature,state\nx,3,0.6,shield,on\nx,3,0.6,shield,off\n"}, {});
  ASSERT_EQ(parsed.readings.size(), 2u);
  EXPECT_EQ(parsed.readings[0].feature, "shield");
  EXPECT_EQ(parsed.readings[1].state, "off");
  EXPECT_NE(cable_refusal("cable,length_m,resistance_ohm,state\nx,3,0.6,on\n"), "accepted");
}

}  // namespace

TEST(CableTable, GivesOneReadingForEachRow) {
  const Parsed parsed =
      parse({"c.csv",
             "cable;length_m;resistance_mohm;inductance_uH;capacitance_pF;conductance_nS;frequency_kHz;"
             "temperature_C;piece;condition;repeat;note;comment\n"
             "bell wire;3;600;1,8;180;2;1;20;left;bent;2;stiff;old\n"
             "caf\xC3\xA9;2,5;48,2;;;;;;;;;;\n"},
            {});
  ASSERT_EQ(parsed.readings.size(), 2U);
  EXPECT_EQ(parsed.warnings, Columns{});
  const Reading& first = parsed.readings[0];
  EXPECT_EQ(first.kind, "cable-lcr");
  EXPECT_EQ(first.cable, "bell wire");
  EXPECT_EQ(first.piece, "left");
  EXPECT_EQ(first.condition, "bent");
  EXPECT_EQ(first.repeat, 2);
  EXPECT_EQ(first.note, "stiff; old");
  EXPECT_EQ(first.columns, (Columns{"length_m", "resistance_ohm", "inductance_henry", "capacitance_farad",
                                    "conductance_siemens", "temperature_celsius", "frequency_hz"}));
  EXPECT_EQ(first.values, (Values{{3}, {0.6}, {1.8e-6}, {180e-12}, {2e-9}, {20}, {1000}}));
  const Reading& second = parsed.readings[1];
  EXPECT_EQ(second.cable, "caf\xC3\xA9");
  EXPECT_EQ(second.repeat, 1);
  EXPECT_EQ(second.columns, (Columns{"length_m", "resistance_ohm"}));
  EXPECT_EQ(second.as_typed, (Typed{{"length_m", "2,5"}, {"resistance_mohm", "48,2"}}));
}

TEST(CableTable, MultipliesValuesPerMetreByTheLength) {
  const Parsed parsed = parse(
      {"c.csv", "cable,resistance_ohm_per_m,length_m,capacitance_pF/m,inductance_uH\nx,0.2,3,60,1.8\n"}, {});
  const Reading& reading = parsed.readings.at(0);
  EXPECT_EQ(reading.columns,
            (Columns{"length_m", "resistance_ohm", "inductance_henry", "capacitance_farad"}));
  EXPECT_DOUBLE_EQ(reading.values[1][0], 0.6);
  EXPECT_EQ(reading.values[2][0], 1.8e-6);
  EXPECT_DOUBLE_EQ(reading.values[3][0], 180e-12);
  EXPECT_EQ(reading.as_typed[1], (std::pair<std::string, std::string>{"resistance_ohm_per_m", "0.2"}));
}

TEST(CableTable, FillsNamesFromTheAssignment) {
  const Parsed parsed = parse({"c.csv", "cable,length_m,resistance_ohm,piece\nx,3,0.6,left\ny,3,0.6,\n"},
                              {"", "hall", "right", "warm", 4});
  EXPECT_EQ(parsed.readings[0].piece, "left");
  EXPECT_EQ(parsed.readings[1].piece, "right");
  EXPECT_EQ(parsed.readings[1].rig, "hall");
  EXPECT_EQ(parsed.readings[1].condition, "warm");
  EXPECT_EQ(parsed.readings[1].repeat, 4);
  EXPECT_EQ(refusal([] {
              parse({"c.csv", "cable,length_m,resistance_ohm\nx,3,0.6\n"}, named);
            }),
            "c.csv: a table of cables names its cables itself, but it is given with cable \"bell wire\"\n"
            "  leave the cable out");
}

TEST(CableTable, TellsRepeatsFromDoubles) {
  const std::string header = "cable,length_m,resistance_ohm,frequency_Hz,repeat\n";
  EXPECT_EQ(
      parse({"c.csv", header + "x,3,0.6,1000,1\nx,3,0.61,1000,2\nx,3,0.6,20000,1\n"}, {}).readings.size(),
      3U);
  EXPECT_EQ(cable_refusal(header + "x,3,0.6,1000,1\ny,3,0.6,1000,1\nx,3,0.61,1000,\n"),
            "c.csv:4:1: cable \"x\" stands twice under the same conditions\n"
            "  x,3,0.61,1000,\n"
            "  ^ first in line 2; tell them apart by piece, condition, state, repeat or frequency");
}

TEST(CableTable, ReportsEveryBadCell) {
  EXPECT_EQ(cable_refusal("cable; length_m; resistance_mohm; capacitance_pF; repeat\n"
                          ";3;48;100;1\n"
                          "a;0;48;100;1\n"
                          "b;;48;-100;1.5\n"
                          "c;3;;112 pF;0\n"
                          "d;3;-1;1 000;x\n"
                          "e;3;1;\xC2\xB5;1\n"),
            "c.csv:2:1: the name of the cable is missing\n"
            "  ;3;48;100;1\n"
            "  ^\n"
            "c.csv:3:3: length must be above 0, got 0\n"
            "  a;0;48;100;1\n"
            "    ^\n"
            "c.csv:4:3: length is missing\n"
            "  b;;48;-100;1.5\n"
            "    ^ write a number in m\n"
            "c.csv:4:7: capacitance must not be negative, got -100\n"
            "  b;;48;-100;1.5\n"
            "        ^^^^\n"
            "c.csv:4:12: repeat must be a whole number from 1, got \"1.5\"\n"
            "  b;;48;-100;1.5\n"
            "             ^^^\n"
            "c.csv:5:5: resistance is missing\n"
            "  c;3;;112 pF;0\n"
            "      ^ write a number in mohm\n"
            "c.csv:5:6: capacitance must be a number in pF, got \"112 pF\"\n"
            "  c;3;;112 pF;0\n"
            "       ^^^^^^ the header gives the unit: write 112\n"
            "c.csv:5:13: repeat must be a whole number from 1, got \"0\"\n"
            "  c;3;;112 pF;0\n"
            "              ^\n"
            "c.csv:6:5: resistance must not be negative, got -1\n"
            "  d;3;-1;1 000;x\n"
            "      ^^\n"
            "c.csv:6:8: capacitance must be a number in pF, got \"1 000\"\n"
            "  d;3;-1;1 000;x\n"
            "         ^^^^^\n"
            "c.csv:6:14: repeat must be a whole number from 1, got \"x\"\n"
            "  d;3;-1;1 000;x\n"
            "               ^\n"
            "c.csv:7:7: capacitance must be a number in pF, got \"\xC2\xB5\"\n"
            "  e;3;1;\xC2\xB5;1\n"
            "        ^");
}

TEST(CableTable, RefusesProductsBeyondADouble) {
  EXPECT_EQ(cable_refusal("cable,length_m,resistance_ohm_per_m\nx,1e200,1e200\n"),
            "c.csv:2:9: resistance times length is too large\n"
            "  x,1e200,1e200\n"
            "          ^^^^^");
}

TEST(CableTable, WarnsOfTotalsThatAreNotLikely) {
  EXPECT_EQ(warnings("cable,length_m,resistance_ohm,inductance_mH,capacitance_uF\nx,300,48,2,0.2\n"),
            (Columns{"c.csv:2:3: a length of 300 m in all is not likely for a cable\n  x,300,48,2,0.2\n    "
                     "^^^ was cm meant?",
                     "c.csv:2:7: a resistance of 48.0 ohm in all is not likely for a cable\n  "
                     "x,300,48,2,0.2\n        ^^ was "
                     "mohm meant?",
                     "c.csv:2:10: an inductance of 2.00 mH in all is not likely for a cable\n  "
                     "x,300,48,2,0.2\n           ^ was "
                     "uH or nH meant?",
                     "c.csv:2:12: a capacitance of 200 nF in all is not likely for a cable\n  "
                     "x,300,48,2,0.2\n             ^^^ "
                     "was pF meant?"}));
}

// G1 of the line constants: 2.5 mm2 at 4 mm in vacuum has 578.637932 nH/m and 19.228778 pF/m and carries a signal exactly at
// the speed of light (SciPy, recomputed; textbook formula, memory).
TEST(CableTable, WarnsOfACableFasterThanLight) {
  const std::string header = "cable,length_m,resistance_ohm,inductance_nH_per_m,capacitance_pF_per_m\n";
  EXPECT_EQ(warnings(header + "x,3,0.1,578.638,19.2288\n"), Columns{});
  EXPECT_EQ(warnings(header + "x,3,0.1,578.638,4.8072\n"),
            Columns{"c.csv:2:9: with this inductance, capacitance and length a signal would travel at 2.00 "
                    "times the speed of "
                    "light\n  x,3,0.1,578.638,4.8072\n          ^^^^^^^ check the three and their units"});
}
