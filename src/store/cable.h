#pragma once

#include <string>
#include <utility>
#include <vector>

namespace store {

/// A cable under test. In stereo one cable is two pieces under one name.
struct Cable {
  std::string name{};
  /// Attributes and their values as typed: {"geometry", "twisted pair"}, {"cross-section", "2.5mm2"}.
  std::vector<std::pair<std::string, std::string>> construction{};
  std::string note{};

  bool operator==(const Cable&) const = default;
};

}  // namespace store
