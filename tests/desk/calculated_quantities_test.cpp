// How quantities are typed for the calculator.
#include <gtest/gtest.h>

#include <regex>

#include "desk/calculated.h"
#include "refusal.h"

namespace desk {
namespace {

/// The line with one word in place of another.
std::string with_word(std::vector<std::string> words, std::size_t place, const std::string& word) {
  words.at(place) = word;
  std::string line;
  for (const std::string& one : words) line += "'" + one + "' ";
  return line;
}

/// Every number that a line results in.
std::vector<double> all_amounts(const std::string& line) {
  std::vector<double> amounts;
  for (const Figure& figure : calculated(line).figures)
    if (const auto* number = std::get_if<double>(&figure.value)) amounts.push_back(*number);
  return amounts;
}

// Each quantity of each example in turn.
TEST(CalculatedQuantities, AreTypedWithTheirUnit) {
  const std::regex quantity(R"(([0-9.]+)([a-zA-Z][^|]*))");
  int tried = 0;
  for (const std::string& example : calculated_examples()) {
    const std::vector<std::string> words = typed_words(example);
    for (std::size_t place = 1; place < words.size(); ++place) {
      std::smatch part;
      if (!std::regex_match(words[place], part, quantity)) continue;
      SCOPED_TRACE(example + ": " + words[place]);
      ++tried;
      const std::string digits = part[1], unit = part[2];
      const auto refused = [&](const std::string& word) {
        return refusal([&] { calculated(with_word(words, place, word)); });
      };
      EXPECT_NE(refused(digits).find("\"" + digits + "\" has no unit: write " + digits), std::string::npos);
      EXPECT_NE(refused(digits + "h").find("is a time, expected a"), std::string::npos);
      EXPECT_NE(refused("-" + digits + unit).find(" must be "), std::string::npos);
      EXPECT_NE(refused(" ").find("does not begin with a number"), std::string::npos);
      const std::size_t point = digits.find('.');
      const std::string comma =
          point == std::string::npos ? digits + ",0" : std::string(digits).replace(point, 1, ",");
      EXPECT_EQ(all_amounts(with_word(words, place, comma + " " + unit)), all_amounts(example));
    }
  }
  EXPECT_GT(tried, 35);
}

TEST(CalculatedQuantities, AreAboveZeroWhereTheyMustBe) {
  EXPECT_EQ(refusal([] { calculated("conductor --area 0mm2"); }), "area must be above 0, got \"0mm2\"");
  EXPECT_EQ(refusal([] { calculated("conductor --area -1mm2"); }), "area must be above 0, got \"-1mm2\"");
  EXPECT_EQ(refusal([] { calculated("conductor --area 1mm2 --length 0m"); }),
            "length must be above 0, got \"0m\"");
  EXPECT_EQ(refusal([] { calculated("conductor --area 1mm2 --frequency 0Hz"); }),
            "frequency must be above 0, got \"0Hz\"");
  EXPECT_EQ(refusal([] { calculated("seat --noise 0V --sensitivity 88dB --distance 2m"); }),
            "noise must be above 0, got \"0V\"");
  EXPECT_EQ(refusal([] { calculated("thermal 0ohm"); }), "resistance must be above 0, got \"0ohm\"");
  const std::string circuit =
      "phase --source 50ohm --resistance 0ohm --inductance 0H --capacitance 0F --frequency 1kHz --load ";
  EXPECT_EQ(amount(circuit + "50ohm", "phase_deg"), 0);
  EXPECT_NE(refusal([&] { calculated(circuit + "0ohm"); }).find("load \"0ohm\": resistance_ohm must be"),
            std::string::npos);
  EXPECT_EQ(refusal([] {
              calculated("coax --diameter 1mm --shield 3mm --shield-resistance -1ohm/m --permittivity 2");
            }),
            "shield-resistance must be 0 or more, got \"-1ohm/m\"");
}

}  // namespace
}  // namespace desk
