#include "desk/files.h"
#include "desk/sittings/opened_sitting.h"
#include "import/answers.h"
#include "sitting/words.h"
#include "text/error.h"
#include "text/utf8.h"

namespace desk {
namespace {

std::string place_of(int trial, const std::string& listener) {
  return "trial " + std::to_string(trial) + ", " + listener;
}

imported::AnswerWords words_of(const sitting::Sitting& sitting) {
  imported::AnswerWords words;
  words.listeners = sitting.state().listeners;
  for (const std::string_view answer : plan::protocol_of(sitting.plan()).answers())
    words.answers.emplace_back(answer);
  for (const std::string_view sureness : sitting::sureness_words()) words.sureness.emplace_back(sureness);
  return words;
}

/// What stands against keying this answer, in words; "" for nothing.
std::string objection(const sitting::State& state, const imported::KeyedAnswer& keyed) {
  if (!state.layout.is_trial(keyed.trial))
    return "this sitting has trials 1 to " + std::to_string(state.layout.trials()) + ", not " +
           std::to_string(keyed.trial);
  if (!state.is_played(keyed.trial))
    return "trial " + std::to_string(keyed.trial) +
           " is a spare that was not needed: too few trials before it were spoiled";
  if (keyed.note.size() > sitting::most_bytes)
    return "a note may have " + std::to_string(sitting::most_bytes) + " bytes, this one has " +
           std::to_string(keyed.note.size());
  const std::string settled = state.at(keyed.trial).word_of(keyed.listener);
  if (settled.empty()) return "";
  const std::string place = place_of(keyed.trial, keyed.listener);
  if (settled != keyed.answer.value_or("-"))
    return place + ": " + (settled == "-" ? "a missing answer" : "\"" + settled + "\"") +
           " is recorded already, not \"" + keyed.answer.value_or("-") + "\"; correct it with a reason";
  if (settled == "-" || keyed.sureness.empty()) return "";
  const std::string& sureness = state.at(keyed.trial).answers.at(keyed.listener).sureness;
  if (sureness == keyed.sureness) return "";
  return place + ": sureness \"" + sureness + "\" is recorded already, not \"" + keyed.sureness + "\"";
}

imported::KeyedAnswers checked_answers(const sitting::Sitting& sitting, const Path& csv) {
  imported::KeyedAnswers keyed = imported::parse_answers(read_file(csv), csv.string(), words_of(sitting));
  for (const imported::KeyedAnswer& answer : keyed.answers)
    if (const std::string words = objection(sitting.state(), answer); !words.empty())
      keyed.problems.add(
          sitting.state().layout.is_trial(answer.trial) ? answer.answer_place : answer.trial_place, words);
  keyed.problems.refuse_if_any();
  return keyed;
}

/// Keeps an answer or that it is missing. @return  false when that was kept before.
bool settle(sitting::Sitting& sitting, const imported::KeyedAnswer& keyed) {
  if (sitting.state().at(keyed.trial).settled_for(keyed.listener)) return false;
  if (keyed.answer)
    sitting.answer(keyed.listener, keyed.trial, *keyed.answer, keyed.sureness, keyed.note);
  else
    sitting.miss(keyed.listener, keyed.trial);
  return true;
}

/// The allowed word that was typed whole or by its first letter, in any case; nothing for anything else.
std::optional<std::string> word_typed(const std::string& typed, const std::vector<std::string>& words) {
  const std::string wanted = text::lower_case(typed);
  for (const std::string& word : words)
    if (const std::string lower = text::lower_case(word);
        !wanted.empty() && (lower == wanted || lower.substr(0, 1) == wanted))
      return word;
  return std::nullopt;
}

/// "A", "a certain", "B f" or "-"; nothing for what is none.
std::optional<imported::KeyedAnswer> answer_typed(const std::string& typed,
                                                  const imported::AnswerWords& words) {
  imported::KeyedAnswer keyed{.answer = std::nullopt, .sureness = "", .note = ""};
  if (typed == "-") return keyed;
  const std::size_t space = typed.find(' ');
  keyed.answer = word_typed(typed.substr(0, space), words.answers);
  if (!keyed.answer) return std::nullopt;
  if (space == std::string::npos) return keyed;
  const auto sureness = word_typed(std::string(text::trimmed(typed.substr(space))), words.sureness);
  if (!sureness) return std::nullopt;
  keyed.sureness = *sureness;
  return keyed;
}

}  // namespace

int key_answers(const SittingName& name, const Path& csv, const Keyer& keyer, const sitting::Clock& clock,
                const Acknowledge& acknowledge) {
  OpenedSitting opened(name, clock);
  sitting::Sitting& sitting = opened.sitting;
  const imported::KeyedAnswers keyed = checked_answers(sitting, csv);
  sitting.name_keyer(keyer.name, keyer.holds_helpers_sheet);
  int kept = 0;
  for (const imported::KeyedAnswer& answer : keyed.answers)
    if (settle(sitting, answer)) {
      ++kept;
      acknowledge(place_of(answer.trial, answer.listener) + (answer.answer ? "" : ": missing"));
    }
  return kept;
}

int key_by_prompts(const SittingName& name, const Keyer& keyer, const sitting::Clock& clock, const Ask& ask,
                   const Acknowledge& acknowledge) {
  OpenedSitting opened(name, clock);
  sitting::Sitting& sitting = opened.sitting;
  const imported::AnswerWords words = words_of(sitting);
  sitting.name_keyer(keyer.name, keyer.holds_helpers_sheet);
  int kept = 0;
  for (const int trial : sitting.state().open_trials())
    for (const std::string& listener : sitting.state().waits_for(trial)) {
      std::string complaint;
      for (;;) {
        const auto typed = ask({trial, listener, words.answers}, complaint);
        if (!typed || *typed == ".") return kept;
        if (typed->empty()) break;
        auto answer = answer_typed(*typed, words);
        if (!answer) {
          complaint = text::quoted(*typed) + " is no answer";
          continue;
        }
        answer->trial = trial;
        answer->listener = listener;
        if (settle(sitting, *answer)) {
          ++kept;
          acknowledge(place_of(trial, listener) + (answer->answer ? "" : ": missing"));
        }
        break;
      }
    }
  return kept;
}

SecondEntry compare_answers(const SittingName& name, const Path& csv, const Keyer& keyer,
                            const sitting::Clock& clock) {
  OpenedSitting opened(name, clock);
  sitting::Sitting& sitting = opened.sitting;
  imported::KeyedAnswers keyed = imported::parse_answers(read_file(csv), csv.string(), words_of(sitting));
  for (const imported::KeyedAnswer& second : keyed.answers)
    if (!sitting.state().layout.is_trial(second.trial))
      keyed.problems.add(second.trial_place, objection(sitting.state(), second));
  keyed.problems.refuse_if_any();
  SecondEntry entry;
  opened.campaign.all_or_none([&] {
    sitting.name_keyer(keyer.name, keyer.holds_helpers_sheet);
    for (const imported::KeyedAnswer& second : keyed.answers) {
      const std::string kept = sitting.state().at(second.trial).word_of(second.listener);
      if (kept.empty()) {
        entry.not_keyed.push_back(place_of(second.trial, second.listener));
        continue;
      }
      ++entry.compared;
      const std::string read = second.answer.value_or("-");
      if (kept == read) continue;
      entry.differences.push_back(place_of(second.trial, second.listener) + ": \"" + kept + "\" first, \"" +
                                  read + "\" the second time");
      sitting.differ(keyer.name, second.listener, second.trial, second.answer.value_or(""));
    }
    sitting.finish_second_entry(keyer.name, entry.compared);
  });
  return entry;
}

}  // namespace desk
