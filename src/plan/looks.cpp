#include "plan/looks.h"

#include <algorithm>

#include "plan/requirement.h"
#include "stats/sequential/shared_stopping.h"
#include "text/error.h"
#include "text/number.h"
#include "text/utf8.h"

namespace plan {
namespace {

constexpr std::string_view begin = "looks after ";

std::string ending_of(stats::Spending spending) {
  return spending == stats::Spending::pocock ? " trials, Pocock spending"
                                             : " trials, O'Brien-Fleming spending";
}

[[noreturn]] void refuse_rule(const std::string& rule) {
  throw text::BadInput("plan: the stopping rule is " + text::quoted(rule) + "; expected " +
                       text::quoted(fixed_number_of_trials) + " or " +
                       text::quoted(rule_text({{8, 16, 24}})));
}

}  // namespace

std::string rule_text(const Looks& looks) {
  std::string text(begin);
  for (std::size_t i = 0; i < looks.after.size(); ++i)
    text += (i == 0 ? "" : ", ") + std::to_string(looks.after[i]);
  return text + ending_of(looks.spending);
}

std::optional<Looks> looks_of(const Plan& plan) {
  const std::string& rule = plan.stopping_rule;
  if (rule == fixed_number_of_trials) return std::nullopt;
  Looks looks;
  if (rule.ends_with(ending_of(stats::Spending::pocock))) looks.spending = stats::Spending::pocock;
  for (std::size_t at = begin.size(); at < rule.size();) {
    const std::size_t end = std::min(rule.find_first_of(", ", at), rule.size());
    const auto count = text::whole_number(std::string_view(rule).substr(at, end - at));
    if (!count || *count <= (looks.after.empty() ? 0 : looks.after.back()) || *count > 1000)
      refuse_rule(rule);
    looks.after.push_back(static_cast<int>(*count));
    if (rule.substr(end, 2) != ", ") break;
    at = end + 2;
  }
  if (rule_text(looks) != rule) refuse_rule(rule);  // one text for one rule
  return looks;
}

void check_looks(const Plan& plan) {
  const auto looks = looks_of(plan);
  if (!looks) return;
  if (!protocol_of(plan).has_right_answer())
    throw text::BadInput("plan: looks need a protocol with right answers, such as ABX; " +
                         text::quoted(plan.protocol) + " has none\nplan a fixed number of trials");
  for (std::size_t i = 0; i < plan.comparisons.size(); ++i) {
    if (plan.comparisons[i].kind != Kind::claim) continue;
    std::vector<int> trials;
    for (const Part& part : plan.sittings)
      if (std::find(part.comparisons.begin(), part.comparisons.end(), static_cast<int>(i)) !=
          part.comparisons.end())
        trials.push_back(part.trials_each);
    if (trials.size() == 1 && trials.front() == looks->after.back()) continue;
    throw text::BadInput(
        "plan: " + title_of(plan, plan.comparisons[i]) +
        (trials.size() == 1 ? " has " + std::to_string(trials.front()) + " trials"
                            : " has its trials in " + std::to_string(trials.size()) + " sittings") +
        "; with looks a claim has all its trials in one sitting, as many as the last look, " +
        std::to_string(looks->after.back()) +
        (trials.size() == 1
             ? "\nset --trials, or the last of --looks, so that both agree"
             : "\nplan it for one sitting with all its listeners, or a fixed number of trials"));
  }
}

std::vector<double> spent_at(const Plan& plan, const Looks& looks) {
  const double level = level_of(plan) / family_size(plan);
  std::vector<double> spent;
  for (const int after : looks.after)
    spent.push_back(stats::level_spent(looks.spending, level, double(after) / looks.after.back()));
  return spent;
}

stats::StoppingRule bounds_of(const Plan& plan, const Looks& looks, std::span<const stats::Split> splits,
                              bool ended) {
  const int trials = static_cast<int>(splits.size());
  std::vector<double> spent = spent_at(plan, looks);
  std::vector<int> after = looks.after;
  const double whole = spent.back();
  while (!after.empty() && after.back() > trials) after.pop_back(), spent.pop_back();
  if (ended && trials > 0) {
    if (after.empty() || after.back() != trials) after.push_back(trials), spent.push_back(whole);
    spent.back() = whole;
  }
  stats::StoppingRule rule;
  if (!after.empty()) rule = stats::shared_spending_rule(splits, after, spent);
  rule.looks.resize(splits.size());
  return rule;
}

bool stops_at(const Plan& plan, const Looks& looks, std::span<const stats::Split> splits, int total) {
  if (splits.empty()) return false;
  const auto support = bounds_of(plan, looks, splits).looks.back().support;
  return support && total >= *support;
}

}  // namespace plan
