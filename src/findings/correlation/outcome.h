#pragma once

#include <optional>
#include <string>
#include <vector>

#include "findings/finding.h"

namespace findings {

/// What is held against the measures, and which way round.
///
/// Where an answer can be right: the share right against the absolute difference, since no direction exists.
/// Else the share for a cable against its difference from the other: with a benchmark, always the cable that
/// stands against it, so that the planned order of two names does not matter; without one, the comparison's
/// first cable.
struct Outcome {
  bool absolute = true;
  std::string name;
  std::string against;
  std::optional<std::string> benchmark;  ///< title of the cable that stands in every comparison

  double share_of(const ComparisonFinding& finding) const;
  double difference_of(const ComparisonFinding& finding, double second_less_first) const;

 private:
  bool benchmark_is_first(const ComparisonFinding& finding) const { return benchmark == finding.first; }
};

/// A benchmark is one cable that stands in all these comparisons, each time against another one. Comparisons
/// that share cables otherwise are not independent.
Outcome outcome_of(const plan::Plan& plan, const std::vector<const ComparisonFinding*>& claims);

}  // namespace findings
