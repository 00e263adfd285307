#include <algorithm>

#include "desk/reports/evidence.h"
#include "sitting/chain/plan_chain.h"
#include "sitting/unsealed_sitting.h"
#include "sitting/words.h"
#include "text/number.h"
#include "text/time.h"

namespace desk {
namespace {

findings::Fate fate_of(sitting::Fate fate) {
  switch (fate) {
    case sitting::Fate::counted:
      return findings::Fate::counted;
    case sitting::Fate::spoiled:
      return findings::Fate::spoiled;
    case sitting::Fate::late_spoiled:
      return findings::Fate::late_spoiled;
    case sitting::Fate::not_played:
      return findings::Fate::not_played;
  }
  return findings::Fate::not_played;
}

/// Seconds of "14:05:30" or an RFC 3339 time; within one sitting only their differences mean anything.
std::optional<double> seconds_of(const std::string& written) {
  if (const auto moment = text::parse_rfc3339(written))
    return std::chrono::duration<double>(moment->time_since_epoch()).count();
  double seconds = 0;
  int parts = 0;
  for (std::size_t at = 0; at <= written.size() && parts < 3; ++parts) {
    const std::size_t end = std::min(written.find(':', at), written.size());
    const auto value = text::whole_number(written.substr(at, end - at));
    if (!value) return std::nullopt;
    seconds = seconds * 60 + static_cast<double>(*value);
    at = end + 1;
  }
  return parts == 3 ? std::optional(seconds) : std::nullopt;
}

using Starts = std::vector<std::vector<std::optional<double>>>;

/// When each trial's presentations started. A clock that falls by more than half a day has passed midnight.
Starts starts_of(const sitting::State& state) {
  constexpr double day_s = 86400;
  Starts starts;
  std::optional<double> before;
  for (const sitting::TrialState& trial : state.trials) {
    starts.emplace_back();
    for (const std::string& started : trial.started) {
      std::optional<double> now = seconds_of(started);
      while (now && before && *now < *before - day_s / 2) *now += day_s;
      if (now) before = now;
      starts.back().push_back(now);
    }
  }
  return starts;
}

int listener_index(const plan::Plan& plan, const std::string& listener) {
  return static_cast<int>(std::find(plan.listeners.begin(), plan.listeners.end(), listener) -
                          plan.listeners.begin());
}

findings::TrialEvidence trial_evidence(const plan::Plan& plan, int sitting,
                                       const sitting::ScoredTrial& scored, const sitting::TrialState& state,
                                       std::vector<std::optional<double>> started_s) {
  findings::TrialEvidence trial;
  trial.sitting = sitting;
  trial.number = scored.number;
  trial.fate = fate_of(scored.fate);
  if (!state.spoil_reason.empty())
    trial.spoil_words = state.spoil_reason +
                        (state.spoil_words.empty() ? "" : " (" + state.spoil_words + ")") + ", by " +
                        state.spoiled_by;
  trial.coin = scored.coin;
  trial.sides = scored.sides;
  for (const auto& [listener, answer] : scored.last) trial.answers[listener_index(plan, listener)] = answer;
  for (const auto& [listener, answer] : scored.first)
    trial.first_answers[listener_index(plan, listener)] = answer;
  for (const std::string& listener : state.missing) trial.missing.push_back(listener_index(plan, listener));
  for (const auto& [listener, answer] : state.answers)
    if (!answer.sureness.empty()) trial.sureness[listener_index(plan, listener)] = answer.sureness;
  for (const auto& [listener, answer] : state.answers)
    if (!answer.correction.empty()) trial.corrections[listener_index(plan, listener)] = answer.correction;
  trial.started_s = std::move(started_s);
  return trial;
}

std::string fact_title(const std::string& name) {
  for (const sitting::FactKind& fact : sitting::fact_kinds())
    if (fact.name == name) return std::string(fact.title);
  return name;
}

findings::SittingEvidence sitting_evidence(int number, const sitting::UnsealedSitting& unsealed) {
  const sitting::State& state = unsealed.state();
  findings::SittingEvidence evidence;
  evidence.number = number;
  evidence.held = state.began;
  evidence.ended_early = state.ended_early;
  evidence.way = state.way;
  evidence.opened_at = state.opened_at;
  evidence.ended_at = state.ended_at;
  evidence.ended_by = state.ended_by;
  evidence.end_reason = state.end_reason;
  evidence.ender_had_seen = state.ender_had_seen;
  evidence.head_hex = unsealed.head_hex();
  evidence.tagged_by = state.tagged_by;
  const std::vector<std::string> characters = state.characters();
  for (std::size_t i = 0; i < characters.size(); ++i)
    evidence.characters.emplace_back(state.listeners[i], characters[i]);
  evidence.began_at = state.began_at;
  for (const auto& [name, value] : state.facts) evidence.facts.emplace_back(fact_title(name), value);
  for (const auto& [name, value] : state.facts)
    if (name == "helper") evidence.helper = value;
  for (const auto& declaration : state.declarations)
    evidence.declarations.push_back(
        {declaration.who, declaration.moment, declaration.words, declaration.kept});
  for (const auto& note : state.notes) evidence.notes.push_back({note.who, note.text});
  for (const auto& cue : state.cues) evidence.cues.push_back({cue.who, cue.text});
  for (const auto& keyer : state.keyed_by) evidence.keyed_by.push_back(keyer.who);
  evidence.keyed_with_helpers_sheet = state.keyed_with_helpers_sheet;
  for (const auto& entry : state.second_entries) {
    evidence.compared_answers += entry.compared;
    evidence.differing_answers += entry.differing;
  }
  evidence.planned_trials = state.layout.planned();
  evidence.stopped_trials = state.layout.planned() - state.planned_trials();
  evidence.settled_trials = state.settled_trials();
  for (const sitting::TrialState& trial : state.trials)
    evidence.wrong_tag_reported =
        evidence.wrong_tag_reported || (trial.late_spoiled && trial.spoil_reason == "wrong tag");
  return evidence;
}

void add_sitting(const plan::Plan& plan, int number, const sitting::UnsealedSitting& unsealed,
                 findings::Evidence& evidence) {
  evidence.sittings.push_back(sitting_evidence(number, unsealed));
  const Starts starts = starts_of(unsealed.state());
  for (const sitting::ScoredTrial& scored : unsealed.trials())
    evidence.trials[static_cast<std::size_t>(scored.comparison)].push_back(
        trial_evidence(plan, number, scored, unsealed.state().at(scored.number),
                       starts.at(static_cast<std::size_t>(scored.number - 1))));
  for (const sitting::TerminalLevel& level : unsealed.state().levels)
    if (const int specimen = unsealed.specimen_of(level.tag); specimen >= 0)
      evidence.levels.push_back(
          {number, specimen, level.channel, level.moment, text::number(level.level).value()});
}

std::string given_words(const std::string& how, const std::string& at) {
  return how.empty() ? at : how + ", " + at;
}

}  // namespace

findings::Evidence listening_evidence(const plan::Plan& plan, const plan::SealedPlan& sealed,
                                      const sitting::EventLog& log) {
  findings::Evidence evidence;
  evidence.plan = plan;
  evidence.commitment_hex = seal::to_hex(sealed.commitment);
  evidence.seed_hex = seal::to_hex(sealed.seed);
  const sitting::PlanStory story = sitting::story_of(log, sealed);
  evidence.sealed_at = story.sealed_at;
  evidence.unsealed_at = story.unsealed_at;
  for (std::size_t i = 0; i < story.shown_to.size(); ++i)
    evidence.commitment_shown_to.emplace_back(story.shown_to[i].who,
                                              given_words(story.shown_to[i].text, story.shown_at[i]));
  if (!story.shown_at.empty()) evidence.first_shown_at = story.shown_at.front();
  evidence.plan_ended_early = story.ended_early;
  evidence.plan_ended_by = story.ended_by;
  evidence.plan_end_reason = story.end_reason;
  evidence.ender_had_seen = story.ender_had_seen;
  evidence.trials.resize(plan.comparisons.size());
  for (int number = 1; number <= static_cast<int>(plan.sittings.size()); ++number)
    add_sitting(plan, number, sitting::UnsealedSitting(plan, sealed, number, log), evidence);
  for (const sitting::HeadShown& shown : story.heads_shown)
    evidence.sittings.at(static_cast<std::size_t>(shown.sitting - 1))
        .head_shown_to.emplace_back(shown.who, given_words(shown.how, shown.at));
  return evidence;
}

}  // namespace desk
