#pragma once

#include <charconv>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

/// True if an ngspice answers on the PATH.
inline bool has_ngspice() { return std::system("ngspice --version > /dev/null 2>&1") == 0; }

inline std::string output_of(const std::string& command) {
  FILE* pipe = popen(command.c_str(), "r");
  if (!pipe) throw std::runtime_error("cannot start " + command);
  std::string text;
  char part[4096];
  for (std::size_t n; (n = fread(part, 1, sizeof part, pipe)) > 0;) text.append(part, n);
  if (pclose(pipe) != 0) throw std::runtime_error("failed: " + command);
  return text;
}

/// The number at the end of each line that starts with `start`.
inline std::vector<double> numbers_at_line_ends(std::istream& lines, const std::string& start) {
  std::vector<double> numbers;
  for (std::string line; std::getline(lines, line);) {
    if (line.rfind(start, 0) != 0) continue;
    const char* from = line.data() + line.find_last_of(' ') + 1;
    double number = 0;
    if (std::from_chars(from, line.data() + line.size(), number).ec != std::errc{}) {
      throw std::runtime_error("no number: " + line);
    }
    numbers.push_back(number);
  }
  return numbers;
}

/// A netlist, run in ngspice.
class NgspiceRun {
 public:
  explicit NgspiceRun(const std::string& path)
      : path_(path), output_(output_of("LC_ALL=C ngspice -b '" + path_ + "' 2> /dev/null")) {}

  /// The frequencies of its `ac lin 1 f f` lines.
  std::vector<double> frequency_hz() const {
    std::ifstream netlist(path_);
    return numbers_at_line_ends(netlist, "ac lin 1 ");
  }

  /// What it printed as "quantity = number".
  std::vector<double> printed(const std::string& quantity) const {
    std::istringstream lines(output_);
    return numbers_at_line_ends(lines, quantity + " = ");
  }

 private:
  std::string path_;
  std::string output_;
};
