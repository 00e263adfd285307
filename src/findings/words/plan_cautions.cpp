#include <algorithm>
#include <cmath>

#include "findings/listening/pace.h"
#include "findings/listening/verdict.h"
#include "findings/words/cautions.h"
#include "findings/words/numbers.h"
#include "stats/level.h"
#include "text/number.h"

namespace findings {
namespace {

using Words = std::vector<std::string>;

std::string in_sitting(const SittingEvidence& sitting) {
  return "sitting " + std::to_string(sitting.number) + ": ";
}

void add_seal(const Evidence& evidence, Words& words) {
  if (evidence.plan.seed_origin == "supplied")
    words.push_back("the order's seed was supplied, not drawn: a demonstration, not evidence");
  if (evidence.commitment_shown_to.empty())
    words.push_back(
        "the commitment was shown to nobody: nothing outside the organiser's hands says when the order was "
        "fixed");
}

void add_end(const Evidence& evidence, Words& words) {
  if (!evidence.plan_ended_early) return;
  int planned = 0, stopped = 0, settled = 0;
  for (const SittingEvidence& sitting : evidence.sittings) {
    planned += sitting.planned_trials;
    stopped += sitting.stopped_trials;
    settled += sitting.settled_trials;
  }
  words.push_back(
      "the plan was ended early by " + evidence.plan_ended_by + " (" + evidence.plan_end_reason +
      "): " + planned_words(planned, stopped) + ", " + std::to_string(settled) + " done" +
      (evidence.ender_had_seen ? "; " + evidence.plan_ended_by + " had seen both answers and order" : ""));
}

void add_controls(const Findings& findings, Words& words) {
  for (const ComparisonFinding& control : findings.comparisons) {
    if (control.kind == plan::Kind::claim) continue;
    const std::string name = std::string(plan::name_of(control.kind)) + " " + control.title;
    const bool heard = is_heard(control, findings.level);
    if (control.verdict == Verdict::cannot_be_judged) {
      words.push_back("control cannot be judged: " + name + " (" + listed(control.reasons) + ")");
    } else if (control.kind == plan::Kind::identical_pair && heard) {
      words.push_back(name + " was heard: something besides the cables told them apart");
    } else if (control.kind == plan::Kind::known_difference && !heard) {
      words.push_back(name + " was not heard: these sittings may not show smaller differences");
    }
  }
}

bool has_declared(const SittingEvidence& sitting, const std::string& who, const std::string& moment) {
  return std::any_of(sitting.declarations.begin(), sitting.declarations.end(),
                     [&](const auto& one) { return one.who == who && one.moment == moment; });
}

void add_declarations(const plan::Plan& plan, const SittingEvidence& sitting, Words& words) {
  Words expected{"helper"};
  for (const int listener : plan.sittings.at(static_cast<std::size_t>(sitting.number - 1)).listeners)
    expected.push_back(plan.listeners.at(static_cast<std::size_t>(listener)));
  Words lacking;
  for (const std::string& who : expected)
    for (const char* moment : {"start", "end"})
      if (!has_declared(sitting, who, moment)) lacking.push_back(who + " at the " + moment);
  if (!lacking.empty())
    words.push_back(in_sitting(sitting) + "no declaration of the separation by " + listed(lacking));
  for (const auto& declaration : sitting.declarations)
    if (!declaration.kept)
      words.push_back(in_sitting(sitting) + declaration.who + " declared at the " + declaration.moment +
                      " that the separation was not kept");
}

void add_keying(const SittingEvidence& sitting, Words& words) {
  if (sitting.keyed_with_helpers_sheet)
    words.push_back(in_sitting(sitting) + "answers were keyed by somebody who held the helper's sheet");
  if (sitting.differing_answers > 0)
    words.push_back(in_sitting(sitting) + "the second entry read " +
                    std::to_string(sitting.differing_answers) + " of " +
                    counted(sitting.compared_answers, "answer") + " otherwise");
}

/// The blind rests on who did what: neither helper nor tagger may listen.
void add_roles(const plan::Plan& plan, const SittingEvidence& sitting, Words& words) {
  for (const int listener : plan.sittings.at(static_cast<std::size_t>(sitting.number - 1)).listeners) {
    const std::string& name = plan.listeners.at(static_cast<std::size_t>(listener));
    if (name == sitting.tagged_by)
      words.push_back(in_sitting(sitting) + name + " tagged the cables and listened");
    if (name == sitting.helper) words.push_back(in_sitting(sitting) + name + " helped and listened");
  }
}

void add_sitting(const Evidence& evidence, const SittingEvidence& sitting, Words& words) {
  if (!sitting.held) {
    words.push_back(in_sitting(sitting) + "not held");
    return;
  }
  if (sitting.ended_early)
    words.push_back(
        in_sitting(sitting) + "ended early by " + sitting.ended_by + " (" + sitting.end_reason +
        "): " + planned_words(sitting.planned_trials, sitting.stopped_trials) + ", " +
        std::to_string(sitting.settled_trials) + " done" +
        (sitting.ender_had_seen ? "; " + sitting.ended_by + " had seen both answers and order" : ""));
  if (sitting.head_shown_to.empty())
    words.push_back(
        in_sitting(sitting) +
        "its chain head was given to nobody before unsealing: nothing outside the organiser's hands "
        "says that its answers are those that were given");
  add_roles(evidence.plan, sitting, words);
  if (sitting.tagged_by.empty())
    words.push_back(in_sitting(sitting) + "who tagged the cables was not recorded");
  if (sitting.wrong_tag_reported)
    words.push_back(in_sitting(sitting) + "a wrong tag was reported after its answers were in");
  add_declarations(evidence.plan, sitting, words);
  add_keying(sitting, words);
  if (!pace_is_recorded(evidence, sitting.number)) words.push_back(in_sitting(sitting) + "pace not recorded");
  for (const auto& [listener, characters] : sitting.characters)
    if (characters.empty())
      words.push_back(in_sitting(sitting) + listener + " added no characters to the order");
  if (!evidence.first_shown_at.empty() && sitting.began_at < evidence.first_shown_at)
    words.push_back(in_sitting(sitting) +
                    "its order was drawn before the commitment was given to anybody: it does not bind it");
}

void add_pace(const Findings& findings, Words& words) {
  const Pace& pace = findings.pace;
  if (pace.overruns > 0)
    words.push_back(counted(pace.overruns, "presentation") + " began later than the plan's pace allows");
  if (pace.p && stats::reaches(*pace.p, findings.level))
    words.push_back("a change of cable took " + text::fixed(std::abs(*pace.difference_s), 1) + " s " +
                    (*pace.difference_s < 0 ? "less" : "longer") + " than the same cable again (" +
                    p_words(*pace.p) + "): the pace may have told them");
}

void add_other_plans(const Evidence& evidence, Words& words) {
  Words left;
  for (const PlanLine& plan : evidence.all_plans)
    if (plan.name != evidence.plan.name && plan.state == "ended early") left.push_back(plan.name);
  if (!left.empty())
    words.push_back("this campaign also holds " + counted(static_cast<int>(left.size()), "plan") +
                    " ended early: " + listed(left));
}

}  // namespace

std::vector<std::string> plan_cautions(const Evidence& evidence, const Findings& findings) {
  Words words;
  add_seal(evidence, words);
  add_end(evidence, words);
  add_controls(findings, words);
  for (const SittingEvidence& sitting : evidence.sittings) add_sitting(evidence, sitting, words);
  add_pace(findings, words);
  add_other_plans(evidence, words);
  return words;
}

}  // namespace findings
