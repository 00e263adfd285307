#pragma once

#include <string>
#include <vector>

namespace desk {

/// The text of the stopping rule in a plan, from the looks as typed (trials of a claim; none: the number is fixed) and
/// the name of a spending function. Throws text::BadInput for what is no rule; whether the last look is the last trial
/// is the plan's own check.
std::string stopping_rule_of(const std::vector<int>& looks, const std::string& spending);

}  // namespace desk
