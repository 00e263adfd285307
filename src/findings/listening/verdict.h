#pragma once

#include <string>
#include <vector>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// What a comparison with so many answers in each analysed trial would have caught; from these numbers and
/// levels alone.
WouldHaveBeenCaught would_have_been_caught(const plan::Plan& plan, plan::Kind kind,
                                           const std::vector<int>& answers_by_trial);

/// Whether a comparison's primary p reaches the undivided level: of an identical pair, that it was heard.
bool is_heard(const ComparisonFinding& finding, double level);

/// Why a comparison cannot be judged whatever its own answers say: too few of them, and what the plan's
/// conditions for judging add. Such a comparison counts as p = 1 in its family. Needs the controls judged.
std::vector<std::string> bars(const Evidence& evidence, const Findings& findings,
                              const ComparisonFinding& finding);

/// Gives every comparison its adjusted p, verdict and reasons. Claims by Holm over the whole plan, controls
/// each at the undivided level.
///
/// Two conditions look at the outcome and come last: a known difference that was not heard, or could not be
/// judged, turns *not shown* into *cannot be judged*, and a plan ended by somebody who had seen both answers
/// and order supports nothing. Needs every comparison's primary test.
void judge(const Evidence& evidence, Findings& findings);

}  // namespace findings
