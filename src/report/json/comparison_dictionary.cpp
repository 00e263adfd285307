#include "report/json/dictionary.h"

namespace report {
namespace {

void append(Dictionary& all, const Dictionary& more) { all.insert(all.end(), more.begin(), more.end()); }

Dictionary tested_rows(const std::string& path, const std::string& type, const std::string& meaning) {
  return {
      {path, type, "", "", meaning},
      {path + ".tally", "object", "", "", "its count"},
      {path + ".tally.score", "integer", "", "0 or more",
       "right answers; preference: answers for the first cable"},
      {path + ".tally.answers", "integer", "", "0 or more", "answers"},
      {path + ".tally.trials", "integer", "", "0 or more", "trials with at least one answer"},
      {path + ".p", "number", "", "0 to 1",
       "exact p: one-sided where an answer can be right, else two-sided; 1 without answers"},
  };
}

Dictionary limit_rows(const std::string& path) {
  return {
      {path, "object", "", "",
       "share with its exact limits (Clopper-Pearson): where an answer can be right, each one-sided at 1 - "
       "`level`; "
       "else both together the two-sided interval at 1 - `level`"},
      {path + ".share", "number", "", "0 to 1", "score over answers"},
      {path + ".lower", "number", "", "0 to 1", "lower limit"},
      {path + ".upper", "number", "", "0 to 1", "upper limit"},
      {path + ".treats_answers_as_independent", "boolean", "", "",
       "true where several listeners were pooled"},
  };
}

Dictionary caught_rows() {
  const std::string path = "comparisons[].would_have_been_caught";
  return {
      {path, "object", "", "", "what sittings like these would have supported"},
      {path + ".trials", "integer", "", "0 or more",
       "trials analysed; all planned where a look stopped them"},
      {path + ".answers", "integer", "", "0 or more",
       "answers in them; those of one trial are taken as alike"},
      {path + ".level", "number", "", "above 0, below 1", "level of the family's first step"},
      {path + ".needed_answers", "integer", "", "1 or more",
       "answers that had to score; answers + 1 if none would do; with looks, at the last that can support"},
      {path + ".at_looks", "list of object", "", "", "what each look of the plan needs; empty without looks"},
      {path + ".at_looks[].trials", "integer", "", "1 or more", "after so many trials"},
      {path + ".at_looks[].answers", "integer", "", "1 or more", "answers in them"},
      {path + ".at_looks[].needed_answers", "integer or null", "", "1 or more",
       "answers that have to score; null where that look cannot support"},
      {path + ".probability", "number", "", "0 to 1", "how often it would have been supported"},
      {path + ".share", "number or null", "", "0 to 1", "smallest long-run share caught that often"},
      {path + ".hearing_share", "number or null", "", "0 to 1",
       "that share as the part of trials heard, the rest guessed; null below 1/2 and where no answer can be "
       "right"},
      {path + ".probability_at_effect", "number or null", "", "0 to 1",
       "probability of support at `plan.effect_share`"},
  };
}

Dictionary listener_rows() {
  Dictionary all = {{"comparisons[].listeners", "list of object", "", "", "each listener: the second family"},
                    {"comparisons[].listeners[].listener", "string", "", "", "name"}};
  append(all, tested_rows("comparisons[].listeners[].tested", "object", "this listener's answers"));
  append(all, {{"comparisons[].listeners[].p_adjusted", "number", "", "0 to 1",
                "p adjusted within the second family"}});
  append(all, limit_rows("comparisons[].listeners[].limits"));
  append(all, {{"comparisons[].listeners[].sign_test_p", "number or null", "", "0 to 1",
                "preference: two-sided sign test"}});
  return all;
}

Dictionary agreement_rows() {
  const std::string path = "comparisons[].agreement";
  return {
      {path, "object or null", "", "", "agreement on right and wrong, or on the cable preferred"},
      {path + ".trials", "integer", "", "0 or more", "trials answered by at least two"},
      {path + ".pairs", "integer", "", "0 or more", "pairs of answers"},
      {path + ".agreeing_pairs", "integer", "", "0 or more", "of these, agreeing"},
      {path + ".raw", "number", "", "0 to 1", "agreeing over all pairs"},
      {path + ".p", "number or null", "", "0 to 1",
       "p of agreeing on the same trials beyond their own shares"},
      {path + ".p_standard_error", "number or null", "", "0 or more", "of `p`, when simulated"},
      {path + ".fleiss_kappa", "number or null", "", "at most 1",
       "only where every counted trial was answered by all"},
      {path + ".counts", "list of list of integer", "", "0 or more",
       "per trial: how many scored, how many did not"},
      {path + ".nearly_all_in_one", "boolean", "", "", "kappa says nothing then"},
      {path + ".together", "boolean", "", "", "listeners sat together: not independent"},
  };
}

Dictionary trial_rows() {
  return {
      {"comparisons[].trials", "list of object", "", "", "every trial of the comparison, spares included"},
      {"comparisons[].trials[].sitting", "integer", "", "1 or more", "sitting"},
      {"comparisons[].trials[].number", "integer", "", "1 or more", "number within the sitting"},
      {"comparisons[].trials[].fate", "string", "", "counted; spoiled; late spoiled; not played",
       "what became of it"},
      {"comparisons[].trials[].spoil_words", "string", "", "", "reason and by whom, or empty"},
      {"comparisons[].trials[].coin", "integer", "", "0; 1", "the answer with this index scores"},
      {"comparisons[].trials[].sides", "list of integer", "", "0; 1",
       "per presentation: the first specimen or the second"},
      {"comparisons[].trials[].answers", "list of object", "", "", "answers that count"},
      {"comparisons[].trials[].answers[].listener", "string", "", "", "by whom"},
      {"comparisons[].trials[].answers[].answer", "string", "", "", "the answer"},
      {"comparisons[].trials[].first_answers", "list of object", "", "", "answers as first given"},
      {"comparisons[].trials[].first_answers[].listener", "string", "", "", "by whom"},
      {"comparisons[].trials[].first_answers[].answer", "string", "", "", "the answer"},
      {"comparisons[].trials[].corrections", "list of object", "", "",
       "why answers were changed, where it was said"},
      {"comparisons[].trials[].corrections[].listener", "string", "", "", "whose answer"},
      {"comparisons[].trials[].corrections[].words", "string", "", "", "why"},
      {"comparisons[].trials[].sureness", "list of object", "", "",
       "how sure listeners said to be of their answers"},
      {"comparisons[].trials[].sureness[].listener", "string", "", "", "by whom"},
      {"comparisons[].trials[].sureness[].level", "string", "", "guess; fairly sure; certain", "how sure"},
      {"comparisons[].trials[].missing", "list of string", "", "",
       "who attended and gave no answer, or withdrew it"},
      {"comparisons[].trials[].started_s", "list of number or null", "s", "",
       "start of each presentation, within the sitting"},
  };
}

Dictionary head_rows() {
  return {
      {"comparisons", "list of object", "", "", "findings in the plan's order, controls among them"},
      {"comparisons[].comparison", "integer", "", "0 or more", "place in `plan.comparisons`"},
      {"comparisons[].title", "string", "", "", "its title"},
      {"comparisons[].first", "string", "", "", "first specimen"},
      {"comparisons[].second", "string", "", "", "second specimen"},
      {"comparisons[].kind", "string", "", "claim; identical pair; known difference", "what it is for"},
      {"comparisons[].verdict", "string", "",
       "difference supported; preference supported; not shown; cannot be judged", "how it ended"},
      {"comparisons[].reasons", "list of string", "", "", "why it cannot be judged"},
      {"comparisons[].sentence", "string", "", "", "the finding in words"},
      {"comparisons[].p_adjusted", "number or null", "", "0 to 1",
       "primary p adjusted within the family; null for controls"},
      {"comparisons[].missing", "integer", "", "0 or more", "answers not given"},
      {"comparisons[].spoiled", "integer", "", "0 or more", "trials spoiled in time, replaced"},
      {"comparisons[].late_spoiled", "integer", "", "0 or more", "trials spoiled late, counted as answered"},
      {"comparisons[].opposed", "boolean", "", "", "preference: listeners steadily prefer opposite cables"},
      {"comparisons[].stopped_after", "integer or null", "", "1 or more",
       "trials after which a look of the plan found it supported and stopped it"},
      {"comparisons[].cautions", "list of string", "", "", "cautions"},
  };
}

}  // namespace

Dictionary comparison_dictionary() {
  Dictionary all = head_rows();
  append(all, tested_rows("comparisons[].primary", "object", "the primary test"));
  append(all, limit_rows("comparisons[].limits"));
  append(all, caught_rows());
  append(all, tested_rows("comparisons[].with_spoiled", "object", "all answers, spoiled trials too"));
  append(all, tested_rows("comparisons[].without_spoiled", "object", "late-spoiled trials left out as well"));
  append(all, tested_rows("comparisons[].first_answers", "object or null",
                          "first answers, when corrections changed any"));
  append(all, listener_rows());
  append(all, agreement_rows());
  append(all, trial_rows());
  return all;
}

}  // namespace report
