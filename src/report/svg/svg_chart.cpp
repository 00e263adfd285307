#include "report/svg/svg_chart.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "report/svg/svg_shapes.h"
#include "text/number.h"
#include "text/utf8.h"

namespace report {
namespace {

constexpr double kThinningUnits = 0.5;

void check(const Axis& axis) {
  if (!std::isfinite(axis.low) || !std::isfinite(axis.high) || !(axis.low < axis.high) ||
      (axis.logarithmic && !(axis.low > 0)))
    throw std::domain_error("axis \"" + axis.title +
                            "\" must rise between finite values (above 0 when logarithmic), got " +
                            text::shortest(axis.low) + " to " + text::shortest(axis.high));
}

void check_id(const std::string& id) {
  const bool good = !id.empty() && std::all_of(id.begin(), id.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
  });
  if (!good) throw std::domain_error("chart id must be letters, digits and \"-\", got \"" + id + "\"");
}

double fraction_along(const Axis& axis, double value) {
  if (!axis.logarithmic) return (value - axis.low) / (axis.high - axis.low);
  return std::log(value / axis.low) / std::log(axis.high / axis.low);
}

/// Of points less than `kThinningUnits` apart across only the first, the extremes and the last.
std::vector<Point> thinned(const std::vector<Point>& placed) {
  std::vector<Point> kept;
  for (std::size_t begin = 0; begin < placed.size();) {
    std::size_t end = begin + 1;
    while (end < placed.size() && std::abs(placed[end].x - placed[begin].x) < kThinningUnits) ++end;
    std::size_t lowest = begin, highest = begin;
    for (std::size_t i = begin; i < end; ++i) {
      if (placed[i].y < placed[lowest].y) lowest = i;
      if (placed[i].y > placed[highest].y) highest = i;
    }
    std::vector<std::size_t> wanted = {begin, lowest, highest, end - 1};
    std::sort(wanted.begin(), wanted.end());
    wanted.erase(std::unique(wanted.begin(), wanted.end()), wanted.end());
    for (const std::size_t i : wanted) kept.push_back(placed[i]);
    begin = end;
  }
  return kept;
}

}  // namespace

SvgChart::SvgChart(std::string id, std::string title, std::string description, double width, double height,
                   Margins margins, Axis x, Axis y)
    : id_(std::move(id)),
      title_(std::move(title)),
      description_(std::move(description)),
      width_(width),
      height_(height),
      margins_(margins),
      x_(std::move(x)),
      y_(std::move(y)),
      legend_end_(margins.left),
      beside_end_(margins.top) {
  check_id(id_);
  check(x_);
  check(y_);
  if (!(width_ > margins_.left + margins_.right) || !(height_ > margins_.top + margins_.bottom))
    throw std::domain_error("chart size must leave room for a plot within its margins, got " + units(width_) +
                            " by " + units(height_));
}

double SvgChart::place_x(double value) const {
  return margins_.left + fraction_along(x_, value) * (width_ - margins_.left - margins_.right);
}

double SvgChart::place_y(double value) const {
  return height_ - margins_.bottom - fraction_along(y_, value) * (height_ - margins_.top - margins_.bottom);
}

bool SvgChart::is_inside(Point at) const {
  return at.x >= x_.low && at.x <= x_.high && at.y >= y_.low && at.y <= y_.high;
}

void SvgChart::line(const std::vector<Point>& points, Series series) {
  std::vector<Point> placed;
  for (const Point& point : points) {
    if (!std::isfinite(point.x) || !std::isfinite(point.y) || (x_.logarithmic && point.x <= 0)) continue;
    placed.push_back({place_x(point.x), place_y(point.y)});
  }
  std::string path;
  for (const Point& point : thinned(placed))
    path += (path.empty() ? "" : " ") + units(point.x) + "," + units(point.y);
  if (!path.empty())
    body_ += "<polyline" + attribute("points", path) + stroke_of(series) +
             attribute("stroke-linejoin", "round") + "/>\n";
}

void SvgChart::marker(Point at, Mark mark, Series series) {
  if (is_inside(at)) overlay_ += mark_element(place_x(at.x), place_y(at.y), mark, series);
}

void SvgChart::interval(double y, double low, double high, bool end_at_low, bool end_at_high, Series series) {
  const double at = place_y(y);
  const double from = place_x(std::clamp(low, x_.low, x_.high));
  const double to = place_x(std::clamp(high, x_.low, x_.high));
  const std::string style = attribute("stroke", colour_of(series)) + attribute("stroke-width", 1.8);
  body_ += line_element(from, at, to, at, style);
  if (end_at_low) body_ += line_element(from, at - kMarkRadius, from, at + kMarkRadius, style);
  if (end_at_high) body_ += line_element(to, at - kMarkRadius, to, at + kMarkRadius, style);
}

void SvgChart::rule_at_x(double x, Series series) {
  body_ += line_element(place_x(x), margins_.top, place_x(x), height_ - margins_.bottom, stroke_of(series));
}

void SvgChart::rule_at_y(double y, Series series) {
  body_ += line_element(margins_.left, place_y(y), width_ - margins_.right, place_y(y), stroke_of(series));
}

void SvgChart::words(Point at, double up, std::string_view text) {
  overlay_ += text_element(place_x(at.x), place_y(at.y) - up, "start", text, paper_behind());
}

void SvgChart::legend(Series series, Mark mark, std::string_view text) {
  const double y = 9;
  legend_ += line_element(legend_end_, y, legend_end_ + 26, y, stroke_of(series));
  legend_ += mark_element(legend_end_ + 13, y, mark, series);
  legend_ += text_element(legend_end_ + 32, y + 4, "start", text);
  legend_end_ += 48 + 7.6 * static_cast<double>(text::length_in_characters(text));
}

void SvgChart::legend_of_marks(Series series, Mark mark, std::string_view text) {
  const double y = 9;
  legend_ += mark_element(legend_end_ + kMarkRadius, y, mark, series);
  legend_ += text_element(legend_end_ + 14, y + 4, "start", text);
  legend_end_ += 34 + 7.2 * static_cast<double>(text::length_in_characters(text));
}

std::string SvgChart::axes() const {
  const std::string grid =
      attribute("stroke", "var(--chart-grid, currentColor)") + attribute("stroke-width", 0.8);
  const double left = margins_.left, right = width_ - margins_.right;
  const double top = margins_.top, bottom = height_ - margins_.bottom;
  std::string lines, labels;
  for (const Tick& tick : x_.ticks) {
    lines += line_element(place_x(tick.value), top, place_x(tick.value), bottom + 4, grid);
    labels += text_element(place_x(tick.value), bottom + 17, "middle", tick.label);
  }
  for (const Tick& tick : y_.ticks) {
    lines += line_element(left - 4, place_y(tick.value), right, place_y(tick.value), grid);
    labels += text_element(left - 7, place_y(tick.value) + 4, "end", tick.label);
  }
  lines += line_element(left, bottom, right, bottom,
                        attribute("stroke", "currentColor") + attribute("stroke-width", 1));
  if (!x_.title.empty()) labels += text_element((left + right) / 2, bottom + 37, "middle", x_.title);
  if (!y_.title.empty())
    labels +=
        text_element(0, 0, "middle", y_.title,
                     attribute("transform", "translate(13 " + units((top + bottom) / 2) + ") rotate(-90)"));
  return lines + labels;
}

std::string SvgChart::svg() const {
  const std::string title_id = id_ + "-title", description_id = id_ + "-desc", clip_id = id_ + "-clip";
  std::string svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\"";
  svg += attribute("viewBox", "0 0 " + units(width_) + " " + units(height_));
  svg += attribute("aria-labelledby", title_id + " " + description_id) + ">\n";
  svg += "<title" + attribute("id", title_id) + ">" + xml_escaped(title_) + "</title>\n";
  svg += "<desc" + attribute("id", description_id) + ">" + xml_escaped(description_) + "</desc>\n";
  svg += "<clipPath" + attribute("id", clip_id) + "><rect" + attribute("x", margins_.left) +
         attribute("y", margins_.top) + attribute("width", width_ - margins_.left - margins_.right) +
         attribute("height", height_ - margins_.top - margins_.bottom) + "/></clipPath>\n";
  svg += axes();
  svg += "<g" + attribute("clip-path", "url(#" + clip_id + ")") + ">\n" + body_ + "</g>\n";
  return svg + names() + overlay_ + beside_ + legend_ + "</svg>\n";
}

}  // namespace report
