#include "desk/sittings/sittings.h"

#include <algorithm>
#include <stdexcept>

#include "desk/sittings/opened_sitting.h"
#include "report/forms.h"
#include "report/sheets.h"
#include "sitting/chain/plan_chain.h"
#include "text/error.h"
#include "text/utf8.h"

namespace desk {
namespace {

sitting::Clock no_clock() {
  return []() -> std::chrono::system_clock::time_point {
    throw std::logic_error("a sitting that is only looked at asked for the time");
  };
}

std::string phase_of(const sitting::State& state) {
  if (state.way.empty()) return "not open";
  if (state.ended) return state.ended_early ? "ended early" : "ended";
  return state.began ? "running" : "open";
}

bool declared(const sitting::State& state, const std::string& who, const std::string& moment) {
  return std::any_of(state.declarations.begin(), state.declarations.end(),
                     [&](const sitting::Declaration& d) { return d.who == who && d.moment == moment; });
}

/// What only people can say, and nobody once the sitting has ended.
std::vector<std::string> not_said(const sitting::State& state) {
  std::vector<std::string> gaps;
  if (state.tagged_by.empty()) gaps.push_back("who tagged the cables");
  std::vector<std::string> people = state.listeners;
  people.insert(people.begin(), "helper");
  for (const std::string moment : {"start", "end"})
    for (const std::string& who : people)
      if (!declared(state, who, moment))
        gaps.push_back("separation declared by " + who + " at the " + moment);
  for (const std::string& listener : state.listeners)
    if (std::none_of(state.cues.begin(), state.cues.end(),
                     [&](const auto& cue) { return cue.who == listener; }))
      gaps.push_back("what gave it away, asked of " + listener);
  return gaps;
}

std::vector<std::string> not_measured(const sitting::State& state) {
  std::vector<std::string> gaps;
  if (state.levels.empty()) gaps.push_back("levels at the terminals");
  if (state.facts.empty()) gaps.push_back("facts of the sitting");
  if (std::all_of(state.trials.begin(), state.trials.end(), [](const auto& t) { return t.started.empty(); }))
    gaps.push_back("times of the presentations (pace)");
  return gaps;
}

/// Where a second entry differed and nobody has corrected or confirmed the answer since; never what it was, since the
/// helper may read this.
std::vector<std::string> standing_differences(const sitting::State& state) {
  std::vector<std::string> standing;
  for (const sitting::Event& event : state.standing_differences)
    standing.push_back("trial " + std::to_string(event.trial) + ", " + event.who);
  return standing;
}

/// A plan's name as the beginning of a file's name.
std::string file_name_of(std::string name) {
  constexpr std::size_t most_bytes = 150;  // a file's name may have 255, the paper's own included
  if (name.size() > most_bytes) name = text::printable(name.substr(0, most_bytes));
  std::replace_if(
      name.begin(), name.end(),
      [](char c) { return c == '/' || c == '\\' || c == ' ' || static_cast<unsigned char>(c) < 0x20; }, '-');
  return name.front() == '.' ? "-" + name : name;
}

}  // namespace

void change_sitting(const SittingName& name, const sitting::Clock& clock,
                    const std::function<void(sitting::Sitting&)>& change) {
  OpenedSitting opened(name, clock);
  opened.campaign.all_or_none([&] { change(opened.sitting); });
}

SittingStatus status_of(const SittingName& name) {
  const OpenedSitting opened(name, no_clock());
  const sitting::State& state = opened.sitting.state();
  SittingStatus status;
  status.plan = opened.opened.plan.name;
  status.number = name.number;
  status.way = state.way;
  status.phase = phase_of(state);
  status.head_hex = opened.sitting.head();
  status.planned = state.planned_trials();
  const std::vector<std::string> characters = state.characters();
  for (std::size_t i = 0; i < characters.size(); ++i)
    status.characters.emplace_back(state.listeners[i], characters[i]);
  for (int trial = 1; trial <= state.layout.trials(); ++trial) {
    const auto waiting = state.waits_for(trial);
    if (!waiting.empty()) status.waiting.emplace_back(trial, waiting);
    const sitting::TrialState& at = state.at(trial);
    if (at.spoiled || at.late_spoiled)
      status.spoiled.emplace_back(
          trial, at.spoil_reason + ", by " + at.spoiled_by + (at.late_spoiled ? ", late" : ""));
  }
  status.settled = state.settled_trials();
  status.differences = standing_differences(state);
  status.not_said = not_said(state);
  status.not_measured = not_measured(state);
  return status;
}

std::vector<Paper> papers_of(const SittingName& name) {
  const OpenedSitting opened(name, no_clock());
  const plan::Plan& plan = opened.opened.plan;
  const std::string number = std::to_string(name.number);
  std::vector<int> tags;
  for (const sitting::TagLine& line : opened.sitting.tagging_list()) tags.push_back(line.tag);
  std::vector<Paper> papers = {
      {"tagging-list.txt", report::tagging_list(plan, name.number, opened.sitting.tagging_list())},
      {"helper-sheet.txt", report::helper_sheet(plan, name.number, opened.sitting.sheet())},
      {"answers-form.csv", report::answers_form(plan, name.number)},
      {"times-form.csv", report::times_form(plan, name.number)},
      {"spoiled-form.csv", report::spoilings_form(plan, name.number)},
      {"levels-form.csv", report::levels_form(tags)}};
  for (std::size_t i = 0; i < opened.sitting.state().listeners.size(); ++i) {
    const std::string& listener = opened.sitting.state().listeners[i];
    papers.push_back({"listener-sheet-" + std::to_string(i + 1) + ".txt",
                      report::listener_sheet(plan, name.number, listener)});
  }
  for (Paper& paper : papers) paper.name = file_name_of(plan.name) + "-" + number + "-" + paper.name;
  return papers;
}

void begin_sitting(const SittingName& name, const sitting::Clock& clock, bool without_characters) {
  OpenedSitting opened(name, clock);
  if (!without_characters && !opened.sitting.state().began)
    for (const std::string& listener : opened.sitting.state().listeners)
      if (!opened.sitting.state().contributions.contains(listener))
        throw text::NotNow("listener \"" + listener +
                           "\" has added no characters to the order yet\n"
                           "take them first, or say --without-characters; the report will say so");
  opened.sitting.begin();
}

void record_head_handover(const SittingName& name, const std::string& who, const std::string& how,
                          const sitting::Clock& clock) {
  OpenedSitting opened(name, clock);
  sitting::record_head_shown(*opened.log, opened.sitting, opened.opened.sealed, clock, who, how);
}

std::string end_sitting(const SittingName& name, const sitting::Clock& clock) {
  OpenedSitting opened(name, clock);
  opened.sitting.end();
  return opened.sitting.head();
}

}  // namespace desk
