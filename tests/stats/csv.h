#pragma once

#include <charconv>
#include <fstream>
#include <map>
#include <optional>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

/// The check values in tests/stats/data: `#` lines name the source, then a header row, then rows; an empty
/// cell is a value that is not given.
struct CsvRow {
  std::string file;
  std::map<std::string, std::string> cells;

  std::optional<double> find(const std::string& column) const {
    const std::string& text = cells.at(column);
    if (text.empty()) return std::nullopt;
    double value = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
    if (read.ec == std::errc() && read.ptr == text.data() + text.size()) return value;
    const auto slash = text.find('/');  // a share written as 1/2 or 1/3
    if (slash == std::string::npos) throw std::runtime_error(file + ": no number: " + text);
    return (text[0] - '0') / double(text[slash + 1] - '0');
  }
  double number(const std::string& column) const { return find(column).value(); }
  int whole(const std::string& column) const { return static_cast<int>(number(column)); }
  std::optional<int> find_whole(const std::string& column) const {
    const auto value = find(column);
    return value ? std::optional(static_cast<int>(*value)) : std::nullopt;
  }
};

inline std::vector<std::string> split_cells(const std::string& line) {
  std::vector<std::string> cells{""};
  for (char c : line)
    if (c == ',')
      cells.emplace_back();
    else
      cells.back() += c;
  return cells;
}

inline std::vector<CsvRow> check_values(const std::string& file) {
  std::ifstream in(SOURCE_FOLDER "/tests/stats/data/" + file);
  std::vector<std::string> header;
  std::vector<CsvRow> rows;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with('#')) continue;
    const auto cells = split_cells(line);
    if (header.empty()) {
      header = cells;
      continue;
    }
    CsvRow row{file, {}};
    for (std::size_t i = 0; i < header.size(); ++i) row.cells[header[i]] = cells.at(i);
    rows.push_back(row);
  }
  if (rows.empty()) throw std::runtime_error("no check values in " + file);
  return rows;
}
