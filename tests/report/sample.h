#pragma once

#include <limits>

#include <cmath>
#include <string>
#include <vector>

#include "findings/evidence.h"
#include "findings/finding.h"
#include "protocols/catalogue.h"

/// Evidence and findings made by hand, with every field filled somewhere, for the tests of the report. The numbers are
/// invented; only their printing is tested with them.
namespace sample {

inline plan::Plan plan(const std::string& protocol = "abx") {
  plan::Plan plan;
  plan.name = "spring pairs";
  plan.sealed_at = "2031-05-01T17:30:00Z";
  plan.seed_origin = "drawn from the operating system";
  plan.protocol = protocol;
  plan.order_rule = std::string(protocols::find(protocol)->order_rule());
  plan.rig = "small hall";
  plan.baseline = "heavy pair";
  plan.listeners = {"Anna", "Ben", "Cleo"};
  plan.attendance = "together";
  plan.specimens = {{"heavy pair", "", 2},  {"thin pair", "", 0},  {"braided eight", "", 1},
                    {"flat ribbon", "", 2}, {"heavy pair", "", 2}, {"heavy pair", "0.22", 1}};
  plan.comparisons = {{0, 1, plan::Kind::claim, "-0.42"},
                      {0, 2, plan::Kind::claim, "-0.08"},
                      {0, 3, plan::Kind::claim, ""},
                      {0, 4, plan::Kind::identical_pair, "0"},
                      {0, 5, plan::Kind::known_difference, "-0.35"}};
  plan.sittings = {{{0, 1, 3}, 16, {0, 1, 2}}, {{2, 4}, 16, {0, 1, 2}}};
  plan.primary_test = "pooled";
  plan.levels = "trimmed";
  plan.trim_weighting = "pink noise, K";
  plan.volume_step_db = "0.5";
  plan.excerpts = {{"Solo viola, slow", "0:12", "0:27"}, {"Wind quintet", "1:05", "1:20"}};
  return plan;
}

inline findings::Tested tested(int score, int answers, int trials, double p) {
  return {{score, answers, trials}, p};
}

inline findings::Curve curve(double depth_db, double ripple_db) {
  findings::Curve curve;
  for (int i = 0; i <= 600; ++i) {
    const double frequency_hz = 20 * std::pow(1000, i / 600.0);
    const double octaves = std::log2(frequency_hz / 55), wide = std::log2(frequency_hz / 2200);
    curve.frequency_hz.push_back(frequency_hz);
    curve.difference_db.push_back(
        -depth_db * (1 - 0.8 * std::exp(-2 * octaves * octaves) - 0.5 * std::exp(-wide * wide)) +
        ripple_db * std::sin(i / 3.0));
  }
  return curve;
}

inline findings::Agreement agreement() {
  findings::Agreement agreement;
  agreement.trials = 16;
  agreement.pairs = 48;
  agreement.agreeing_pairs = 34;
  agreement.raw = 34.0 / 48;
  agreement.p = 0.0213;
  agreement.p_standard_error = 0.00045;
  agreement.fleiss_kappa = 0.187;
  agreement.counts = {{3, 0}, {3, 0}, {2, 1}, {3, 0}, {1, 2}, {0, 3}};
  agreement.together = true;
  return agreement;
}

inline findings::ListenerExploration explored_listener() {
  return {.listener = 0,
          .d_prime = 2.02,
          .d_prime_lower = 0.35,
          .d_prime_upper = std::numeric_limits<double>::infinity(),
          .d_prime_remark = "",
          .bias = {0, 16, 9, 0.8036},
          .rated = 13,
          .roc = findings::RocFinding{0.71, {0.031, {}}},
          .surer_when_right = findings::RocFinding{0.64, {0.27, {}}},
          .timed = 16,
          .swap_time = {{37.2, 37.6, -0.4, {0.52, 0.002}}}};
}

inline findings::ComparisonFinding comparison(const plan::Plan& plan, int index, findings::Verdict verdict,
                                              int score, double p) {
  findings::ComparisonFinding finding;
  const plan::Comparison& planned = plan.comparisons[static_cast<std::size_t>(index)];
  finding.comparison = index;
  finding.title = plan::title_of(plan, planned);
  finding.first = plan::title_of(plan.specimens[static_cast<std::size_t>(planned.first)]);
  finding.second = plan::title_of(plan.specimens[static_cast<std::size_t>(planned.second)]);
  finding.kind = planned.kind;
  finding.verdict = verdict;
  finding.sentence =
      "The finding in words: " + std::to_string(score) +
      " of 48 right (over 16 trials). Presentations of 15 s with 30 s between them. For these listeners, "
      "this rig and this pace.";
  finding.primary = tested(score, 48, 16, p);
  if (finding.kind == plan::Kind::claim) finding.p_adjusted = std::min(1.0, 3 * p);
  finding.limits = {score / 48.0, score / 48.0 - 0.12, std::min(1.0, score / 48.0 + 0.11), true};
  finding.would_have_been_caught = {.trials = 16,
                                    .answers = 48,
                                    .level = 0.05 / 3,
                                    .needed = 39,
                                    .at_looks = {},
                                    .probability = 0.8,
                                    .share = 0.8967,
                                    .hearing_share = 0.7934,
                                    .probability_at_effect = 0.79};
  if (index == 1) finding.would_have_been_caught.at_looks = {{8, 24, std::nullopt}, {16, 48, 39}};
  finding.missing = 1;
  finding.spoiled = 1;
  finding.with_spoiled = tested(score + 2, 51, 17, p / 2);
  finding.without_spoiled = finding.primary;
  finding.first_answers = tested(score - 1, 48, 16, std::min(1.0, p * 2));
  for (int listener = 0; listener < 3; ++listener)
    finding.listeners.push_back(
        {listener,
         tested(score / 3, 16, 16, std::min(1.0, p * 3)),
         std::min(1.0, p * 9),
         {score / 48.0, score / 48.0 - 0.2, std::min(1.0, score / 48.0 + 0.18), false},
         std::nullopt});
  finding.exploration.listeners = {explored_listener()};
  finding.exploration.spread =
      findings::Spread{1.57, findings::ExploredP{0.058, {}}, "The listeners differ."};
  finding.exploration.drift = findings::Drift{60, 51.5, {0.33, {}}, "Fatigue or learning not shown."};
  finding.exploration.remarks = {"Sureness: 3 answers without a level left out."};
  finding.exploration.ac1 = 0.41;
  finding.exploration.ac1_error = 0.12;
  finding.agreement = agreement();
  finding.level = {.state = "matched",
                   .weighting = "pink noise, K",
                   .measured_db = 0.03,
                   .measured_completely = true,
                   .largest_measured_db = -0.06,
                   .drift_db = 0.02,
                   .predicted_db = -0.42,
                   .trim_db = 0.5,
                   .predicted_as_set_db = 0.08,
                   .tolerance_db = 0.1};
  finding.loop_resistance_first_ohm = 0.0482;
  finding.loop_resistance_second_ohm = 0.4371;
  finding.loop_resistance_spread_ohm = 0.0011;
  finding.predicted_residual = {-0.21, 0.33, 0.14, 0.33, 63, 20, 20000};
  finding.measured = {-0.61, 240, 0.38, -0.41, 20, 20000, 0.02};
  finding.predicted_curve = curve(0.5, 0);
  finding.measured_curve = curve(0.52, 0.015);
  finding.level_sentence = "Level matched within 0.10 dB at the load's terminals with the trims as set.";
  finding.response_sentence = "With the trims as set the response still differs by up to +0.33 dB at 63 Hz.";
  return finding;
}

inline findings::SittingEvidence sitting(int number) {
  findings::SittingEvidence sitting;
  sitting.number = number;
  sitting.held = true;
  sitting.way = "paper";
  sitting.opened_at = "2031-05-02T18:00:00Z";
  sitting.ended_at = "2031-05-02T21:10:00Z";
  sitting.head_hex = "4f1d" + std::string(60, 'a');
  sitting.head_shown_to = {{"the club's secretary", "letter"}};
  sitting.tagged_by = "Dora";
  sitting.characters = {{"Ada", "x7k2"}};
  sitting.facts = {{"Seat and distance from the loudspeakers", "centre, 2.8 m"}, {"Warm-up, minutes", "45"}};
  sitting.declarations = {{"helper", "start", "", true}, {"Anna", "end", "heard a plug once", false}};
  sitting.notes = {{"helper", "rain from trial 9 on"}};
  sitting.cues = {{"Ben", "the second one seemed thinner"}};
  sitting.keyed_by = {"Dora"};
  sitting.compared_answers = 48;
  sitting.differing_answers = 1;
  sitting.planned_trials = 48;
  sitting.settled_trials = 48;
  return sitting;
}

inline findings::Evidence evidence(const std::string& protocol = "abx") {
  findings::Evidence evidence;
  evidence.campaign_title = "Loudspeaker cables, spring series";
  evidence.plan = plan(protocol);
  evidence.commitment_hex = "9b07" + std::string(60, 'c');
  evidence.seed_hex = "03ee" + std::string(60, '5');
  evidence.sealed_at = evidence.plan.sealed_at;
  evidence.unsealed_at = "2031-05-09T09:00:00Z";
  evidence.commitment_shown_to = {{"the editor", "printed in issue 14"}};
  evidence.sittings = {sitting(1), sitting(2)};
  evidence.trials.resize(evidence.plan.comparisons.size());
  evidence.trials[0] = {
      {1,
       1,
       findings::Fate::counted,
       "",
       1,
       {0, 1, 1},
       {{0, 1}, {1, 1}},
       {{0, 0}, {1, 1}, {2, 0}},
       {{0, "certain"}},
       {{0, "misheard the number"}},
       {2},
       {0.0, 45.5, {}}},
      {1, 2, findings::Fate::spoiled, "wrong tag, by helper", 0, {1, 0, 0}, {}, {}, {}, {}, {0}, {}}};
  evidence.levels = {{1, 0, "left", "start", -0.02}, {1, 1, "left", "end", 0.05}};
  evidence.cables["heavy pair"] = {
      electrical::Cable{0.016, 5.5e-7, 6e-11, 0, 3, 0}, 0.0011, 3, {{}, {"heavy.csv, 1"}}};
  evidence.cables["thin pair"] = {};
  evidence.rig = {
      "small hall", "0.05 ohm source, three-way loudspeaker, pink noise", electrical::Source{0.05, 0}, {}};
  evidence.all_plans = {
      {"rehearsal", "abx", "2031-04-02T10:00:00Z", "ended early", std::string(64, '1')},
      {evidence.plan.name, protocol, evidence.sealed_at, "unsealed", evidence.commitment_hex}};
  return evidence;
}

inline findings::Correlation correlation() {
  findings::Correlation correlation;
  correlation.measure = "loop resistance, ohm";
  correlation.outcome = "share right";
  correlation.against = "absolute difference";
  correlation.comparisons = {0, 1, 2};
  correlation.x = {0.389, 0.012, 0.061};
  correlation.y = {0.79, 0.52, 0.56};
  correlation.rho = 1;
  correlation.p = 1.0 / 3;
  correlation.p_adjusted = 2.0 / 3;
  correlation.smallest_attainable_p = 1.0 / 3;
  correlation.sentence = "Exploratory: it is not shown that share right goes with loop resistance, ohm.";
  return correlation;
}

inline findings::Findings findings_for(const findings::Evidence& evidence) {
  using findings::Verdict;
  findings::Findings findings;
  const plan::Plan& plan = evidence.plan;
  findings.comparisons = {
      comparison(plan, 0, Verdict::supported, 38, 0.0012), comparison(plan, 1, Verdict::not_shown, 25, 0.41),
      comparison(plan, 2, Verdict::cannot_be_judged, 27, 0.22),
      comparison(plan, 3, Verdict::not_shown, 23, 0.62), comparison(plan, 4, Verdict::supported, 39, 0.0008)};
  findings.comparisons[1].cautions = {"braided eight: its level drifted by 0.12 dB from start to end"};
  findings.comparisons[2].reasons = {"separation not kept in sitting 2"};
  findings.comparisons[2].measured_curve.reset();
  findings.comparisons[2].measured.reset();
  findings.family = 3;
  findings.level = 0.05;
  findings.correlations = {correlation()};
  findings.correlations[0].p_standard_error = 0.0004;
  findings.pace = {.recorded = true,
                   .same = 40,
                   .changed = 103,
                   .mean_same_s = 30.8,
                   .mean_changed_s = 31.1,
                   .difference_s = 0.3,
                   .lower_s = -0.2,
                   .upper_s = 0.8,
                   .p = 0.24,
                   .p_standard_error = 0.004,
                   .overruns = 1};
  if (plan.protocol == "abx") findings.answer_shares = {{0, 80, 49, 0.0567}};
  findings.conditions = {"Rig: " + evidence.rig.description + ".", "Sitting 1: on paper."};
  findings.cautions = {"sitting 1: cues were told of (1); see the conditions"};
  findings.limits_of_the_method = {
      "The record shows that nothing was changed after the commitment had left the organiser's hands.",
      "It cannot show that nobody told the listener."};
  // Also where the protocol is another, so that every key is there.
  findings.preference_scale = {.state = findings::PreferenceScale::State::estimated,
                               .groups = {},
                               .answers = 160,
                               .cables = {{"plain pair", 0, 0, 0.2}, {"braided eight", 0.81, 0.3, 0.22}},
                               .order_effect = 0.2,
                               .order_error = 0.17,
                               .pairs = {{0, 1, -0.81, 0.007}},
                               .fit_p = 0.4,
                               .fit_p_standard_error = 0.016,
                               .sentence = "Explored: worths of 2 cables from 160 answers."};
  if (plan.protocol != "abx") {
    findings.comparisons[0].opposed = true;
    for (auto& finding : findings.comparisons)
      for (auto& listener : finding.listeners) listener.sign_test_p = 0.5;
  }
  return findings;
}

}  // namespace sample
