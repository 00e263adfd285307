#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"

namespace report {

/// Empty CSV tables for keying in what was written on paper. Each begins with comment lines (#) that say how to fill
/// it. Sittings are numbered from 1; all functions throw std::domain_error for a sitting that the plan has not.

/// `trial,<listener>,...`: one row a trial and one column a listener attending. Spares stand as comment rows, to be
/// uncommented when they were played.
std::string answers_form(const plan::Plan& plan, int sitting);

/// `trial,presentation,started`: one row a presentation; spares as above.
std::string times_form(const plan::Plan& plan, int sitting);

/// `trial,by,reason,words`: no row yet; the comments name the closed list of reasons.
std::string spoilings_form(const plan::Plan& plan, int sitting);

/// `tag,channel,when,level_dB`: one row a tag, channel ("left", "right") and moment ("start", "end").
/// @param tags  as on the tagging list.
std::string levels_form(const std::vector<int>& tags);

}  // namespace report
