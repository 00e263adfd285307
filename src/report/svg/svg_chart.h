#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace report {

/// A value on an axis and the word printed there.
struct Tick {
  double value = 0;
  std::string label;
};

/// A straight or logarithmic axis. Low and high are data values, low < high; above 0 on a logarithmic one.
struct Axis {
  std::string title;
  double low = 0;
  double high = 1;
  std::vector<Tick> ticks;
  bool logarithmic = false;
};

/// An axis from data: widened to round steps, with at most about `most` ticks.
/// @throws std::domain_error  unless both are finite. Equal values are spread around.
Axis linear_axis(std::string title, double least, double greatest, int most = 6);

/// 20 Hz to 20 kHz, logarithmic, with ticks at 20, 50, 100 ... 20k.
Axis audio_frequency_axis();

/// The series of a chart; each differs by hue, dash and marker at once.
enum class Series { first, second, quiet };

enum class Mark { disc, ring, square, cross, triangle };

struct Point {
  double x = 0;
  double y = 0;
};

/// A rectangle in the chart's own units.
struct Box {
  double left = 0, top = 0, right = 0, bottom = 0;
};

/// Room around the plot for labels, in the chart's own units.
struct Margins {
  double top = 14, right = 12, bottom = 46, left = 52;
};

/// A small SVG drawing with two axes. Text stays text, everything drawn in data values is clipped to the plot, all text
/// is escaped here. Colours are CSS custom properties (`--chart-first`, `--chart-second`, `--chart-quiet`,
/// `--chart-grid`) with `currentColor` behind them, so that the page decides on dark and print.
class SvgChart {
 public:
  /// @param id           unique in the page; letters, digits and "-".
  /// @param title        short name of the chart, for screen readers.
  /// @param description  what it shows, in words.
  /// @param width,height of the drawing in its own units (text is 12 units high).
  /// @throws std::domain_error  for an impossible id, size or axis.
  SvgChart(std::string id, std::string title, std::string description, double width, double height,
           Margins margins, Axis x, Axis y);

  /// A line through the points. Points nearer than half a unit across are thinned to their extremes.
  void line(const std::vector<Point>& points, Series series);
  void marker(Point at, Mark mark, Series series);
  /// A horizontal interval with an end stroke at each limit that is drawn.
  void interval(double y, double low, double high, bool end_at_low, bool end_at_high, Series series);
  /// A straight rule across the whole plot at a value of x or y.
  void rule_at_x(double x, Series series);
  void rule_at_y(double y, Series series);
  /// Words that begin at a data value, moved by `up` units; not clipped.
  void words(Point at, double up, std::string_view text);
  /// A marker with its name near it, clear of the other names and marks where there is room; a thin line leads to a name
  /// that had to be put further away.
  void named_marker(Point at, Mark mark, Series series, std::string_view name);
  /// Words around the first of these points of the plot where they are clear of names and marks.
  void words_along(const std::vector<Point>& places, std::string_view text);
  /// A line of words beside the plot, in the right margin, from the top down.
  void beside(std::string_view text);
  /// An entry of the legend above the plot: a sample and its words, placed from left to right.
  void legend(Series series, Mark mark, std::string_view text);
  /// The same for marks that no line joins.
  void legend_of_marks(Series series, Mark mark, std::string_view text);

  /// The finished `<svg>` element.
  std::string svg() const;

 private:
  double place_x(double value) const;
  double place_y(double value) const;
  bool is_inside(Point at) const;
  std::string axes() const;
  std::string names() const;

  /// Words whose place is chosen when all are known.
  struct Name {
    std::string text;
    std::vector<Box> places;  ///< in order of preference
    Point from{};             ///< in the chart's units
    bool is_of_mark = false;
  };

  std::string id_, title_, description_;
  double width_, height_;
  Margins margins_;
  Axis x_, y_;
  std::string body_, overlay_, legend_, beside_;
  std::vector<Name> names_;
  double legend_end_, beside_end_;
};

/// The drawing as a file of its own, for programs that know no custom properties: dark on white, in the page's colours on
/// paper.
std::string standalone(std::string svg);

/// `text` for XML text and quoted attributes: & < > " ' replaced; control characters become "?".
std::string xml_escaped(std::string_view text);

}  // namespace report
