#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "electrical/line_facts.h"
#include "report/content/words.h"
#include "report/svg/svg_chart.h"
#include "report/tradeoff/tradeoff.h"
#include "report/wrapped_text.h"
#include "text/number.h"
#include "text/utf8.h"

namespace report {
namespace {

constexpr std::size_t kMostNamesBesideMarks = 12, kLongestNameBesideMark = 24, kKeyColumns = 30;
constexpr double kPlotWidth = 560, kPlotWidthBesideKey = 490, kPlotHeight = 500, kKeyWidth = 220,
                 kKeyLine = 15;

/// Of the slowest line that is drawn.
constexpr double kMostPermittivity = 5;

/// As it is placed: uH/m and pF/m.
struct PlacedCable {
  std::string name;
  Point at;
  double characteristic_ohm = 0, loop_ohm_per_m = 0;
  bool impossible = false;
};

/// In the order of the characteristic impedance.
std::vector<PlacedCable> placed_cables(const std::vector<ShelfCable>& cables) {
  std::vector<PlacedCable> placed;
  for (const ShelfCable& cable : cables)
    if (has_place(cable))
      placed.push_back(
          {cable.name,
           {1e6 * cable.line->inductance_henry_per_m, 1e12 * cable.line->capacitance_farad_per_m},
           electrical::characteristic_impedance_ohm(*cable.line),
           cable.line->resistance_ohm_per_m,
           electrical::faster_than_light(*cable.line)});
  std::stable_sort(placed.begin(), placed.end(), [](const PlacedCable& one, const PlacedCable& other) {
    return one.characteristic_ohm < other.characteristic_ohm;
  });
  return placed;
}

/// The product of uH/m and pF/m that belongs to a relative permittivity: er / c^2.
double product_of(double permittivity) {
  return 1e18 * permittivity / (electrical::kSpeedOfLight * electrical::kSpeedOfLight);
}

/// A logarithmic axis with ticks at 1, 2 and 5, at least a factor of 2 wider on both sides than the data.
Axis widened_axis(std::string title, double least, double greatest) {
  Axis axis{std::move(title), 0, 0, {}, true};
  const int from = static_cast<int>(std::floor(std::log10(least / 2))),
            to = static_cast<int>(std::floor(std::log10(greatest * 2))) + 1;
  std::vector<Tick> ticks;
  for (int power = from; power <= to; ++power)
    for (const char* digit : {"1", "2", "5"}) {
      const double value = text::number(digit, power).value();
      if (value <= least / 2) ticks.clear();
      ticks.push_back({value, to - from > 5 && *digit != '1' ? "" : text::shortest(value)});
      if (value >= greatest * 2) {
        axis.low = ticks.front().value;
        axis.high = value;
        axis.ticks = std::move(ticks);
        return axis;
      }
    }
  return axis;
}

/// Wide enough for every cable, and for the lines of its impedance between the speed of light and the slowest drawn.
std::pair<Axis, Axis> axes_of(const std::vector<PlacedCable>& placed) {
  double least_x = placed.front().at.x, most_x = least_x, least_y = placed.front().at.y, most_y = least_y;
  const auto take = [&](Point point) {
    least_x = std::min(least_x, point.x);
    most_x = std::max(most_x, point.x);
    least_y = std::min(least_y, point.y);
    most_y = std::max(most_y, point.y);
  };
  for (const PlacedCable& cable : placed) {
    take(cable.at);
    for (const double permittivity : {1.0, kMostPermittivity}) {
      const double along = std::sqrt(product_of(permittivity) / (cable.at.x * cable.at.y));
      take({cable.at.x * along, cable.at.y * along});
    }
  }
  return {widened_axis("inductance per metre, uH/m", least_x, most_x),
          widened_axis("capacitance per metre, pF/m", least_y, most_y)};
}

/// Points of y = factor * x^power within both axes, from the right to the left; none where it does not cross the plot.
std::vector<Point> within_plot(const Axis& x, const Axis& y, double factor, int power) {
  const double at_low = std::pow(y.low / factor, 1.0 / power),
               at_high = std::pow(y.high / factor, 1.0 / power);
  const double from = std::max(x.low, std::min(at_low, at_high)),
               to = std::min(x.high, std::max(at_low, at_high));
  std::vector<Point> points;
  if (from >= to) return points;
  constexpr int kSteps = 60;
  for (int i = kSteps; i >= 0; --i) {
    const double at = from * std::pow(to / from, static_cast<double>(i) / kSteps);
    points.push_back({at, factor * std::pow(at, power)});
  }
  return points;
}

void draw_lines(SvgChart& chart, const Axis& x, const Axis& y) {
  for (const double ohm : {1.0, 3.0, 10.0, 30.0, 100.0, 300.0, 1000.0}) {
    const auto points = within_plot(x, y, 1e6 / (ohm * ohm), 1);
    chart.line(points, Series::quiet);
    chart.words_along(points, text::shortest(ohm) + " ohm");
  }
  for (const double permittivity : {1.0, 2.3, kMostPermittivity}) {
    const auto points = within_plot(x, y, product_of(permittivity), -1);
    chart.line(points, permittivity == 1 ? Series::first : Series::second);
    chart.words_along(points, permittivity == 1 ? "speed of light"
                                                : text::fixed(100 / std::sqrt(permittivity), 0) +
                                                      " % of it (er " + text::shortest(permittivity) + ")");
  }
  std::vector<Point> beyond;
  for (const double times : {8.0, 4.0, 3.0, 2.0, 1.5}) {
    std::vector<Point> points = within_plot(x, y, product_of(1 / times), -1);
    std::rotate(points.begin(), points.begin() + std::ssize(points) / 2, points.end());  // the middle first
    beyond.insert(beyond.end(), points.begin(), points.end());
  }
  chart.words_along(beyond, "impossible: faster than light");
}

struct ResistanceClass {
  double below_ohm_per_m;
  Mark mark;
  std::string_view words;
};

constexpr ResistanceClass kResistanceClasses[] = {
    {0.02, Mark::disc, "below 20 mohm/m"},
    {0.1, Mark::ring, "20 to 100 mohm/m"},
    {HUGE_VAL, Mark::triangle, "100 mohm/m and more"},
};

Mark mark_of_resistance(double ohm_per_m) {
  for (const ResistanceClass& each : kResistanceClasses)
    if (ohm_per_m < each.below_ohm_per_m) return each.mark;
  return Mark::cross;
}

bool names_fit(const std::vector<PlacedCable>& placed) {
  return placed.size() <= kMostNamesBesideMarks &&
         std::all_of(placed.begin(), placed.end(), [](const PlacedCable& cable) {
           return text::length_in_characters(cable.name) <= kLongestNameBesideMark;
         });
}

/// The list of numbers and names, its lines as they are printed.
std::vector<std::string> key_lines(const std::vector<PlacedCable>& placed) {
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < placed.size(); ++i) {
    std::string entry = wrapped(one_line(placed[i].name), kKeyColumns, std::to_string(i + 1) + "  ", "    ");
    for (std::size_t end; (end = entry.find('\n')) != std::string::npos; entry.erase(0, end + 1))
      lines.push_back(entry.substr(0, end));
  }
  return lines;
}

std::string described(const std::vector<PlacedCable>& placed) {
  const auto impossible =
      std::count_if(placed.begin(), placed.end(), [](const PlacedCable& cable) { return cable.impossible; });
  return counted(static_cast<int>(placed.size()), "cable") +
         " by inductance and capacitance per metre: " + "characteristic impedances from " +
         text::significant(placed.front().characteristic_ohm, 3) + " to " +
         text::significant(placed.back().characteristic_ohm, 3) + " ohm, " +
         (impossible == 0 ? "none" : std::to_string(impossible)) +
         " in the half of the plot that would be faster than light.";
}

}  // namespace

Figure tradeoff_figure(const std::vector<ShelfCable>& cables) {
  const std::vector<PlacedCable> placed = placed_cables(cables);
  if (placed.empty()) throw std::domain_error("no cable has an inductance and a capacitance to be drawn by");
  const bool numbered = !names_fit(placed);
  const std::vector<std::string> key = numbered ? key_lines(placed) : std::vector<std::string>{};
  const Margins margins{28, numbered ? kKeyWidth : 12, 46, 58};
  const double height = std::max(kPlotHeight, kKeyLine * static_cast<double>(key.size()));
  const auto [x, y] = axes_of(placed);
  SvgChart chart("tradeoff", "Inductance, capacitance and resistance of the cables", described(placed),
                 margins.left + (numbered ? kPlotWidthBesideKey : kPlotWidth) + margins.right,
                 margins.top + height + margins.bottom, margins, x, y);
  draw_lines(chart, x, y);
  for (std::size_t i = 0; i < placed.size(); ++i)
    chart.named_marker(placed[i].at, mark_of_resistance(placed[i].loop_ohm_per_m), Series::first,
                       numbered ? std::to_string(i + 1) : placed[i].name);
  for (const std::string& line : key) chart.beside(line);
  for (const ResistanceClass& each : kResistanceClasses)
    chart.legend_of_marks(Series::first, each.mark, each.words);
  return {
      chart.svg(),
      "The shape of a mark says the loop resistance, both conductors together. Dotted: lines of equal "
      "characteristic impedance. Solid: the speed of light, which no cable exceeds; dashed: the speeds of "
      "cables all of whose field is in an insulation of relative permittivity 2.3 and 5. Impedance and "
      "speed are those of the line without loss."};
}

}  // namespace report
