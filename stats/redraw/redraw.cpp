#include "stats/redraw/redraw.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <numeric>
#include <stdexcept>
#include <string>

#include "stats/arguments.h"
#include "stats/level.h"
#include "stats/root.h"

namespace stats {
namespace {

constexpr int kLargestTotal = 1'000'000;

int sum_of_counts(std::span<const Split> splits) {
  std::int64_t sum = 0;
  for (const auto [one, other] : splits) {
    require_count("one", one, 0, kLargestTotal);
    require_count("other", other, 0, kLargestTotal);
    sum += one + other;
    require_count("sum of all counts", sum, 0, kLargestTotal);
  }
  return static_cast<int>(sum);
}

int smallest_total(std::span<const Split> splits) {
  return std::accumulate(splits.begin(), splits.end(), 0,
                         [](int sum, Split split) { return sum + std::min(split.one, split.other); });
}

/// Draws the coins one after the other: `mix(stays, moves)` joins what each fall of a coin contributes to a
/// total.
template <typename Value, typename Mix>
std::vector<Value> totals(std::span<const Split> splits, Mix mix) {
  std::vector<Value> at(static_cast<std::size_t>(sum_of_counts(splits)) + 1);
  const auto lowest = static_cast<std::size_t>(smallest_total(splits));
  auto highest = lowest;
  at[lowest] = 1;
  for (const auto [one, other] : splits) {
    const auto gap = static_cast<std::size_t>(std::abs(one - other));
    if (gap == 0) continue;
    highest += gap;
    for (std::size_t total = highest; total >= lowest + gap; --total)
      at[total] = mix(at[total], at[total - gap]);
    for (std::size_t total = lowest; total < lowest + gap; ++total) at[total] = mix(at[total], Value{});
  }
  return at;
}

/// Sums from the ends inwards, so that small probabilities are added first.
template <typename Counts>
double probability_where(std::span<const Split> splits, int observed, Counts counts) {
  const auto possible = totals<char>(splits, [](char stays, char moves) { return char(stays | moves); });
  require_count("observed", observed, 0, static_cast<int>(possible.size()) - 1);
  if (!possible[static_cast<std::size_t>(observed)])
    throw std::domain_error("observed must be a total that the splits can give, got " +
                            std::to_string(observed));
  const auto distribution = redraw_distribution(splits);
  double sum = 0;
  for (int low = 0, high = static_cast<int>(distribution.size()) - 1; low <= high; ++low, --high) {
    if (counts(low)) sum += distribution[static_cast<std::size_t>(low)];
    if (high != low && counts(high)) sum += distribution[static_cast<std::size_t>(high)];
  }
  return std::min(1.0, sum);
}

/// Trials whose answers are all alike.
std::vector<Split> alike(std::span<const int> answers) {
  std::vector<Split> splits;
  for (const int count : answers) {
    require_count("answers of a trial", count, 1, kLargestTotal);
    splits.push_back({count, 0});
  }
  return splits;
}

/// P(total >= minimum) where each trial adds `one` with probability `share`, else `other`, the smaller of the
/// two.
double chance_at_share(std::span<const Split> splits, int minimum, double share) {
  const auto at =
      totals<double>(splits, [=](double stays, double moves) { return (1 - share) * stays + share * moves; });
  double sum = 0;
  for (auto total = static_cast<int>(at.size()) - 1; total >= minimum; --total)
    sum += at[static_cast<std::size_t>(total)];
  return std::min(1.0, sum);
}

}  // namespace

std::vector<double> redraw_distribution(std::span<const Split> splits) {
  return totals<double>(splits, [](double stays, double moves) { return (stays + moves) / 2; });
}

double redraw_at_least(std::span<const Split> splits, int observed) {
  return probability_where(splits, observed, [=](int total) { return total >= observed; });
}

double redraw_at_most(std::span<const Split> splits, int observed) {
  return probability_where(splits, observed, [=](int total) { return total <= observed; });
}

double redraw_two_sided(std::span<const Split> splits, int observed) {
  const std::int64_t sum = sum_of_counts(splits);
  const auto distance = [=](std::int64_t total) { return std::abs(2 * total - sum); };
  return probability_where(splits, observed,
                           [=](int total) { return distance(total) >= distance(observed); });
}

std::optional<int> redraw_minimum(std::span<const Split> splits, double level) {
  require_level("level", level);
  const auto distribution = redraw_distribution(splits);
  std::optional<int> minimum;
  double tail = 0;
  for (int total = static_cast<int>(distribution.size()) - 1; total >= 0; --total) {
    const double probability = distribution[static_cast<std::size_t>(total)];
    tail += probability;
    if (!reaches(tail, level)) break;
    if (probability > 0) minimum = total;
  }
  return minimum;
}

double redraw_power(std::span<const int> answers, double level, double share) {
  require_closed_probability("share", share);
  const auto splits = alike(answers);
  const auto minimum = redraw_minimum(splits, level);
  return minimum ? chance_at_share(splits, *minimum, share) : 0;
}

std::optional<double> redraw_share_caught(std::span<const int> answers, double level, double probability) {
  require_level("probability", probability);
  const auto splits = alike(answers);
  const auto minimum = redraw_minimum(splits, level);
  if (!minimum) return std::nullopt;
  const auto beyond = [&](double share) { return chance_at_share(splits, *minimum, share) - probability; };
  return root_between(beyond, 0.0, 1.0, 50);
}

}  // namespace stats
