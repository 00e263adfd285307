#include <algorithm>

#include "desk/files.h"
#include "desk/sittings/opened_sitting.h"
#include "import/answers.h"
#include "import/levels.h"
#include "import/times.h"
#include "sitting/words.h"
#include "text/error.h"
#include "text/number.h"
#include "text/time.h"
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
  if (keyed.answer && state.at(keyed.trial).settled_for(keyed.listener) &&
      !state.at(keyed.trial).answers.contains(keyed.listener))
    return place_of(keyed.trial, keyed.listener) + " is recorded as missing; correct it with a reason";
  const auto& answers = state.at(keyed.trial).answers;
  const auto before = answers.find(keyed.listener);
  if (before != answers.end() && before->second.last != keyed.answer.value_or("-"))
    return place_of(keyed.trial, keyed.listener) + ": \"" + before->second.last +
           "\" is recorded already, not \"" + keyed.answer.value_or("-") + "\"";
  return "";
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

/// The allowed answer that was typed whole or by its first letter, in any case; nothing for anything else.
std::optional<std::string> answer_typed(const std::string& typed, const std::vector<std::string>& answers) {
  const std::string wanted = text::lower_case(typed);
  for (const std::string& answer : answers)
    if (const std::string lower = text::lower_case(answer);
        !wanted.empty() && (lower == wanted || lower.substr(0, 1) == wanted))
      return answer;
  return std::nullopt;
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
  const std::vector<std::string> answers = words_of(sitting).answers;
  sitting.name_keyer(keyer.name, keyer.holds_helpers_sheet);
  int kept = 0;
  for (const int trial : sitting.state().open_trials())
    for (const std::string& listener : sitting.state().waits_for(trial)) {
      std::string complaint;
      for (;;) {
        const auto typed = ask({trial, listener, answers}, complaint);
        if (!typed || *typed == ".") return kept;
        if (typed->empty()) break;
        const auto answer = answer_typed(*typed, answers);
        if (!answer && *typed != "-") {
          complaint = text::quoted(*typed) + " is no answer";
          continue;
        }
        if (settle(sitting,
                   {.trial = trial, .listener = listener, .answer = answer, .sureness = "", .note = ""})) {
          ++kept;
          acknowledge(place_of(trial, listener) + (answer ? "" : ": missing"));
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
  const imported::KeyedAnswers keyed =
      imported::parse_answers(read_file(csv), csv.string(), words_of(sitting));
  SecondEntry entry;
  opened.campaign.all_or_none([&] {
    sitting.name_keyer(keyer.name, keyer.holds_helpers_sheet);
    for (const imported::KeyedAnswer& second : keyed.answers) {
      if (!sitting.state().layout.is_trial(second.trial))
        throw text::BadInput(objection(sitting.state(), second));
      const sitting::TrialState& trial = sitting.state().at(second.trial);
      if (!trial.settled_for(second.listener)) {
        entry.not_keyed.push_back(place_of(second.trial, second.listener));
        continue;
      }
      ++entry.compared;
      const auto first = trial.answers.find(second.listener);
      const std::string kept = first == trial.answers.end() ? "-" : first->second.last;
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

int key_times(const SittingName& name, const Path& csv, const sitting::Clock& clock) {
  OpenedSitting opened(name, clock);
  imported::KeyedTimes keyed = imported::parse_times(read_file(csv), csv.string());
  int kept = 0;
  opened.campaign.all_or_none([&] {
    for (const imported::KeyedTime& time : keyed.times) try {
        opened.sitting.key_time(time.trial, time.presentation, time.as_typed);
        ++kept;
      } catch (const text::BadInput& error) {
        keyed.problems.add(time.trial_place, error.what());
      }
    keyed.problems.refuse_if_any();
  });
  return kept;
}

int key_spoilings(const SittingName& name, const Path& csv, const sitting::Clock& clock) {
  OpenedSitting opened(name, clock);
  std::vector<std::string> people = opened.sitting.state().listeners, reasons;
  people.push_back("helper");
  for (const std::string_view reason : sitting::spoil_reasons()) reasons.emplace_back(reason);
  imported::KeyedSpoilings keyed = imported::parse_spoilings(read_file(csv), csv.string(), people, reasons);
  int kept = 0;
  opened.campaign.all_or_none([&] {
    for (const imported::KeyedSpoiling& spoiling : keyed.spoilings) try {
        opened.sitting.spoil(spoiling.by, spoiling.trial, spoiling.reason, spoiling.words);
        ++kept;
      } catch (const text::BadInput& error) {
        keyed.problems.add(spoiling.trial_place, error.what());
      }
    keyed.problems.refuse_if_any();
  });
  return kept;
}

int key_levels(const SittingName& name, const Path& csv, const sitting::Clock& clock) {
  OpenedSitting opened(name, clock);
  imported::TerminalLevels keyed = imported::parse_levels(read_file(csv), csv.string());
  int kept = 0;
  opened.campaign.all_or_none([&] {
    for (const imported::TerminalLevel& level : keyed.levels) try {
        opened.sitting.record_level(static_cast<int>(text::whole_number(level.tag).value_or(0)),
                                    level.channel, level.moment, text::shortest(level.level_db));
        ++kept;
      } catch (const text::BadInput& error) {
        keyed.problems.add(level.tag_place, error.what());
      }
    keyed.problems.refuse_if_any();
  });
  return kept;
}

}  // namespace desk
