#include "text/table.h"

#include <algorithm>
#include <map>
#include <utility>

#include "text/lines.h"
#include "text/number.h"
#include "text/utf8.h"

namespace text {
namespace {

/// Splits one line into cells, counting columns in characters.
class LineOfCells {
 public:
  LineOfCells(std::string_view line, int number, char separator, Problems& problems)
      : line_(line), number_(number), separator_(separator), problems_(problems) {}

  /// Nothing when a quote is wrong; the problem has then been added.
  std::optional<std::vector<Cell>> cells() {
    std::vector<Cell> found;
    for (bool more = true; more;) {
      auto cell = next(more);
      if (!cell) return std::nullopt;
      found.push_back(std::move(*cell));
    }
    return found;
  }

 private:
  std::optional<Cell> next(bool& more) {
    const std::string_view raw = line_.substr(at_, line_.find(separator_, at_) - at_);
    const std::string_view inner = trimmed(raw);
    const std::size_t first = inner.empty() ? at_ : static_cast<std::size_t>(inner.data() - line_.data());
    if (inner.starts_with('"')) return quoted(first, more);
    Cell cell{std::string(inner), place(first, inner)};
    step_over(at_ + raw.size(), more);
    return cell;
  }

  std::optional<Cell> quoted(std::size_t first, bool& more) {
    std::string text;
    std::size_t at = first + 1;
    for (; at < line_.size(); ++at) {
      const bool quote = line_[at] == '"';
      if (quote && !line_.substr(at + 1).starts_with('"')) break;
      if (quote) ++at;
      text += line_[at];
    }
    if (at >= line_.size()) {
      problems_.add(place(first, "\""), "this quote is not closed on its line",
                    "close it; a cell ends on its line");
      return std::nullopt;
    }
    const Place where = place(first, line_.substr(first, at + 1 - first));
    const std::size_t end = std::min(line_.find(separator_, at), line_.size());
    const std::string_view rest = trimmed(line_.substr(at + 1, end - at - 1));
    if (!rest.empty()) {
      problems_.add(place(static_cast<std::size_t>(rest.data() - line_.data()), rest),
                    "text after a closing quote", "inside quotes write \"\" for a quote");
      return std::nullopt;
    }
    step_over(end, more);
    return Cell{std::string(trimmed(text)), where};
  }

  void step_over(std::size_t end, bool& more) {
    more = end < line_.size();
    at_ = end + 1;
  }

  Place place(std::size_t first, std::string_view written) {
    characters_ += length_in_characters(line_.substr(counted_, first - counted_));
    counted_ = first;
    return {number_, static_cast<int>(characters_) + 1,
            std::max(1, static_cast<int>(length_in_characters(written)))};
  }

  std::string_view line_;
  int number_;
  char separator_;
  Problems& problems_;
  std::size_t at_ = 0;
  std::size_t counted_ = 0;     // bytes of the line already counted
  std::size_t characters_ = 0;  // characters in them
};

char separator_of(std::string_view header) {
  bool inside = false;
  std::string outside;
  for (const char c : header) {
    if (c == '"') inside = !inside;
    if (!inside) outside += c;
  }
  for (const char separator : {'\t', ';'})
    if (trimmed(outside).find(separator) != std::string_view::npos) return separator;
  return ',';
}

bool passed_over(std::string_view line) {
  const std::string_view text = trimmed(line);
  return text.empty() || text.starts_with('#');
}

void drop_empty_at_end(std::vector<Cell>& cells, std::size_t least) {
  while (cells.size() > least && cells.back().text.empty()) cells.pop_back();
}

void check_header(Table& table) {
  std::map<std::string, int> seen;
  for (const Cell& cell : table.header) {
    if (cell.text.empty())
      table.problems.add(cell.place, "this column has no name", "name it in the header or remove it");
    else if (const auto [first, added] = seen.emplace(lower_case(cell.text), cell.place.column); !added)
      table.problems.add(cell.place, "column \"" + cell.text + "\" stands twice in the header",
                         "first at column " + std::to_string(first->second));
  }
}

std::string count_of_cells(std::size_t cells) {
  return std::to_string(cells) + (cells == 1 ? " cell" : " cells");
}

void add_wrong_count(Table& table, const std::vector<Cell>& cells) {
  const std::size_t expected = table.header.size();
  const std::string message =
      count_of_cells(cells.size()) + " in this row, the header has " + std::to_string(expected);
  if (cells.size() < expected) {
    table.problems.add(cells.back().place, message,
                       "nothing for \"" + table.header[cells.size()].text + "\"");
    return;
  }
  const auto last_expected = cells.begin() + static_cast<std::ptrdiff_t>(expected) - 1;
  const bool numbers =
      std::all_of(last_expected, cells.end(), [](const Cell& c) { return number(c.text).has_value(); });
  const bool decimal_commas = table.separator == ',' && numbers;
  table.problems.add(cells[expected].place, message,
                     decimal_commas ? "decimal commas? then separate the cells by ; or tab, in the header too"
                                    : "put quotes around a cell that holds the separator");
}

void add_row(Table& table, std::vector<Cell> cells, int line) {
  drop_empty_at_end(cells, table.header.size());
  const bool blank =
      std::all_of(cells.begin(), cells.end(), [](const Cell& cell) { return cell.text.empty(); });
  if (blank) return;
  if (cells.size() != table.header.size()) return add_wrong_count(table, cells);
  table.rows.push_back({line, std::move(cells)});
}

[[noreturn]] void refuse_without_header(const Problems& file) {
  const std::string found =
      without_byte_order_mark(file.content()).empty() ? "is empty" : "has no header row";
  refuse_file(file, {{}, found, "the first row names quantity and unit of each column"});
}

}  // namespace

std::optional<std::size_t> Table::column(std::string_view name) const {
  const auto same = [&](const Cell& cell) { return lower_case(cell.text) == lower_case(name); };
  const auto found = std::find_if(header.begin(), header.end(), same);
  if (found == header.end()) return std::nullopt;
  return static_cast<std::size_t>(found - header.begin());
}

Table parse_table(std::string_view content, const std::string& file) {
  Table table{{}, {}, ',', Problems(file, std::string(content))};
  refuse_unless_plain_text(table.problems);
  std::size_t count = 0;
  int number = 0;
  bool header_read = false;
  std::string_view rest = without_byte_order_mark(table.problems.content());
  while (const auto next = next_line(rest)) {
    const std::string_view line = *next;
    ++number;
    if (passed_over(line)) continue;
    if (!header_read) table.separator = separator_of(line);
    auto cells = LineOfCells(line, number, table.separator, table.problems).cells();
    if (!header_read && !cells) table.problems.refuse_if_any();
    if (!cells) continue;
    count += cells->size();
    if (count > most_cells)
      refuse_file(table.problems,
                  {{number, 1, 1}, "more than " + std::to_string(most_cells) + " cells", "split it"});
    if (header_read) {
      add_row(table, std::move(*cells), number);
      continue;
    }
    header_read = true;
    drop_empty_at_end(*cells, 1);
    table.header = std::move(*cells);
    check_header(table);
  }
  if (!header_read) refuse_without_header(table.problems);
  if (table.rows.empty() && table.problems.empty())
    table.problems.add(table.header.front().place, "a header, but no rows under it");
  return table;
}

}  // namespace text
