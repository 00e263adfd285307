#include "report/json/dictionary.h"

namespace report {
namespace {

Dictionary evidence_head_rows() {
  return {
      {"schema", "integer", "", "1", "number of this description"},
      {"campaign_title", "string", "", "", "title of the campaign"},
      {"level", "number", "", "above 0, below 1", "level of the family, as a number"},
      {"family", "integer", "", "0 or more", "primary tests in the family: the claims"},
      {"conditions", "list of string", "", "", "conditions of the sittings, in words"},
      {"cautions", "list of string", "", "", "cautions over the whole plan"},
      {"limits_of_the_method", "list of string", "", "", "what the record can and cannot show"},
      {"seal", "object", "", "", "commitment and disclosure"},
      {"seal.commitment_hex", "string", "", "64 hex digits",
       "SHA-256 of the plan's canonical text and the seed"},
      {"seal.seed_hex", "string", "", "64 hex digits", "the seed, disclosed"},
      {"seal.sealed_at", "string", "", "RFC 3339", "when the plan was sealed"},
      {"seal.unsealed_at", "string", "", "RFC 3339", "when the order was disclosed"},
      {"seal.shown_to", "list of object", "", "", "who received the commitment before"},
      {"seal.shown_to[].who", "string", "", "", "name"},
      {"seal.shown_to[].how", "string", "", "", "way"},
      {"ending", "object", "", "", "how the plan ended"},
      {"ending.early", "boolean", "", "", "before its last sitting"},
      {"ending.by", "string", "", "", "who decided, or empty"},
      {"ending.reason", "string", "", "", "why, or empty"},
      {"ending.had_seen_answers_and_order", "boolean", "", "",
       "whether that person had; then nothing is supported"},
      {"rig", "object", "", "", "where the comparisons were made"},
      {"rig.name", "string", "", "", "name"},
      {"rig.description", "string", "", "", "source, load and programme in words"},
      {"rig.source", "object or null", "", "", "the amplifier's output impedance"},
      {"rig.source.resistance_ohm", "number", "ohm", "0 or more", "its resistance"},
      {"rig.source.inductance_H", "number", "H", "0 or more", "its inductance"},
      {"rig.load_known", "boolean", "", "", "whether the load's impedance was known for predictions"},
      {"all_plans", "list of object", "", "", "every plan sealed in the campaign"},
      {"all_plans[].name", "string", "", "", "name"},
      {"all_plans[].protocol", "string", "", "", "protocol"},
      {"all_plans[].sealed_at", "string", "", "RFC 3339", "when it was sealed"},
      {"all_plans[].state", "string", "", "sealed; in progress; ended early; unsealed", "what became of it"},
      {"all_plans[].commitment_hex", "string", "", "64 hex digits", "its commitment"},
      {"cables", "list of object", "", "", "cables of the plan with what their readings say"},
      {"cables[].name", "string", "", "", "name"},
      {"cables[].line", "object or null", "", "", "as a uniform line, loop values; mean of the readings"},
      {"cables[].line.length_m", "number", "m", "above 0", "length"},
      {"cables[].line.resistance_ohm_per_m", "number", "ohm/m", "0 or more", "loop resistance"},
      {"cables[].line.inductance_H_per_m", "number", "H/m", "0 or more", "loop inductance"},
      {"cables[].line.capacitance_F_per_m", "number", "F/m", "0 or more",
       "capacitance between the conductors"},
      {"cables[].line.conductance_S_per_m", "number", "S/m", "0 or more",
       "conductance between the conductors"},
      {"cables[].line.load_end_resistance_ohm", "number", "ohm", "0 or more",
       "resistor in series at the load's end"},
      {"cables[].lcr_readings", "integer", "", "0 or more", "readings behind `line`"},
      {"cables[].loop_resistance_spread_ohm", "number or null", "ohm", "0 or more",
       "largest less least of the repeats"},
      {"cables[].response_sources", "list of string", "", "", "readings of its response"},
  };
}

Dictionary sitting_rows() {
  return {
      {"sittings", "list of object", "", "", "sittings of the plan, in order"},
      {"sittings[].number", "integer", "", "1 or more", "number"},
      {"sittings[].held", "boolean", "", "", "whether it took place"},
      {"sittings[].ended_early", "boolean", "", "", "before its last trial"},
      {"sittings[].way", "string", "", "paper; live", "how it was run"},
      {"sittings[].opened_at", "string", "", "RFC 3339", "when it was opened"},
      {"sittings[].began_at", "string", "", "RFC 3339", "when its order was drawn"},
      {"sittings[].ended_at", "string", "", "RFC 3339", "when it ended"},
      {"sittings[].characters", "list of object", "", "", "what each listener added to the order"},
      {"sittings[].characters[].listener", "string", "", "", "by whom"},
      {"sittings[].characters[].added", "string", "", "", "the characters, or empty"},
      {"sittings[].ended_by", "string", "", "", "who ended it early"},
      {"sittings[].end_reason", "string", "", "", "why it was ended early"},
      {"sittings[].ender_had_seen", "boolean", "", "", "who ended it early had seen both answers and order"},
      {"sittings[].head_hex", "string", "", "64 hex digits", "last head of the event chain"},
      {"sittings[].head_shown_to", "list of object", "", "", "who was given the head before unsealing"},
      {"sittings[].head_shown_to[].who", "string", "", "", "who"},
      {"sittings[].head_shown_to[].how", "string", "", "", "how and when"},
      {"sittings[].tagged_by", "string", "", "", "who put the tags on the cables"},
      {"sittings[].facts", "list of object", "", "", "facts of the sitting, as recorded"},
      {"sittings[].facts[].title", "string", "", "", "what"},
      {"sittings[].facts[].value", "string", "", "", "its value, as typed"},
      {"sittings[].declarations", "list of object", "", "", "declarations of separation"},
      {"sittings[].declarations[].who", "string", "", "", "helper or a listener"},
      {"sittings[].declarations[].moment", "string", "", "start; end", "when"},
      {"sittings[].declarations[].kept", "boolean", "", "", "whether separation was kept"},
      {"sittings[].declarations[].words", "string", "", "", "in words"},
      {"sittings[].notes", "list of object", "", "", "notes"},
      {"sittings[].notes[].who", "string", "", "", "by whom"},
      {"sittings[].notes[].text", "string", "", "", "text"},
      {"sittings[].cues", "list of object", "", "", "what gave it away, and other cues"},
      {"sittings[].cues[].who", "string", "", "", "by whom"},
      {"sittings[].cues[].text", "string", "", "", "text"},
      {"sittings[].keyed_by", "list of string", "", "", "who keyed answers from paper"},
      {"sittings[].keyed_with_helpers_sheet", "boolean", "", "",
       "whether one of them held the helper's sheet"},
      {"sittings[].compared_answers", "integer", "", "0 or more", "answers entered a second time"},
      {"sittings[].differing_answers", "integer", "", "0 or more", "of these, read differently"},
      {"sittings[].planned_trials", "integer", "", "0 or more", "trials planned, spares not counted"},
      {"sittings[].stopped_trials", "integer", "", "0 or more",
       "of these, left out after a look stopped their comparison"},
      {"sittings[].settled_trials", "integer", "", "0 or more",
       "trials answered by or missing for everyone attending"},
      {"sittings[].wrong_tag_reported", "boolean", "", "", "a wrong tag was reported after answers were in"},
      {"sittings[].terminal_levels", "list of object", "", "", "levels at the load, trims as set"},
      {"sittings[].terminal_levels[].specimen", "integer", "", "0 or more", "specimen"},
      {"sittings[].terminal_levels[].channel", "string", "", "left; right; mono", "channel"},
      {"sittings[].terminal_levels[].moment", "string", "", "start; end", "when"},
      {"sittings[].terminal_levels[].level_dB", "number", "dB", "", "level, re a reference of the rig"},
  };
}

}  // namespace

Dictionary evidence_dictionary() {
  Dictionary all = evidence_head_rows();
  const Dictionary sittings = sitting_rows();
  all.insert(all.end(), sittings.begin(), sittings.end());
  return all;
}

}  // namespace report
