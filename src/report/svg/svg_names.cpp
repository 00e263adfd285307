#include <algorithm>
#include <cmath>

#include "report/svg/label_places.h"
#include "report/svg/svg_chart.h"
#include "report/svg/svg_shapes.h"
#include "text/utf8.h"

namespace report {
namespace {

constexpr double kCharacterWidth = 7.2, kNameHeight = 13, kLineOfWords = 15;

/// Beside a mark first, then above and below, then ever further away.
std::vector<Box> places_around(Point mark, double width) {
  constexpr Point directions[] = {{1, 0},       {-1, 0},     {0, -1},    {0, 1},   {0.7, -0.7}, {0.7, 0.7},
                                  {-0.7, -0.7}, {-0.7, 0.7}, {1, -0.4},  {1, 0.4}, {-1, -0.4},  {-1, 0.4},
                                  {0.4, -1},    {0.4, 1},    {-0.4, -1}, {-0.4, 1}};
  std::vector<Box> places;
  for (const double gap : {7.0, 15.0, 22.0, 30.0, 40.0, 52.0, 66.0, 84.0})
    for (const Point& direction : directions) {
      const double x =
          mark.x + gap * direction.x + width / 2 * (direction.x == 0 ? 0 : std::copysign(1, direction.x));
      const double y = mark.y + gap * direction.y +
                       kNameHeight / 2 * (direction.y == 0 ? 0 : std::copysign(1, direction.y));
      places.push_back({x - width / 2, y - kNameHeight / 2, x + width / 2, y + kNameHeight / 2});
    }
  return places;
}

/// A thin line from the rim of a mark to a name; nothing where the name is beside it.
std::string leader(Point mark, const Box& name) {
  const Point to{std::clamp(mark.x, name.left, name.right), std::clamp(mark.y, name.top, name.bottom)};
  const double length = std::hypot(to.x - mark.x, to.y - mark.y);
  if (length < 2 * kMarkRadius) return "";
  const double rim = (kMarkRadius + 1) / length;
  return line_element(mark.x + rim * (to.x - mark.x), mark.y + rim * (to.y - mark.y), to.x, to.y,
                      attribute("stroke", colour_of(Series::quiet)) + attribute("stroke-width", 1));
}

double width_of_words(std::string_view words) {
  return kCharacterWidth * static_cast<double>(text::length_in_characters(words));
}

}  // namespace

void SvgChart::named_marker(Point at, Mark mark, Series series, std::string_view name) {
  if (!is_inside(at)) return;
  const Point from{place_x(at.x), place_y(at.y)};
  marker(at, mark, series);
  names_.push_back({std::string(name), places_around(from, width_of_words(name)), from, true});
}

void SvgChart::words_along(const std::vector<Point>& places, std::string_view text) {
  const double half = width_of_words(text) / 2;
  Name name{std::string(text), {}, {}, false};
  for (const Point& place : places) {
    const double x = place_x(place.x), y = place_y(place.y);
    name.places.push_back({x - half, y - kNameHeight / 2, x + half, y + kNameHeight / 2});
  }
  if (!name.places.empty()) names_.push_back(std::move(name));
}

void SvgChart::beside(std::string_view text) {
  beside_end_ += kLineOfWords;
  beside_ += text_element(width_ - margins_.right + 14, beside_end_ - 4, "start", text);
}

std::string SvgChart::names() const {
  std::vector<Name> names = names_;
  std::stable_partition(names.begin(), names.end(), [](const Name& name) { return name.is_of_mark; });
  std::vector<std::vector<Box>> wishes;
  std::vector<Box> marks;
  for (const Name& name : names) {
    wishes.push_back(name.places);
    const double r = kMarkRadius + 2;
    if (name.is_of_mark)
      marks.push_back({name.from.x - r, name.from.y - r, name.from.x + r, name.from.y + r});
  }
  const std::vector<Box> places = label_places(
      wishes, marks, {margins_.left, margins_.top, width_ - margins_.right, height_ - margins_.bottom});
  std::string leaders, words;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (names[i].is_of_mark) leaders += leader(names[i].from, places[i]);
    words += text_element((places[i].left + places[i].right) / 2, places[i].bottom - 3, "middle",
                          names[i].text, paper_behind());
  }
  return leaders + words;
}

}  // namespace report
