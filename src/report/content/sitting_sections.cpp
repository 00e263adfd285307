#include <algorithm>

#include "report/content/sections.h"
#include "report/content/words.h"
#include "text/number.h"

namespace report {
namespace {

using findings::Evidence;
using findings::SittingEvidence;

Facts pace_facts(const findings::Findings& findings) {
  const auto seconds = [](double value) { return number_words(value, 1) + " s"; };
  const findings::Pace& pace = findings.pace;
  if (!pace.recorded) return {{{"Pace", "pace not recorded"}}};
  Facts facts;
  facts.facts.push_back({"Same cable connected again", std::to_string(pace.same) + " presentations, mean " +
                                                           seconds(pace.mean_same_s) +
                                                           " after the one before"});
  facts.facts.push_back({"Cable changed", std::to_string(pace.changed) + " presentations, mean " +
                                              seconds(pace.mean_changed_s) + " after the one before"});
  if (pace.difference_s) {
    std::string difference = seconds(*pace.difference_s);
    if (pace.lower_s && pace.upper_s)
      difference += ", 95 % interval " + seconds(*pace.lower_s) + " to " + seconds(*pace.upper_s);
    if (pace.p) difference += ", p " + p_words(*pace.p, pace.p_standard_error);
    facts.facts.push_back({"Changed less same", difference});
  }
  facts.facts.push_back({"Overruns of the pace", std::to_string(pace.overruns)});
  return facts;
}

std::string keyed_words(const SittingEvidence& sitting) {
  if (sitting.keyed_by.empty()) return sitting.way == "live" ? "by the listeners themselves" : "not recorded";
  return "by " + listed(sitting.keyed_by) +
         (sitting.keyed_with_helpers_sheet ? ", who held the helper's sheet"
                                           : ", without the helper's sheet");
}

Facts sitting_facts(const SittingEvidence& sitting) {
  Facts facts;
  auto add = [&](std::string term, std::string value) {
    facts.facts.push_back({std::move(term), std::move(value)});
  };
  add("Way", sitting.way);
  add(sitting.way == "paper" ? "Record opened" : "Opened", sitting.opened_at);
  add(sitting.way == "paper" ? "Record closed" : "Ended", sitting.ended_at);
  if (sitting.ended_early) add("Ended early", "by " + sitting.ended_by + ": " + sitting.end_reason);
  add("Trials settled", std::to_string(sitting.settled_trials) + " of " +
                            std::to_string(sitting.planned_trials) + " planned" +
                            (sitting.stopped_trials > 0
                                 ? "; " + std::to_string(sitting.stopped_trials) + " left out after a look"
                                 : ""));
  add("Cables tagged by", sitting.tagged_by.empty() ? "not recorded" : sitting.tagged_by);
  add("Answers keyed", keyed_words(sitting));
  if (sitting.compared_answers > 0)
    add("Second entry", std::to_string(sitting.differing_answers) + " of " +
                            std::to_string(sitting.compared_answers) + " answers differed");
  for (const auto& [title, value] : sitting.facts) add(title, value);
  return facts;
}

std::vector<Block> remarks(const std::string& title, const std::vector<SittingEvidence::Remark>& remarks) {
  if (remarks.empty()) return {};
  Points points;
  for (const auto& remark : remarks) points.points.push_back(remark.who + ": " + remark.text);
  return {Paragraph{title}, points};
}

Table declaration_table(const SittingEvidence& sitting) {
  Table table{"Declarations of separation", {{"Who"}, {"When"}, {"Kept"}, {"In words"}}, {}, {}};
  for (const auto& declared : sitting.declarations)
    table.rows.push_back({declared.who, declared.moment, yes_or_no(declared.kept), declared.words});
  return table;
}

std::string specimen_title(const Evidence& evidence, int specimen) {
  if (specimen < 0 || specimen >= static_cast<int>(evidence.plan.specimens.size())) return "not of this plan";
  return plan::title_of(evidence.plan.specimens[static_cast<std::size_t>(specimen)]);
}

Table level_table(const Evidence& evidence, int sitting) {
  Table table{
      "Levels at the load, trims as set", {{"Specimen"}, {"Channel"}, {"When"}, {"Level", true}}, {}, {}};
  for (const auto& level : evidence.levels)
    if (level.sitting == sitting)
      table.rows.push_back(
          {specimen_title(evidence, level.specimen), level.channel, level.moment, signed_db(level.level_db)});
  return table;
}

Section section_of(const Evidence& evidence, const SittingEvidence& sitting) {
  const std::string number = std::to_string(sitting.number);
  Section section{3, "sitting-" + number, "Sitting " + number, {}};
  if (!sitting.held) {
    section.blocks.push_back(
        Paragraph{"Not held: " + counted(sitting.planned_trials, "planned trial") + "."});
    return section;
  }
  section.blocks.push_back(sitting_facts(sitting));
  if (sitting.declarations.empty())
    section.blocks.push_back(Points{{"Nobody declared whether separation was kept."}, true});
  else
    section.blocks.push_back(declaration_table(sitting));
  if (Table levels = level_table(evidence, sitting.number); !levels.rows.empty())
    section.blocks.push_back(std::move(levels));
  for (Block& block : remarks("Asked what gave it away, and about other cues:", sitting.cues))
    section.blocks.push_back(std::move(block));
  for (Block& block : remarks("Notes:", sitting.notes)) section.blocks.push_back(std::move(block));
  return section;
}

std::string spoiled_words(const findings::TrialEvidence& trial) {
  if (trial.fate == findings::Fate::spoiled) return "spoiled: " + trial.spoil_words;
  if (trial.fate == findings::Fate::late_spoiled)
    return "spoiled late, counted as answered: " + trial.spoil_words;
  return "";
}

std::string correction_words(const plan::Plan& plan, const findings::TrialEvidence& trial, int listener) {
  const std::string& who = listener_of(plan, listener);
  const auto why = trial.corrections.find(listener);
  return (trial.was_withdrawn(listener) ? "answer of " + who + " withdrawn" : "answer corrected by " + who) +
         (why == trial.corrections.end() || why->second.empty() ? "" : ": " + why->second);
}

/// What happened to a trial besides being played and answered.
std::vector<std::string> irregularities(const plan::Plan& plan, const findings::TrialEvidence& trial) {
  std::vector<std::string> words;
  if (const std::string spoiled = spoiled_words(trial); !spoiled.empty()) words.push_back(spoiled);
  for (const int listener : trial.missing)
    if (!trial.was_withdrawn(listener)) words.push_back("no answer by " + listener_of(plan, listener));
  for (const auto& [listener, first] : trial.first_answers)
    if (trial.was_corrected(listener)) words.push_back(correction_words(plan, trial, listener));
  return words;
}

Table irregular_table(const Evidence& evidence) {
  Table table{"Trials that were spoiled, left without an answer, corrected or withdrawn",
              {{"Sitting", true}, {"Trial", true}, {"What happened"}},
              {},
              {}};
  for (const auto& trials : evidence.trials)
    for (const auto& trial : trials)
      for (const std::string& words : irregularities(evidence.plan, trial))
        table.rows.push_back({std::to_string(trial.sitting), std::to_string(trial.number), words});
  return table;
}

/// The conditions that no sitting's own section tells.
Points general_conditions(const Evidence& evidence, const findings::Findings& findings) {
  Points general;
  for (const std::string& condition : findings.conditions) {
    const bool of_a_sitting =
        std::any_of(evidence.sittings.begin(), evidence.sittings.end(), [&](const auto& sitting) {
          return condition.starts_with("Sitting " + std::to_string(sitting.number) + ": ");
        });
    if (!of_a_sitting) general.points.push_back(condition);
  }
  return general;
}

}  // namespace

std::vector<Section> sitting_sections(const Evidence& evidence, const findings::Findings& findings) {
  Section head{2, "sittings", "The sittings", {}};
  if (Points general = general_conditions(evidence, findings); !general.points.empty())
    head.blocks.push_back(std::move(general));
  head.blocks.push_back(pace_facts(findings));
  if (Table irregular = irregular_table(evidence); !irregular.rows.empty())
    head.blocks.push_back(std::move(irregular));
  std::vector<Section> sections{head};
  for (const auto& sitting : evidence.sittings) sections.push_back(section_of(evidence, sitting));
  return sections;
}

}  // namespace report
