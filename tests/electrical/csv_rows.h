#pragma once

#include <charconv>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

/// One row of a table: column name to text.
class CsvRow {
 public:
  CsvRow(const std::vector<std::string>& names, const std::vector<std::string>& cells) {
    if (names.size() != cells.size()) throw std::runtime_error("a row does not fit its header");
    for (std::size_t i = 0; i < names.size(); ++i) cells_[names[i]] = cells[i];
  }

  const std::string& text(const std::string& column) const { return cells_.at(column); }

  double number(const std::string& column) const {
    const std::string& cell = text(column);
    double value = 0;
    const auto end = std::from_chars(cell.data(), cell.data() + cell.size(), value).ptr;
    if (end != cell.data() + cell.size() || cell.empty()) throw std::runtime_error("no number: " + cell);
    return value;
  }

 private:
  std::map<std::string, std::string> cells_;
};

/// The rows of a comma-separated table under tests/, its `#` lines left out.
inline std::vector<CsvRow> csv_rows(const std::string& path_below_tests) {
  std::ifstream file(std::string(SOURCE_FOLDER) + "/tests/" + path_below_tests);
  if (!file) throw std::runtime_error("cannot open " + path_below_tests);
  std::vector<std::string> names;
  std::vector<CsvRow> rows;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::vector<std::string> cells;
    std::istringstream stream(line);
    for (std::string cell; std::getline(stream, cell, ',');) cells.push_back(cell);
    if (line.back() == ',') cells.emplace_back();
    if (names.empty()) {
      names = cells;
    } else {
      rows.emplace_back(names, cells);
    }
  }
  return rows;
}
