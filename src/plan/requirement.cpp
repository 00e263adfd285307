#include "plan/requirement.h"

#include <algorithm>
#include <stdexcept>

#include "plan/looks.h"
#include "plan/sitting_shape.h"
#include "stats/share/binomial.h"
#include "text/error.h"
#include "text/number.h"

namespace plan {
namespace {

bool contains(const std::vector<int>& list, int value) {
  return std::find(list.begin(), list.end(), value) != list.end();
}

/// Fewest of `trials` that must score at `level`; trials + 1 when not even all would do.
int needed(const protocols::Protocol& protocol, int trials, double level) {
  const auto minimum = protocol.has_right_answer() ? stats::minimum_correct(trials, level, 0.5)
                                                   : stats::minimum_correct_two_sided(trials, level);
  return minimum.value_or(trials + 1);
}

/// Whether the primary test of a comparison uses this sitting.
bool counts(const Plan& plan, const Part& part) {
  if (plan.primary_test == "pooled") return true;
  return std::any_of(part.listeners.begin(), part.listeners.end(), [&](int listener) {
    return plan.listeners[static_cast<std::size_t>(listener)] == plan.primary_test;
  });
}

/// A claim that is looked at, where all listeners answer alike: what each look needs, and the last.
void add_looks(const Plan& plan, const Looks& looks, Requirement& requirement) {
  const std::vector<stats::Split> alike(static_cast<std::size_t>(requirement.trials), {1, 0});
  const stats::StoppingRule bounds = bounds_of(plan, looks, alike);
  for (const int after : looks.after)
    if (after <= requirement.trials)
      requirement.at_looks.emplace_back(after, bounds.looks[static_cast<std::size_t>(after - 1)].support);
  requirement.needed_trials = requirement.trials + 1;
  for (const auto& [after, needed] : requirement.at_looks)
    if (needed) requirement.needed_trials = *needed;
}

}  // namespace

double level_of(const Plan& plan) {
  const auto level = text::number(plan.level);
  if (!level || !(*level > 0 && *level < 1))
    throw std::domain_error("level must be a number above 0 and below 1, got \"" + plan.level + "\"");
  return *level;
}

int family_size(const Plan& plan) {
  return static_cast<int>(std::count_if(plan.comparisons.begin(), plan.comparisons.end(),
                                        [](const Comparison& c) { return c.kind == Kind::claim; }));
}

std::vector<Requirement> requirements(const Plan& plan) {
  const protocols::Protocol& protocol = protocol_of(plan);
  std::vector<Requirement> list;
  for (std::size_t i = 0; i < plan.comparisons.size(); ++i) {
    Requirement requirement;
    requirement.comparison = static_cast<int>(i);
    for (const Part& part : plan.sittings) {
      if (!contains(part.comparisons, requirement.comparison) || !counts(plan, part)) continue;
      requirement.trials += part.trials_each;
      requirement.answers +=
          part.trials_each * (plan.primary_test == "pooled" ? static_cast<int>(part.listeners.size()) : 1);
    }
    const bool claim = plan.comparisons[i].kind == Kind::claim;
    requirement.level = level_of(plan) / (claim ? family_size(plan) : 1);
    const auto looks = looks_of(plan);
    if (claim && looks)
      add_looks(plan, *looks, requirement);
    else
      requirement.needed_trials =
          requirement.trials == 0 ? 1 : needed(protocol, requirement.trials, requirement.level);
    list.push_back(requirement);
  }
  return list;
}

void refuse_hopeless(const Plan& plan) {
  for (const Requirement& requirement : requirements(plan)) {
    if (requirement.needed_trials <= requirement.trials) continue;
    if (!requirement.at_looks.empty())
      throw text::BadInput(
          "plan: " + title_of(plan, plan.comparisons[static_cast<std::size_t>(requirement.comparison)]) +
          " could not be supported at any look with every answer right\n"
          "plan later looks, or fewer comparisons");
    int enough = requirement.trials + 1;
    while (needed(protocol_of(plan), enough, requirement.level) > enough) ++enough;
    const Comparison& comparison = plan.comparisons[static_cast<std::size_t>(requirement.comparison)];
    const bool claim = comparison.kind == Kind::claim;
    throw text::BadInput(
        "plan: " + title_of(plan, comparison) + " could not be supported with every answer " +
        (protocol_of(plan).has_right_answer() ? "right" : "for one cable") + ": " +
        std::to_string(requirement.trials) + " trials cannot reach the level " +
        text::significant(requirement.level, 3) +
        (claim ? " that the family's first step needs" : " of a control") + "\ngive it at least " +
        std::to_string(enough) + " trials" + (claim ? ", or plan fewer comparisons" : ""));
  }
}

double minutes_of(const Plan& plan, int sitting) {
  const Part& part = part_of(plan, sitting);
  const auto trials = part.trials_each * static_cast<int>(part.comparisons.size());
  const auto presentations = static_cast<int>(protocol_of(plan).labels(1).size());
  const double seconds = 1.0 * trials * presentations * (plan.swap_seconds + plan.presentation_seconds);
  const int breaks = (trials - 1) / plan.block_trials;
  return seconds / 60 + 1.0 * breaks * plan.break_minutes;
}

}  // namespace plan
