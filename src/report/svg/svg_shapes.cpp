#include "report/svg/svg_shapes.h"

#include <cmath>
#include <stdexcept>

#include "text/number.h"
#include "text/utf8.h"

namespace report {

std::string units(double value) { return text::shortest(std::round(value * 100) / 100); }

std::string attribute(std::string_view name, std::string_view value) {
  return " " + std::string(name) + "=\"" + xml_escaped(value) + "\"";
}

std::string attribute(std::string_view name, double value) { return attribute(name, units(value)); }

std::string_view colour_of(Series series) {
  switch (series) {
    case Series::first:
      return "var(--chart-first, currentColor)";
    case Series::second:
      return "var(--chart-second, currentColor)";
    case Series::quiet:
      return "var(--chart-quiet, currentColor)";
  }
  throw std::logic_error("a series without a colour");
}

std::string stroke_of(Series series) {
  std::string stroke = attribute("fill", "none") + attribute("stroke", colour_of(series));
  stroke += attribute("stroke-width", series == Series::quiet ? 1.2 : 1.8);
  if (series == Series::second) stroke += attribute("stroke-dasharray", "6 4");
  if (series == Series::quiet) stroke += attribute("stroke-dasharray", "2 3");
  return stroke;
}

std::string line_element(double x1, double y1, double x2, double y2, const std::string& style) {
  return "<line" + attribute("x1", x1) + attribute("y1", y1) + attribute("x2", x2) + attribute("y2", y2) +
         style + "/>\n";
}

std::string text_element(double x, double y, std::string_view anchor, std::string_view words,
                         const std::string& more) {
  return "<text" + attribute("x", x) + attribute("y", y) + attribute("text-anchor", anchor) +
         attribute("fill", "currentColor") + more + ">" + xml_escaped(words) + "</text>\n";
}

std::string paper_behind() {
  return attribute("stroke", "var(--chart-paper, none)") + attribute("stroke-width", 4) +
         attribute("paint-order", "stroke");
}

namespace {

std::string polygon(const std::vector<Point>& corners, const std::string& style) {
  std::string points;
  for (const Point& corner : corners)
    points += (points.empty() ? "" : " ") + units(corner.x) + "," + units(corner.y);
  return "<polygon" + attribute("points", points) + style + "/>\n";
}

}  // namespace

std::string mark_element(double x, double y, Mark mark, Series series) {
  const double r = kMarkRadius;
  const std::string filled = attribute("fill", colour_of(series));
  const std::string hollow = attribute("fill", "var(--chart-paper, none)") +
                             attribute("stroke", colour_of(series)) + attribute("stroke-width", 1.8);
  switch (mark) {
    case Mark::disc:
    case Mark::ring:
      return "<circle" + attribute("cx", x) + attribute("cy", y) + attribute("r", r) +
             (mark == Mark::disc ? filled : hollow) + "/>\n";
    case Mark::square:
      return polygon({{x - r, y - r}, {x + r, y - r}, {x + r, y + r}, {x - r, y + r}}, filled);
    case Mark::triangle:
      return polygon({{x - r, y - r}, {x + r, y - r}, {x, y + r}}, hollow);
    case Mark::cross:
      return line_element(x - r, y - r, x + r, y + r, hollow) +
             line_element(x - r, y + r, x + r, y - r, hollow);
  }
  throw std::logic_error("a mark without a shape");
}

std::string xml_escaped(std::string_view text) {
  std::string escaped;
  for (const char c : text::printable(text)) {
    switch (c) {
      case '&':
        escaped += "&amp;";
        break;
      case '<':
        escaped += "&lt;";
        break;
      case '>':
        escaped += "&gt;";
        break;
      case '"':
        escaped += "&quot;";
        break;
      case '\'':
        escaped += "&#39;";
        break;
      default:
        escaped += c;
    }
  }
  return escaped;
}

}  // namespace report
