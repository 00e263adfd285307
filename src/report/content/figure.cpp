#include "report/content/figure.h"

#include <algorithm>
#include <cmath>

#include "report/content/words.h"
#include "report/svg/svg_chart.h"
#include "text/number.h"

namespace report {
namespace {

using findings::ComparisonFinding;
using findings::Verdict;

constexpr double kWidth = 440;
constexpr double kRowHeight = 40;

Mark mark_of(Verdict verdict) {
  return verdict == Verdict::supported   ? Mark::disc
         : verdict == Verdict::not_shown ? Mark::ring
                                         : Mark::cross;
}

std::vector<Tick> share_ticks() { return {{0, "0"}, {0.25, "25"}, {0.5, "50"}, {0.75, "75"}, {1, "100"}}; }

void draw_share(SvgChart& chart, const plan::Plan& plan, const ComparisonFinding& finding, double row) {
  chart.words({0, row}, 13, finding.title);
  const auto& limits = finding.limits;
  if (finding.primary.tally.answers == 0) {
    chart.words({0, row}, -4, "no answer");
    return;
  }
  const bool two_sided = !plan::protocol_of(plan).has_right_answer();
  const bool to_lower = two_sided || finding.verdict == Verdict::supported;
  const bool to_upper = two_sided || finding.verdict != Verdict::supported;
  chart.interval(row, to_lower ? limits.lower : limits.share, to_upper ? limits.upper : limits.share,
                 to_lower, to_upper, Series::first);
  const auto& caught = finding.would_have_been_caught;
  if (caught.answers > 0 && caught.needed <= caught.answers)
    chart.marker({static_cast<double>(caught.needed) / caught.answers, row + 0.2}, Mark::triangle,
                 Series::second);
  chart.marker({limits.share, row}, mark_of(finding.verdict), Series::first);
}

std::vector<Point> points_of(const findings::Curve& curve) {
  std::vector<Point> points;
  for (std::size_t i = 0; i < std::min(curve.frequency_hz.size(), curve.difference_db.size()); ++i)
    points.push_back({curve.frequency_hz[i], curve.difference_db[i]});
  return points;
}

/// The curve with a mark about every octave, so that it is known without its hue.
void draw_curve(SvgChart& chart, const std::vector<Point>& points, Series series, Mark mark,
                double first_mark_hz) {
  chart.line(points, series);
  double next_hz = first_mark_hz;
  for (const Point& point : points) {
    if (point.x < next_hz) continue;
    chart.marker(point, mark, series);
    while (next_hz <= point.x) next_hz *= 2;
  }
}

}  // namespace

Figure shares_figure(const findings::Evidence& evidence, const findings::Findings& findings,
                     const std::vector<const ComparisonFinding*>& which, const std::string& id) {
  const bool right = plan::protocol_of(evidence.plan).has_right_answer();
  const auto rows = static_cast<double>(which.size());
  Axis x{right ? "share right, %" : "share for the first-named cable, %", 0, 1, share_ticks(), false};
  Axis y{"", 0, std::max(rows, 1.0), {}, false};
  const Margins margins{8, 16, 46, 10};
  std::string description;
  for (const ComparisonFinding* finding : which)
    description += finding->title + ": " + score_of(finding->primary.tally) + ", " +
                   verdict_words(evidence.plan, finding->verdict) + ". ";
  SvgChart chart(id, right ? "Shares right" : "Shares for the first-named cable", description, kWidth,
                 margins.top + margins.bottom + kRowHeight * std::max(rows, 1.0), margins, x, y);
  chart.rule_at_x(0.5, Series::quiet);
  double row = rows - 0.68;
  for (const ComparisonFinding* finding : which) draw_share(chart, evidence.plan, *finding, row--);
  std::string caption = "Filled disc: supported; ring: not shown; cross: cannot be judged. ";
  caption += right ? "The line leads to the one-sided " + confidence_of(findings.level) +
                         " limit, the lower one where supported, else the upper one. "
                   : "The line is the two-sided " + confidence_of(findings.level) + " interval. ";
  caption +=
      "Dotted: chance. Triangle: what was needed at the family's first step where all answers of a trial are "
      "alike.";
  return {chart.svg(), caption};
}

std::optional<Figure> difference_figure(const ComparisonFinding& finding, const std::string& id) {
  if (!finding.predicted_curve && !finding.measured_curve) return std::nullopt;
  const auto predicted = finding.predicted_curve ? points_of(*finding.predicted_curve) : std::vector<Point>{};
  const auto measured = finding.measured_curve ? points_of(*finding.measured_curve) : std::vector<Point>{};
  double least = -0.1, greatest = 0.1;
  for (const auto* points : {&predicted, &measured})
    for (const Point& point : *points) {
      if (!std::isfinite(point.y) || point.x < 20 || point.x > 20000) continue;
      least = std::min(least, point.y);
      greatest = std::max(greatest, point.y);
    }
  std::string description = "Level of " + finding.second + " less that of " + finding.first +
                            ", 20 Hz to 20 kHz, from " + signed_db(least) + " to " + signed_db(greatest) +
                            ".";
  SvgChart chart(id, "Difference of the responses", description, kWidth, 270, {28, 16, 46, 58},
                 audio_frequency_axis(), linear_axis("difference, dB", least, greatest));
  chart.rule_at_y(0, Series::quiet);
  if (!predicted.empty()) {
    draw_curve(chart, predicted, Series::second, Mark::triangle, 28);
    chart.legend(Series::second, Mark::triangle, "predicted");
  }
  if (!measured.empty()) {
    draw_curve(chart, measured, Series::first, Mark::disc, 40);
    chart.legend(Series::first, Mark::disc, "measured");
  }
  return Figure{chart.svg(), "Level at the load, \u201C" + finding.second + "\u201D less \u201C" +
                                 finding.first + "\u201D, nothing trimmed."};
}

Figure correlation_figure(const findings::Findings& findings, const findings::Correlation& correlation,
                          const std::string& id) {
  const std::size_t count = std::min(correlation.x.size(), correlation.y.size());
  double least = 0, greatest = 0;
  if (count > 0) {
    const auto [low, high] = std::minmax_element(correlation.x.begin(), correlation.x.end());
    least = std::min(0.0, *low);
    greatest = *high;
  }
  const std::string title = capitalised(correlation.outcome) + " against " + correlation.measure;
  std::string description;
  for (std::size_t i = 0; i < count; ++i) {
    const auto place = i < correlation.comparisons.size() ? correlation.comparisons[i] : -1;
    for (const auto& finding : findings.comparisons)
      if (finding.comparison == place) description += finding.title + ": ";
    description += text::significant(correlation.x[i], 3) + ", " + percent(correlation.y[i]) + ". ";
  }
  SvgChart chart(id, title, description, kWidth, 240, {12, 18, 46, 58},
                 linear_axis(correlation.measure + ", " + correlation.against, least, greatest),
                 {correlation.outcome + ", %", 0, 1, share_ticks(), false});
  chart.rule_at_y(0.5, Series::quiet);
  for (std::size_t i = 0; i < count; ++i)
    chart.marker({correlation.x[i], correlation.y[i]}, Mark::disc, Series::first);
  return {chart.svg(), title + ", " + correlation.against + ". One point a comparison; dotted: " +
                           (correlation.outcome == "share right" ? "chance." : "one half.")};
}

}  // namespace report
