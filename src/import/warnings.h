#pragma once

#include <string>
#include <vector>

#include "text/problem.h"

namespace imported {

/// Warnings about one file, in the form of its problems; after 20 they are only counted.
class Warnings {
 public:
  explicit Warnings(const text::Problems& file) : file_(file) {}

  void add(const text::Place& place, const std::string& message, const std::string& hint = "");

  /// The warnings, and "NAME: and N more warnings" when there are more.
  std::vector<std::string> all() const;

 private:
  const text::Problems& file_;
  std::vector<std::string> shown_;
  std::size_t more_ = 0;
};

}  // namespace imported
