#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// A measured or predicted quantity by which two cables differ.
struct Measure {
  std::string_view name;  ///< with its unit
  bool has_sign;          ///< whether exchanging the two cables changes its sign

  /// A specimen's own value, of which the difference is one less the other; no function for a measure of
  /// pairs only.
  std::optional<double> (*of_specimen)(const Evidence&, int specimen);
  /// The second less the first; no function when `of_specimen` gives it.
  std::optional<double> (*of_pair)(const ComparisonFinding&);
};

/// The one list of measures that outcomes are held against.
std::span<const Measure> measures();

/// Second less first of a comparison; nothing when it is not known.
std::optional<double> difference(const Measure& measure, const Evidence& evidence,
                                 const ComparisonFinding& finding);

}  // namespace findings
