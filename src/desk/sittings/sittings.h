#pragma once

#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "desk/plans/planning.h"

namespace desk {

/// Which sitting is meant.
struct SittingName {
  Path campaign;
  std::string plan;  ///< "" for the campaign's only plan
  int number = 1;
};

/// A change to one sitting, in one go: all of it is kept, or none when it throws.
void change_sitting(const SittingName& name, const sitting::Clock& clock,
                    const std::function<void(sitting::Sitting&)>& change);

/// Where a sitting stands, as far as anybody may know while the order is sealed.
struct SittingStatus {
  std::string plan;
  int number = 0;
  std::string way, phase;  ///< phase: "not open", "open", "running", "ended" or "ended early"
  std::string head_hex;
  std::vector<std::pair<std::string, std::string>> characters;    ///< by listener, "" for none yet
  int planned = 0, settled = 0;                                   ///< trials
  std::vector<std::pair<int, std::vector<std::string>>> waiting;  ///< trials and the listeners they wait for
  std::vector<std::pair<int, std::string>> spoiled;               ///< trials and why
  std::vector<std::string> differences;                           ///< of a second entry, not corrected yet
  std::vector<std::string> not_said;      ///< who tagged, declarations, cues: nobody can add them afterwards
  std::vector<std::string> not_measured;  ///< levels, facts, times
};

SittingStatus status_of(const SittingName& name);

/// Closes the characters and draws the order.
/// @throws text::NotNow when a listener has added none, unless that is said.
void begin_sitting(const SittingName& name, const sitting::Clock& clock, bool without_characters);

/// A paper to print: a name for its file, and its text.
struct Paper {
  std::string name, text;
};

/// The tagging list, the helper's sheet, a sheet for each listener and the forms for keying.
/// @throws text::NotNow before the sitting has begun, when no order is drawn yet.
std::vector<Paper> papers_of(const SittingName& name);

/// Called after each thing kept, when it is on disk.
using Acknowledge = std::function<void(const std::string& what)>;

/// Who keys, and whether that person holds the helper's sheet.
struct Keyer {
  std::string name;
  bool holds_helpers_sheet = false;
};

/// Keys answers from a CSV. The whole file is checked first; then each answer is kept by itself and acknowledged, so that
/// a stop in between loses nothing: key the same file again. "-" marks a missing answer, an empty cell one that is
/// not keyed yet.
/// @return  the number kept now.
int key_answers(const SittingName& name, const Path& csv, const Keyer& keyer, const sitting::Clock& clock,
                const Acknowledge& acknowledge);

/// What prompts for answers need: the next thing to ask, and what was typed.
struct Prompt {
  int trial = 0;
  std::string listener;
  std::vector<std::string> answers;
};

/// Reads one typed line for a prompt; nothing at the end of the input.
using Ask = std::function<std::optional<std::string>(const Prompt& prompt, const std::string& complaint)>;

/// Keys answers by prompts, each kept at once: an answer or its first letter, where told with the sureness after it; "-"
/// missing; "" for later; "." to stop.
int key_by_prompts(const SittingName& name, const Keyer& keyer, const sitting::Clock& clock, const Ask& ask,
                   const Acknowledge& acknowledge);

/// Compares a second entry of the same sheets with what is kept. Differences are kept, nothing is changed.
struct SecondEntry {
  int compared = 0;
  std::vector<std::string> differences;  ///< in words
  std::vector<std::string> not_keyed;    ///< answers that only the second entry has
};
SecondEntry compare_answers(const SittingName& name, const Path& csv, const Keyer& keyer,
                            const sitting::Clock& clock);

/// Keys the helper's times. @return the number of presentations kept now.
int key_times(const SittingName& name, const Path& csv, const sitting::Clock& clock);

/// A trial withdrawn; a late one counts as answered.
struct SpoiledNow {
  int trial = 0;
  bool late = false;
};

/// Keys the spoiled trials of the helper's sheet.
std::vector<SpoiledNow> key_spoilings(const SittingName& name, const Path& csv, const sitting::Clock& clock);

/// Keys levels measured at the terminals. @return the number kept now.
/// @param why  needed when a level replaces another one keyed before.
int key_levels(const SittingName& name, const Path& csv, const std::string& why, const sitting::Clock& clock);

/// Keeps who received the chain head of a sitting that has ended, and how.
void record_head_handover(const SittingName& name, const std::string& who, const std::string& how,
                          const sitting::Clock& clock);

/// Ends a sitting in which nothing is open. @return the chain's head, as hex.
std::string end_sitting(const SittingName& name, const sitting::Clock& clock);

}  // namespace desk
