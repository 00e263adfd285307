#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace text {

enum class Align { left, right };

/// Rows of cells to be printed one under the other in plain text, two spaces between columns.
///
///     Columns list({"cable", "loop"}, {Align::left, Align::right});
///     list.add({"bell wire", "0.60 ohm"});
///     std::cout << list.text();
///
/// Widths are counted in characters (code points). No line ends in spaces.
class Columns {
 public:
  /// @param header  titles of the columns; all empty for no title line.
  /// @param align  one per column; columns without one are left-aligned.
  explicit Columns(std::vector<std::string> header, std::vector<Align> align = {});

  /// Adds a row; missing cells are empty.
  /// @throws std::domain_error  when there are more cells than columns.
  void add(std::vector<std::string> cells);

  /// All lines, each ended by a newline and begun with `indent` spaces.
  std::string text(std::size_t indent = 0) const;

 private:
  std::vector<std::string> header_;
  std::vector<Align> align_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace text
