#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "plan/sample_plan.h"
#include "seal/digest.h"
#include "sitting/chain/plan_chain.h"
#include "sitting/simulated/rehearsal.h"
#include "sitting/sitting.h"

namespace sitting {

/// A sealed plan on a log of its own with its first sitting, and a clock moved by hand.
struct HeldSitting {
  explicit HeldSitting(const plan::Plan& a_plan = sample_plan("abx", 1, 4, 2),
                       const std::string& seed = "a seed")
      : plan(a_plan), sealed(sealed_with(plan, seal::sha256(seed))) {
    record_sealing(log, sealed, clock.reading());
  }

  /// Opens and begins.
  HeldSitting& started(const std::string& way) {
    sitting.open(way);
    sitting.begin();
    return *this;
  }

  /// Live: what comes next is connected.
  void ready() {
    const HelperStep next = sitting.look().next;
    sitting.ready(next.trial, next.presentation);
  }

  /// Live: plays the next trial's presentations to the last.
  void play() {
    do {
      sitting.present_next();
      clock.pass(std::chrono::seconds(45));
    } while (sitting.look().presentation < static_cast<int>(plan::protocol_of(plan).labels(1).size()));
  }

  /// Live: plays the next trial, and everybody gives this answer.
  void play_and_answer(const std::string& word) {
    play();
    for (const std::string& listener : sitting.state().listeners)
      sitting.answer(listener, sitting.state().current_trial(), word, "", "");
    sitting.take_look();
  }

  /// Paper: keys this answer of everybody to every trial planned.
  void key_all(const std::string& word) {
    for (int trial = 1; trial <= sitting.state().layout.trials(); ++trial)
      if (sitting.state().is_played(trial) && !sitting.state().at(trial).spoiled)
        for (const std::string& listener : sitting.state().listeners)
          sitting.answer(listener, trial, word, "", "");
  }

  std::size_t events() const { return log.events(1).size(); }

  /// Whatever a state or a view holds, as one text.
  std::string story() const { return story_of(sitting); }
  static std::string story_of(const Sitting& sitting);

  plan::Plan plan;
  plan::SealedPlan sealed;
  MemoryLog log;
  HandClock clock;
  Sitting sitting{plan, sealed, 1, log, clock.reading()};
};

/// Every byte that the door shows a listener.
inline std::string bytes_of(const ListenerView& view) {
  return nlohmann::json{view.listener,     view.phase,        view.trial,       view.playing,
                        view.heard,        view.labels,       view.question,    view.answers,
                        view.own_answer,   view.own_sureness, view.contributed, view.declared_start,
                        view.declared_end, view.told_cues,    view.resting,     view.may_answer,
                        view.settled,      view.planned,      view.began,       view.finished}
      .dump();
}

inline nlohmann::json json_of(const HelperStep& step) {
  return {step.trial, step.label, step.tag, step.attenuation_db, step.excerpt};
}

inline std::string bytes_of(const HelperView& view) {
  return nlohmann::json{view.phase,       json_of(view.now), json_of(view.next),        view.presentation,
                        view.waiting_for, view.swap_seconds, view.presentation_seconds, view.played,
                        view.planned}
      .dump();
}

inline std::string HeldSitting::story_of(const Sitting& sitting) {
  const State& state = sitting.state();
  nlohmann::json story = {sitting.head(),
                          state.way,
                          state.opened_at,
                          state.ended_at,
                          state.began,
                          state.ended,
                          state.ended_early,
                          state.ended_by,
                          state.end_reason,
                          state.contributions,
                          state.tagged_by,
                          state.facts,
                          state.keyed_with_helpers_sheet,
                          state.ender_had_seen,
                          state.rested_after};
  for (const Declaration& one : state.declarations)
    story.push_back({one.who, one.moment, one.words, one.kept});
  for (const TerminalLevel& one : state.levels)
    story.push_back({one.tag, one.channel, one.moment, one.level, one.unit});
  for (const auto* remarks : {&state.notes, &state.cues, &state.keyed_by})
    for (const Remark& one : *remarks) story.push_back({one.who, one.text});
  for (const SecondEntry& one : state.second_entries) story.push_back({one.who, one.compared, one.differing});
  for (const Event& one : state.differences) story.push_back(text_of(one));
  for (const TrialState& trial : state.trials) {
    story.push_back({trial.started, trial.missing, trial.spoiled, trial.late_spoiled, trial.spoiled_by,
                     trial.spoil_reason, trial.spoil_words});
    for (const auto& [who, answer] : trial.answers)
      story.push_back({who, answer.first, answer.last, answer.sureness, answer.note, answer.correction});
  }
  for (const std::string& listener : state.listeners) story.push_back(bytes_of(sitting.look(listener)));
  story.push_back(bytes_of(sitting.look()));
  return story.dump();
}

}  // namespace sitting
