#pragma once

#include <stdexcept>
#include <string>

namespace text {

/// Wrong use or bad input: the person can mend it. The program ends with exit status 2.
/// The message says where, what was found, what was expected and what to do next.
class BadInput : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// Right use at the wrong moment: sealed, locked, disk full. Exit status 1.
class NotNow : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

}  // namespace text
