#pragma once

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "findings/findings.h"

/// Evidence by hand: a plan of one sitting in which everything is in order, until a test changes it.
struct Builder {
  findings::Evidence evidence;

  /// @param protocol  "abx" or "preference".
  explicit Builder(std::vector<std::string> listeners = {"Ada"}, const std::string& protocol = "abx") {
    plan::Plan& plan = evidence.plan;
    plan.name = "spring";
    plan.sealed_at = evidence.sealed_at = "2031-05-01T10:00:00Z";
    plan.seed_origin = "drawn from the operating system";
    plan.protocol = protocol;
    plan.order_rule = protocol + "-1";
    plan.rig = "listening room";
    plan.listeners = std::move(listeners);
    plan.attendance = "one at a time";
    plan.primary_test = plan.listeners.size() > 1 ? "pooled" : plan.listeners.front();
    plan.levels = "trimmed";
    plan.trim_weighting = "pink-k";
    plan.volume_step_db = "0.5";
    plan.excerpts = {{"slow organ", "0:12", "0:27"}};
    evidence.commitment_hex = "c0ffee";
    evidence.commitment_shown_to = {{"a notary", "letter"}};
    add_sitting();
  }

  plan::Plan& plan() { return evidence.plan; }
  findings::SittingEvidence& sitting() { return evidence.sittings.back(); }

  /// One more sitting, held, with everybody and every comparison so far.
  void add_sitting() {
    plan::Plan& plan = evidence.plan;
    plan::Part part;
    part.trials_each = 16;
    for (int i = 0; i < static_cast<int>(plan.listeners.size()); ++i) part.listeners.push_back(i);
    for (int i = 0; i < static_cast<int>(plan.comparisons.size()); ++i) part.comparisons.push_back(i);
    plan.sittings.push_back(part);

    findings::SittingEvidence held;
    held.number = static_cast<int>(plan.sittings.size());
    held.held = true;
    held.way = "paper";
    held.opened_at = "2031-05-02T10:00:00Z";
    held.ended_at = "2031-05-02T12:00:00Z";
    held.tagged_by = "Tom";
    held.head_shown_to = {{"a notary", "letter"}};
    held.keyed_by = {"Kim"};
    for (const char* moment : {"start", "end"}) {
      held.declarations.push_back({"helper", moment, "", true});
      for (const std::string& listener : plan.listeners)
        held.declarations.push_back({listener, moment, "", true});
    }
    evidence.sittings.push_back(held);
  }

  static plan::Specimen specimen(const std::string& cable, const std::string& series_ohm = "",
                                 int steps = 0) {
    return {cable, series_ohm, steps};
  }

  /// A comparison of two new specimens, first and second.
  int comparison(const plan::Specimen& first, const plan::Specimen& second,
                 plan::Kind kind = plan::Kind::claim) {
    auto& specimens = evidence.plan.specimens;
    specimens.push_back(first);
    specimens.push_back(second);
    const int count = static_cast<int>(specimens.size());
    evidence.plan.comparisons.push_back({count - 2, count - 1, kind, ""});
    evidence.trials.emplace_back();
    const int index = static_cast<int>(evidence.plan.comparisons.size()) - 1;
    evidence.plan.sittings.front().comparisons.push_back(index);
    return index;
  }

  int claim(const std::string& first, const std::string& second) {
    return comparison(specimen(first), specimen(second));
  }

  /// One trial: by listener, whether the answer scores. Coins take turns.
  findings::TrialEvidence& trial(int comparison, const std::vector<bool>& scores) {
    auto& trials = evidence.trials.at(static_cast<std::size_t>(comparison));
    findings::TrialEvidence one;
    one.sitting = static_cast<int>(evidence.sittings.size());
    one.number = 100 * comparison + static_cast<int>(trials.size()) + 1;
    one.fate = findings::Fate::counted;
    one.coin = static_cast<int>(trials.size() % 2);
    one.sides = {0, 1, one.coin};
    for (std::size_t i = 0; i < scores.size(); ++i)
      one.answers[static_cast<int>(i)] = scores[i] ? one.coin : 1 - one.coin;
    one.first_answers = one.answers;
    for (std::size_t i = 0; i < one.sides.size(); ++i)
      one.started_s.push_back(1000.0 * one.number + 45.0 * double(i));
    trials.push_back(one);
    return trials.back();
  }

  /// `score` of `trials` score; all listeners answer alike.
  void trials(int comparison, int score, int trials) {
    const std::size_t everybody = evidence.plan.listeners.size();
    for (int i = 0; i < trials; ++i) trial(comparison, std::vector<bool>(everybody, i < score));
  }

  /// Claims against one baseline, each with its own cable and so many of 16 right.
  void claims(const std::vector<int>& scores) {
    for (std::size_t i = 0; i < scores.size(); ++i) {
      const std::string name = "cable " + std::to_string(i + 1);
      trials(claim(name, "baseline"), scores[i], 16);
    }
    evidence.plan.baseline = "baseline";
  }

  /// A known level at the load's terminals, mono, at start and end, so much louder than 0 dB.
  void terminal_levels(int specimen, double start_db, double end_db, const std::string& channel = "mono") {
    const int number = static_cast<int>(evidence.sittings.size());
    evidence.levels.push_back({number, specimen, channel, "start", start_db});
    evidence.levels.push_back({number, specimen, channel, "end", end_db});
  }

  findings::Findings findings() const { return findings::findings_of(evidence); }
};

/// Whether one of the sentences holds these words.
inline bool says(const std::vector<std::string>& sentences, const std::string& words) {
  for (const std::string& sentence : sentences)
    if (sentence.find(words) != std::string::npos) return true;
  return false;
}

inline std::string all_of(const std::vector<std::string>& sentences) {
  std::string text;
  for (const std::string& sentence : sentences) text += sentence + "\n";
  return text;
}

/// Every sentence that findings hold.
inline std::vector<std::string> every_sentence(const findings::Findings& findings) {
  std::vector<std::string> all;
  const auto add = [&](const std::vector<std::string>& more) {
    all.insert(all.end(), more.begin(), more.end());
  };
  for (const auto& finding : findings.comparisons) {
    add({finding.sentence, finding.level_sentence, finding.response_sentence});
    add(finding.reasons);
    add(finding.cautions);
  }
  for (const auto& correlation : findings.correlations) all.push_back(correlation.sentence);
  add(findings.conditions);
  add(findings.cautions);
  add(findings.limits_of_the_method);
  return all;
}

/// One-sided tails of the fair binomial of 16; two-sided 12 of 16 is twice the first (R: binom.test gives
/// .07681274414; pbinom(11, 16, .5, lower.tail = FALSE) 2517/65536).
inline constexpr double k12Of16 = 2517.0 / 65536;
inline constexpr double k14Of16 = 137.0 / 65536;

/// Seven claims against one baseline: the first with this score of 16, the others with 8.
inline Builder seven_of(int first_score) {
  Builder builder;
  builder.claims({first_score, 8, 8, 8, 8, 8, 8});
  return builder;
}
