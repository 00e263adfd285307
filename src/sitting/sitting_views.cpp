#include <algorithm>
#include <cmath>

#include "sitting/sitting.h"
#include "sitting/words.h"
#include "text/number.h"

namespace sitting {
namespace {

std::string excerpt_of(const plan::Plan& plan, int trial) {
  if (plan.excerpts.empty()) return "";
  const auto& excerpt = plan.excerpts[static_cast<std::size_t>(trial - 1) / 2 % plan.excerpts.size()];
  std::string words = excerpt.title;
  if (!excerpt.start.empty()) words += ", from " + excerpt.start;
  if (!excerpt.end.empty()) words += " to " + excerpt.end;
  return words;
}

std::string attenuation_of(const plan::Plan& plan, int trim_steps) {
  if (plan.levels != "trimmed" || trim_steps == 0) return "0";
  const double attenuation_db = text::number(plan.volume_step_db).value_or(0) * trim_steps;
  return text::shortest(std::round(attenuation_db * 1e6) / 1e6);  // 3 steps of 0.1 are 0.3
}

PersonView person_of(const State& state, const std::string& name) {
  PersonView person{.name = name};
  for (const Declaration& declaration : state.declarations)
    if (declaration.who == name)
      (declaration.moment == "start" ? person.declared_start : person.declared_end) = true;
  if (name == "helper") return person;
  person.contributed = state.contributions.contains(name);
  person.told_cues =
      std::any_of(state.cues.begin(), state.cues.end(), [&](const Remark& r) { return r.who == name; });
  return person;
}

int settled_count(const State& state, const std::string& listener) {
  int settled = 0;
  for (int trial = 1; trial <= state.layout.trials(); ++trial)
    if (!state.at(trial).spoiled && state.at(trial).settled_for(listener)) ++settled;
  return settled;
}

int played_count(const State& state) {
  return static_cast<int>(std::count_if(state.trials.begin(), state.trials.end(),
                                        [](const TrialState& trial) { return !trial.started.empty(); }));
}

}  // namespace

HelperStep Sitting::step_of(int trial, int presentation) const {
  const auto& pair = shape_.shape.comparisons[static_cast<std::size_t>(drawn(trial).comparison)];
  const auto place = static_cast<std::size_t>(presentation - 1);
  const int local = drawn(trial).sides[place] == 0 ? pair.first : pair.second;
  const int specimen = shape_.specimens[static_cast<std::size_t>(local)];
  HelperStep step;
  step.trial = trial;
  step.presentation = presentation;
  step.label = labels(trial)[place];
  step.tag = order().tags[static_cast<std::size_t>(local)];
  step.attenuation_db = attenuation_of(plan_, plan_.specimens[static_cast<std::size_t>(specimen)].trim_steps);
  step.excerpt = excerpt_of(plan_, std::abs(trial));
  return step;
}

bool Sitting::rest_is_due() const {
  const int played = played_count(state_);
  return played > 0 && played % plan_.block_trials == 0 && state_.rested_after != state_.current_trial() &&
         next_trial() != 0;
}

void Sitting::show_needs(HelperView& view) const {
  view.longest_rehearsed_swap_seconds = state_.longest_rehearsed_swap_seconds;
  view.tagged_by = state_.tagged_by;
  view.resting = state_.resting;
  view.levels = state_.levels;
  if (state_.began) view.tags = order().tags;
  std::sort(view.tags.begin(), view.tags.end());
  view.people.push_back(person_of(state_, "helper"));
  for (const std::string& listener : state_.listeners) view.people.push_back(person_of(state_, listener));
  for (const FactKind& fact : fact_kinds()) {
    std::string told;
    for (const auto& [name, value] : state_.facts)
      if (name == fact.name) told += (told.empty() ? "" : "; ") + value;
    view.facts.push_back({std::string(fact.name), std::string(fact.title), told});
  }
  for (int trial = 1; trial <= state_.layout.trials(); ++trial)
    if (const TrialState& at = state_.at(trial); at.spoiled || at.late_spoiled)
      view.spoiled.push_back({trial, at.spoiled_by, at.spoil_reason, at.late_spoiled});
}

std::string Sitting::phase_of(const HelperView& view, int trial) const {
  if (state_.way == "live" && trial != 0 && !state_.at(trial).spoiled && clock_() < plays_until())
    return "play";
  if (is_ready()) return "ready";
  if (trial == 0) return "before";
  if (trial < 0 || is_running(trial)) return "connect";
  if (view.waiting_for > 0) return "wait";
  if (view.next.trial == 0) return "done";
  return rest_is_due() ? "rest" : "connect";
}

ListenerView Sitting::look(const std::string& listener) const {
  require_listener(listener);
  ListenerView view;
  view.listener = listener;
  view.planned = state_.planned_trials();
  view.settled = settled_count(state_, listener);
  view.question = protocol_.question();
  for (const std::string_view answer : protocol_.answers()) view.answers.emplace_back(answer);
  const PersonView person = person_of(state_, listener);
  view.began = state_.began;
  view.contributed = person.contributed;
  view.declared_start = person.declared_start;
  view.declared_end = person.declared_end;
  view.told_cues = person.told_cues;
  view.resting = !state_.resting.empty();
  view.trial = state_.current_trial() != 0 ? state_.current_trial() : state_.current_practice();
  view.phase = state_.ended ? "over" : view.trial == 0 ? "before" : "listen";
  if (view.trial == 0) return view;
  const TrialState& trial = state_.at(view.trial);
  for (const std::string_view label : labels(view.trial)) view.labels.emplace_back(label);
  view.heard = static_cast<int>(trial.started.size());
  if (state_.way == "paper" || clock_() < plays_until()) view.playing = view.labels[trial.started.size() - 1];
  if (const auto own = trial.answers.find(listener); own != trial.answers.end()) {
    view.own_answer = own->second.last;
    view.own_sureness = own->second.sureness;
  }
  view.may_answer = !state_.ended && !trial.spoiled && !is_running(view.trial) && trial.looked.empty();
  if (!state_.ended && (view.may_answer || trial.spoiled || !trial.looked.empty()))
    view.phase = trial.spoiled || trial.settled_for(listener) ? "wait" : "answer";
  view.finished = next_trial() == 0 && view.trial > 0 && (trial.spoiled || trial.settled_for(listener));
  if (view.phase == "wait" && state_.waits_for(view.trial).empty() && rest_is_due()) view.phase = "rest";
  return view;
}

HelperView Sitting::look() const {
  HelperView view;
  view.began = state_.began;
  view.planned = state_.planned_trials();
  for (const TrialState& trial : state_.trials) view.played += !trial.started.empty() && !trial.spoiled;
  view.presentations = static_cast<int>(labels(1).size());
  view.swap_seconds = swap_seconds();
  view.presentation_seconds = plan_.presentation_seconds;
  show_needs(view);
  const bool counts = state_.current_trial() != 0;
  const int trial = counts ? state_.current_trial() : state_.current_practice();
  view.phase = state_.ended ? "over" : trial == 0 ? "before" : "connect";
  if (!state_.began) return view;
  if (trial != 0) {
    view.presentation = static_cast<int>(state_.at(trial).started.size());
    view.now = step_of(trial, view.presentation);
    view.waiting_for = static_cast<int>(state_.waits_for(trial).size());
  }
  view.next = next_step();
  view.next_practice = next_practice_step();
  if (!state_.ended) view.phase = phase_of(view, trial);
  const auto now = state_.way == "live" ? clock_() : std::chrono::system_clock::time_point{};
  const auto until = view.phase == "play" ? plays_until() : due();
  view.milliseconds_left = static_cast<int>(std::max<std::chrono::milliseconds::rep>(
      0, std::chrono::ceil<std::chrono::milliseconds>(until - now).count()));
  return view;
}

std::vector<TagLine> Sitting::tagging_list() const {
  std::vector<TagLine> lines;
  for (std::size_t i = 0; i < shape_.specimens.size(); ++i)
    lines.push_back(
        {order().tags[i], plan::title_of(plan_.specimens[static_cast<std::size_t>(shape_.specimens[i])])});
  std::sort(lines.begin(), lines.end(), [](const TagLine& a, const TagLine& b) { return a.tag < b.tag; });
  return lines;
}

std::vector<SheetTrial> Sitting::sheet() const {
  std::vector<SheetTrial> trials;
  for (int number = 1; number <= state_.layout.trials(); ++number) {
    SheetTrial trial{number, state_.layout.spare_of(number) > 0, {}};
    const int presentations = static_cast<int>(protocol_.labels(number).size());
    for (int presentation = 1; presentation <= presentations; ++presentation)
      trial.steps.push_back(step_of(number, presentation));
    trials.push_back(std::move(trial));
  }
  return trials;
}

}  // namespace sitting
