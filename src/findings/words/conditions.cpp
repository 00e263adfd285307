#include "findings/words/conditions.h"

#include "findings/circuit/specimen.h"
#include "findings/words/numbers.h"
#include "findings/words/sitting_conditions.h"
#include "plan/requirement.h"
#include "text/number.h"

namespace findings {
namespace {

using Words = std::vector<std::string>;

std::string protocol_words(const plan::Plan& plan) {
  const auto& protocol = plan::protocol_of(plan);
  return "Protocol: " + std::string(protocol.title()) + " (\"" + std::string(protocol.question()) +
         "\"), order rule " + plan.order_rule + "; primary test " + plan.primary_test + ", level " +
         plan.level + ", Holm over " + counted(plan::family_size(plan), "claim") +
         "; stopping rule: " + plan.stopping_rule + ".";
}

std::string excerpt_words(const plan::Plan& plan) {
  Words excerpts;
  for (const plan::Excerpt& excerpt : plan.excerpts)
    excerpts.push_back(excerpt.title + " (" + excerpt.start + " to " + excerpt.end + ")");
  return "Presentations of " + std::to_string(plan.presentation_seconds) + " s with " +
         std::to_string(plan.swap_seconds) + " s between them. Excerpts" +
         (excerpts.empty() ? ": not recorded."
                           : ", used in turn, two trials each: " + listed(excerpts) + ".");
}

std::string pace_words(const plan::Plan& plan) {
  return "Blocks of " + counted(plan.block_trials, "trial") + ", breaks of " +
         counted(plan.break_minutes, "minute") + "; " + counted(plan.practice_trials, "practice trial") + ".";
}

std::string levels_words(const plan::Plan& plan) {
  if (plan.levels != "trimmed") return "Levels as connected: differences in level belong to the question.";
  return "Levels trimmed in steps of " +
         (plan.volume_step_db.empty() ? "unknown size" : plan.volume_step_db + " dB") + ", weighting " +
         std::string(weighting_of(plan).title) + "; tolerance " + text::fixed(level_tolerance_db(plan), 2) +
         " dB.";
}

std::string seal_words(const Evidence& evidence) {
  const std::string seed = evidence.plan.seed_origin == "supplied"
                               ? "the order's seed was supplied, not drawn: a demonstration, not evidence"
                               : "the order's seed was " + evidence.plan.seed_origin;
  Words shown;
  for (const auto& [who, how] : evidence.commitment_shown_to)
    shown.push_back(who + (how.empty() ? "" : " (" + how + ")"));
  return "Sealed " + evidence.sealed_at + "; " + seed + ". Commitment " + evidence.commitment_hex +
         ", shown to " + (shown.empty() ? "nobody" : listed(shown)) + ".";
}

}  // namespace

std::vector<std::string> conditions_of(const Evidence& evidence) {
  const plan::Plan& plan = evidence.plan;
  Words words{protocol_words(plan),
              "Listeners: " + listed(plan.listeners) + ", " + plan.attendance + ".",
              "Rig: " + (evidence.rig.description.empty() ? plan.rig : evidence.rig.description) + ".",
              excerpt_words(plan),
              pace_words(plan),
              levels_words(plan),
              seal_words(evidence)};
  for (const SittingEvidence& sitting : evidence.sittings) add_sitting_conditions(evidence, sitting, words);
  return words;
}

std::vector<std::string> limits_of_the_method(const Evidence& evidence) {
  Words words;
  words.push_back(
      evidence.commitment_shown_to.empty()
          ? "The commitment left nobody's hands but the organiser's, so the record alone does not show that "
            "nothing was changed afterwards."
          : "The record shows that plan and order were not changed after the commitment had left the "
            "organiser's hands; that no answer was, it shows for the sittings whose chain head was given to "
            "somebody before unsealing and is the one printed here.");
  words.push_back(
      "It cannot show that nobody told the listener. The helper sees the tags and so knows which one is "
      "playing; the blind rests on the separation that helper and listeners declared.");
  words.push_back(
      "Whoever holds the campaign's file can read the order from it before it is unsealed, or unseal a "
      "copy.");
  words.push_back("Every finding holds for these listeners, this rig, these excerpts and this pace.");
  words.push_back("The tolerance for levels is a margin of common practice, not a threshold of hearing.");
  return words;
}

}  // namespace findings
