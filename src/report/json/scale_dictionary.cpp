#include "report/json/dictionary.h"

namespace report {

Dictionary scale_dictionary() {
  const std::string path = "preference_scale";
  return {
      {path, "object or null", "", "",
       "worths of the cables of a preference plan from all its claims: explored, no part of any verdict; "
       "null for ABX and with "
       "answers to fewer than two claims"},
      {path + ".state", "string", "", "\"estimated\", \"corrected\", \"apart\"",
       "corrected: finite only by a correction for bias; apart: cables were not compared with each other"},
      {path + ".groups", "list of list of string", "", "",
       "where apart, the cables compared among themselves"},
      {path + ".answers", "integer", "", "1 or more", "of all listeners, treated as independent"},
      {path + ".cables", "list of object", "", "", "the baseline first; empty where apart"},
      {path + ".cables[].title", "string", "", "", "the cable"},
      {path + ".cables[].worth", "number", "", "", "log odds of being preferred to the first of the list"},
      {path + ".cables[].standard_error", "number", "", "0 or more", "of the worth; 0 for the first"},
      {path + ".cables[].quasi_standard_error", "number or null", "", "0 or more",
       "error of its own, for comparing any two; null for two cables"},
      {path + ".order_effect", "number", "", "",
       "log odds of preferring the one played first, of two cables of the same worth"},
      {path + ".order_effect_standard_error", "number", "", "0 or more", "its standard error"},
      {path + ".pairs", "list of object", "", "", "every two cables; empty unless estimated"},
      {path + ".pairs[].first", "string", "", "", "a cable"},
      {path + ".pairs[].second", "string", "", "", "another"},
      {path + ".pairs[].difference", "number", "", "", "worth of the first less that of the second"},
      {path + ".pairs[].p_adjusted", "number", "", "0 to 1", "of the likelihood ratio, Holm over all pairs"},
      {path + ".fit_p", "number or null", "", "0 to 1",
       "whether one scale is enough, by simulation; null where nothing is left to test"},
      {path + ".fit_p_standard_error", "number or null", "", "0 or more", "by the draws"},
      {path + ".sentence", "string", "", "", "in words"},
  };
}

}  // namespace report
