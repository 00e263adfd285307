#include "import/touchstone.h"

#include <gtest/gtest.h>

#include <cmath>

#include "import/refusal.h"

using namespace imported;

namespace {

std::string s1p_refusal(const std::string& content) { return curve_refusal(content, "l.s1p"); }

}  // namespace

// Z = R (1 + S) / (1 - S): S = 0 is R; S = 1/3 is 2 R; S = -1/3 is R / 2; S = j is R j (worked by hand).
TEST(Touchstone, TurnsReflectionIntoImpedance) {
  const Reading reading =
      one("! made by hand\n"
          "# kHz S RI R 50\n"
          "1 0 0 ! matched\n"
          "\n"
          "2\t0.3333333333333333 0\n"
          "3 -0.3333333333333333 0\n"
          "4 0 1\n",
          "load.S1P");
  EXPECT_EQ(reading.kind, "impedance");
  EXPECT_EQ(reading.rig, "living room");
  EXPECT_EQ(reading.columns, (std::vector<std::string>{"frequency_hz", "magnitude_ohm", "phase_deg"}));
  EXPECT_EQ(reading.values[0], (std::vector<double>{1000, 2000, 3000, 4000}));
  const double magnitudes[] = {50, 100, 25, 50};
  const double phases[] = {0, 0, 0, 90};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(reading.values[1][i], magnitudes[i], 1e-12 * magnitudes[i]);
    EXPECT_NEAR(reading.values[2][i], phases[i], 1e-12);
  }
}

TEST(Touchstone, ReadsEveryFormatAndParameterAlike) {
  // 8 ohm at 45 degrees, four times: 8 / sqrt(2) = 5.656854; 20 log10(8) = 18.061800 dB; 1/8 siemens at -45 degrees.
  for (const char* content : {"# Hz Z MA R 1\n100 8 45\n200 8 45\n",
                              "# R 1 RI Z hz\n100 5.656854 5.656854\n200 5.656854 5.656854\n",
                              "# HZ z db r 1\n100 18.061800 45\n200 18.061800 45\n",
                              "#hz Y MA R 1\n100 0.125 -45\n200 0.125 -45\n"}) {
    const Reading reading = one(content, "load.S1P");
    EXPECT_NEAR(reading.values[1][0], 8, 1e-6) << content;
    EXPECT_NEAR(reading.values[2][1], 45, 1e-9) << content;
  }
}

TEST(Touchstone, TakesTheDefaultsOfTheStandard) {
  const Parsed parsed = parse({"l.s1p", "#\n0.00001 0 0\n0.00002 0 0\n"}, named);
  EXPECT_EQ(parsed.readings[0].values[0], (std::vector<double>{10000, 20000}));
  EXPECT_EQ(parsed.readings[0].values[1], (std::vector<double>{50, 50}));
}

TEST(Touchstone, WarnsThatImpedancesAreReadAsNormalised) {
  const Parsed parsed = parse({"l.s1p", "# Hz Z RI R 50\n100 0.16 0\n1000 0.16 0\n"}, named);
  EXPECT_DOUBLE_EQ(parsed.readings[0].values[1][0], 8);
  EXPECT_EQ(parsed.warnings,
            std::vector<std::string>{
                "l.s1p:1:1: read as normalised to 50 ohm\n  # Hz Z RI R 50\n  ^ Touchstone 1.1 has it so; "
                "if the numbers are plain ohm or siemens, write R 1"});
}

TEST(Touchstone, RefusesWhatItCannotRead) {
  EXPECT_EQ(s1p_refusal(""), "l.s1p: holds no rows\n  expected a Touchstone 1.1 file of one port");
  EXPECT_EQ(s1p_refusal("1 2 3\n"),
            "l.s1p:1:1: a row before the option line\n  1 2 3\n  ^ expected # Hz S RI R 50 or alike");
  EXPECT_EQ(s1p_refusal("[Version] 2.0\n# Hz\n"),
            "l.s1p:1:1: Touchstone 2 is not read\n  [Version] 2.0\n  ^^^^^^^^^ save it as version 1.1");
  EXPECT_EQ(s1p_refusal("# Hz H RI R -1\n100 1 0\n100 x 0 0\n90 y 0\n0 1 1\n300 1 0\n"),
            "l.s1p:1:6: \"H\" is no option of a file of one port\n"
            "  # Hz H RI R -1\n"
            "       ^ expected # [Hz|kHz|MHz|GHz] [S|Z|Y] [RI|MA|DB] [R ohm], R above 0\n"
            "l.s1p:1:11: \"R\" is no option of a file of one port\n"
            "  # Hz H RI R -1\n"
            "            ^ expected # [Hz|kHz|MHz|GHz] [S|Z|Y] [RI|MA|DB] [R ohm], R above 0\n"
            "l.s1p:1:13: \"-1\" is no option of a file of one port\n"
            "  # Hz H RI R -1\n"
            "              ^^ expected # [Hz|kHz|MHz|GHz] [S|Z|Y] [RI|MA|DB] [R ohm], R above 0\n"
            "l.s1p:2:5: these numbers give no finite impedance above 0\n"
            "  100 1 0\n"
            "      ^\n"
            "l.s1p:3:1: 4 numbers in this row, a file of one port has 3\n"
            "  100 x 0 0\n"
            "  ^^^ frequency and two numbers, separated by spaces\n"
            "l.s1p:4:4: \"y\" is not a number\n"
            "  90 y 0\n"
            "     ^\n"
            "l.s1p:5:1: frequency must be above 0, got 0\n"
            "  0 1 1\n"
            "  ^ leave this row out\n"
            "l.s1p:6:5: these numbers give no finite impedance above 0\n"
            "  300 1 0\n"
            "      ^");
  EXPECT_EQ(refusal([] {
              parse({"l.s1p", "# Hz S RI R 50\n1 0 0\n2 0 0\n"}, {});
            }),
            "l.s1p: an impedance belongs to a rig, and none is named\n"
            "  name it with the file, or in the column rig of a manifest");
}
