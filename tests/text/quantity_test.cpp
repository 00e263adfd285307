#include "text/quantity.h"

#include <gtest/gtest.h>

#include <cmath>

#include "text/error.h"

using namespace text;

namespace {

std::string refusal(std::string_view text, Unit expected) {
  try {
    quantity(text, expected);
  } catch (const BadInput& error) {
    return error.what();
  }
  return "accepted";
}

}  // namespace

TEST(Quantity, ReadsNumbersWithUnits) {
  EXPECT_EQ(quantity("0.6ohm", Unit::ohm), 0.6);
  EXPECT_EQ(quantity("0,6 Ohm", Unit::ohm), 0.6);
  EXPECT_EQ(quantity("100mohm", Unit::ohm), 0.1);
  EXPECT_EQ(quantity("1e-3ohm", Unit::ohm), 1e-3);
  EXPECT_EQ(quantity("47 kOHM", Unit::ohm), 47e3);
  EXPECT_EQ(quantity("2.5mm2", Unit::square_metre), 2.5e-6);
  EXPECT_EQ(quantity("2.5mm^2", Unit::square_metre), 2.5e-6);
  EXPECT_EQ(quantity("470pF", Unit::farad), 470e-12);
  EXPECT_EQ(quantity("3m", Unit::metre), 3);
  EXPECT_EQ(quantity("300 cm", Unit::metre), 3);
  EXPECT_EQ(quantity("0.55uH", Unit::henry), 0.55e-6);
  EXPECT_EQ(quantity("90dB", Unit::decibel), 90);
  EXPECT_EQ(quantity("-0.5 db", Unit::decibel), -0.5);
  EXPECT_EQ(quantity("1kHz", Unit::hertz), 1000);
  EXPECT_EQ(quantity("1 khz", Unit::hertz), 1000);
  EXPECT_EQ(quantity("20C", Unit::celsius), 20);
  EXPECT_EQ(quantity("90s", Unit::second), 90);
  EXPECT_EQ(quantity("1.5min", Unit::second), 90);
  EXPECT_EQ(quantity("2h", Unit::second), 7200);
  EXPECT_EQ(quantity("78dBA", Unit::decibel_a), 78);
  EXPECT_EQ(quantity("7.98 ohm/km", Unit::ohm_per_metre), 7.98e-3);
  EXPECT_EQ(quantity("60pF/m", Unit::farad_per_metre), 60e-12);
  EXPECT_EQ(quantity("4nV/sqrtHz", Unit::volt_per_sqrt_hertz), 4e-9);
  EXPECT_EQ(quantity("4 nV_per_sqrtHz", Unit::volt_per_sqrt_hertz), 4e-9);
  EXPECT_EQ(quantity("50%", Unit::percent), 50);
}

TEST(Quantity, ReadsBothMicroSignsBothOhmSignsAndNoBreakSpaces) {
  EXPECT_EQ(quantity("1.5\xC2\xB5H", Unit::henry), 1.5e-6);
  EXPECT_EQ(quantity("1.5\xCE\xBCH", Unit::henry), 1.5e-6);
  EXPECT_EQ(quantity("50m\xCE\xA9", Unit::ohm), 50e-3);
  EXPECT_EQ(quantity("50m\xE2\x84\xA6", Unit::ohm), 50e-3);
  EXPECT_EQ(quantity("4 mm\xC2\xB2", Unit::square_metre), 4e-6);
  EXPECT_EQ(quantity("20\xC2\xA0\xC2\xB0"
                     "C",
                     Unit::celsius),
            20);
  EXPECT_EQ(quantity("45\xC2\xB0", Unit::degree), 45);
}

TEST(Quantity, ConvertsUnitsThatAreNotPowersOfTen) {
  EXPECT_NEAR(quantity("293.15K", Unit::celsius), 20, 1e-12);
  // 10 log10(0.6): 0 dBu is sqrt(0.6) V (common usage in audio; recomputed).
  EXPECT_NEAR(quantity("0dBu", Unit::decibel_volt), 10 * std::log10(0.6), 1e-12);
  EXPECT_NEAR(quantity("3.141592653589793rad", Unit::degree), 180, 1e-12);
}

TEST(Quantity, TellsMilliFromMegaFromMetreAndSecondFromSiemens) {
  EXPECT_EQ(quantity("1mohm", Unit::ohm), 1e-3);
  EXPECT_EQ(quantity("1Mohm", Unit::ohm), 1e6);
  EXPECT_EQ(quantity("1mm", Unit::metre), 1e-3);
  EXPECT_EQ(quantity("1ms", Unit::second), 1e-3);
  EXPECT_EQ(quantity("1mS", Unit::siemens), 1e-3);
  EXPECT_EQ(quantity("1mH", Unit::henry), 1e-3);
  EXPECT_EQ(refusal("1mHz", Unit::hertz), "\"1mHz\" has an unknown unit \"mHz\"; did you mean \"MHz\"?");
  EXPECT_EQ(refusal("3M", Unit::metre), "\"3M\" has an unknown unit \"M\"; did you mean \"m\"?");
  EXPECT_EQ(refusal("0.6m", Unit::ohm),
            "\"0.6m\" is a length, expected a resistance such as 0.6ohm (m alone is metre)");
}

TEST(Quantity, SaysWhatWasFoundAndExpected) {
  EXPECT_EQ(refusal("0.6", Unit::ohm), "\"0.6\" has no unit: write 0.6ohm");
  EXPECT_EQ(refusal("3", Unit::metre), "\"3\" has no unit: write 3m");
  EXPECT_EQ(refusal("", Unit::farad), "\"\" does not begin with a number; write a capacitance such as 0.6pF");
  EXPECT_EQ(refusal("ohm", Unit::ohm),
            "\"ohm\" does not begin with a number; write a resistance such as 0.6ohm");
  EXPECT_EQ(refusal("470pF", Unit::henry),
            "\"470pF\" is a capacitance, expected an inductance such as 470uH");
  EXPECT_EQ(refusal("470p", Unit::farad), "\"470p\" has an unknown unit \"p\"; did you mean \"pF\"?");
  EXPECT_EQ(refusal("12parsec", Unit::metre),
            "\"12parsec\" has an unknown unit \"parsec\"; a length is written in um, mm, cm, m, km");
  EXPECT_EQ(refusal("1e999ohm", Unit::ohm),
            "\"1e999ohm\" does not begin with a number; write a resistance such as 0.6ohm");
  EXPECT_EQ(refusal("1e308kohm", Unit::ohm), "\"1e308kohm\" is too large");
  EXPECT_EQ(
      refusal("0x10ohm", Unit::ohm),
      "\"0x10ohm\" has an unknown unit \"x10ohm\"; a resistance is written in uohm, mohm, ohm, kohm, Mohm");
  EXPECT_EQ(refusal("\x1B[31m", Unit::ohm),
            "\"?[31m\" does not begin with a number; write a resistance such as 0.6ohm");
}

TEST(Units, EveryKindOffersSymbolsThatReadBackAsThatKind) {
  for (int i = 0; i <= static_cast<int>(Unit::percent); ++i) {
    const auto unit = static_cast<Unit>(i);
    EXPECT_FALSE(symbols_of(unit).empty());
    for (const std::string& symbol : symbols_of(unit)) {
      ASSERT_TRUE(unit_named(symbol)) << symbol;
      EXPECT_EQ(unit_named(symbol)->unit, unit) << symbol;
    }
  }
}

TEST(WithUnit, ChoosesAFittingPrefix) {
  EXPECT_EQ(with_unit(4.7e-10, Unit::farad), "470 pF");
  EXPECT_EQ(with_unit(0.04788, Unit::ohm), "47.9 mohm");
  EXPECT_EQ(with_unit(0.6, Unit::ohm, 2), "600 mohm");
  EXPECT_EQ(with_unit(2.5e-6, Unit::square_metre), "2.50 mm2");
  EXPECT_EQ(with_unit(0, Unit::henry), "0.00 uH");
  EXPECT_EQ(with_unit(0.9999, Unit::ohm), "1.00 ohm");
  EXPECT_EQ(with_unit(-0.25, Unit::decibel), "-0.250 dB");
  EXPECT_EQ(with_unit(0.01596, Unit::ohm_per_metre), "16.0 mohm/m");
  EXPECT_EQ(with_unit(1e-15, Unit::farad), "0.00100 pF");
}
