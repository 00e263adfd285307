#include "findings/exploration/listener.h"

#include "findings/exploration/sureness.h"
#include "stats/discrimination/answer_bias.h"
#include "stats/discrimination/d_prime.h"
#include "stats/samples/mean_difference.h"

namespace findings {
namespace {

constexpr double kExploredConfidence = 0.95;

void add_d_prime(ListenerExploration& found, int right) {
  const auto estimate =
      stats::estimate_d_prime(stats::Link::abx_differencing, right, found.bias.answers, kExploredConfidence);
  found.d_prime = estimate.d_prime;
  found.d_prime_lower = estimate.limits.lower;
  found.d_prime_upper = estimate.limits.upper;
  found.d_prime_remark = std::string(stats::d_prime_remark(estimate));
}

/// Seconds from the presentation before to X.
struct TimesByAnswer {
  std::vector<double> a, b;
};

TimesByAnswer times_by_answer(const std::vector<const TrialEvidence*>& trials, int listener) {
  TimesByAnswer times;
  for (const TrialEvidence* trial : trials) {
    const auto answer = trial->answers.find(listener);
    const std::size_t presentations = trial->sides.size();
    if (answer == trial->answers.end() || presentations < 2 || trial->started_s.size() < presentations)
      continue;
    const auto now = trial->started_s[presentations - 1], before = trial->started_s[presentations - 2];
    if (now && before) (answer->second == 0 ? times.a : times.b).push_back(*now - *before);
  }
  return times;
}

void add_swap_time(ListenerExploration& found, const TimesByAnswer& times) {
  found.timed = static_cast<int>(times.a.size() + times.b.size());
  if (times.a.empty() || times.b.empty()) return;
  found.swap_time = {stats::mean(times.a), stats::mean(times.b), stats::mean_difference(times.a, times.b),
                     explored(stats::mean_difference_test(times.a, times.b, stats::Alternative::two_sided,
                                                          kExplorationDraws))};
}

}  // namespace

ExploredP explored(const stats::PermutationP& test) {
  return {test.p, test.exact ? std::nullopt : std::optional(test.standard_error)};
}

AnswerShare answer_share(const std::vector<const TrialEvidence*>& trials, int listener) {
  AnswerShare share{.listener = listener};
  for (const TrialEvidence* trial : trials) {
    const auto answer = trial->answers.find(listener);
    if (answer == trial->answers.end()) continue;
    ++share.answers;
    share.answers_a += answer->second == 0;
  }
  if (share.answers > 0) share.p = stats::answer_bias(share.answers_a, share.answers, kExploredConfidence).p;
  return share;
}

ListenerExploration listener_exploration(const std::vector<const TrialEvidence*>& trials, int listener) {
  ListenerExploration found;
  found.listener = listener;
  found.bias = answer_share(trials, listener);
  int right = 0;
  for (const TrialEvidence* trial : trials) {
    const auto answer = trial->answers.find(listener);
    right += answer != trial->answers.end() && answer->second == trial->coin;
  }
  add_d_prime(found, right);
  add_sureness(found, trials);
  add_swap_time(found, times_by_answer(trials, listener));
  return found;
}

}  // namespace findings
