#include <stdexcept>

#include "report/content/words.h"
#include "report/json/parts.h"

namespace report {
namespace {

using nlohmann::json;

json tally_json(const findings::Tally& tally) {
  return {{"score", tally.score}, {"answers", tally.answers}, {"trials", tally.trials}};
}

json tested_json(const findings::Tested& tested) {
  return {{"tally", tally_json(tested.tally)}, {"p", tested.p}};
}

json limits_json(const findings::Limits& limits) {
  return {{"share", limits.share},
          {"lower", limits.lower},
          {"upper", limits.upper},
          {"treats_answers_as_independent", limits.treats_answers_as_independent}};
}

json looks_json(const std::vector<findings::WouldHaveBeenCaught::AtLook>& looks) {
  json list = json::array();
  for (const auto& look : looks)
    list.push_back(
        {{"trials", look.trials}, {"answers", look.answers}, {"needed_answers", or_null(look.needed)}});
  return list;
}

json caught_json(const findings::WouldHaveBeenCaught& caught) {
  return {{"trials", caught.trials},
          {"answers", caught.answers},
          {"level", caught.level},
          {"needed_answers", caught.needed},
          {"at_looks", looks_json(caught.at_looks)},
          {"probability", caught.probability},
          {"share", or_null(caught.share)},
          {"hearing_share", or_null(caught.hearing_share)},
          {"probability_at_effect", or_null(caught.probability_at_effect)}};
}

json agreement_json(const std::optional<findings::Agreement>& agreement) {
  if (!agreement) return nullptr;
  return {{"trials", agreement->trials},
          {"pairs", agreement->pairs},
          {"agreeing_pairs", agreement->agreeing_pairs},
          {"raw", agreement->raw},
          {"p", or_null(agreement->p)},
          {"p_standard_error", or_null(agreement->p_standard_error)},
          {"fleiss_kappa", or_null(agreement->fleiss_kappa)},
          {"counts", agreement->counts},
          {"nearly_all_in_one", agreement->nearly_all_in_one},
          {"together", agreement->together}};
}

json level_json(const findings::LevelFinding& level) {
  return {{"state", level.state},
          {"weighting", level.weighting},
          {"measured_dB", or_null(level.measured_db)},
          {"measured_completely", level.measured_completely},
          {"largest_measured_dB", or_null(level.largest_measured_db)},
          {"drift_dB", or_null(level.drift_db)},
          {"predicted_dB", or_null(level.predicted_db)},
          {"trim_dB", level.trim_db},
          {"predicted_as_set_dB", or_null(level.predicted_as_set_db)},
          {"tolerance_dB", level.tolerance_db}};
}

json residual_json(const std::optional<findings::ResidualFinding>& residual) {
  if (!residual) return nullptr;
  return {{"minimum_dB", residual->minimum_db},
          {"maximum_dB", residual->maximum_db},
          {"rms_dB", residual->rms_db},
          {"largest_dB", residual->largest_db},
          {"frequency_of_largest_Hz", residual->frequency_of_largest_hz},
          {"low_Hz", residual->low_hz},
          {"high_Hz", residual->high_hz}};
}

json deviation_json(const std::optional<findings::DeviationFinding>& deviation) {
  if (!deviation) return nullptr;
  return {{"largest_dB", deviation->largest_db},
          {"frequency_of_largest_Hz", deviation->frequency_of_largest_hz},
          {"rms_dB", deviation->rms_db},
          {"weighted_level_dB", deviation->weighted_level_db},
          {"low_Hz", deviation->low_hz},
          {"high_Hz", deviation->high_hz},
          {"repeatability_dB", or_null(deviation->repeatability_db)}};
}

json curve_json(const std::optional<findings::Curve>& curve) {
  if (!curve) return nullptr;
  return {{"frequency_Hz", curve->frequency_hz}, {"difference_dB", curve->difference_db}};
}

json listeners_json(const findings::Evidence& evidence, const findings::ComparisonFinding& finding) {
  json list = json::array();
  for (const auto& one : finding.listeners)
    list.push_back({{"listener", listener_of(evidence.plan, one.listener)},
                    {"tested", tested_json(one.tested)},
                    {"p_adjusted", one.p_adjusted},
                    {"limits", limits_json(one.limits)},
                    {"sign_test_p", or_null(one.sign_test_p)}});
  return list;
}

std::string_view name_of(findings::Fate fate) {
  switch (fate) {
    case findings::Fate::counted:
      return "counted";
    case findings::Fate::spoiled:
      return "spoiled";
    case findings::Fate::late_spoiled:
      return "late spoiled";
    case findings::Fate::not_played:
      return "not played";
  }
  throw std::logic_error("a fate without a name");
}

json answers_json(const plan::Plan& plan, const std::map<int, int>& answers) {
  const auto words = plan::protocol_of(plan).answers();
  json list = json::array();
  for (const auto& [listener, answer] : answers) {
    if (answer < 0 || answer >= static_cast<int>(words.size()))
      throw std::domain_error("answer must be 0 or 1, got " + std::to_string(answer));
    list.push_back(
        {{"listener", listener_of(plan, listener)}, {"answer", words[static_cast<std::size_t>(answer)]}});
  }
  return list;
}

json trial_json(const plan::Plan& plan, const findings::TrialEvidence& trial) {
  json corrections = json::array(), sureness = json::array(), missing = json::array(),
       started = json::array();
  for (const auto& [listener, words] : trial.corrections)
    corrections.push_back({{"listener", listener_of(plan, listener)}, {"words", words}});
  for (const auto& [listener, level] : trial.sureness)
    sureness.push_back({{"listener", listener_of(plan, listener)}, {"level", level}});
  for (const int listener : trial.missing) missing.push_back(listener_of(plan, listener));
  for (const auto& start : trial.started_s) started.push_back(or_null(start));
  return {{"sitting", trial.sitting},
          {"number", trial.number},
          {"fate", name_of(trial.fate)},
          {"spoil_words", trial.spoil_words},
          {"coin", trial.coin},
          {"sides", trial.sides},
          {"answers", answers_json(plan, trial.answers)},
          {"first_answers", answers_json(plan, trial.first_answers)},
          {"corrections", corrections},
          {"sureness", sureness},
          {"missing", missing},
          {"started_s", started}};
}

json trials_json(const findings::Evidence& evidence, int comparison) {
  json list = json::array();
  if (comparison >= 0 && comparison < static_cast<int>(evidence.trials.size()))
    for (const auto& trial : evidence.trials[static_cast<std::size_t>(comparison)])
      list.push_back(trial_json(evidence.plan, trial));
  return list;
}

json circuit_json(const findings::ComparisonFinding& finding) {
  return {{"level", level_json(finding.level)},
          {"loop_resistance_first_ohm", or_null(finding.loop_resistance_first_ohm)},
          {"loop_resistance_second_ohm", or_null(finding.loop_resistance_second_ohm)},
          {"loop_resistance_spread_ohm", or_null(finding.loop_resistance_spread_ohm)},
          {"level_sentence", finding.level_sentence},
          {"response_sentence", finding.response_sentence},
          {"predicted_residual", residual_json(finding.predicted_residual)},
          {"measured", deviation_json(finding.measured)},
          {"predicted_curve", curve_json(finding.predicted_curve)},
          {"measured_curve", curve_json(finding.measured_curve)}};
}

}  // namespace

json comparison_json(const findings::Evidence& evidence, const findings::ComparisonFinding& finding) {
  json all = {{"comparison", finding.comparison},
              {"title", finding.title},
              {"first", finding.first},
              {"second", finding.second},
              {"kind", plan::name_of(finding.kind)},
              {"verdict", verdict_words(evidence.plan, finding.verdict)},
              {"reasons", finding.reasons},
              {"sentence", finding.sentence},
              {"primary", tested_json(finding.primary)},
              {"p_adjusted", or_null(finding.p_adjusted)},
              {"limits", limits_json(finding.limits)},
              {"would_have_been_caught", caught_json(finding.would_have_been_caught)},
              {"missing", finding.missing},
              {"spoiled", finding.spoiled},
              {"late_spoiled", finding.late_spoiled},
              {"with_spoiled", tested_json(finding.with_spoiled)},
              {"without_spoiled", tested_json(finding.without_spoiled)},
              {"first_answers", finding.first_answers ? tested_json(*finding.first_answers) : json(nullptr)},
              {"listeners", listeners_json(evidence, finding)},
              {"agreement", agreement_json(finding.agreement)},
              {"opposed", finding.opposed},
              {"stopped_after", or_null(finding.stopped_after)},
              {"exploration", exploration_json(evidence.plan, finding.exploration)},
              {"cautions", finding.cautions},
              {"trials", trials_json(evidence, finding.comparison)}};
  all.update(circuit_json(finding));
  return all;
}

}  // namespace report
