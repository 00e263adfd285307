#include "report/content/sections.h"
#include "report/content/words.h"
#include "text/number.h"

namespace report {
namespace {

std::string excerpt_words(const plan::Excerpt& excerpt) {
  std::string words = excerpt.title;
  if (!excerpt.start.empty()) words += ", from " + excerpt.start;
  if (!excerpt.end.empty()) words += " to " + excerpt.end;
  return words;
}

std::string judging_words(const plan::Judging& judging) {
  std::vector<std::string> conditions = {"too few answers to reach the level"};
  if (judging.tags_or_trims_wrong) conditions.push_back("tags or trims found wrong");
  if (judging.separation_not_kept) conditions.push_back("separation not kept");
  if (judging.identical_pair_heard) conditions.push_back("an identical pair \u201Cheard\u201D");
  if (judging.known_difference_not_heard)
    conditions.push_back("a known difference not heard (bars \u201Cnot shown\u201D only)");
  return listed(conditions);
}

std::string pace_words(const plan::Plan& plan) {
  return std::to_string(plan.swap_seconds) + " s for a swap, " + std::to_string(plan.presentation_seconds) +
         " s a presentation, a rest of " + std::to_string(plan.break_minutes) + " min every " +
         counted(plan.block_trials, "trial");
}

Table specimen_table(const plan::Plan& plan) {
  Table table{
      "Comparisons as sealed", {{"First"}, {"Second"}, {"What for"}, {"Predicted difference", true}}, {}, {}};
  const auto title = [&](int specimen) {
    return plan::title_of(plan.specimens.at(static_cast<std::size_t>(specimen)));
  };
  for (const plan::Comparison& comparison : plan.comparisons)
    table.rows.push_back(
        {title(comparison.first), title(comparison.second), std::string(plan::name_of(comparison.kind)),
         comparison.predicted_difference_db.empty() ? "unknown"
                                                    : comparison.predicted_difference_db + " dB"});
  return table;
}

Table part_table(const plan::Plan& plan) {
  Table table{"Sittings as planned",
              {{"Sitting", true}, {"Comparisons", true}, {"Trials of each", true}, {"Listeners"}},
              {},
              {}};
  int number = 0;
  for (const plan::Part& part : plan.sittings) {
    std::vector<std::string> names;
    for (const int listener : part.listeners) names.push_back(listener_of(plan, listener));
    table.rows.push_back({std::to_string(++number), std::to_string(part.comparisons.size()),
                          std::to_string(part.trials_each), listed(names)});
  }
  return table;
}

}  // namespace

Section plan_section(const plan::Plan& plan) {
  const protocols::Protocol& protocol = plan::protocol_of(plan);
  Facts facts;
  auto add = [&](std::string term, std::string value) {
    facts.facts.push_back({std::move(term), std::move(value)});
  };
  add("Protocol", std::string(protocol.title()) + ": \u201C" + std::string(protocol.question()) + "\u201D");
  add("Order rule", plan.order_rule);
  add("Rig", plan.rig);
  if (!plan.baseline.empty()) add("Baseline", plan.baseline);
  add("Listeners", listed(plan.listeners) + (plan.listeners.size() > 1 ? ", " + plan.attendance : ""));
  add("Primary test", plan.primary_test == "pooled" ? "all listeners pooled" : plan.primary_test + " alone");
  add("Level and family", plan.level + ", Holm over the claims of the whole plan");
  add("Effect worth finding", "a long-run share of " + plan.effect_share);
  add("Stopping rule", plan.stopping_rule);
  add("Cannot be judged for", judging_words(plan.judging));
  add("Levels", plan.levels + (plan.trim_weighting.empty() ? "" : ", weighting " + plan.trim_weighting) +
                    (plan.volume_step_db.empty() ? "" : ", volume step " + plan.volume_step_db + " dB") +
                    ", tolerance " + plan.level_tolerance_db + " dB");
  add("Pace", pace_words(plan));
  add("Spare trials", std::to_string(plan.spares_each) + " of each comparison in each sitting");
  add("Practice trials", std::to_string(plan.practice_trials));
  for (std::size_t i = 0; i < plan.excerpts.size(); ++i)
    add("Excerpt " + std::to_string(i + 1), excerpt_words(plan.excerpts[i]));
  return {2, "plan", "The plan as sealed", {facts, specimen_table(plan), part_table(plan)}};
}

}  // namespace report
