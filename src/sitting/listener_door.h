#pragma once

#include <string>
#include <vector>

namespace sitting {

/// All that a listener is shown. For the same actions of the listeners it is the same for every order.
struct ListenerView {
  std::string listener;
  std::string phase;                ///< "before", "listen", "answer", "wait", "rest" or "over"
  int trial = 0;                    ///< 0 before the first; -1, -2, ... for practice
  std::string playing;              ///< the label that plays, e.g. "X"; "" between presentations
  int heard = 0;                    ///< presentations of this trial begun
  std::vector<std::string> labels;  ///< of this trial, in the order played
  std::string question;
  std::vector<std::string> answers;  ///< that may be given
  std::string own_answer;            ///< to this trial, "" if none yet
  std::string own_sureness;
  bool began = false;     ///< the order is drawn: no more characters
  bool finished = false;  ///< nothing is left to hear or answer
  bool contributed = false, declared_start = false, declared_end = false, told_cues = false;
  bool resting = false;  ///< somebody asked for a break, and no presentation has begun since
  bool may_answer = false;
  int settled = 0;  ///< trials this listener has settled
  int planned = 0;  ///< trials planned in this sitting
};

/// The one way in for whatever serves a listener.
class ListenerDoor {
 public:
  virtual ~ListenerDoor() = default;

  virtual ListenerView look(const std::string& listener) const = 0;

  /// Adds this listener's characters to the order; possible until the first trial begins.
  virtual void contribute(const std::string& listener, const std::string& characters) = 0;
  /// Declares at the "start" or the "end" whether separation from the helper was kept.
  virtual void declare(const std::string& who, const std::string& moment, bool kept,
                       const std::string& words) = 0;
  /// Answers a trial. The same answer sent again counts once; another one corrects it while that is allowed.
  virtual void answer(const std::string& listener, int trial, const std::string& word,
                      const std::string& sureness, const std::string& note) = 0;
  /// Withdraws a trial for a reason from the closed list.
  virtual void spoil(const std::string& who, int trial, const std::string& reason,
                     const std::string& words) = 0;
  virtual void rest(const std::string& who) = 0;
  virtual void note(const std::string& who, const std::string& words) = 0;
  /// What gave it away, and other cues.
  virtual void tell_cue(const std::string& listener, const std::string& words) = 0;
};

}  // namespace sitting
