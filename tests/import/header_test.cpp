#include "import/header.h"

#include <gtest/gtest.h>

#include "import/refusal.h"

using namespace imported;

TEST(Header, OfEveryKindIsItsOwnExample) {
  for (const Kind& kind : kinds()) {
    std::string row = "1";
    for (const char c : kind.example) row += c == ',' ? ",1" : "";
    text::Table table = text::parse_table(kind.example + "\n" + row + "\n", "f.csv");
    EXPECT_EQ(known_header(table).kind, &kind) << kind.example;
  }
}

TEST(Header, NamesTheUnitAcceptedWhenItIsWrongOrMissing) {
  EXPECT_EQ(curve_refusal("frequency_Hz,level_ohm\n20,1\n"),
            "f.csv:1:14: \"ohm\" is the unit of a resistance, not of level\n"
            "  frequency_Hz,level_ohm\n"
            "               ^^^^^^^^^ accepted: dB");
  EXPECT_EQ(curve_refusal("frequency,level_dB\n20,1\n"),
            "f.csv:1:1: column \"frequency\" names no unit: write frequency_Hz\n"
            "  frequency,level_dB\n"
            "  ^^^^^^^^^ accepted: Hz, kHz, MHz, GHz");
  EXPECT_EQ(curve_refusal("frequency_furlong,level_dB\n20,1\n"),
            "f.csv:1:1: unknown unit \"furlong\" of frequency\n"
            "  frequency_furlong,level_dB\n"
            "  ^^^^^^^^^^^^^^^^^ accepted: Hz, kHz, MHz, GHz");
  EXPECT_EQ(curve_refusal("frequency_mHz,level_dB\n20,1\n"),
            "f.csv:1:1: unknown unit \"mHz\" of frequency\n"
            "  frequency_mHz,level_dB\n"
            "  ^^^^^^^^^^^^^ accepted: Hz, kHz, MHz, GHz");
}

TEST(Header, NamesUnknownAndMissingColumns) {
  EXPECT_EQ(
      curve_refusal("freqency_Hz,level_dB\n20,1\n"),
      "f.csv:1:1: unknown column \"freqency_Hz\" in a response; did you mean \"frequency_Hz\"?\n"
      "  freqency_Hz,level_dB\n"
      "  ^^^^^^^^^^^ such a header is frequency_Hz,level_dB,phase_deg; a column note may hold anything");
  EXPECT_EQ(curve_refusal("frequency_Hz,level_dB,weather\n20,1,wet\n"),
            "f.csv:1:23: unknown column \"weather\" in a response\n"
            "  frequency_Hz,level_dB,weather\n"
            "                        ^^^^^^^ such a header is frequency_Hz,level_dB,phase_deg; a column note "
            "may hold "
            "anything");
  EXPECT_EQ(curve_refusal("frequency_Hz,magnitude_ohm\n20,1\n"),
            "f.csv:1:14: an impedance needs a column phase_deg\n"
            "  frequency_Hz,magnitude_ohm\n"
            "               ^^^^^^^^^^^^^ such a header is frequency_Hz,magnitude_ohm,phase_deg");
  EXPECT_EQ(curve_refusal("cable,frequency_Hz,level_dB\nx,20,1\n"),
            "f.csv:1:1: unknown column \"cable\" in a response\n"
            "  cable,frequency_Hz,level_dB\n"
            "  ^^^^^ such a header is frequency_Hz,level_dB,phase_deg; a column note may hold anything");
  EXPECT_EQ(cable_refusal("cable,resistance_ohm\nx,1\n"),
            "c.csv:1:7: a table of cables needs a column length_m\n"
            "  cable,resistance_ohm\n"
            "        ^^^^^^^^^^^^^^ such a header is "
            "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF,frequency_Hz");
}

TEST(Header, RefusesAQuantityGivenTwice) {
  EXPECT_EQ(cable_refusal("cable,length_m,resistance_ohm,resistance_mohm_per_m\nx,3,1,1\n"),
            "c.csv:1:31: resistance is given twice\n"
            "  cable,length_m,resistance_ohm,resistance_mohm_per_m\n"
            "                                ^^^^^^^^^^^^^^^^^^^^^ keep one of the columns");
}

TEST(Header, OfNoKindIsToldWhatKindsThereAre) {
  EXPECT_EQ(curve_refusal("frequency_Hz,weather\n20,wet\n"),
            "f.csv:1:1: this header is of no known kind of reading\n"
            "  frequency_Hz,weather\n"
            "  ^^^^^^^^^^^^ expected one of: "
            "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF,frequency_Hz | "
            "cable,frequency_Hz,phase_deg,rig | frequency_Hz,level_dB,phase_deg | "
            "frequency_Hz,magnitude_ohm,phase_deg | frequency_Hz,level_dBV | "
            "frequency_Hz,density_nV_per_sqrtHz");
}

TEST(Header, MistakesAreReportedTogetherWithThoseOfRows) {
  EXPECT_EQ(curve_refusal("frequency_Hz,level\n20,1\n30\n"),
            "f.csv:1:14: column \"level\" names no unit: write level_dB\n"
            "  frequency_Hz,level\n"
            "               ^^^^^ accepted: dB\n"
            "f.csv:3:1: 1 cell in this row, the header has 2\n"
            "  30\n"
            "  ^^ nothing for \"level\"");
  EXPECT_EQ(
      cable_refusal("cable,length_m,resistance,weather\nx,-1,,wet\n"),
      "c.csv:1:16: column \"resistance\" names no unit: write resistance_ohm\n"
      "  cable,length_m,resistance,weather\n"
      "                 ^^^^^^^^^^ accepted: uohm, mohm, ohm, kohm, Mohm, uohm/m, mohm/m, ohm/km, ohm/m\n"
      "c.csv:1:27: unknown column \"weather\" in a table of cables\n"
      "  cable,length_m,resistance,weather\n"
      "                            ^^^^^^^ such a header is "
      "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF,frequency_Hz; a column note may hold "
      "anything\n"
      "c.csv:2:3: length must be above 0, got -1\n"
      "  x,-1,,wet\n"
      "    ^^");
}

TEST(KindNamed, RefusesUnknownNames) {
  EXPECT_EQ(kind_named("impedance").title, "an impedance");
  EXPECT_THROW(kind_named("weather"), std::domain_error);
}
