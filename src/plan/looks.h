#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "plan/plan.h"
#include "stats/redraw/redraw.h"
#include "stats/sequential/alpha_spending.h"
#include "stats/sequential/stopping_rule.h"

namespace plan {

/// A stopping rule with looks: after so many trials of a claim, those spoiled in time not counted, the sitting itself looks
/// whether the claim is supported already, and stops its trials if so. Nobody is told more than "continue" or "stop".
struct Looks {
  std::vector<int> after;  ///< rising; the last is every trial planned of a claim
  stats::Spending spending = stats::Spending::obrien_fleming;
};

/// The stopping rule without looks.
inline constexpr const char* fixed_number_of_trials = "fixed number of trials";

/// The rule as it stands in the plan: "looks after 8, 16, 24 trials, O'Brien-Fleming spending".
std::string rule_text(const Looks& looks);

/// The plan's looks; nothing for a fixed number of trials.
/// @throws text::BadInput for a stopping rule that is neither.
std::optional<Looks> looks_of(const Plan& plan);

/// Checks that the plan can be held with its looks: right answers exist, every claim has all its trials in one sitting,
/// as many as the last look. @throws text::BadInput naming what does not fit.
void check_looks(const Plan& plan);

/// The level that a claim may have spent at each look: of the plan's level at the family's first step.
std::vector<double> spent_at(const Plan& plan, const Looks& looks);

/// The bounds on the total of a claim's trials so far by the re-draw of their coins, a place for each of `splits`.
/// @param ended  the trials end with these: where the plan had no look there, the rest of the level is spent on it.
stats::StoppingRule bounds_of(const Plan& plan, const Looks& looks, std::span<const stats::Split> splits,
                              bool ended = false);

/// Whether a look after the last of `splits` supports the claim.
bool stops_at(const Plan& plan, const Looks& looks, std::span<const stats::Split> splits, int total);

}  // namespace plan
