#include "findings/consistency.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "plan/requirement.h"

namespace findings {
namespace {

void require_index(const std::string& what, int index, std::size_t count) {
  if (index >= 0 && index < static_cast<int>(count)) return;
  throw std::domain_error("evidence: " + what + " must be between 0 and " + std::to_string(count) +
                          " - 1, got " + std::to_string(index));
}

void check_answers(const std::string& trial, const std::map<int, int>& answers, std::size_t listeners) {
  for (const auto& [listener, answer] : answers) {
    require_index(trial + ": listener", listener, listeners);
    require_index(trial + ": answer", answer, 2);
  }
}

void check_trial(const Evidence& evidence, const TrialEvidence& trial) {
  const std::string name =
      "trial " + std::to_string(trial.number) + " of sitting " + std::to_string(trial.sitting);
  const auto same = [&](const SittingEvidence& sitting) { return sitting.number == trial.sitting; };
  if (std::none_of(evidence.sittings.begin(), evidence.sittings.end(), same))
    throw std::domain_error("evidence: " + name + " belongs to no sitting");
  require_index(name + ": coin", trial.coin, 2);
  for (const int side : trial.sides) require_index(name + ": side", side, 2);
  check_answers(name, trial.answers, evidence.plan.listeners.size());
  check_answers(name, trial.first_answers, evidence.plan.listeners.size());
  for (const auto& [listener, words] : trial.corrections)
    require_index(name + ": corrected listener", listener, evidence.plan.listeners.size());
  for (const auto& [listener, level] : trial.sureness)
    require_index(name + ": listener who said how sure", listener, evidence.plan.listeners.size());
  for (const int listener : trial.missing)
    require_index(name + ": missing listener", listener, evidence.plan.listeners.size());
}

}  // namespace

void check_consistency(const Evidence& evidence) {
  plan::level_of(evidence.plan);
  if (evidence.trials.size() != evidence.plan.comparisons.size())
    throw std::domain_error("evidence: trials must be given for each of " +
                            std::to_string(evidence.plan.comparisons.size()) + " comparisons, got " +
                            std::to_string(evidence.trials.size()));
  for (const auto& trials : evidence.trials)
    for (const TrialEvidence& trial : trials) check_trial(evidence, trial);
  for (const TerminalLevel& level : evidence.levels) {
    require_index("specimen of a terminal level", level.specimen, evidence.plan.specimens.size());
    if (!std::isfinite(level.level_db))
      throw std::domain_error("evidence: level_db of a terminal must be finite");
  }
  for (const SittingEvidence& sitting : evidence.sittings)
    require_index("number of a sitting, less 1", sitting.number - 1, evidence.plan.sittings.size());
}

}  // namespace findings
