#include "stats/redraw.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <numeric>
#include <stdexcept>
#include <string>

#include "stats/arguments.h"
#include "stats/level.h"

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

}  // namespace stats
