#include "stats/sequential/stopping_rule.h"

#include <cstddef>

#include "stats/arguments.h"

namespace stats {
namespace {

void check_stopping_rule(const StoppingRule& rule) {
  require_count("looks", std::ssize(rule.looks), 1, kMostTrials);
  for (const auto& [support, give_up] : rule.looks) {
    if (support) require_count("support", *support, 0, kMostTrials);
    if (give_up) require_count("give_up", *give_up, 0, support ? *support - 1 : kMostTrials);
  }
}

StoppingDecision stopping_decision_at(const Look& look, int count) {
  if (look.support && count >= *look.support) return StoppingDecision::support;
  if (look.give_up && count <= *look.give_up) return StoppingDecision::give_up;
  return StoppingDecision::undecided;
}

}  // namespace

StoppingPoint follow(const StoppingRule& rule, std::span<const int> answers) {
  check_stopping_rule(rule);
  require_count("number of answers", std::ssize(answers), 0, std::ssize(rule.looks));
  for (const int answer : answers) require_count("answer", answer, 0, 1);
  int count = 0;
  for (std::size_t i = 0; i < answers.size(); ++i) {
    count += answers[i];
    const auto decision = stopping_decision_at(rule.looks[i], count);
    if (decision != StoppingDecision::undecided) return {decision, static_cast<int>(i) + 1};
  }
  return {StoppingDecision::undecided, static_cast<int>(answers.size())};
}

Operation operate(const StoppingRule& rule, std::span<const Gain> gains) {
  check_stopping_rule(rule);
  require_count("number of gains", std::ssize(gains), std::ssize(rule.looks), std::ssize(rule.looks));
  Operation result{};
  RunningTotal total;
  double going_on = 1;
  for (std::size_t i = 0; i < gains.size(); ++i) {
    result.expected_trials += going_on;
    total.add(gains[i]);
    const auto [support, give_up] = rule.looks[i];
    result.support_after.push_back(support ? total.take_at_least(*support) : 0.0);
    result.give_up_after.push_back(give_up ? total.take_at_most(*give_up) : 0.0);
    result.support += result.support_after.back();
    result.give_up += result.give_up_after.back();
    result.stop_after.push_back(result.support_after.back() + result.give_up_after.back());
    going_on = total.remaining();
  }
  result.undecided = going_on;
  result.stop_after.back() += going_on;
  return result;
}

Operation operate(const StoppingRule& rule, double share) {
  require_closed_probability("share", share);
  return operate(rule, std::vector<Gain>(rule.looks.size(), {1, 0, share}));
}

void require_looks(std::span<const int> looks, int trials) {
  require_count("number of looks", std::ssize(looks), 1, trials);
  int before = 0;
  for (const int look : looks) {
    require_count("look", look, before + 1, trials);
    before = look;
  }
}

}  // namespace stats
