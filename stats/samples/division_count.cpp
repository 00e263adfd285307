#include "stats/samples/division_count.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

namespace stats {
namespace {

constexpr std::size_t most_values = 1'000;  // beyond, the number of divisions could overflow a double
constexpr double most_steps = 1e8;
constexpr double largest_whole = 1e9;

std::optional<std::vector<std::int64_t>> above_the_least(std::span<const double> values) {
  const double least = *std::min_element(values.begin(), values.end());
  std::vector<std::int64_t> above;
  for (const double value : values) {
    if (value != std::floor(value) || std::abs(value) > largest_whole) return std::nullopt;
    above.push_back(static_cast<std::int64_t>(value - least));
  }
  return above;
}

/// Number of ways to choose `chosen` of the values, by their sum.
std::vector<double> ways_by_sum(const std::vector<std::int64_t>& values, std::size_t chosen,
                                std::size_t most_sum) {
  std::vector<std::vector<double>> ways(chosen + 1, std::vector<double>(most_sum + 1));
  ways[0][0] = 1;
  for (const std::int64_t value : values)
    for (std::size_t size = chosen; size >= 1; --size)
      for (std::size_t sum = static_cast<std::size_t>(value); sum <= most_sum; ++sum)
        ways[size][sum] += ways[size - 1][sum - static_cast<std::size_t>(value)];
  return ways[chosen];
}

}  // namespace

double number_of_divisions(std::size_t chosen, std::size_t all) {
  double ways = 1;
  for (std::size_t i = 1; i <= chosen; ++i) ways *= double(all + 1 - i) / double(i);
  return std::round(ways);
}

std::optional<double> share_of_divisions(std::span<const double> values, std::size_t chosen,
                                         Alternative alternative) {
  if (values.size() > most_values) return std::nullopt;
  const auto above = above_the_least(values);
  if (!above) return std::nullopt;
  const auto largest = static_cast<std::size_t>(*std::max_element(above->begin(), above->end()));
  const double steps = double(values.size()) * double(chosen) * double(chosen * largest + 1);
  if (steps > most_steps) return std::nullopt;

  // The difference of means times chosen (n - chosen), a whole number.
  const auto n = std::ssize(*above), k = static_cast<std::ptrdiff_t>(chosen);
  const std::int64_t everything = std::accumulate(above->begin(), above->end(), std::int64_t{0});
  const auto gap = [&](std::int64_t sum) { return sum * n - k * everything; };
  const std::int64_t seen = gap(std::accumulate(above->begin(), above->begin() + k, std::int64_t{0}));
  const std::vector<double> ways = ways_by_sum(*above, chosen, chosen * largest);
  double reaching = 0, all = 0;
  for (std::size_t sum = 0; sum < ways.size(); ++sum) {
    all += ways[sum];
    if (counts_against(gap(static_cast<std::int64_t>(sum)), seen, alternative)) reaching += ways[sum];
  }
  return reaching / all;
}

}  // namespace stats
