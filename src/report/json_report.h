#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace report {

/// The number under "schema" in every report; it grows when a key changes its meaning or goes.
inline constexpr int json_schema = 1;

/// The whole report as one JSON object: every statistic in full double precision, every trial with its answers, units
/// in the keys (`_dB`, `_Hz`, `_ohm`, `_s`).
///
/// Every key is always there: what is not known is null. A number that is not finite becomes null when written.
/// `data_dictionary` describes every key.
/// @throws std::domain_error  when the evidence names a comparison or listener that the plan has not.
nlohmann::json json_report(const findings::Evidence& evidence, const findings::Findings& findings);

/// What every key path of `json_report` means, as a Markdown table: path, type, unit, domain, meaning. A path joins keys
/// by "."; "[]" stands for every element of a list: `comparisons[].primary.p`.
std::string data_dictionary();

}  // namespace report
