#pragma once

#include <cstddef>
#include <limits>
#include <memory>
#include <string>
#include <vector>

namespace text {

/// A stretch of a text file. Lines and columns count from 1; columns and width are in characters (code
/// points). Line 0 stands for the file as a whole.
struct Place {
  int line = 0;
  int column = 1;
  int width = 1;
};

/// Something wrong at a place, and what to do about it (`hint` may be empty).
struct Problem {
  Place place;
  std::string message;
  std::string hint;
};

/// Everything wrong with one text file, gathered so that all of it is reported at once.
///
///     star-quad.csv:7:6: capacitance must be a number in pF, got "112 pF"
///       2.0; 112 pF; 1000
///            ^^^^^^ the header gives the unit: write 112
class Problems {
 public:
  /// @param file  the name shown, as the person wrote it.
  /// @param content  the whole text of the file, for the lines shown.
  Problems(std::string file, std::string content);

  void add(const Place& place, std::string message, std::string hint = "");

  bool empty() const { return count_ == 0; }

  /// Whether any stands in that line or before it: of the header, whether it can be relied on.
  bool any_up_to(int line) const { return count_ > 0 && first_line_ <= line; }
  const std::string& file() const { return file_; }
  const std::string& content() const { return *content_; }

  /// The problems in order of line and column, at most 20 in full and then "and N more".
  std::string report() const;

  /// One remark in the same form, for warnings that refuse nothing.
  std::string formatted(const Problem& problem) const;

  /// @throws BadInput  with the report.
  [[noreturn]] void refuse() const;

  /// @throws BadInput  with the report, when there is any problem.
  void refuse_if_any() const;

 private:
  std::string file_;
  std::shared_ptr<const std::string> content_;
  std::vector<Problem> problems_;  // the first of them, enough for the report
  std::size_t count_ = 0;
  int first_line_ = std::numeric_limits<int>::max();
};

}  // namespace text
