#pragma once

#include <string>
#include <string_view>

#include "report/svg/svg_chart.h"

namespace report {

inline constexpr double kMarkRadius = 4;

/// A length in the chart's units, to a hundredth.
std::string units(double value);

/// ` name="value"`, escaped.
std::string attribute(std::string_view name, std::string_view value);
std::string attribute(std::string_view name, double value);

std::string_view colour_of(Series series);

/// The attributes of a line of the series: colour, width and dash.
std::string stroke_of(Series series);

std::string line_element(double x1, double y1, double x2, double y2, const std::string& style);

/// @param anchor  "start", "middle" or "end".
/// @param more    further attributes.
std::string text_element(double x, double y, std::string_view anchor, std::string_view words,
                         const std::string& more = "");

/// The attributes of words that cover what is behind them.
std::string paper_behind();

std::string mark_element(double x, double y, Mark mark, Series series);

}  // namespace report
