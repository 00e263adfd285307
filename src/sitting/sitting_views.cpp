#include <algorithm>
#include <cmath>

#include "sitting/sitting.h"
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
  const protocols::Trial& drawn = order().trials[static_cast<std::size_t>(trial - 1)];
  const auto& pair = shape_.shape.comparisons[static_cast<std::size_t>(drawn.comparison)];
  const auto place = static_cast<std::size_t>(presentation - 1);
  const int local = drawn.sides[place] == 0 ? pair.first : pair.second;
  const int specimen = shape_.specimens[static_cast<std::size_t>(local)];
  HelperStep step;
  step.trial = trial;
  step.label = protocol_.labels(trial)[place];
  step.tag = order().tags[static_cast<std::size_t>(local)];
  step.attenuation_db = attenuation_of(plan_, plan_.specimens[static_cast<std::size_t>(specimen)].trim_steps);
  step.excerpt = excerpt_of(plan_, trial);
  return step;
}

bool Sitting::rest_is_due() const {
  const int played = played_count(state_);
  return played > 0 && played % plan_.block_trials == 0 && state_.rested_after != state_.current_trial() &&
         next_trial() != 0;
}

ListenerView Sitting::look(const std::string& listener) const {
  require_listener(listener);
  ListenerView view;
  view.listener = listener;
  view.planned = state_.layout.planned();
  view.settled = settled_count(state_, listener);
  view.question = protocol_.question();
  for (const std::string_view answer : protocol_.answers()) view.answers.emplace_back(answer);
  view.trial = state_.current_trial();
  view.phase = state_.ended ? "over" : view.trial == 0 ? "before" : "listen";
  if (view.trial == 0) return view;
  const TrialState& trial = state_.at(view.trial);
  for (const std::string_view label : protocol_.labels(view.trial)) view.labels.emplace_back(label);
  view.playing = view.labels[trial.started.size() - 1];
  if (const auto own = trial.answers.find(listener); own != trial.answers.end()) {
    view.own_answer = own->second.last;
    view.own_sureness = own->second.sureness;
  }
  view.may_answer = !state_.ended && !trial.spoiled && trial.started.size() == view.labels.size();
  if (!state_.ended && (view.may_answer || trial.spoiled))
    view.phase = trial.spoiled || trial.settled_for(listener) ? "wait" : "answer";
  if (view.phase == "wait" && state_.waits_for(view.trial).empty() && rest_is_due()) view.phase = "rest";
  return view;
}

HelperView Sitting::look() const {
  HelperView view;
  view.planned = state_.layout.planned();
  view.played = played_count(state_);
  view.swap_seconds = plan_.swap_seconds;
  view.presentation_seconds = plan_.presentation_seconds;
  const int trial = state_.current_trial();
  view.phase = state_.ended ? "over" : trial == 0 ? "before" : "connect";
  if (!state_.began) return view;
  const auto labels = [&](int of) { return static_cast<int>(protocol_.labels(of).size()); };
  if (trial != 0) {
    view.presentation = static_cast<int>(state_.at(trial).started.size());
    view.now = step_of(trial, view.presentation);
    view.waiting_for = static_cast<int>(state_.waits_for(trial).size());
  }
  const bool more_in_trial = trial != 0 && !state_.at(trial).spoiled && view.presentation < labels(trial);
  if (more_in_trial) {
    view.next = step_of(trial, view.presentation + 1);
  } else {
    if (const int following = next_trial(); following != 0) view.next = step_of(following, 1);
    if (!state_.ended && trial != 0)
      view.phase = view.waiting_for > 0   ? "wait"
                   : view.next.trial == 0 ? "done"
                   : rest_is_due()        ? "rest"
                                          : "connect";
  }
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
