#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <string>

#include "plan/looks.h"
#include "plan/plan.h"
#include "plan/sealed_plan.h"
#include "plan/sitting_shape.h"
#include "sitting/event_log.h"
#include "sitting/helper_door.h"
#include "sitting/listener_door.h"
#include "sitting/state.h"

namespace sitting {

using Clock = std::function<std::chrono::system_clock::time_point()>;

/// One sitting of a plan as a state machine over its events. It knows no terminal, page or file: what is done comes in
/// as calls, each of which is checked, kept in the log as one event, and then takes effect.
///
/// On paper the answers are keyed afterwards, in any order of trials. Live, trials follow one another: a trial is
/// open from its last presentation on, and corrections end when the next trial begins.
///
/// Every call refuses what cannot be: text::BadInput for a wrong word, trial or name, text::NotNow for the wrong
/// moment. A refused call changes nothing.
class Sitting : public ListenerDoor, public HelperDoor {
 public:
  /// Reads what the log holds of the sitting; `log` must outlive it.
  Sitting(plan::Plan plan, const plan::SealedPlan& sealed, int number, EventLog& log, Clock clock);

  const plan::Plan& plan() const { return plan_; }
  int number() const { return number_; }
  const State& state() const { return state_; }
  /// The head of the chain as hex: at the end it is given to somebody before unsealing.
  std::string head() const;

  // before the first trial
  void open(const std::string& way);
  void contribute(const std::string& listener, const std::string& characters) override;
  /// @param why  needed to replace what was recorded before by something else; kept as a note.
  void name_tagger(const std::string& who, const std::string& why = "") override;
  void begin() override;

  // at any time until the end
  void declare(const std::string& who, const std::string& moment, bool kept,
               const std::string& words) override;
  void record_fact(const std::string& name, const std::string& value, const std::string& why = "") override;
  void record_level(const TerminalLevel& level, const std::string& why = "") override;
  void rehearse_swap(double seconds) override;
  void note(const std::string& who, const std::string& words) override;
  /// Stops the pace: nothing begins before the helper is ready once more.
  void rest(const std::string& who) override;
  void tell_cue(const std::string& listener, const std::string& words) override;

  // trials
  void present_next() override;
  void practise_next() override;
  void ready(int trial, int presentation) override;
  void keep_pace() override;
  /// Looks at the answers where the plan does after the current trial, once it is settled; they are final then. The next
  /// presentation does so before it begins, so that listeners have as long for this trial as for any other.
  void take_look();
  void close_trial() override;
  /// On paper: keeps when a presentation started, as the helper wrote it.
  void key_time(int trial, int presentation, const std::string& started);
  void answer(const std::string& listener, int trial, const std::string& word, const std::string& sureness,
              const std::string& note) override;
  /// On paper: replaces a keyed answer, or a missing one, with the reason; "-" for none. The same answer again confirms
  /// it after a second entry that differed.
  void correct(const std::string& listener, int trial, const std::string& word, const std::string& reason);
  void miss(const std::string& listener, int trial);
  void spoil(const std::string& who, int trial, const std::string& reason, const std::string& words) override;

  // keying
  void name_keyer(const std::string& who, bool holds_helpers_sheet);
  /// Keeps that the second entry read another answer; nothing changes until it is corrected.
  void differ(const std::string& who, const std::string& listener, int trial, const std::string& word);
  void finish_second_entry(const std::string& who, int compared);

  /// Ends a sitting in which nothing is open.
  void end();
  /// @param had_seen  whether who decided had seen both answers and order: the plan then supports no finding.
  void end_early(const std::string& who, const std::string& reason, bool had_seen);

  ListenerView look(const std::string& listener) const override;
  HelperView look() const override;
  std::vector<TagLine> tagging_list() const override;
  std::vector<SheetTrial> sheet() const override;

 private:
  void catch_up();
  void record(Event event);
  void require_running() const;
  void require_open() const;
  void note_replaced(const std::string& what, const std::string& before, const std::string& now,
                     const std::string& why);
  void require_trial(int trial) const;
  void require_listener(const std::string& listener) const;
  void require_answer(const std::string& word, const std::string& sureness) const;
  void require_played(int trial) const;
  void require_answerable(int trial) const;
  void require_unsettled(const std::string& listener, int trial, const std::string& word,
                         const std::string& sureness) const;
  const protocols::Order& order() const;
  const protocols::Trial& drawn(int trial) const;
  std::vector<std::string_view> labels(int trial) const;
  HelperStep step_of(int trial, int presentation) const;
  void require_live() const;
  void require_answered(int trial) const;
  bool is_running(int trial) const;
  void present(int trial);
  HelperStep next_step() const;
  HelperStep next_practice_step() const;
  bool is_ready() const;
  int next_trial() const;
  int next_practice() const;
  int swap_seconds() const;
  std::chrono::system_clock::time_point plays_until() const;
  std::chrono::system_clock::time_point due() const;
  void show_needs(HelperView& view) const;
  std::string phase_of(const HelperView& view, int trial) const;
  bool rest_is_due() const;

  plan::Plan plan_;
  const protocols::Protocol& protocol_;
  plan::SealedPlan sealed_;
  int number_;
  EventLog& log_;
  Clock clock_;
  plan::SittingShape shape_;
  std::optional<plan::Looks> looks_;
  State state_;
  seal::Digest head_{};
  int events_ = 0;
  mutable std::unique_ptr<protocols::Order> order_, practice_;
  HelperStep ready_;  ///< what the helper has connected
};

}  // namespace sitting
