#include "report/json/dictionary.h"

namespace report {
namespace {

void add_explored(Dictionary& rows, const std::string& path) {
  rows.push_back(
      {path + ".p", "number", "", "0 to 1", "exact p, unadjusted; simulated where too many to count"});
  rows.push_back({path + ".p_standard_error", "number or null", "", "0 or more", "of `p`, when simulated"});
}

Dictionary answer_share_rows(const std::string& path) {
  return {
      {path + ".listener", "string", "", "", "the listener"},
      {path + ".answers", "integer", "", "1 or more", "answers that count"},
      {path + ".answers_a", "integer", "", "0 or more", "answers \"A\""},
      {path + ".bias_p", "number", "", "0 to 1", "exact two-sided p of these against one half"},
  };
}

Dictionary explored_listener_rows(const std::string& one) {
  Dictionary rows = answer_share_rows(one);
  rows.insert(rows.end(),
              {{one + ".d_prime", "number or null", "", "0 or more",
                "d' by differencing; null: infinite, every answer was right"},
               {one + ".d_prime_lower", "number", "", "0 or more", "95 % likelihood interval"},
               {one + ".d_prime_upper", "number or null", "", "0 or more", "likewise; null: infinite"},
               {one + ".d_prime_remark", "string", "", "", "where it is no ordinary number, or empty"},
               {one + ".rated", "integer", "", "0 or more",
                "answers with a level of sureness; all others are left out"},
               {one + ".roc", "object or null", "", "",
                "A told from B; null unless answers where X was A and where it was B have levels"},
               {one + ".roc.area", "number", "", "0 to 1",
                "area under the ROC, from surest A to surest B; one half by chance"},
               {one + ".surer_when_right", "object or null", "", "",
                "sureness of right answers against wrong ones; null unless both have levels"},
               {one + ".surer_when_right.area", "number", "", "0 to 1",
                "P(a right answer is surer than a wrong one), as sure counted half"},
               {one + ".timed", "integer", "", "0 or more", "answers whose time before X is known"},
               {one + ".swap_time", "object or null", "", "",
                "time from the presentation before to X; null unless both answers have times"},
               {one + ".swap_time.mean_a_s", "number", "s", "", "mean for answers A"},
               {one + ".swap_time.mean_b_s", "number", "s", "", "mean for answers B"},
               {one + ".swap_time.difference_s", "number", "s", "", "A less B; p is two-sided"}});
  for (const char* tested : {".roc", ".surer_when_right", ".swap_time"}) add_explored(rows, one + tested);
  return rows;
}

Dictionary spread_rows(const std::string& path) {
  return {
      {path, "object or null", "", "",
       "whether listeners differ in their share right; null for one listener and where several share trials"},
      {path + ".tarone_z", "number or null", "", "",
       "Tarone's Z; null where everything was right or everything wrong"},
      {path + ".p", "number or null", "", "0 to 1",
       "exact one-sided p given the total right, unadjusted; simulated where too many to count"},
      {path + ".p_standard_error", "number or null", "", "0 or more", "of `p`, when simulated"},
      {path + ".sentence", "string", "", "", "in words"},
  };
}

Dictionary drift_rows(const std::string& path) {
  Dictionary rows = {
      {path, "object or null", "", "",
       "whether right answers come early or late; null without answers and where several listeners share "
       "trials"},
      {path + ".sum", "integer", "", "0 or more",
       "of the places of right answers among a listener's own, over all listeners"},
      {path + ".expected", "number", "", "0 or more", "its mean without a drift; p is two-sided"},
      {path + ".sentence", "string", "", "", "in words"},
  };
  add_explored(rows, path);
  return rows;
}

}  // namespace

Dictionary exploration_dictionary() {
  const std::string path = "comparisons[].exploration";
  Dictionary all = {
      {path, "object", "", "",
       "what else the answers show: explored, unadjusted, no part of the verdict; ABX unless said"},
      {path + ".listeners", "list of object", "", "", "those who answered"},
      {path + ".ac1", "number or null", "", "at most 1",
       "Gwet's AC1 on right and wrong, or on the cable preferred"},
      {path + ".ac1_standard_error", "number or null", "", "0 or more", "its standard error"},
      {path + ".remarks", "list of string", "", "", "what was left out or not computed, and why"},
      {"answer_shares", "list of object", "", "",
       "each listener's own answers over all comparisons of an ABX plan: explored, unadjusted"},
  };
  for (const auto& part : {explored_listener_rows(path + ".listeners[]"), spread_rows(path + ".spread"),
                           drift_rows(path + ".drift"), answer_share_rows("answer_shares[]")})
    all.insert(all.end(), part.begin(), part.end());
  return all;
}

}  // namespace report
