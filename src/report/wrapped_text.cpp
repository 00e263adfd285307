#include "report/wrapped_text.h"

#include <algorithm>
#include <vector>

#include "report/content/words.h"
#include "text/columns.h"
#include "text/utf8.h"

namespace report {
namespace {

constexpr std::size_t kGap = 2;
constexpr std::size_t kNarrowest = 6;

/// The first `count` characters, and the rest.
std::pair<std::string_view, std::string_view> split_at(std::string_view words, std::size_t count) {
  std::size_t bytes = 0;
  while (count > 0 && bytes < words.size()) {
    const auto point = text::first_code_point(words.substr(bytes));
    bytes += point ? point->bytes : 1;
    --count;
  }
  return {words.substr(0, bytes), words.substr(bytes)};
}

std::vector<std::string> lines_of(std::string_view words, std::size_t first_width, std::size_t width) {
  std::vector<std::string> lines(1);
  std::size_t room = first_width;
  auto next_line = [&] {
    lines.emplace_back();
    room = width;
  };
  while (!words.empty()) {
    const std::size_t space = words.find(' ');
    std::string_view word = words.substr(0, space);
    words = space == std::string_view::npos ? "" : words.substr(space + 1);
    if (word.empty()) continue;
    if (!lines.back().empty()) {
      if (text::length_in_characters(lines.back()) + 1 + text::length_in_characters(word) <= room)
        lines.back() += ' ';
      else
        next_line();
    }
    while (text::length_in_characters(word) > room) {
      const auto [fits, rest] = split_at(word, room);
      lines.back() += fits;
      word = rest;
      next_line();
    }
    lines.back() += word;
  }
  return lines;
}

std::vector<std::size_t> widths_of(const Table& table, const std::vector<std::vector<std::string>>& cells,
                                   std::size_t width) {
  std::vector<std::size_t> widths;
  for (std::size_t column = 0; column < table.columns.size(); ++column) {
    std::size_t widest = text::length_in_characters(table.columns[column].title);
    for (const auto& row : cells)
      if (column < row.size()) widest = std::max(widest, text::length_in_characters(row[column]));
    widths.push_back(std::max<std::size_t>(widest, 1));
  }
  std::size_t total = kGap * (widths.size() - 1);
  for (const std::size_t one : widths) total += one;
  for (; total > width; --total) {
    const auto widest = std::max_element(widths.begin(), widths.end());
    if (*widest <= kNarrowest) break;
    --*widest;
  }
  return widths;
}

void add_row(text::Columns& columns, const std::vector<std::string>& row,
             const std::vector<std::size_t>& widths) {
  std::vector<std::vector<std::string>> cells;
  std::size_t height = 1;
  for (std::size_t i = 0; i < widths.size(); ++i) {
    cells.push_back(lines_of(i < row.size() ? row[i] : "", widths[i], widths[i]));
    height = std::max(height, cells.back().size());
  }
  for (std::size_t line = 0; line < height; ++line) {
    std::vector<std::string> printed;
    for (const auto& cell : cells) printed.push_back(line < cell.size() ? cell[line] : "");
    columns.add(printed);
  }
}

}  // namespace

std::string wrapped(std::string_view words, std::size_t width, std::string_view first,
                    std::string_view rest) {
  const std::vector<std::string> lines =
      lines_of(words, width - text::length_in_characters(first), width - text::length_in_characters(rest));
  std::string all;
  for (std::size_t i = 0; i < lines.size(); ++i) all += std::string(i == 0 ? first : rest) + lines[i] + "\n";
  return all;
}

std::string wrapped_table(const Table& table, std::size_t width, std::size_t indent) {
  std::vector<std::vector<std::string>> cells = table.rows;
  for (auto& row : cells)
    for (std::string& cell : row) cell = one_line(cell);
  const std::vector<std::size_t> widths = widths_of(table, cells, width - indent);
  std::vector<text::Align> align;
  std::vector<std::string> titles;
  bool titled = false;
  for (const auto& column : table.columns) {
    align.push_back(column.number ? text::Align::right : text::Align::left);
    titles.push_back(column.title);
    titled = titled || !column.title.empty();
  }
  text::Columns columns(std::vector<std::string>(widths.size()), align);
  if (titled) add_row(columns, titles, widths);
  for (const auto& row : cells) add_row(columns, row, widths);
  return columns.text(indent);
}

}  // namespace report
