#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace reference {

using Numbers = std::vector<double>;

/// Where a function gives nothing.
inline constexpr double kNothing = std::numeric_limits<double>::quiet_NaN();

inline double or_nothing(const std::optional<int>& count) { return count ? *count : kNothing; }

/// The arguments of one call, each a list of numbers.
struct Call {
  std::vector<Numbers> arguments;

  const Numbers& list(std::size_t i) const { return arguments.at(i); }
  double number(std::size_t i) const { return arguments.at(i).at(0); }
  int whole(std::size_t i) const { return static_cast<int>(number(i)); }
  std::vector<int> wholes(std::size_t i) const { return {list(i).begin(), list(i).end()}; }
};

/// A function in a script beside the tests, with the names of its arguments.
struct Function {
  std::string script;  ///< *.R or *.py
  std::string name;
  std::string arguments;  ///< "correct,trials"
};

}  // namespace reference
