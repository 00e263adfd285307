#include <cmath>

#include "findings/circuit/level.h"
#include "findings/listening/listeners.h"
#include "findings/listening/tally.h"
#include "findings/words/cautions.h"
#include "findings/words/numbers.h"
#include "plan/looks.h"
#include "plan/requirement.h"
#include "stats/level.h"
#include "text/number.h"

namespace findings {
namespace {

using Words = std::vector<std::string>;

/// A prediction that has moved by less since it was sealed has only been printed with fewer digits.
constexpr double kPrintedDigitsDb = 0.01;

std::string tested_words(const Tested& tested) {
  return std::to_string(tested.tally.score) + " of " + std::to_string(tested.tally.answers) + ", " +
         p_words(tested.p);
}

void add_far_below_chance(const Evidence& evidence, const ComparisonFinding& finding, Words& words) {
  if (!plan::protocol_of(evidence.plan).has_right_answer() || finding.primary.tally.answers == 0) return;
  const double p = p_of_so_few(evidence, finding.comparison, {.listener = primary_listener(evidence.plan)});
  if (stats::reaches(p, kFarBelowChance))
    words.push_back("far below chance (" + p_words(p) +
                    " of so few right): check whether A and B were exchanged; this is no finding");
}

/// A leak can also lead the wrong way: answers steadily against the tag are as little chance as those with it.
void add_identical_pair_reversed(const Evidence& evidence, const ComparisonFinding& finding, Words& words) {
  const double level = plan::level_of(evidence.plan);
  for (const ListenerResult& result : finding.listeners) {
    if (result.tested.tally.answers == 0) continue;
    const double p = 2 * p_of_so_few(evidence, finding.comparison, {.listener = result.listener});
    if (stats::reaches(std::min(1.0, p * static_cast<double>(finding.listeners.size())), level))
      words.push_back(evidence.plan.listeners.at(static_cast<std::size_t>(result.listener)) +
                      " was right in only " + std::to_string(result.tested.tally.score) + " of " +
                      std::to_string(result.tested.tally.answers) + " (two-sided " + p_words(p) +
                      "): answers steadily against the tags, too, point to something besides the cables");
  }
}

void add_answers_left_out(const ComparisonFinding& finding, Words& words) {
  if (finding.missing > 0) words.push_back(counted(finding.missing, "missing answer") + " left out");
  if (finding.spoiled > 0)
    words.push_back(counted(finding.spoiled, "spoiled trial") + " left out" +
                    (finding.with_spoiled.tally.answers == finding.primary.tally.answers
                         ? ", before any answer"
                         : "; with the answers given in them: " + tested_words(finding.with_spoiled)));
  if (finding.late_spoiled > 0)
    words.push_back(
        counted(finding.late_spoiled, "trial") +
        " spoiled too late, counted as answered; without them: " + tested_words(finding.without_spoiled));
  if (finding.first_answers)
    words.push_back("answers were corrected; from the first answers: " +
                    tested_words(*finding.first_answers));
}

void add_listeners(const Evidence& evidence, const ComparisonFinding& finding, Words& words) {
  if (finding.limits.treats_answers_as_independent)
    words.push_back(
        "the limits of the share pool several listeners as if all answers were independent; the p does not");
  if (finding.kind == plan::Kind::claim && finding.listeners.size() > 1 && plan::looks_of(evidence.plan))
    words.push_back(
        "the plan looked at the primary answers only: p and limits of single listeners do not take it into "
        "account");
  if (finding.agreement && finding.agreement->together)
    words.push_back("the listeners sat together: their answers are not independent");
  if (!finding.opposed) return;
  Words leaning;
  for (const ListenerResult& result : finding.listeners)
    if (leans(result, plan::level_of(evidence.plan)))
      leaning.push_back(evidence.plan.listeners.at(static_cast<std::size_t>(result.listener)) + " " +
                        tested_words(result.tested));
  words.push_back(std::string("listeners steadily prefer opposite cables") +
                  (primary_listener(evidence.plan) ? "" : " and cancel each other in the pooled test") +
                  " (for " + finding.first + ": " + listed(leaning) + ")");
}

void add_level(const Evidence& evidence, const ComparisonFinding& finding, Words& words) {
  const LevelFinding& level = finding.level;
  if (level.measured_db && level.predicted_as_set_db &&
      is_beyond(*level.measured_db - *level.predicted_as_set_db, level.tolerance_db))
    words.push_back("measured and predicted level are " +
                    text::fixed(std::abs(*level.measured_db - *level.predicted_as_set_db), 2) +
                    " dB apart; the measured one governs");
  if (level.drift_db && is_beyond(*level.drift_db, level.tolerance_db))
    words.push_back("a level at the load's terminals drifted by " + signed_db(*level.drift_db) +
                    " from start to end of a sitting");
  if (evidence.plan.levels == "as connected") return;
  if (level.state == "measured, not matched")
    words.push_back("the levels were measured and not matched: a difference in level may be what is heard");
  if (level.state == "predicted only")
    words.push_back("the levels were predicted only, not measured at the load's terminals");
  if (level.state == "not verified") words.push_back("the levels were neither measured nor predicted");
}

void add_sealed_prediction(const Evidence& evidence, const ComparisonFinding& finding, Words& words) {
  const auto& comparison = evidence.plan.comparisons.at(static_cast<std::size_t>(finding.comparison));
  const auto sealed_db = typed_number("predicted_difference_db", comparison.predicted_difference_db);
  if (!sealed_db || !finding.level.predicted_db) return;
  if (std::abs(*sealed_db - *finding.level.predicted_db) > kPrintedDigitsDb)
    words.push_back("the plan was sealed with a predicted difference of " + signed_db(*sealed_db) +
                    "; the readings now give " + signed_db(*finding.level.predicted_db));
}

void add_repeatability(const ComparisonFinding& finding, Words& words) {
  if (finding.loop_resistance_first_ohm && finding.loop_resistance_second_ohm &&
      finding.loop_resistance_spread_ohm) {
    const double difference_ohm =
        std::abs(*finding.loop_resistance_second_ohm - *finding.loop_resistance_first_ohm);
    if (difference_ohm < *finding.loop_resistance_spread_ohm)
      words.push_back("the loop resistances differ by " + text::fixed(1000 * difference_ohm, 1) +
                      " mohm, less than the repeats of one cable (" +
                      text::fixed(1000 * *finding.loop_resistance_spread_ohm, 1) + " mohm)");
  }
  const auto& measured = finding.measured;
  if (measured && measured->repeatability_db && std::abs(measured->largest_db) < *measured->repeatability_db)
    words.push_back("the measured responses differ by less than the repeats of one cable (" +
                    text::fixed(*measured->repeatability_db, 2) + " dB)");
}

}  // namespace

std::vector<std::string> cautions_of(const Evidence& evidence, const ComparisonFinding& finding) {
  Words words;
  add_far_below_chance(evidence, finding, words);
  add_answers_left_out(finding, words);
  add_listeners(evidence, finding, words);
  if (finding.kind == plan::Kind::identical_pair) {
    add_identical_pair_reversed(evidence, finding, words);
  } else {
    add_level(evidence, finding, words);
    add_sealed_prediction(evidence, finding, words);
    add_repeatability(finding, words);
  }
  return words;
}

}  // namespace findings
