#include "sitting/look.h"

#include <algorithm>

#include "sitting/words.h"

namespace sitting {
namespace {

/// The answers of a trial that count for the plan's primary test, by the answer that they give.
stats::Split split_of(const plan::Plan& plan, const TrialState& trial) {
  const std::string_view first = plan::protocol_of(plan).answers()[0];
  stats::Split split{0, 0};
  for (const auto& [listener, answer] : trial.answers) {
    if (answer.last.empty() || (plan.primary_test != "pooled" && listener != plan.primary_test)) continue;
    ++(answer.last == first ? split.one : split.other);
  }
  return split;
}

}  // namespace

std::string_view look_after(const plan::Plan& plan, const plan::Looks& looks, plan::Kind kind,
                            const State& state, int trial, const CoinOf& coin_of) {
  if (!state.is_played(trial) || state.at(trial).spoiled || !state.waits_for(trial).empty()) return "";
  std::vector<stats::Split> splits;
  int total = 0;
  bool answered = false;
  for (const int counted : state.counted_up_to(trial)) {
    const stats::Split split = split_of(plan, state.at(counted));
    answered = split.one + split.other > 0;
    if (!answered) continue;
    splits.push_back(split);
    total += coin_of(counted) == 0 ? split.one : split.other;
  }
  const auto& after = looks.after;
  if (!answered || std::find(after.begin(), after.end() - 1, std::ssize(splits)) == after.end() - 1)
    return "";
  return kind == plan::Kind::claim && plan::stops_at(plan, looks, splits, total) ? stop_word : continue_word;
}

}  // namespace sitting
