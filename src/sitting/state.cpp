#include "sitting/state.h"

#include <algorithm>
#include <stdexcept>

#include "plan/sitting_shape.h"
#include "sitting/words.h"
#include "text/number.h"

namespace sitting {
namespace {

constexpr int most_presentations = 16;

void settle_difference(State& state, const Event& event) {
  std::erase_if(state.standing_differences, [&](const Event& difference) {
    return difference.trial == event.trial && difference.who == event.who;
  });
}

void apply_answer(State& state, const Event& event) {
  Answer& answer = state.at(event.trial).answers[event.who];
  if (answer.first.empty()) answer.first = event.word;
  answer.last = event.word;
  answer.sureness = event.sureness;
  (event.type == kind::corrected ? answer.correction : answer.note) = event.text;
  std::erase(state.at(event.trial).missing, event.who);
  settle_difference(state, event);
}

void apply_missing(State& state, const Event& event) {
  TrialState& trial = state.at(event.trial);
  if (const auto answer = trial.answers.find(event.who); answer != trial.answers.end()) {
    answer->second.last = answer->second.sureness = "";
    answer->second.correction = event.text;
  }
  std::erase(trial.missing, event.who);
  trial.missing.push_back(event.who);
  settle_difference(state, event);
}

void apply_differed(State& state, const Event& event) {
  state.differences.push_back(event);
  settle_difference(state, event);
  state.standing_differences.push_back(event);
}

void apply_spoiled(State& state, const Event& event) {
  TrialState& trial = state.at(event.trial);
  (event.flag ? trial.late_spoiled : trial.spoiled) = true;
  trial.spoiled_by = event.who;
  trial.spoil_reason = event.word;
  trial.spoil_words = event.text;
}

void apply_presented(State& state, const Event& event) {
  if (event.presentation < 1 || event.presentation > most_presentations)
    throw std::domain_error("an event names presentation " + std::to_string(event.presentation) +
                            ", which no trial has");
  auto& started = state.at(event.trial).started;
  const auto count = static_cast<std::size_t>(event.presentation);
  if (started.size() < count) started.resize(count);
  started[count - 1] = event.text;
  state.resting.clear();
}

void apply_fact(State& state, const Event& event) {
  const auto kinds = fact_kinds();
  const auto known =
      std::find_if(kinds.begin(), kinds.end(), [&](const FactKind& one) { return one.name == event.word; });
  if (known == kinds.end() || !known->repeats)
    std::erase_if(state.facts, [&](const auto& before) { return before.first == event.word; });
  state.facts.emplace_back(event.word, event.text);
  if (event.word == "longest-rehearsed-swap")
    state.longest_rehearsed_swap_seconds =
        text::number(event.text.substr(0, event.text.find(' '))).value_or(0);
}

void apply_level(State& state, const Event& event) {
  const std::size_t space = event.text.find(' ');
  if (space == std::string::npos) throw std::domain_error("an event holds a level without its unit");
  std::erase_if(state.levels, [&](const TerminalLevel& before) {
    return before.tag == event.tag && before.channel == event.who && before.moment == event.word;
  });
  state.levels.push_back(
      {event.tag, event.who, event.word, event.text.substr(0, space), event.text.substr(space + 1)});
}

void apply_ended(State& state, const Event& event) {
  state.ended = true;
  state.ended_early = event.flag;
  state.ended_by = event.who;
  state.ender_had_seen = event.word == had_seen_both;
  state.end_reason = event.text;
  state.ended_at = event.time;
}

void apply_compared(State& state, const Event& event) {
  int differing = static_cast<int>(state.differences.size());
  for (const SecondEntry& before : state.second_entries) differing -= before.differing;
  state.second_entries.push_back(
      {event.who, static_cast<int>(text::whole_number(event.text).value_or(0)), differing});
}

struct Effect {
  std::string_view type;
  bool of_a_trial;
  void (*apply)(State&, const Event&);
};

constexpr Effect effects[] = {
    {kind::presented, true, apply_presented},
    {kind::answered, true, apply_answer},
    {kind::corrected, true, apply_answer},
    {kind::missing, true, apply_missing},
    {kind::spoiled, true, apply_spoiled},
    {kind::differed, true, apply_differed},
    {kind::looked, true, [](State& s, const Event& e) { s.at(e.trial).looked = e.word; }},
    {kind::opened, false, [](State& s, const Event& e) { s.way = e.word, s.opened_at = e.time; }},
    {kind::contributed, false, [](State& s, const Event& e) { s.contributions[e.who] = e.text; }},
    {kind::declared, false,
     [](State& s, const Event& e) {
       s.declarations.push_back({e.who, e.word, e.text, e.flag});
     }},
    {kind::tagged, false, [](State& s, const Event& e) { s.tagged_by = e.who; }},
    {kind::fact, false, apply_fact},
    {kind::level, false, apply_level},
    {kind::began, false, [](State& s, const Event& e) { s.began = true, s.began_at = e.time; }},
    {kind::rest, false,
     [](State& s, const Event& e) {
       s.rested_after = s.current_trial(), s.rested_at = e.time;
       s.resting.push_back(e.who);
     }},
    {kind::noted, false,
     [](State& s, const Event& e) {
       s.notes.push_back({e.who, e.text});
     }},
    {kind::cue, false,
     [](State& s, const Event& e) {
       s.cues.push_back({e.who, e.text});
     }},
    {kind::keyed, false,
     [](State& s, const Event& e) {
       s.keyed_by.push_back({e.who, ""});
       s.keyed_with_helpers_sheet = s.keyed_with_helpers_sheet || e.flag;
     }},
    {kind::compared, false, apply_compared},
    {kind::ended, false, apply_ended},
};

}  // namespace

bool TrialState::settled_for(const std::string& listener) const { return !word_of(listener).empty(); }

std::string TrialState::word_of(const std::string& listener) const {
  if (std::find(missing.begin(), missing.end(), listener) != missing.end()) return "-";
  const auto answer = answers.find(listener);
  return answer == answers.end() ? "" : answer->second.last;
}

State::State(const plan::Plan& plan, int sitting) : layout(plan, sitting) {
  for (const int listener : plan::part_of(plan, sitting).listeners)
    listeners.push_back(plan.listeners.at(static_cast<std::size_t>(listener)));
  trials.resize(static_cast<std::size_t>(layout.trials()));
  practice.resize(static_cast<std::size_t>(plan.practice_trials));
}

void State::apply(const Event& event) {
  const auto effect = std::find_if(std::begin(effects), std::end(effects),
                                   [&](const Effect& one) { return one.type == event.type; });
  if (effect == std::end(effects))
    throw std::domain_error("event \"" + event.type +
                            "\" is not known; a newer blindswap wrote this sitting");
  if (effect->of_a_trial && !layout.is_trial(event.trial) && !is_practice(event.trial))
    throw std::domain_error("an event names trial " + std::to_string(event.trial) +
                            ", which this sitting has not");
  effect->apply(*this, event);
}

int State::current_trial() const {
  for (int trial = layout.trials(); trial >= 1; --trial)
    if (!at(trial).started.empty()) return trial;
  return 0;
}

int State::current_practice() const {
  if (current_trial() != 0) return 0;
  for (int trial = -static_cast<int>(practice.size()); trial < 0; ++trial)
    if (!at(trial).started.empty()) return trial;
  return 0;
}

bool State::is_played(int trial) const {
  if (trial < 0) return true;
  int lost = 0;
  for (int earlier = layout.first_of(layout.block_of(trial)); earlier < trial; ++earlier) {
    if (at(earlier).looked == stop_word) return false;
    if (at(earlier).spoiled) ++lost;
  }
  return lost >= layout.spare_of(trial);
}

std::vector<int> State::counted_up_to(int trial) const {
  std::vector<int> counted;
  for (int earlier = layout.first_of(layout.block_of(trial)); earlier <= trial; ++earlier)
    if (is_played(earlier) && !at(earlier).spoiled) counted.push_back(earlier);
  return counted;
}

int State::planned_trials() const {
  int planned = layout.planned();
  for (int trial = 1; trial <= layout.trials(); ++trial)
    if (at(trial).looked == stop_word)
      planned -= layout.trials_each() - static_cast<int>(counted_up_to(trial).size());
  return planned;
}

std::vector<std::string> State::waits_for(int trial) const {
  std::vector<std::string> waiting;
  if (!is_played(trial) || at(trial).spoiled) return waiting;
  for (const std::string& listener : listeners)
    if (!at(trial).settled_for(listener)) waiting.push_back(listener);
  return waiting;
}

std::vector<std::string> State::characters() const {
  std::vector<std::string> characters;
  for (const std::string& listener : listeners) {
    const auto found = contributions.find(listener);
    characters.push_back(found == contributions.end() ? "" : found->second);
  }
  return characters;
}

int State::settled_trials() const {
  int settled = 0;
  for (int trial = 1; trial <= layout.trials(); ++trial)
    if (is_played(trial) && !at(trial).spoiled && waits_for(trial).empty()) ++settled;
  return settled;
}

std::vector<int> State::open_trials() const {
  std::vector<int> open;
  for (int trial = 1; trial <= layout.trials(); ++trial)
    if (!waits_for(trial).empty()) open.push_back(trial);
  return open;
}

}  // namespace sitting
