#pragma once

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

/// A file in the folder of the data that tests/bench/compare makes.
inline std::string data_file(const std::string& name) {
  const char* folder = std::getenv("BLINDSWAP_BENCH_DATA");
  return std::string(folder ? folder : ".") + "/" + name;
}

/// Rows of numbers of a data file, below its header.
inline std::vector<std::vector<double>> rows_of(const std::string& name) {
  std::ifstream file(data_file(name));
  if (!file)
    throw std::runtime_error("no " + name + ": run tests/bench/compare, or set BLINDSWAP_BENCH_DATA");
  std::vector<std::vector<double>> rows;
  std::string line;
  std::getline(file, line);
  while (std::getline(file, line)) {
    std::istringstream cells(line);
    rows.emplace_back();
    for (std::string cell; std::getline(cells, cell, ',');) rows.back().push_back(std::stod(cell));
  }
  return rows;
}
