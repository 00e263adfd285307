#pragma once

#include <string>
#include <vector>

namespace sitting {

/// One line of what the helper does: connect a tag, set the volume, start an excerpt.
struct HelperStep {
  int trial = 0;         ///< -1, -2, ... for practice; 0 for no step
  int presentation = 0;  ///< 1, 2, ...
  std::string label;
  int tag = 0;
  std::string attenuation_db;  ///< below the sitting's reference setting, "0" or more
  std::string excerpt;         ///< title with start and end, "" when the plan names none
};

/// What the sitting still wants of somebody.
struct PersonView {
  std::string name;         ///< a listener, or "helper"
  bool contributed = true;  ///< characters for the order
  bool declared_start = false, declared_end = false;
  bool told_cues = true;
};

struct FactView {
  std::string name, title;
  std::string value;  ///< "" when not recorded yet
};

/// A level at the load's terminals, trims set.
struct TerminalLevel {
  int tag = 0;
  std::string channel;  ///< "left", "right" or "mono"
  std::string moment;   ///< "start" or "end"
  std::string level;    ///< a number
  std::string unit;     ///< "dB", relative to anything, or "dBV"; one unit in a sitting
};

struct SpoiledView {
  int trial = 0;
  std::string by, reason;
  bool late = false;
};

/// All that the helper is shown: never an answer, and after the tagging list no cable's name.
struct HelperView {
  /// "before" (no presentation has begun), "play", "connect", "ready" (connected, the clock runs), "wait" (for answers),
  /// "rest", "done" (every trial has been played) or "over".
  std::string phase;
  bool began = false;  ///< the order is drawn
  HelperStep now;
  HelperStep next;           ///< of the trials that count
  HelperStep next_practice;  ///< while no trial that counts has begun
  int presentation = 0;      ///< 1 for a trial's first, 0 before the first trial
  int waiting_for = 0;       ///< listeners who have not settled this trial
  int presentations = 0;     ///< of one trial
  int swap_seconds = 0;      ///< the plan's, or more when a rehearsed swap took longer
  int presentation_seconds = 0;
  int milliseconds_left = 0;  ///< of what plays, or until the next may start
  int played = 0;             ///< trials begun and not spoiled
  int planned = 0;
  double longest_rehearsed_swap_seconds = 0;  ///< 0 when none was rehearsed
  std::vector<std::string> resting;           ///< who asked for a break since the last presentation began
  std::string tagged_by;
  std::vector<int> tags;  ///< of this sitting, in rising order, once the order is drawn
  std::vector<PersonView> people;
  std::vector<FactView> facts;
  std::vector<TerminalLevel> levels;
  std::vector<SpoiledView> spoiled;
};

/// One line of the list for whoever sleeves the cables.
struct TagLine {
  int tag = 0;
  std::string specimen;
};

/// A trial as the helper's sheet holds it.
struct SheetTrial {
  int trial = 0;
  bool spare = false;
  std::vector<HelperStep> steps;
};

/// The one way in for whatever serves the helper.
class HelperDoor {
 public:
  virtual ~HelperDoor() = default;

  virtual HelperView look() const = 0;
  /// Sorted by tag. For whoever sleeves the cables, nobody else.
  virtual std::vector<TagLine> tagging_list() const = 0;
  /// Every trial with its steps, spares included.
  virtual std::vector<SheetTrial> sheet() const = 0;

  /// Closes the characters and draws the order.
  virtual void begin() = 0;
  virtual void name_tagger(const std::string& who, const std::string& why) = 0;
  virtual void record_fact(const std::string& name, const std::string& value, const std::string& why) = 0;
  virtual void record_level(const TerminalLevel& level, const std::string& why) = 0;
  /// Keeps a rehearsed swap when it is the longest so far; the pace waits out more than it takes.
  virtual void rehearse_swap(double seconds) = 0;

  /// Begins the next presentation, of this trial or, once it is settled, of the next.
  virtual void present_next() = 0;
  /// The same for practice, until a trial that counts has begun.
  virtual void practise_next() = 0;
  /// The presentation that comes next is connected and checked: `keep_pace` begins it when its time has come.
  /// @throws text::NotNow for any other, which a page shown too long might name.
  virtual void ready(int trial, int presentation) = 0;
  /// Begins the next presentation when it is ready, the pace allows it and nobody is waited for. To be called often.
  virtual void keep_pace() = 0;
  /// Closes the running trial: whoever has not answered counts as missing.
  virtual void close_trial() = 0;
  virtual void declare(const std::string& who, const std::string& moment, bool kept,
                       const std::string& words) = 0;
  virtual void spoil(const std::string& who, int trial, const std::string& reason,
                     const std::string& words) = 0;
  virtual void rest(const std::string& who) = 0;
  virtual void note(const std::string& who, const std::string& words) = 0;
};

}  // namespace sitting
