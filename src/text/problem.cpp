#include "text/problem.h"

#include <algorithm>
#include <optional>
#include <string_view>
#include <tuple>
#include <utility>

#include "text/error.h"
#include "text/lines.h"
#include "text/utf8.h"

namespace text {
namespace {

constexpr std::size_t most_shown = 20;
constexpr std::size_t most_kept = 1000;
constexpr std::size_t widest_line = 100;
constexpr std::size_t shown_before = 40;

/// The code points of a line, one string each, fit to be printed.
std::vector<std::string> characters(const std::string& line) {
  std::vector<std::string> points;
  for (std::size_t at = 0; at < line.size();) {
    const auto point = first_code_point(std::string_view(line).substr(at, 4));
    const std::size_t bytes = point ? point->bytes : 1;
    points.push_back(line.substr(at, bytes));
    at += bytes;
  }
  return points;
}

/// The line and the caret line under it; of a long line the part around the place.
std::string excerpt(const std::string& line, const Place& place, const std::string& hint) {
  std::vector<std::string> points = characters(line);
  std::size_t start = static_cast<std::size_t>(std::max(place.column, 1)) - 1;
  const bool cut_left = points.size() > widest_line && start > shown_before;
  if (cut_left) {
    const std::size_t cut = std::min(start, points.size()) - shown_before;
    points.erase(points.begin(), points.begin() + static_cast<std::ptrdiff_t>(cut));
    start -= cut;
  }
  const bool cut_right = points.size() > widest_line;
  if (cut_right) points.resize(widest_line);
  std::string shown = cut_left ? "  ..." : "  ";
  std::string carets(shown.size(), ' ');
  for (std::size_t i = 0; i < points.size(); ++i) {
    shown += points[i];
    if (i < start) carets += points[i] == "\t" ? "\t" : " ";
  }
  const std::size_t room = points.size() > start ? points.size() - start : 1;
  carets.append(std::clamp<std::size_t>(static_cast<std::size_t>(std::max(place.width, 1)), 1, room), '^');
  if (!hint.empty()) carets += " " + hint;
  return shown + (cut_right ? "...\n" : "\n") + carets + "\n";
}

std::string where(const std::string& file, const Place& place) {
  if (place.line < 1) return file;
  return file + ":" + std::to_string(place.line) + ":" + std::to_string(place.column);
}

std::optional<std::string_view> line_at(std::string_view content, int number) {
  std::string_view rest = without_byte_order_mark(content);
  std::optional<std::string_view> line;
  for (int at = 0; at < number; ++at) line = next_line(rest);
  return line;
}

}  // namespace

Problems::Problems(std::string file, std::string content)
    : file_(std::move(file)), content_(std::make_shared<const std::string>(std::move(content))) {}

void Problems::add(const Place& place, std::string message, std::string hint) {
  ++count_;
  first_line_ = std::min(first_line_, place.line);
  if (problems_.size() < most_kept) problems_.push_back({place, std::move(message), std::move(hint)});
}

std::string Problems::formatted(const Problem& problem) const {
  std::string text = printable(where(file_, problem.place) + ": " + problem.message) + "\n";
  const std::string hint = printable(problem.hint);
  if (const auto line = line_at(*content_, problem.place.line))
    return text + excerpt(printable(line->substr(0, longest_line_bytes)), problem.place, hint);
  return hint.empty() ? text : text + "  " + hint + "\n";
}

std::string Problems::report() const {
  std::vector<Problem> ordered = problems_;
  std::stable_sort(ordered.begin(), ordered.end(), [](const Problem& one, const Problem& other) {
    return std::tie(one.place.line, one.place.column) < std::tie(other.place.line, other.place.column);
  });
  const std::size_t shown = std::min(ordered.size(), most_shown);
  std::string report;
  for (std::size_t i = 0; i < shown; ++i) report += formatted(ordered[i]);
  if (count_ > shown) report += "and " + std::to_string(count_ - shown) + " more\n";
  if (report.ends_with('\n')) report.pop_back();
  return report;
}

void Problems::refuse() const { throw BadInput(report()); }

void Problems::refuse_if_any() const {
  if (!empty()) refuse();
}

}  // namespace text
