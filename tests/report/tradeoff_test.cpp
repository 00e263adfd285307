#include "report/tradeoff/tradeoff.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <regex>
#include <set>

#include "electrical/line_facts.h"
#include "refusal.h"
#include "report/html/page.h"
#include "report/page_reader.h"
#include "report/svg/label_places.h"

using namespace report;

namespace {

ShelfCable cable(const std::string& name, double ohm, double permittivity, double loop_ohm_per_m = 0.01) {
  const double slowness = std::sqrt(permittivity) / electrical::kSpeedOfLight;
  return {name, electrical::Cable{.resistance_ohm_per_m = loop_ohm_per_m,
                                  .inductance_henry_per_m = ohm * slowness,
                                  .capacitance_farad_per_m = slowness / ohm,
                                  .length_m = 3}};
}

std::vector<ShelfCable> many_cables(int count) {
  std::vector<ShelfCable> cables;
  for (int i = 0; i < count; ++i)
    cables.push_back(cable("many-" + std::to_string(i) + "-", 90 + 1.5 * i, 1.8 + 0.31 * (i % 7)));
  return cables;
}

int occurrences(const std::string& text, const std::string& part) {
  int found = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++found;
  return found;
}

/// Where words of the drawing stand, by their text.
std::map<std::string, Box> words_of(const std::string& svg) {
  static const std::regex text(
      R"re(<text x="([-0-9.]+)" y="([-0-9.]+)" text-anchor="middle"[^>]*>([^<]*)</text>)re");
  std::map<std::string, Box> words;
  for (std::sregex_iterator match(svg.begin(), svg.end(), text), end; match != end; ++match) {
    const double x = std::stod((*match)[1]), y = std::stod((*match)[2]);
    const double half = 3.3 * static_cast<double>((*match)[3].length());
    words[(*match)[3]] = {x - half, y - 9, x + half, y};
  }
  return words;
}

bool overlap(const Box& one, const Box& other) {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}

void expect_well_formed(const std::string& svg) {
  for (const std::string& fault : read_page("<html>" + svg + "</html>").faults) ADD_FAILURE() << fault;
}

}  // namespace

TEST(TradeoffFigure, NamesEveryCableOnceAndEscapesIt) {
  const std::string svg =
      tradeoff_figure({cable("heavy", 100, 2), cable("<b>&\"x\"", 30, 3), cable("bell", 120, 2.5)}).svg;
  for (const char* name : {">heavy</text>", ">&lt;b&gt;&amp;&quot;x&quot;</text>", ">bell</text>"})
    EXPECT_EQ(occurrences(svg, name), 1) << name;
  EXPECT_EQ(occurrences(svg, "heavy"), 1);
  EXPECT_EQ(svg.find("<b>"), std::string::npos);
  expect_well_formed(svg);
  EXPECT_NE(svg.find("<title id=\"tradeoff-title\">"), std::string::npos);
  EXPECT_NE(svg.find("<desc id=\"tradeoff-desc\">3 cables"), std::string::npos);
  EXPECT_NE(svg.find("impossible: faster than light"), std::string::npos);
}

TEST(TradeoffFigure, NumbersManyCablesBesideAListInTheOrderOfImpedance) {
  std::vector<ShelfCable> cables = many_cables(32);
  std::reverse(cables.begin(), cables.end());
  const std::string svg = tradeoff_figure(cables).svg;
  expect_well_formed(svg);
  const auto words = words_of(svg);
  for (int i = 0; i < 32; ++i) {
    const std::string number = std::to_string(i + 1), name = "many-" + std::to_string(i) + "-";
    EXPECT_EQ(occurrences(svg, name), 1) << name;
    EXPECT_NE(svg.find(">" + number + "  " + name), std::string::npos) << name;
    ASSERT_TRUE(words.contains(number)) << number;
    for (int other = 0; other < i; ++other)
      EXPECT_FALSE(overlap(words.at(number), words.at(std::to_string(other + 1)))) << i << " " << other;
  }
}

TEST(TradeoffFigure, ListsLongNamesOnSeveralLines) {
  const std::string svg =
      tradeoff_figure({cable("a name of more than twenty-four characters", 100, 2), cable("b", 50, 2)}).svg;
  EXPECT_NE(svg.find(">1  b</text>"), std::string::npos);
  EXPECT_NE(svg.find(">2  a name of more than</text>"), std::string::npos);
  EXPECT_NE(svg.find("twenty-four characters</text>"), std::string::npos);
}

TEST(TradeoffFigure, TellsTheClassesOfResistanceByShape) {
  const std::string svg = tradeoff_figure({cable("a", 30, 2, 0.0199), cable("b", 60, 2, 0.02),
                                           cable("c", 120, 2, 0.0999), cable("d", 200, 2, 0.1)})
                              .svg;
  // One disc and two rings, and one each of the legend.
  EXPECT_EQ(occurrences(svg, "r=\"4\" fill=\"var(--chart-first"), 1 + 1);
  EXPECT_EQ(occurrences(svg, "r=\"4\" fill=\"var(--chart-paper"), 2 + 1);
  EXPECT_EQ(occurrences(svg, "<polygon"), 2);
  for (const char* words : {"below 20 mohm/m", "20 to 100 mohm/m", "100 mohm/m and more"})
    EXPECT_EQ(occurrences(svg, words), 1) << words;
}

// A cable of relative permittivity 1 lies on the line of light: straight, as both axes are logarithmic.
TEST(TradeoffFigure, PutsACableAtTheSpeedOfLightOnItsLine) {
  const std::string svg = tradeoff_figure({cable("air", 150, 1), cable("thick", 20, 4)}).svg;
  static const std::regex line(
      R"re(<polyline points="([-0-9.]+),([-0-9.]+) .*?([-0-9.]+),([-0-9.]+)" fill="none" stroke="var\(--chart-first)re");
  static const std::regex disc(R"re(<circle cx="([-0-9.]+)" cy="([-0-9.]+)")re");
  std::smatch ends, mark;
  ASSERT_TRUE(std::regex_search(svg, ends, line));
  ASSERT_GT(occurrences(svg, "<circle"), 2);
  const double x1 = std::stod(ends[1]), y1 = std::stod(ends[2]), x2 = std::stod(ends[3]),
               y2 = std::stod(ends[4]);
  std::vector<double> distances;
  for (std::sregex_iterator match(svg.begin(), svg.end(), disc), end; match != end; ++match) {
    const double x = std::stod((*match)[1]), y = std::stod((*match)[2]);
    distances.push_back(((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1)) / std::hypot(x2 - x1, y2 - y1));
  }
  // Drawn in the order of the impedance, so the one at the speed of light is the second.
  EXPECT_NEAR(distances.at(1), 0, 0.02);
  EXPECT_GT(std::abs(distances.at(0)), 20);
}

TEST(TradeoffFigure, KeepsExtremeCablesInThePlot) {
  const std::string svg = tradeoff_figure({cable("a", 1e-3, 1e3), cable("b", 1e6, 1e-6)}).svg;
  expect_well_formed(svg);
  EXPECT_EQ(occurrences(svg, ">a</text>") + occurrences(svg, ">b</text>"), 2);
  EXPECT_NE(svg.find("1 in the half of the plot that would be faster than light"), std::string::npos);
}

TEST(TradeoffFigure, RefusesToDrawNothing) {
  EXPECT_EQ(refusal([] { tradeoff_figure({{"unread"}}); }),
            "no cable has an inductance and a capacitance to be drawn by");
}

TEST(TradeoffFigure, StandsAloneInTheColoursOfPaper) {
  const std::string svg = standalone(tradeoff_figure(many_cables(5)).svg);
  ASSERT_TRUE(svg.starts_with("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg "));
  expect_well_formed(svg.substr(svg.find("<svg")));
  for (const char* unknown : {"var(", "currentColor"})
    EXPECT_EQ(svg.find(unknown), std::string::npos) << unknown;
  const std::string style(page_style());
  const std::string print = style.substr(style.find("@media print"));
  std::set<std::string> colours;
  static const std::regex colour("=\"(#[0-9a-f]+)\"");
  for (std::sregex_iterator match(svg.begin(), svg.end(), colour), end; match != end; ++match)
    colours.insert((*match)[1]);
  EXPECT_GE(colours.size(), 6U);
  for (const std::string& each : colours) EXPECT_NE(print.find(": " + each + ";"), std::string::npos) << each;
}

TEST(TradeoffPage, IsWellFormedCompleteAndLoadsNothing) {
  const std::string html =
      tradeoff_page("<i>Shelf", {cable("a & b", 100, 2), {"unread"}, cable("fast", 100, 0.5)}, "0.1.0");
  for (const std::string& fault : read_page(html).faults) ADD_FAILURE() << fault;
  for (const char* word : {"https://", "src=", "<script", "<link", "@import", "<i>", "Report of a blind"})
    EXPECT_EQ(html.find(word), std::string::npos) << word;
  EXPECT_EQ(occurrences(html, "http://"), 1);  // the name of SVG
  for (const char* word : {"&lt;i&gt;Shelf", "no readings", "faster than light</td>", "length of fast."})
    EXPECT_NE(html.find(word), std::string::npos) << word;
}

TEST(LabelPlaces, TakeTheFirstClearWishAndElseWhatCoversLeast) {
  const Box here{0, 0, 10, 10}, beside{10, 0, 20, 10}, half_over{5, 0, 15, 10}, outside{95, 0, 105, 10};
  const Box within{0, 0, 100, 100};
  EXPECT_EQ(label_places({{here, beside}}, {here}, within).at(0).left, 10);
  EXPECT_EQ(label_places({{here, beside}, {here, beside}}, {}, within).at(1).left, 10);
  EXPECT_EQ(label_places({{here, half_over}}, {here}, within).at(0).left, 5);
  EXPECT_EQ(label_places({{outside, beside}}, {}, within).at(0).left, 10);
}
