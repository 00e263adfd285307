#pragma once

#include <string>
#include <vector>

namespace sitting {

/// One line of what the helper does: connect a tag, set the volume, start an excerpt.
struct HelperStep {
  int trial = 0;
  std::string label;
  int tag = 0;
  std::string attenuation_db;  ///< below the sitting's reference setting, "0" or more
  std::string excerpt;         ///< title with start and end, "" when the plan names none
};

/// All that the helper is shown: never an answer, and after the tagging list no cable's name.
struct HelperView {
  std::string phase;  ///< "before", "connect", "wait", "rest", "done" (every trial has been played) or "over"
  HelperStep now;
  HelperStep next;
  int presentation = 0;  ///< 1 for a trial's first, 0 before the first trial
  int waiting_for = 0;   ///< listeners who have not settled this trial
  int swap_seconds = 0;
  int presentation_seconds = 0;
  int played = 0;
  int planned = 0;
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

  /// Begins the next presentation, of this trial or, once it is settled, of the next.
  virtual void present_next() = 0;
  /// Closes the running trial: whoever has not answered counts as missing.
  virtual void close_trial() = 0;
  virtual void declare(const std::string& who, const std::string& moment, bool kept,
                       const std::string& words) = 0;
  virtual void spoil(const std::string& who, int trial, const std::string& reason,
                     const std::string& words) = 0;
  virtual void rest(const std::string& who) = 0;
};

}  // namespace sitting
