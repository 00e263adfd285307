#pragma once

#include "findings/evidence_builder.h"

/// A sitting in which much went wrong.
inline Builder eventful() {
  Builder builder({"Ada", "Ben"});
  builder.evidence.commitment_shown_to.clear();
  builder.plan().seed_origin = "supplied";
  builder.plan().attendance = "together";
  builder.trials(builder.claim("thin", "thick"), 12, 16);
  auto& trials = builder.evidence.trials[0];
  trials[1].fate = findings::Fate::spoiled;
  trials[1].spoil_words = "interruption, by helper";
  trials[2].fate = findings::Fate::late_spoiled;
  trials[2].spoil_words = "audible fault, by Ada";
  trials[3].missing = {1};
  trials[3].answers.erase(1);
  trials[3].first_answers.erase(1);
  trials[4].first_answers.at(0) = 1 - trials[4].answers.at(0);
  auto& sitting = builder.sitting();
  sitting.facts = {{"Seat and distance from the loudspeakers", "middle, 3 m"}};
  sitting.ended_early = true;
  sitting.ended_by = "Olga";
  sitting.end_reason = "fuse blown";
  sitting.planned_trials = 32;
  sitting.settled_trials = 16;
  sitting.keyed_with_helpers_sheet = true;
  sitting.compared_answers = 30;
  sitting.differing_answers = 2;
  sitting.tagged_by = "";
  sitting.cues = {{"Ben", "a click before X"}};
  sitting.notes = {{"helper", "rain"}};
  sitting.head_hex = "beef";
  sitting.head_shown_to = {{"a notary", "letter"}};
  builder.evidence.plan_ended_early = true;
  builder.evidence.plan_ended_by = "Olga";
  builder.evidence.plan_end_reason = "fuse blown";
  builder.evidence.all_plans = {{"spring", "abx", "", "ended early", ""},
                                {"winter", "abx", "", "ended early", ""}};
  return builder;
}
