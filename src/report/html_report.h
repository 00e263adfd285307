#pragma once

#include <string>
#include <string_view>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace report {

/// The whole report as one HTML file that needs nothing else: no script, no request to anywhere, charts as inline SVG,
/// readable on paper, on a phone, in the dark and by a screen reader.
///
/// It says word for word what `text_report` says, with charts beside it.
/// @param version  of the program, for the last line.
/// @throws std::domain_error  as `text_report`.
std::string html_report(const findings::Evidence& evidence, const findings::Findings& findings,
                        std::string_view version);

}  // namespace report
