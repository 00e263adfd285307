#pragma once

#include <algorithm>
#include <stdexcept>

#include "findings/evidence_builder.h"

inline electrical::Cable of_resistance(double ohm) { return {.resistance_ohm_per_m = ohm, .length_m = 1}; }

inline bool has(const std::vector<findings::Correlation>& list, const std::string& measure) {
  return std::any_of(list.begin(), list.end(), [&](const auto& one) { return one.measure == measure; });
}

inline findings::Correlation with(const std::vector<findings::Correlation>& list,
                                  const std::string& measure) {
  for (const auto& one : list)
    if (one.measure == measure) return one;
  throw std::runtime_error("no correlation with " + measure);
}
