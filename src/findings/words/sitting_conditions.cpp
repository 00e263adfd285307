#include "findings/words/sitting_conditions.h"

#include <algorithm>

#include "findings/listening/pace.h"
#include "findings/words/numbers.h"

namespace findings {
namespace {

using Words = std::vector<std::string>;

/// Sentences that begin alike.
class Sentences {
 public:
  Sentences(std::string beginning, Words& words) : beginning_(std::move(beginning)), words_(words) {}
  void add(const std::string& sentence) { words_.push_back(beginning_ + sentence); }

 private:
  std::string beginning_;
  Words& words_;
};

std::vector<const TrialEvidence*> trials_in(const Evidence& evidence, int sitting) {
  std::vector<const TrialEvidence*> found;
  for (const auto& trials : evidence.trials)
    for (const TrialEvidence& trial : trials)
      if (trial.sitting == sitting) found.push_back(&trial);
  std::sort(found.begin(), found.end(), [](const auto* a, const auto* b) { return a->number < b->number; });
  return found;
}

void add_course(const SittingEvidence& sitting, Sentences& sentences) {
  std::string text = sitting.way + ", opened " + sitting.opened_at + ", ended " + sitting.ended_at;
  if (sitting.ended_early) text += " early by " + sitting.ended_by + " (" + sitting.end_reason + ")";
  sentences.add(text + "; " + planned_words(sitting.planned_trials, sitting.stopped_trials) + ", " +
                std::to_string(sitting.settled_trials) + " done.");
  if (!sitting.head_hex.empty()) sentences.add("head of the event chain " + sitting.head_hex + ".");
}

void add_facts(const SittingEvidence& sitting, Sentences& sentences) {
  if (sitting.facts.empty()) sentences.add("no facts of rig and room were recorded.");
  for (const auto& [title, value] : sitting.facts) sentences.add(title + ": " + value + ".");
}

void add_separation(const SittingEvidence& sitting, Sentences& sentences) {
  sentences.add(sitting.tagged_by.empty() ? "who tagged the cables was not recorded."
                                          : "cables tagged by " + sitting.tagged_by + ".");
  if (sitting.declarations.empty()) sentences.add("nobody declared whether the separation was kept.");
  for (const auto& declaration : sitting.declarations)
    sentences.add(declaration.who + " declared at the " + declaration.moment + " that the separation was " +
                  (declaration.kept ? "kept" : "not kept") +
                  (declaration.words.empty() ? "." : ": \"" + declaration.words + "\"."));
}

void add_keying(const SittingEvidence& sitting, Sentences& sentences) {
  if (!sitting.keyed_by.empty())
    sentences.add(
        "answers keyed by " + listed(sitting.keyed_by) + ", who " +
        (sitting.keyed_with_helpers_sheet ? "held the helper's sheet." : "did not hold the helper's sheet."));
  if (sitting.compared_answers > 0)
    sentences.add("second entry of " + counted(sitting.compared_answers, "answer") + ", " +
                  std::to_string(sitting.differing_answers) + " read otherwise.");
  if (sitting.way == "paper" && sitting.compared_answers == 0) sentences.add("answers were entered once.");
}

void add_trials(const plan::Plan& plan, const std::vector<const TrialEvidence*>& trials,
                Sentences& sentences) {
  int corrections = 0;
  for (const TrialEvidence* trial : trials) {
    const std::string name = "trial " + std::to_string(trial->number);
    if (trial->fate == Fate::spoiled) sentences.add(name + " spoiled: " + trial->spoil_words + ".");
    if (trial->fate == Fate::late_spoiled)
      sentences.add(name + " spoiled after its answers were in, counted as answered: " + trial->spoil_words +
                    ".");
    for (const int listener : trial->missing) {
      const std::string& who = plan.listeners.at(static_cast<std::size_t>(listener));
      sentences.add(name + (trial->was_withdrawn(listener) ? ": answer of " + who + " withdrawn."
                                                           : ": no answer by " + who + "."));
    }
    for (const auto& [listener, answer] : trial->first_answers) corrections += trial->was_corrected(listener);
  }
  if (corrections > 0)
    sentences.add(counted(corrections, "answer") +
                  " corrected before the next trial; the last answer counts.");
}

void add_remarks(const SittingEvidence& sitting, Sentences& sentences) {
  for (const auto& cue : sitting.cues) sentences.add(cue.who + " on cues: \"" + cue.text + "\".");
  if (sitting.cues.empty()) sentences.add("no listener told of a cue.");
  for (const auto& note : sitting.notes) sentences.add("note by " + note.who + ": \"" + note.text + "\".");
}

}  // namespace

void add_sitting_conditions(const Evidence& evidence, const SittingEvidence& sitting, Words& words) {
  Sentences sentences("Sitting " + std::to_string(sitting.number) + ": ", words);
  if (!sitting.held) {
    sentences.add("not held.");
    return;
  }
  add_course(sitting, sentences);
  add_facts(sitting, sentences);
  add_separation(sitting, sentences);
  add_keying(sitting, sentences);
  sentences.add(pace_is_recorded(evidence, sitting.number) ? "pace recorded." : "pace not recorded.");
  add_trials(evidence.plan, trials_in(evidence, sitting.number), sentences);
  add_remarks(sitting, sentences);
}

}  // namespace findings
