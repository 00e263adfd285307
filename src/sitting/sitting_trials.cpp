#include <algorithm>

#include "sitting/sitting.h"
#include "sitting/words.h"
#include "text/error.h"
#include "text/time.h"

namespace sitting {
namespace {

std::string list_of(std::span<const std::string_view> words) {
  std::string list;
  for (const std::string_view word : words) list += (list.empty() ? "\"" : ", \"") + std::string(word) + "\"";
  return list;
}

}  // namespace

void Sitting::key_time(int trial, int presentation, const std::string& started) {
  require_running();
  require_trial(trial);
  if (state_.way != "paper") throw text::NotNow("this sitting is live; it keeps its times itself");
  require_played(trial);
  const auto& times = state_.at(trial).started;
  const auto count = static_cast<int>(protocol_.labels(trial).size());
  if (presentation < 1 || presentation > count)
    throw text::BadInput("presentation must be 1 to " + std::to_string(count) + ", got " +
                         std::to_string(presentation));
  require_words("the time", started, 1);
  if (static_cast<int>(times.size()) >= presentation &&
      times[static_cast<std::size_t>(presentation - 1)] == started)
    return;
  record({.type = std::string(kind::presented),
          .trial = trial,
          .presentation = presentation,
          .tag = step_of(trial, presentation).tag,
          .text = started});
}

void Sitting::require_answer(const std::string& word, const std::string& sureness) const {
  const auto answers = protocol_.answers();
  if (!is_one_of(word, answers))
    throw text::BadInput("an answer must be " + list_of(answers) + ", got \"" + word + "\"");
  if (!sureness.empty() && !is_one_of(sureness, sureness_words()))
    throw text::BadInput("sureness must be " + list_of(sureness_words()) + ", got \"" + sureness + "\"");
}

void Sitting::require_played(int trial) const {
  if (!state_.is_played(trial))
    throw text::BadInput("trial " + std::to_string(trial) +
                         " is a spare, and too few trials before it were spoiled for it to be played; "
                         "key the spoiled trials from the helper's sheet first");
}

void Sitting::require_answerable(int trial) const {
  require_trial(trial);
  if (state_.way == "live") {
    const int open = state_.current_trial() != 0 ? state_.current_trial() : state_.current_practice();
    if (!state_.at(trial).looked.empty())
      throw text::NotNow("trial " + std::to_string(trial) + " is final: the plan looked at its answers");
    if (trial != open || state_.at(trial).spoiled || is_running(trial))
      throw text::NotNow("trial " + std::to_string(trial) + " is not open for answers");
  } else {
    require_played(trial);
  }
}

void Sitting::answer(const std::string& listener, int trial, const std::string& word,
                     const std::string& sureness, const std::string& note) {
  require_running();
  require_listener(listener);
  require_answer(word, sureness);
  require_trial(trial);
  const auto& answers = state_.at(trial).answers;
  const auto before = answers.find(listener);
  if (before != answers.end() && before->second.last == word &&
      (sureness.empty() || sureness == before->second.sureness))
    return;
  require_answerable(trial);
  require_words("a note", note, 0);
  if (state_.way == "paper") require_unsettled(listener, trial, word, sureness);
  record({.type = std::string(before == answers.end() ? kind::answered : kind::corrected),
          .trial = trial,
          .who = listener,
          .word = word,
          .sureness = sureness,
          .text = before == answers.end()       ? note
                  : before->second.last == word ? before->second.correction
                                                : "by the listener"});
}

void Sitting::require_unsettled(const std::string& listener, int trial, const std::string& word,
                                const std::string& sureness) const {
  const std::string settled = state_.at(trial).word_of(listener);
  if (settled.empty()) return;
  const std::string place = "trial " + std::to_string(trial) + ", " + listener + ": ";
  if (settled == "-")
    throw text::BadInput(place + "it is recorded that there is no answer\ncorrect it with a reason");
  if (settled == word)
    throw text::BadInput(place + "\"" + word + "\", \"" + state_.at(trial).answers.at(listener).sureness +
                         "\" is recorded already, \"" + sureness + "\" differs");
  throw text::BadInput(place + "\"" + settled + "\" is recorded already, \"" + word +
                       "\" differs\ncorrect it with a reason if it was misread");
}

void Sitting::correct(const std::string& listener, int trial, const std::string& word,
                      const std::string& reason) {
  require_running();
  require_listener(listener);
  if (word != "-") require_answer(word, "");
  require_trial(trial);
  if (state_.way != "paper")
    throw text::NotNow("this sitting is live; a listener corrects by answering again");
  if (reason.empty()) throw text::BadInput("a correction needs its reason");
  require_words("the reason", reason, 1);
  if (!state_.at(trial).settled_for(listener))
    throw text::BadInput("trial " + std::to_string(trial) + ", " + listener +
                         ": there is no answer to correct");
  const auto& differences = state_.standing_differences;
  const bool confirms = std::any_of(differences.begin(), differences.end(), [&](const Event& difference) {
    return difference.trial == trial && difference.who == listener;
  });
  if (state_.at(trial).word_of(listener) == word && !confirms)
    throw text::BadInput("trial " + std::to_string(trial) + ", " + listener + ": \"" + word +
                         "\" is what is recorded; there is nothing to correct");
  if (word == "-") {
    record({.type = std::string(kind::missing), .trial = trial, .who = listener, .text = reason});
    return;
  }
  const auto before = state_.at(trial).answers.find(listener);
  record({.type = std::string(kind::corrected),
          .trial = trial,
          .who = listener,
          .word = word,
          .sureness = before == state_.at(trial).answers.end() ? "" : before->second.sureness,
          .text = reason});
}

void Sitting::miss(const std::string& listener, int trial) {
  require_running();
  require_listener(listener);
  require_trial(trial);
  const std::string settled = state_.at(trial).word_of(listener);
  if (settled == "-") return;
  if (!settled.empty())
    throw text::BadInput("trial " + std::to_string(trial) + ", " + listener +
                         ": there is an answer; it is not missing");
  if (!state_.is_played(trial))
    throw text::BadInput("trial " + std::to_string(trial) +
                         " is a spare that was not played; nothing is missing there");
  require_answerable(trial);
  record({.type = std::string(kind::missing), .trial = trial, .who = listener});
}

void Sitting::spoil(const std::string& who, int trial, const std::string& reason, const std::string& words) {
  require_running();
  require_trial(trial);
  if (who != "helper") require_listener(who);
  if (!is_one_of(reason, spoil_reasons()))
    throw text::BadInput("a trial is spoiled for one of " + list_of(spoil_reasons()) + ", got \"" + reason +
                         "\"");
  if (reason == "other" && words.empty()) throw text::BadInput("the reason \"other\" needs words");
  require_words("the words", words, 0);
  if (trial < 0) throw text::BadInput("a practice trial is not counted; there is nothing to spoil");
  const TrialState& state = state_.at(trial);
  if (state.spoiled || state.late_spoiled)
    throw text::BadInput("trial " + std::to_string(trial) + " is spoiled already: " + state.spoil_reason);
  if (!state_.is_played(trial) || (state_.way == "live" && trial > state_.current_trial()))
    throw text::BadInput("trial " + std::to_string(trial) +
                         " has not been played; there is nothing to spoil");
  const bool late = !state.answers.empty() || (state_.way == "live" && trial < state_.current_trial());
  record({.type = std::string(kind::spoiled),
          .trial = trial,
          .who = who,
          .word = reason,
          .text = words,
          .flag = late});
}

void Sitting::name_keyer(const std::string& who, bool holds_helpers_sheet) {
  require_running();
  require_words("the name of who keys", who, 1);
  holds_helpers_sheet = holds_helpers_sheet || who == "helper";
  const auto& keyers = state_.keyed_by;
  const bool known = std::any_of(keyers.begin(), keyers.end(), [&](const Remark& r) { return r.who == who; });
  if (known && (state_.keyed_with_helpers_sheet || !holds_helpers_sheet)) return;
  record({.type = std::string(kind::keyed), .who = who, .flag = holds_helpers_sheet});
}

void Sitting::differ(const std::string& who, const std::string& listener, int trial,
                     const std::string& word) {
  require_running();
  require_listener(listener);
  require_trial(trial);
  require_words("the name of who keys", who, 1);
  if (!word.empty()) require_answer(word, "");
  record({.type = std::string(kind::differed), .trial = trial, .who = listener, .word = word, .text = who});
}

void Sitting::finish_second_entry(const std::string& who, int compared) {
  require_running();
  require_words("the name of who keys", who, 1);
  if (compared < 0) throw text::BadInput("compared must be 0 or more, got " + std::to_string(compared));
  record({.type = std::string(kind::compared), .who = who, .text = std::to_string(compared)});
}

}  // namespace sitting
