#pragma once

#include <cstdlib>
#include <string_view>

/// How much is run: BLINDSWAP_TIER, "quick", "plain" or "long"; "plain" where it is not set.
inline std::string_view tier() {
  const char* set = std::getenv("BLINDSWAP_TIER");
  return set == nullptr ? "plain" : set;
}
