#pragma once

#include <vector>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// The listeners that the plan seats for a comparison, in the plan's order.
std::vector<int> listeners_of(const plan::Plan& plan, int comparison);

/// Every planned listener's own test of a comparison, unadjusted.
std::vector<ListenerResult> listener_results(const Evidence& evidence, int comparison);

/// The second family: Holm over every listener's test of every claim. Controls belong to no family and keep
/// their p.
void adjust_listeners(Findings& findings);

/// Whether a listener's own p, unadjusted, reaches the level.
bool leans(const ListenerResult& listener, double level);

/// Whether two listeners each lean the other way.
bool are_opposed(const std::vector<ListenerResult>& listeners, double level);

}  // namespace findings
