#include "report/svg/svg_chart.h"

#include <gtest/gtest.h>

#include <cmath>

#include "refusal.h"

using namespace report;

namespace {

SvgChart small_chart(const std::string& title = "Shares") {
  return {"c1",
          title,
          "What it shows",
          200,
          100,
          {10, 10, 30, 40},
          {"x", 0, 10, {{0, "0"}, {10, "10"}}, false},
          {"y", -1, 1, {{0, "0"}}, false}};
}

int count(const std::string& text, const std::string& part) {
  int found = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++found;
  return found;
}

/// The "x,y" pairs of the only polyline.
std::string points_of(const std::string& svg) {
  const std::size_t at = svg.find("<polyline points=\"") + 18;
  return svg.substr(at, svg.find('"', at) - at);
}

}  // namespace

TEST(SvgChart, IsNamedAndDescribedForScreenReaders) {
  const std::string svg = small_chart("A < B & \"C\"").svg();
  EXPECT_NE(svg.find("role=\"img\""), std::string::npos);
  EXPECT_NE(svg.find("aria-labelledby=\"c1-title c1-desc\""), std::string::npos);
  EXPECT_NE(svg.find("<title id=\"c1-title\">A &lt; B &amp; &quot;C&quot;</title>"), std::string::npos);
  EXPECT_NE(svg.find("<desc id=\"c1-desc\">What it shows</desc>"), std::string::npos);
}

TEST(SvgChart, PlacesDataInThePlot) {
  SvgChart chart = small_chart();
  chart.line({{0, -1}, {5, 0}, {10, 1}}, Series::first);
  EXPECT_EQ(points_of(chart.svg()), "40,70 115,40 190,10");
}

TEST(SvgChart, PlacesDecadesEvenlyOnALogarithmicAxis) {
  SvgChart chart("c", "t", "d", 340, 100, {10, 20, 30, 20}, {"f", 20, 20000, {}, true},
                 {"y", 0, 1, {}, false});
  chart.line({{20, 0}, {200, 0}, {2000, 0}, {20000, 0}, {0, 0}}, Series::first);
  EXPECT_EQ(points_of(chart.svg()), "20,70 120,70 220,70 320,70");
}

TEST(SvgChart, ThinsALineToItsExtremes) {
  SvgChart chart = small_chart();
  std::vector<Point> points;
  for (int i = 0; i <= 100000; ++i)
    points.push_back({i / 10000.0, i == 50001 ? 0.95 : i == 50002 ? -0.95 : 0.0});
  chart.line(points, Series::first);
  const std::string kept = points_of(chart.svg());
  EXPECT_LT(count(kept, ","), 4 * 301);
  EXPECT_NE(kept.find(",11.5 "), std::string::npos);  // 40 - 0.95 * 30
  EXPECT_NE(kept.find(",68.5 "), std::string::npos);
}

TEST(SvgChart, ClipsLinesAndLeavesOutMarksBeyondTheAxes) {
  SvgChart chart = small_chart();
  chart.line({{0, 0}, {10, 50}}, Series::first);
  chart.marker({5, 2}, Mark::disc, Series::first);
  chart.marker({5, 0.5}, Mark::ring, Series::first);
  const std::string svg = chart.svg();
  EXPECT_EQ(count(svg, "<circle"), 1);
  EXPECT_LT(svg.find("clip-path=\"url(#c1-clip)\""), svg.find("<polyline"));
  EXPECT_LT(svg.find("<polyline"), svg.find("</g>"));
}

TEST(SvgChart, TellsSeriesApartByDashAndMarksByShape) {
  SvgChart chart = small_chart();
  for (const Series series : {Series::first, Series::second, Series::quiet})
    chart.line({{0, 0}, {10, 0}}, series);
  for (const Mark mark : {Mark::disc, Mark::ring, Mark::square, Mark::cross, Mark::triangle})
    chart.marker({5, 0}, mark, Series::first);
  const std::string svg = chart.svg();
  EXPECT_EQ(count(svg, "stroke-dasharray=\"6 4\""), 1);
  EXPECT_EQ(count(svg, "stroke-dasharray=\"2 3\""), 1);
  EXPECT_EQ(count(svg, "<circle"), 2);
  EXPECT_EQ(count(svg, "<polygon"), 2);
}

TEST(SvgChart, KeepsTextAsTextAndEscapesIt) {
  SvgChart chart = small_chart();
  chart.words({1, 0}, 0, "</svg><script>");
  chart.legend(Series::first, Mark::disc, "a & b");
  const std::string svg = chart.svg();
  EXPECT_NE(svg.find(">&lt;/svg&gt;&lt;script&gt;</text>"), std::string::npos);
  EXPECT_NE(svg.find(">a &amp; b</text>"), std::string::npos);
  EXPECT_EQ(count(svg, "</svg>"), 1);
  EXPECT_EQ(count(svg, "<path"), 0);
}

TEST(SvgChart, LeavesOutPointsThatAreNoNumbers) {
  SvgChart chart = small_chart();
  chart.line({{0, 0}, {5, NAN}, {10, INFINITY}, {10, 1}}, Series::first);
  EXPECT_EQ(points_of(chart.svg()), "40,40 190,10");
}

TEST(SvgChart, RefusesImpossibleAxesSizesAndIds) {
  const Axis good{"x", 0, 1, {}, false};
  const auto with = [&](const std::string& id, double width, const Axis& x) {
    return refusal([&] { SvgChart(id, "t", "d", width, 100, {}, x, good); });
  };
  EXPECT_EQ(with("", 200, good), "chart id must be letters, digits and \"-\", got \"\"");
  EXPECT_EQ(with("a b", 200, good), "chart id must be letters, digits and \"-\", got \"a b\"");
  EXPECT_EQ(with("c", 64, good), "chart size must leave room for a plot within its margins, got 64 by 100");
  EXPECT_EQ(with("c", 200, {"x", 1, 1, {}, false}),
            "axis \"x\" must rise between finite values (above 0 when logarithmic), got 1 to 1");
  EXPECT_NE(with("c", 200, {"f", 0, 1, {}, true}), "(not refused)");
  EXPECT_NE(with("c", 200, {"x", 0, INFINITY, {}, false}), "(not refused)");
}

TEST(LinearAxis, EndsAtRoundSteps) {
  const Axis axis = linear_axis("dB", -0.61, 0.1);
  EXPECT_DOUBLE_EQ(axis.low, -0.8);
  EXPECT_DOUBLE_EQ(axis.high, 0.2);
  ASSERT_EQ(axis.ticks.size(), 6U);
  EXPECT_EQ(axis.ticks[0].label, "\u22120.8");
  EXPECT_EQ(axis.ticks[4].label, "0.0");
}

TEST(LinearAxis, SpreadsEqualValuesAndTakesTinyAndLargeOnes) {
  EXPECT_LT(linear_axis("", 0, 0).low, 0);
  EXPECT_GT(linear_axis("", 3, 3).high, 3);
  for (const double range : {1e-5, 1e-3, 7.0, 1e9}) {
    const Axis axis = linear_axis("", 0, range);
    EXPECT_LE(axis.low, 0) << range;
    EXPECT_GE(axis.high, range * (1 - 1e-9)) << range;
    EXPECT_LE(axis.ticks.size(), 8U) << range;
    EXPECT_GE(axis.ticks.size(), 3U) << range;
  }
  EXPECT_NE(refusal([] { linear_axis("", 0, NAN); }), "(not refused)");
}
