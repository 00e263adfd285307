#include "stats/pooled/overdispersion.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
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
  double weight;  ///< in `tails` below with that of all larger statistics of the same `correct`

  auto key() const { return std::tie(correct, statistic); }
};

/// Both lists, each ascending, as one; equal states are joined.
std::vector<TaroneState> joined(const std::vector<TaroneState>& one, const std::vector<TaroneState>& other) {
  std::vector<TaroneState> all;
  all.reserve(one.size() + other.size());
  for (auto a = one.begin(), b = other.begin(); a != one.end() || b != other.end();) {
    const bool take_a = b == other.end() || (a != one.end() && a->key() <= b->key());
    all.push_back(take_a ? *a : *b);
    if (take_a && b != other.end() && a->key() == b->key()) all.back().weight += b++->weight;
    take_a ? ++a : ++b;
  }
  return all;
}

/// What some of the subjects can have in all, subject by subject, each count weighted by its binomial probability at the
/// pooled share; ascending. Nothing when the steps run out.
std::optional<std::vector<TaroneState>> tarone_states(std::span<const SubjectCount> subjects,
                                                      const SubjectSums& sums, std::size_t& steps) {
  std::vector<TaroneState> states{{0, 0, 1.0}};
  std::int64_t trials_left = sums.trials;
  for (const auto [unused, trials] : subjects) {
    trials_left -= trials;
    steps += states.size() * static_cast<std::size_t>(trials + 1);
    if (steps > kMostTaroneSteps) return std::nullopt;
    const auto weights = beta_binomial(trials, double(sums.correct) / double(sums.trials), 0);
    std::vector<TaroneState> next;
    for (int correct = 0; correct <= trials; ++correct) {
      const std::int64_t part = tarone_part(correct, trials, sums);
      std::vector<TaroneState> shifted;
      for (const auto& [before, statistic, weight] : states)
        if (before + correct <= sums.correct && before + correct + trials_left >= sums.correct)
          shifted.push_back(
              {before + correct, statistic + part, weight * weights[static_cast<std::size_t>(correct)]});
      next = joined(next, shifted);
    }
    states = std::move(next);
  }
  return states;
}

/// P of a statistic this large or larger, given the total: every state of one half of the subjects meets those of the
/// other half with which the total is the one seen.
std::optional<double> counted_tarone_p(std::span<const SubjectCount> subjects, const SubjectSums& sums) {
  const std::size_t half = subjects.size() / 2;
  std::size_t steps = 0;
  const auto first = tarone_states(subjects.first(half), sums, steps);
  if (!first) return std::nullopt;
  auto tails = tarone_states(subjects.subspan(half), sums, steps);
  if (!tails) return std::nullopt;
  for (std::size_t i = tails->size() - 1; i-- > 0;)
    if ((*tails)[i].correct == (*tails)[i + 1].correct) (*tails)[i].weight += (*tails)[i + 1].weight;
  const auto tail_from = [&](std::int64_t correct, std::int64_t statistic) {
    const auto found = std::lower_bound(tails->begin(), tails->end(), std::tie(correct, statistic),
                                        [](const auto& state, const auto& key) { return state.key() < key; });
    return found != tails->end() && found->correct == correct ? found->weight : 0.0;
  };
  const std::int64_t seen = tarone_statistic(subjects, sums);
  double reaching = 0, all = 0;
  for (const TaroneState& state : *first) {
    const std::int64_t rest = sums.correct - state.correct;
    all += state.weight * tail_from(rest, std::numeric_limits<std::int64_t>::min());
    reaching += state.weight * tail_from(rest, seen - state.statistic);
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
