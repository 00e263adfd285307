#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "plan/plan.h"
#include "sitting/event.h"
#include "sitting/helper_door.h"
#include "sitting/layout.h"

namespace sitting {

/// One listener's answer to one trial.
struct Answer {
  std::string first;  ///< as first given
  std::string last;   ///< the one that counts, "" when it was withdrawn
  std::string sureness;
  std::string note;
  std::string correction;  ///< why it was changed, "" if it never was
};

/// What is known of one trial; nothing of the order.
struct TrialState {
  std::vector<std::string> started;       ///< per presentation so far: the time as written, "" if none was
  std::map<std::string, Answer> answers;  ///< by listener
  std::vector<std::string> missing;       ///< listeners who gave none
  std::string looked;    ///< "continue" or "stop" where the plan looked after it; its answers are final then
  bool spoiled = false;  ///< in time: withdrawn and replaced
  bool late_spoiled = false;  ///< too late: shown, counts as answered
  std::string spoiled_by, spoil_reason, spoil_words;

  bool settled_for(const std::string& listener) const;
  /// The word that counts, "-" when the answer is missing, "" while none is settled.
  std::string word_of(const std::string& listener) const;
};

struct Declaration {
  std::string who, moment, words;
  bool kept;
};

struct Remark {
  std::string who, text;
};

struct SecondEntry {
  std::string who;
  int compared = 0;
  int differing = 0;
};

/// A sitting as its events tell it. Applying the same events always gives the same state.
struct State {
  State(const plan::Plan& plan, int sitting);

  /// @throws std::domain_error for an event that this program does not know or that names a trial that is not there.
  void apply(const Event& event);

  /// The last trial of which anything was presented, 0 before the first.
  int current_trial() const;
  /// The practice trial that runs: -1, -2, ...; 0 before the first and once a trial that counts has begun.
  int current_practice() const;
  bool is_practice(int trial) const { return trial < 0 && trial >= -static_cast<int>(practice.size()); }
  /// Whether a trial is to be played: planned, or a spare whose block has lost enough trials; none after a stop.
  bool is_played(int trial) const;
  /// The listeners that a trial still waits for.
  std::vector<std::string> waits_for(int trial) const;
  /// The listeners' characters in the plan's order, "" for who added none.
  std::vector<std::string> characters() const;
  /// The trials of a trial's block, up to it, that are played and not spoiled.
  std::vector<int> counted_up_to(int trial) const;
  /// How many trials are planned, those after a stop left out.
  int planned_trials() const;
  /// How many trials are played, not spoiled, and settled by everybody.
  int settled_trials() const;
  /// Every played trial that still waits for somebody.
  std::vector<int> open_trials() const;
  /// @param trial  1, 2, ...; -1, -2, ... for practice.
  TrialState& at(int trial) { return const_cast<TrialState&>(std::as_const(*this).at(trial)); }
  const TrialState& at(int trial) const {
    return trial < 0 ? practice[static_cast<std::size_t>(-trial - 1)]
                     : trials[static_cast<std::size_t>(trial - 1)];
  }

  Layout layout;
  std::vector<std::string> listeners;
  std::vector<TrialState> trials;
  std::vector<TrialState> practice;  ///< never counted

  std::string way;  ///< "paper" or "live", "" before it is opened
  std::string opened_at, began_at, ended_at;
  bool began = false, ended = false, ended_early = false;
  std::string ended_by, end_reason;
  bool ender_had_seen = false;  ///< both answers and order
  std::map<std::string, std::string> contributions;
  std::vector<Declaration> declarations;
  std::string tagged_by;
  std::vector<std::pair<std::string, std::string>> facts;  ///< those that count
  std::vector<TerminalLevel> levels;                       ///< those that count
  std::vector<Remark> notes, cues, keyed_by;
  bool keyed_with_helpers_sheet = false;
  std::vector<SecondEntry> second_entries;
  std::vector<Event> differences;  ///< of second entries
  std::vector<Event>
      standing_differences;  ///< those after which the answer was neither corrected nor confirmed
  int rested_after = 0;      ///< the current trial at the last rest
  std::string rested_at;
  std::vector<std::string> resting;           ///< who asked for a break since the last presentation began
  double longest_rehearsed_swap_seconds = 0;  ///< 0 when none was told
};

}  // namespace sitting
