#include "stats/redraw/total.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>

#include "stats/arguments.h"
#include "stats/level.h"

namespace stats {
namespace {

void require_total(const TotalDistribution& distribution, int observed) {
  require_count("places of the distribution", std::ssize(distribution), 1, INT32_MAX);
  require_count("observed", observed, 0, std::ssize(distribution) - 1);
}

/// Sums over the totals that count, from both ends inwards.
template <typename Counts>
double total_where(const TotalDistribution& distribution, Counts counts) {
  double sum = 0;
  for (std::size_t low = 0, high = distribution.size(); low < high; ++low) {
    if (counts(--high)) sum += distribution[high];
    if (low < high && counts(low)) sum += distribution[low];
  }
  return std::min(1.0, sum);
}

double mean_total(const TotalDistribution& distribution) {
  double mean = 0;
  for (std::size_t total = 0; total < distribution.size(); ++total)
    mean += double(total) * distribution[total];
  return mean;
}

}  // namespace

TotalDistribution convolved(const TotalDistribution& one, const TotalDistribution& other) {
  require_count("places of the first distribution", std::ssize(one), 1, INT32_MAX);
  require_count("places of the second distribution", std::ssize(other), 1, INT32_MAX);
  TotalDistribution sum(one.size() + other.size() - 1);
  for (std::size_t i = 0; i < one.size(); ++i)
    for (std::size_t j = 0; j < other.size(); ++j) sum[i + j] += one[i] * other[j];
  return sum;
}

double total_at_least(const TotalDistribution& distribution, int observed) {
  require_total(distribution, observed);
  double sum = 0;
  for (std::size_t total = distribution.size(); total-- > static_cast<std::size_t>(observed);)
    sum += distribution[total];
  return std::min(1.0, sum);
}

double total_at_most(const TotalDistribution& distribution, int observed) {
  require_total(distribution, observed);
  double sum = 0;
  for (std::size_t total = 0; total <= static_cast<std::size_t>(observed); ++total)
    sum += distribution[total];
  return std::min(1.0, sum);
}

double total_two_sided_by_distance(const TotalDistribution& distribution, int observed) {
  require_total(distribution, observed);
  const double mean = mean_total(distribution);
  const double limit = std::abs(observed - mean) - 1e-9 * double(distribution.size());
  return total_where(distribution,
                     [=](std::size_t total) { return std::abs(double(total) - mean) >= limit; });
}

double total_two_sided_by_probability(const TotalDistribution& distribution, int observed) {
  require_total(distribution, observed);
  const double limit = distribution[static_cast<std::size_t>(observed)] * (1 + 1e-7);
  return total_where(distribution, [&](std::size_t total) { return distribution[total] <= limit; });
}

std::optional<int> total_minimum(const TotalDistribution& distribution, double level) {
  require_total(distribution, 0);
  require_level("level", level);
  std::optional<int> minimum;
  double tail = 0;
  for (std::size_t total = distribution.size(); total-- > 0;) {
    tail += distribution[total];
    if (!reaches(tail, level)) break;
    if (distribution[total] > 0) minimum = static_cast<int>(total);
  }
  return minimum;
}

}  // namespace stats
