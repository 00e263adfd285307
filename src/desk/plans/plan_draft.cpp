#include "desk/plans/plan_draft.h"

#include <algorithm>
#include <map>
#include <set>

#include "desk/plans/typed_stopping_rule.h"
#include "desk/shelf/circuit.h"
#include "desk/shelf/prediction.h"
#include "hearing/level_difference.h"
#include "hearing/trim.h"
#include "protocols/catalogue.h"
#include "text/error.h"
#include "text/nearest.h"
#include "text/number.h"
#include "text/quantity.h"
#include "text/utf8.h"

namespace desk {
namespace {

std::pair<std::string, std::string> halves(const std::string& typed, char separator,
                                           const std::string& example) {
  const std::size_t at = typed.find(separator);
  if (at == std::string::npos || at == 0 || at + 1 == typed.size())
    throw text::BadInput(text::quoted(typed) + " cannot be read; write it like " + example);
  return {typed.substr(0, at), typed.substr(at + 1)};
}

double resistance_of(const std::string& known, const std::string& resistor) {
  try {
    return text::quantity(resistor, text::Unit::ohm);
  } catch (const text::BadInput& error) {
    throw text::BadInput("known difference \"" + known + "\": " + error.what());
  }
}

/// Trims for cables that the plan does not connect are slips.
void refuse_unused_trims(const std::map<std::string, int>& steps, const plan::Plan& plan) {
  for (const auto& [cable, count] : steps)
    if (std::none_of(plan.specimens.begin(), plan.specimens.end(),
                     [&name = cable](const plan::Specimen& specimen) { return specimen.cable == name; }))
      throw text::BadInput("--trim names \"" + cable + "\", which the plan does not connect");
}

int specimen_index(plan::Plan& plan, const std::string& cable) {
  for (std::size_t i = 0; i < plan.specimens.size(); ++i)
    if (plan.specimens[i].cable == cable && plan.specimens[i].series_resistance_ohm.empty())
      return static_cast<int>(i);
  plan.specimens.push_back({cable, "", 0});
  return static_cast<int>(plan.specimens.size()) - 1;
}

int another_specimen(plan::Plan& plan, const std::string& cable, const std::string& series_resistance_ohm) {
  plan.specimens.push_back({cable, series_resistance_ohm, 0});
  return static_cast<int>(plan.specimens.size()) - 1;
}

void add_comparisons(const store::Campaign& campaign, const PlanTyped& typed, plan::Plan& plan) {
  std::vector<std::pair<std::string, std::string>> claims;
  for (const std::string& comparison : typed.comparisons)
    claims.push_back(halves(comparison, '/', "heavy-pair/thin-pair"));
  if (typed.all_against_baseline) {
    if (plan.baseline.empty()) throw text::BadInput("the campaign has no baseline yet; name one first");
    for (const store::Cable& cable : campaign.cables())
      if (cable.name != plan.baseline) claims.emplace_back(plan.baseline, cable.name);
  }
  std::set<std::pair<std::string, std::string>> seen;
  for (const auto& [first, second] : claims) {
    if (!seen.insert(std::minmax(first, second)).second)
      throw text::BadInput("\"" + first + "\" and \"" + second +
                           "\" are compared twice; give one comparison more trials");
    require_cable(campaign, first);
    require_cable(campaign, second);
    if (first == second)
      throw text::BadInput("\"" + first + "/" + second +
                           "\" compares a cable with itself; plan it as an identical pair");
    const int first_index = specimen_index(plan, first);
    plan.comparisons.push_back({first_index, specimen_index(plan, second), plan::Kind::claim, ""});
  }
  for (const std::string& cable : typed.identical_pairs) {
    require_cable(campaign, cable);
    const int first_index = specimen_index(plan, cable);
    plan.comparisons.push_back(
        {first_index, another_specimen(plan, cable, ""), plan::Kind::identical_pair, ""});
  }
  for (const std::string& known : typed.known_differences) {
    const auto [cable, resistor] = halves(known, ':', "heavy-pair:0.22ohm");
    require_cable(campaign, cable);
    const double ohm = resistance_of(known, resistor);
    const int first_index = specimen_index(plan, cable);
    plan.comparisons.push_back(
        {first_index, another_specimen(plan, cable, text::shortest(ohm)), plan::Kind::known_difference, ""});
  }
}

/// Comparisons or trials shared out over the sittings; for listeners one at a time, each has all the sittings.
void add_sittings(const PlanTyped& typed, plan::Plan& plan) {
  if (typed.sittings < 1 || typed.sittings > 1000)
    throw text::BadInput("the number of sittings must be 1 to 1000, got " + std::to_string(typed.sittings));
  const int comparisons = static_cast<int>(plan.comparisons.size());
  if (comparisons == 0)
    throw text::BadInput(
        "the plan compares nothing; name two cables with --compare, as heavy-pair/thin-pair");
  const int shared = typed.split_trials ? typed.trials : comparisons;
  if (typed.sittings > shared || (typed.split_trials && typed.trials % typed.sittings != 0))
    throw text::BadInput(std::to_string(shared) +
                         (typed.split_trials ? " trials"
                          : shared == 1      ? " comparison"
                                             : " comparisons") +
                         " cannot be shared out over " + std::to_string(typed.sittings) + " sittings" +
                         (typed.split_trials ? " evenly" : "; plan fewer sittings, or split the trials"));
  std::vector<std::vector<int>> groups;
  for (std::size_t i = 0; i < plan.listeners.size(); ++i) {
    if (typed.one_at_a_time || groups.empty()) groups.emplace_back();
    groups.back().push_back(static_cast<int>(i));
  }
  for (const std::vector<int>& listeners : groups) {
    int next = 0;
    for (int sitting = 0; sitting < typed.sittings; ++sitting) {
      plan::Part part;
      part.listeners = listeners;
      part.trials_each = typed.split_trials ? typed.trials / typed.sittings : typed.trials;
      const int end = typed.split_trials ? comparisons : comparisons * (sitting + 1) / typed.sittings;
      for (int comparison = typed.split_trials ? 0 : next; comparison < end; ++comparison)
        part.comparisons.push_back(comparison);
      next = end;
      plan.sittings.push_back(std::move(part));
    }
  }
}

std::map<std::string, int> typed_trims(const PlanTyped& typed) {
  std::map<std::string, int> steps;
  for (const std::string& trim : typed.trims) {
    const auto [cable, number] = halves(trim, '=', "thin-pair=2");
    const auto count = text::whole_number(number);
    if (!count || *count < 0 || *count > 1000)
      throw text::BadInput("trim \"" + trim + "\": steps must be a whole number from 0 to 1000");
    steps[cable] = static_cast<int>(*count);
  }
  return steps;
}

/// A cable's level under the weighting, behind the rig's source into its load; nothing when that is not predicted.
std::optional<double> level_of(const store::Campaign& campaign, const plan::Plan& plan,
                               const findings::RigEvidence& rig, const std::string& cable) {
  const auto line = cable_evidence(campaign, cable, plan.rig).line;
  if (!rig.source || !rig.load || !line) return std::nullopt;
  const hearing::LevelCurve curve = hearing::predicted_curve(*rig.source, *line, *rig.load);
  return hearing::weighted_level_db(hearing::find(plan.trim_weighting), curve,
                                    electrical::overlap(curve.band(), electrical::kAudioBand));
}

/// The steps of every cable whose level is predicted, down to the quietest of them.
std::map<std::string, int> predicted_trims(const store::Campaign& campaign, const findings::RigEvidence& rig,
                                           const plan::Plan& plan) {
  std::map<std::string, double> levels;
  for (const plan::Specimen& specimen : plan.specimens)
    if (const auto level = level_of(campaign, plan, rig, specimen.cable)) levels[specimen.cable] = *level;
  std::map<std::string, int> steps;
  if (levels.empty()) return steps;
  std::vector<double> levels_db;
  for (const auto& [cable, level_db] : levels) levels_db.push_back(level_db);
  const auto trims = hearing::trims(levels_db, text::number(plan.volume_step_db).value());
  for (auto trim = trims.begin(); const auto& [cable, level_db] : levels) steps[cable] = (trim++)->steps;
  return steps;
}

void set_trims(const store::Campaign& campaign, const PlanTyped& typed, const findings::RigEvidence& rig,
               plan::Plan& plan) {
  if (plan.levels != "trimmed") {
    if (!typed.trims.empty())
      throw text::BadInput("--trim and --as-connected contradict each other; leave one of them out");
    return;
  }
  if (plan.volume_step_db.empty())
    throw text::BadInput("rig \"" + plan.rig +
                         "\" has no volume step, so nothing can be trimmed\n"
                         "add a rig with --volume-step, or plan the levels as connected");
  std::map<std::string, int> steps = typed_trims(typed);
  refuse_unused_trims(steps, plan);
  steps.merge(predicted_trims(campaign, rig, plan));
  for (plan::Specimen& specimen : plan.specimens) {
    if (!steps.contains(specimen.cable))
      throw text::BadInput(
          "cable " + text::quoted(specimen.cable) + " cannot be trimmed: its level on rig " +
          text::quoted(plan.rig) +
          " is not predicted\nimport its table and give the rig source and load, set --trim " +
          text::printable(specimen.cable) + "=STEPS, or plan the levels as connected");
    specimen.trim_steps = steps[specimen.cable];
  }
}

void predict_comparisons(const store::Campaign& campaign, const findings::RigEvidence& rig,
                         plan::Plan& plan) {
  const auto line_of = [&](int index) {
    const plan::Specimen& specimen = plan.specimens[static_cast<std::size_t>(index)];
    auto line = cable_evidence(campaign, specimen.cable, plan.rig).line;
    if (line) line->load_end_resistance_ohm = text::number(specimen.series_resistance_ohm).value_or(0);
    return line;
  };
  for (plan::Comparison& comparison : plan.comparisons)
    if (const auto difference_db = predicted_difference_db(rig, line_of(comparison.first),
                                                           line_of(comparison.second), plan.trim_weighting))
      comparison.predicted_difference_db = text::fixed(*difference_db, 4);
}

plan::Excerpt excerpt_of(const std::string& typed) {
  plan::Excerpt excerpt;
  const std::size_t first = typed.find(','),
                    second = typed.find(',', first == std::string::npos ? first : first + 1);
  excerpt.title = typed.substr(0, first);
  if (first == std::string::npos) return excerpt;
  if (second == std::string::npos)
    throw text::BadInput("excerpt \"" + typed + "\" cannot be read; write it like \"Choir,0:42,0:57\"");
  if (typed.find(',', second + 1) != std::string::npos)
    throw text::BadInput("excerpt \"" + typed + "\" has too many commas; write it like \"Choir,0:42,0:57\"");
  excerpt.start = typed.substr(first + 1, second - first - 1);
  excerpt.end = typed.substr(second + 1);
  return excerpt;
}

void set_judging(const PlanTyped& typed, plan::Judging& judging) {
  const std::map<std::string, bool*> conditions = {
      {"tags-or-trims-wrong", &judging.tags_or_trims_wrong},
      {"separation-not-kept", &judging.separation_not_kept},
      {"identical-pair-heard", &judging.identical_pair_heard},
      {"known-difference-not-heard", &judging.known_difference_not_heard}};
  std::vector<std::string> names;
  for (const auto& [name, flag] : conditions) names.push_back(name);
  for (const std::string& name : typed.do_not_judge_by) {
    const auto found = conditions.find(name);
    if (found == conditions.end())
      throw text::BadInput("no condition for judging is called \"" + name + "\"" +
                           text::did_you_mean(name, names));
    *found->second = false;
  }
}

}  // namespace

plan::Plan drafted(const store::Campaign& campaign, const PlanTyped& typed) {
  std::vector<std::string> names;
  for (const protocols::Protocol* protocol : protocols::catalogue()) names.emplace_back(protocol->name());
  const protocols::Protocol* protocol = protocols::find(typed.protocol);
  if (!protocol)
    throw text::BadInput("no protocol is called \"" + typed.protocol + "\"" +
                         text::did_you_mean(typed.protocol, names));
  const findings::RigEvidence rig = rig_evidence(campaign, typed.rig);
  plan::Plan plan;
  plan.name = typed.name;
  plan.seed_origin = typed.supplied_seed_hex.empty() ? "drawn from the operating system" : "supplied";
  plan.protocol = protocol->name();
  plan.order_rule = protocol->order_rule();
  plan.rig = typed.rig;
  plan.baseline = campaign.baseline();
  plan.listeners = typed.listeners;
  plan.attendance = typed.one_at_a_time ? "one at a time" : "together";
  plan.primary_test = typed.primary.empty() ? "pooled" : typed.primary;
  plan.level = typed.level;
  plan.effect_share = typed.effect;
  plan.level_tolerance_db = typed.level_tolerance_db;
  plan.levels = typed.as_connected ? "as connected" : "trimmed";
  plan.trim_weighting = hearing::find(typed.weighting).name;
  plan.volume_step_db = rig_named(campaign, typed.rig).volume_step_db;
  plan.spares_each = typed.spares;
  plan.stopping_rule = stopping_rule_of(typed.looks, typed.spending);
  plan.practice_trials = typed.practice_trials;
  plan.block_trials = typed.block_trials;
  plan.break_minutes = typed.break_minutes;
  plan.swap_seconds = typed.swap_seconds;
  plan.presentation_seconds = typed.presentation_seconds;
  for (const std::string& excerpt : typed.excerpts) plan.excerpts.push_back(excerpt_of(excerpt));
  set_judging(typed, plan.judging);
  add_comparisons(campaign, typed, plan);
  add_sittings(typed, plan);
  set_trims(campaign, typed, rig, plan);
  predict_comparisons(campaign, rig, plan);
  return plan;
}

}  // namespace desk
