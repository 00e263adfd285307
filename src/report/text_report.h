#pragma once

#include <string>

#include "findings/evidence.h"
#include "findings/finding.h"
#include "report/content/document.h"

namespace report {

/// The whole report as plain text for a terminal or an e-mail: UTF-8, no line longer than 100 characters, each ended by
/// a newline. It says word for word what `html_report` says; charts are left out.
///
/// Control characters in names and notes are shown as "?", line ends in them as spaces.
/// @throws std::domain_error  when the findings point at comparisons or listeners that the plan has not, or hold a
///         probability outside 0 to 1.
std::string text_report(const findings::Evidence& evidence, const findings::Findings& findings);

/// Any other document in the same way.
std::string text_of(const Document& document);

}  // namespace report
