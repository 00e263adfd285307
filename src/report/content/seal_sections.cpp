#include "report/content/sections.h"
#include "report/content/words.h"

namespace report {
namespace {

using findings::Evidence;

Section seal_section(const Evidence& evidence) {
  Facts facts;
  auto add = [&](std::string term, std::string value) {
    facts.facts.push_back({std::move(term), std::move(value)});
  };
  add("Sealed", evidence.sealed_at);
  add("Unsealed", evidence.unsealed_at);
  if (evidence.plan_ended_early)
    add("Plan ended early", "by " + evidence.plan_ended_by + ", who had " +
                                (evidence.ender_had_seen ? "" : "not ") +
                                "seen both answers and order: " + evidence.plan_end_reason);
  add("Origin of the seed", evidence.plan.seed_origin);
  add("Commitment", evidence.commitment_hex);
  add("Seed", evidence.seed_hex);
  for (const auto& sitting : evidence.sittings)
    if (!sitting.head_hex.empty()) {
      const std::string number = std::to_string(sitting.number);
      for (const auto& [listener, characters] : sitting.characters)
        add("Characters of " + listener + ", sitting " + number, characters.empty() ? "none" : characters);
      add("Head of sitting " + number, sitting.head_hex);
      for (const auto& [who, how] : sitting.head_shown_to)
        add("Head of sitting " + number + " given to", who + ", " + how);
    }
  for (const auto& [who, how] : evidence.commitment_shown_to) add("Commitment given to", who + ", " + how);
  Section section{2, "seal", "The seal", {facts}};
  if (evidence.commitment_shown_to.empty())
    section.blocks.push_back(Points{{"The commitment was given to nobody: the seal binds no one."}, true});
  return section;
}

Section all_plans_section(const Evidence& evidence) {
  Table table{"Every plan sealed in this campaign, abandoned ones too",
              {{"Plan"}, {"Protocol"}, {"Sealed"}, {"State"}, {"Commitment"}},
              {},
              {}};
  for (const auto& plan : evidence.all_plans)
    table.rows.push_back({plan.name, plan.protocol, plan.sealed_at, plan.state, plan.commitment_hex});
  return {2, "all-plans", "All sealed plans of this campaign", {table}};
}

Section check_section(const plan::Plan& plan) {
  const bool right = plan::protocol_of(plan).has_right_answer();
  Points steps;
  steps.points = {
      "Commitment: SHA-256 of the plan's canonical text (RFC 8785) followed by the 32 bytes of the seed. It "
      "must equal the one given away before the first trial.",
      "Order: the seed of a sitting's order is SHA-256 of the 32 bytes of the seed, the canonical JSON array "
      "of the listeners' characters, and the sitting's number in digits. The rule \u201C" +
          plan.order_rule + "\u201D turns it into tags and trials.",
      "Chain: it starts at SHA-256 of the 64 hex digits of the commitment, a slash and the sitting's number; "
      "each event makes the next head, SHA-256 of the 32 bytes of the head before and the event's canonical "
      "text. The last head must equal the one shown at the end of the sitting.",
      right ? "Exact p, one listener: the upper tail of the binomial distribution with one half. Several "
              "listeners: given everybody's answers, each trial scores as many as answered \u201CA\u201D or "
              "as many as answered \u201CB\u201D, with probability one half each; the p is the part of all "
              "such draws that score at least as many."
            : "Exact p: given everybody's answers, each trial scores as many as answered \u201Cfirst\u201D "
              "or as many as answered \u201Csecond\u201D, with probability one half each; the p is two-sided "
              "over all such draws.",
      std::string("Limits: ") + (right ? "one-sided" : "two-sided") +
          " exact limits of a binomial share (Clopper and Pearson)."};
  return {2, "check", "How to check", {steps}};
}

}  // namespace

std::vector<Section> seal_sections(const Evidence& evidence, const findings::Findings& findings) {
  std::vector<Section> sections;
  Points limits{findings.limits_of_the_method, false};
  if (!limits.points.empty())
    sections.push_back({2, "record", "What the record can and cannot show", {limits}});
  sections.push_back(seal_section(evidence));
  sections.push_back(all_plans_section(evidence));
  sections.push_back(check_section(evidence.plan));
  return sections;
}

}  // namespace report
