#pragma once

#include <optional>
#include <string>
#include <vector>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace report {

/// A finished chart with the words under it.
struct Figure {
  std::string svg;
  std::string caption;
};

/// Shares with their one-sided limits, chance and what was needed, one row a comparison of `which`.
Figure shares_figure(const findings::Evidence& evidence, const findings::Findings& findings,
                     const std::vector<const findings::ComparisonFinding*>& which, const std::string& id);

/// The predicted and the measured difference of one comparison against frequency; nothing when neither is known.
std::optional<Figure> difference_figure(const findings::ComparisonFinding& finding, const std::string& id);

/// Outcome against measured difference, one point a comparison.
Figure correlation_figure(const findings::Findings& findings, const findings::Correlation& correlation,
                          const std::string& id);

}  // namespace report
