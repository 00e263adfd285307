#include "stats/pooled/overdispersion.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>
#include <tuple>
#include <vector>

#include "stats/arguments.h"
#include "stats/pooled/beta_binomial.h"
#include "stats/random.h"

namespace stats {
namespace {

constexpr std::size_t kMostTaroneSteps = 4'000'000;

double squared_deviation(SubjectCount subject, double share) {
  const double deviation = subject.correct - subject.trials * share;
  return deviation * deviation;
}

/// Given the total, Z rises with the sum of this over the subjects: N times the part of (x - n s)^2 that
/// varies.
std::int64_t tarone_part(std::int64_t correct, std::int64_t trials, const SubjectSums& sums) {
  return correct * (sums.trials * correct - 2 * sums.correct * trials);
}

std::int64_t tarone_statistic(std::span<const SubjectCount> subjects, const SubjectSums& sums) {
  std::int64_t statistic = 0;
  for (const auto [correct, trials] : subjects) statistic += tarone_part(correct, trials, sums);
  return statistic;
}

struct TaroneState {
  std::int64_t correct;
  std::int64_t statistic;
  double weight;
};

void join_equal_states(std::vector<TaroneState>& states) {
  const auto key = [](const TaroneState& state) { return std::tie(state.correct, state.statistic); };
  std::sort(states.begin(), states.end(), [=](const auto& a, const auto& b) { return key(a) < key(b); });
  std::size_t kept = 0;
  for (std::size_t i = 1; i < states.size(); ++i)
    if (key(states[i]) == key(states[kept]))
      states[kept].weight += states[i].weight;
    else
      states[++kept] = states[i];
  states.resize(kept + 1);
}

/// Subject by subject, each count weighted by its binomial probability at the pooled share; states from which
/// the total cannot be met are left out. Nothing when the steps run out.
std::optional<double> counted_tarone_p(std::span<const SubjectCount> subjects, const SubjectSums& sums) {
  const std::int64_t seen = tarone_statistic(subjects, sums);
  std::vector<TaroneState> states{{0, 0, 1.0}};
  std::int64_t trials_left = sums.trials;
  std::size_t steps = 0;
  for (const auto [unused, trials] : subjects) {
    trials_left -= trials;
    steps += states.size() * static_cast<std::size_t>(trials + 1);
    if (steps > kMostTaroneSteps) return std::nullopt;
    const auto weights = beta_binomial(trials, double(sums.correct) / double(sums.trials), 0);
    std::vector<TaroneState> next;
    for (const TaroneState& state : states)
      for (int correct = 0; correct <= trials; ++correct) {
        const std::int64_t so_far = state.correct + correct;
        if (so_far <= sums.correct && so_far + trials_left >= sums.correct)
          next.push_back({so_far, state.statistic + tarone_part(correct, trials, sums),
                          state.weight * weights[static_cast<std::size_t>(correct)]});
      }
    join_equal_states(next);
    states = std::move(next);
  }
  double reaching = 0, all = 0;
  for (const TaroneState& state : states) {
    all += state.weight;
    if (state.statistic >= seen) reaching += state.weight;
  }
  return reaching / all;
}

PermutationP drawn_tarone_p(std::span<const SubjectCount> subjects, const SubjectSums& sums,
                            const MonteCarlo& monte_carlo) {
  const std::int64_t seen = tarone_statistic(subjects, sums);
  std::vector<std::size_t> subject_of;  // a place for each trial
  for (std::size_t i = 0; i < subjects.size(); ++i)
    subject_of.insert(subject_of.end(), static_cast<std::size_t>(subjects[i].trials), i);
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  std::vector<SubjectCount> drawn(subjects.begin(), subjects.end());
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    random.shuffle(std::span(subject_of));
    for (SubjectCount& subject : drawn) subject.correct = 0;
    for (std::int64_t right = 0; right < sums.correct; ++right)
      ++drawn[subject_of[static_cast<std::size_t>(right)]].correct;
    reaching += tarone_statistic(drawn, sums) >= seen;
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

}  // namespace

std::optional<double> pearson_dispersion(std::span<const SubjectCount> subjects) {
  const SubjectSums sums = checked_sums(subjects, 100'000);
  if (subjects.size() < 2 || sums.correct == 0 || sums.correct == sums.trials) return std::nullopt;
  const double share = double(sums.correct) / double(sums.trials);
  double chi_square = 0;
  for (const SubjectCount subject : subjects)
    chi_square += squared_deviation(subject, share) / (subject.trials * share * (1 - share));
  return chi_square / double(subjects.size() - 1);
}

std::optional<double> tarone_z(std::span<const SubjectCount> subjects) {
  const SubjectSums sums = checked_sums(subjects, 100'000);
  if (!sums.can_vary) return std::nullopt;
  const double share = double(sums.correct) / double(sums.trials);
  double squares = 0, pairs = 0;
  for (const SubjectCount subject : subjects) {
    squares += squared_deviation(subject, share) / (share * (1 - share));
    pairs += double(subject.trials) * (subject.trials - 1);
  }
  return (squares - double(sums.trials)) / std::sqrt(2 * pairs);
}

std::optional<double> tarone_normal_p(std::span<const SubjectCount> subjects) {
  const auto z = tarone_z(subjects);
  return z ? std::optional(std::erfc(*z / std::sqrt(2.0)) / 2) : std::nullopt;
}

std::optional<PermutationP> tarone_exact(std::span<const SubjectCount> subjects,
                                         const MonteCarlo& monte_carlo) {
  const SubjectSums sums = checked_sums(subjects, 100'000);
  require_draws(monte_carlo);
  if (!sums.can_vary) return std::nullopt;
  if (const auto p = counted_tarone_p(subjects, sums)) return exact_p(*p);
  return drawn_tarone_p(subjects, sums, monte_carlo);
}

}  // namespace stats
