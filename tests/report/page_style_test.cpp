#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <map>
#include <regex>
#include <string>

#include "report/html/page.h"

namespace {

using Colours = std::map<std::string, std::string>;

/// The custom properties of the `which`-th :root rule that are colours, laid over those of the first.
Colours colours_of(const std::string& style, int which) {
  static const std::regex property(R"(--([a-z-]+): (#[0-9a-f]{3,6});)");
  Colours colours;
  std::size_t at = 0;
  for (int i = 0; i <= which; ++i) {
    at = style.find(":root {", at) + 1;
    if (at == 0) throw std::runtime_error("no such :root rule");
    if (i != 0 && i != which) continue;
    const std::string rule = style.substr(at, style.find('}', at) - at);
    for (std::sregex_iterator match(rule.begin(), rule.end(), property), end; match != end; ++match)
      colours[(*match)[1]] = (*match)[2];
  }
  return colours;
}

double linear(double channel) {
  return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

/// Relative luminance, WCAG 2.2, definition of "relative luminance".
double luminance(std::string hex) {
  hex.erase(0, 1);
  if (hex.size() == 3) hex = {hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]};
  std::array<double, 3> channel{};
  for (std::size_t i = 0; i < 3; ++i)
    channel[i] = linear(std::stoi(hex.substr(2 * i, 2), nullptr, 16) / 255.0);
  return 0.2126 * channel[0] + 0.7152 * channel[1] + 0.0722 * channel[2];
}

/// WCAG 2.2, definition of "contrast ratio".
double contrast(const std::string& one, const std::string& other) {
  const double a = luminance(one), b = luminance(other);
  return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

}  // namespace

TEST(Contrast, IsThatOfTheDefinition) {
  EXPECT_NEAR(contrast("#000", "#ffffff"), 21, 1e-9);  // WCAG 2.2: ratios range from 1 to 21
  EXPECT_NEAR(contrast("#777777", "#777777"), 1, 1e-12);
}

TEST(PageStyle, ContrastsAsWcagAsksOnScreenInTheDarkAndInPrint) {
  const std::string style(report::page_style());
  for (const int which : {0, 1, 2}) {
    const Colours colours = colours_of(style, which);
    // WCAG 2.2, 1.4.3: text 4.5; 1.4.11: parts of graphics 3.
    for (const char* text : {"ink", "soft", "accent", "caution"})
      EXPECT_GE(contrast(colours.at(text), colours.at("paper")), 4.5) << which << " " << text;
    for (const char* line : {"chart-first", "chart-second", "chart-quiet"})
      EXPECT_GE(contrast(colours.at(line), colours.at("paper")), 3) << which << " " << line;
  }
}

TEST(PageStyle, ServesDarkPhoneAndPrint) {
  const std::string style(report::page_style());
  for (const char* rule :
       {"@media (prefers-color-scheme: dark)", "@media (max-width: 34rem)", "@media print", "@page"})
    EXPECT_NE(style.find(rule), std::string::npos) << rule;
}
