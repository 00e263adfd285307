#include "findings/exploration/listener.h"

#include <array>

#include "stats/discrimination/answer_bias.h"
#include "stats/discrimination/d_prime.h"
#include "stats/discrimination/roc.h"
#include "stats/samples/mean_difference.h"

namespace findings {
namespace {

constexpr double kExploredConfidence = 0.95;
constexpr std::array kSureness{"certain", "fairly sure", "guess"};

/// The place of a rated answer from surest "A" (0) to surest "B" (5).
std::optional<std::size_t> rating_of(int answer, const std::string& sureness) {
  for (std::size_t i = 0; i < kSureness.size(); ++i)
    if (sureness == kSureness[i]) return answer == 0 ? i : 2 * kSureness.size() - 1 - i;
  return std::nullopt;
}

std::optional<ListenerExploration::Sureness> sureness_of(const std::vector<const TrialEvidence*>& trials,
                                                         int listener) {
  stats::RatedAnswers rated{std::vector<int>(2 * kSureness.size()), std::vector<int>(2 * kSureness.size())};
  int signals = 0, noises = 0;
  for (const TrialEvidence* trial : trials) {
    const auto answer = trial->answers.find(listener);
    const auto sureness = trial->sureness.find(listener);
    if (answer == trial->answers.end() || sureness == trial->sureness.end()) continue;
    const auto rating = rating_of(answer->second, sureness->second);
    if (!rating) continue;
    const bool is_a = trial->coin == 0;
    ++(is_a ? rated.signal : rated.noise)[*rating];
    ++(is_a ? signals : noises);
  }
  if (signals == 0 || noises == 0) return std::nullopt;
  return ListenerExploration::Sureness{
      signals + noises, stats::roc_area(rated).area,
      explored(stats::roc_test(rated, stats::Alternative::two_sided, kExplorationDraws))};
}

std::optional<ListenerExploration::SwapTime> swap_time_of(const std::vector<const TrialEvidence*>& trials,
                                                          int listener) {
  std::vector<double> before_a, before_b;
  for (const TrialEvidence* trial : trials) {
    const auto answer = trial->answers.find(listener);
    const std::size_t last = trial->sides.size() - 1;
    if (answer == trial->answers.end() || trial->started_s.size() <= last) continue;
    const auto now = trial->started_s[last], before = trial->started_s[last - 1];
    if (now && before) (answer->second == 0 ? before_a : before_b).push_back(*now - *before);
  }
  if (before_a.empty() || before_b.empty()) return std::nullopt;
  return ListenerExploration::SwapTime{
      stats::mean_difference(before_a, before_b),
      explored(
          stats::mean_difference_test(before_a, before_b, stats::Alternative::two_sided, kExplorationDraws))};
}

}  // namespace

ExploredP explored(const stats::PermutationP& test) {
  return {test.p, test.exact ? std::nullopt : std::optional(test.standard_error)};
}

ListenerExploration listener_exploration(const std::vector<const TrialEvidence*>& trials, int listener) {
  ListenerExploration found;
  found.listener = listener;
  int right = 0;
  for (const TrialEvidence* trial : trials) {
    const auto answer = trial->answers.find(listener);
    if (answer == trial->answers.end()) continue;
    ++found.answers;
    right += answer->second == trial->coin;
    found.answers_a += answer->second == 0;
  }
  const auto estimate =
      stats::estimate_d_prime(stats::Link::abx_differencing, right, found.answers, kExploredConfidence);
  found.d_prime = estimate.d_prime;
  found.d_prime_lower = estimate.limits.lower;
  found.d_prime_upper = estimate.limits.upper;
  found.bias_p = stats::answer_bias(found.answers_a, found.answers, kExploredConfidence).p;
  found.sureness = sureness_of(trials, listener);
  found.swap_time = swap_time_of(trials, listener);
  return found;
}

}  // namespace findings
